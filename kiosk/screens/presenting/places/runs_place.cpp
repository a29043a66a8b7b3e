#include "kiosk/screens/presenting/places/runs_place.hpp"

#include "kiosk/records/queries.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/wording/plan_sentences.hpp"

#include <algorithm>
#include <charconv>

namespace holdfast::kiosk::screens {
namespace {

constexpr int kMostListed = 500;
constexpr int kTicketWidth = 4;
constexpr std::string_view kPick = "runs.pick.";

shop::Stock stockOf(const ledger::Book& book) {
    shop::Stock stock;
    if (const auto families = records::newestFamilies(book.reader())) {
        for (const auto& family : *families) {
            stock.families.push_back(records::toFamily(family));
        }
    }
    if (const auto fabrics = records::newestFabrics(book.reader())) {
        for (const auto& fabric : *fabrics) {
            stock.fabrics.push_back(records::toFabric(fabric));
        }
    }
    return stock;
}

MarkKind markOfState(records::LotState state) {
    switch (state) {
    case records::LotState::cleared:
        return MarkKind::Cured;
    case records::LotState::onHold:
        return MarkKind::UnderCured;
    case records::LotState::unproven:
        return MarkKind::NotProven;
    default:
        return MarkKind::Blank;
    }
}

std::optional<int> count(const std::string& typed) {
    int value = 0;
    const auto [end, error] = std::from_chars(typed.data(), typed.data() + typed.size(), value);
    return error == std::errc{} && end == typed.data() + typed.size() && value >= 0 ? std::optional{value}
                                                                                    : std::nullopt;
}

} // namespace

void RunsPlace::reload() {
    m_rows.clear();
    for (const auto kind : {records::PlanKind::run, records::PlanKind::windowCard}) {
        if (auto rows = records::runsOnFile(m_needs.book->reader(), kind, m_finished, kMostListed)) {
            m_rows.insert(m_rows.end(), rows->begin(), rows->end());
        }
    }
    if (m_run) {
        choose(m_run->plan.run);
    }
}

void RunsPlace::choose(const std::string& run) {
    const auto found = records::runById(m_needs.book->reader(), run);
    m_run = found ? *found : std::nullopt;
    m_finishing.reset();
}

SheetRow RunsPlace::rowOf(const records::RunRow& row) const {
    SheetRow shown;
    shown.id = toQString(std::string{kPick} + row.id);
    shown.title = toQString(row.kind == records::PlanKind::run
                                ? text("runs.row", {{"run", std::to_string(row.number)}, {"title", row.title}})
                                : text("runs.card-title", {{"title", row.title}}));
    shown.detail =
        toQString(row.customer.empty() ? row.fabric
                                       : text("runs.row-detail", {{"customer", row.customer}, {"fabric", row.fabric}}));
    shown.value = row.pieces ? QString::number(*row.pieces) : QString{};
    shown.marked = row.worst.has_value();
    shown.mark = row.worst ? markOfState(*row.worst) : MarkKind::Blank;
    shown.chosen = m_run && m_run->plan.run == row.id && !m_form && !m_import;
    return shown;
}

SheetPageState RunsPlace::sheet() const {
    SheetPageState page;
    page.heading = toQString(text(m_finished ? "runs.heading-finished" : "runs.heading"));
    page.listNone = toQString(text(m_finished ? "runs.none-finished" : "runs.none"));
    for (const auto& row : m_rows) {
        page.list.append(rowOf(row));
    }
    page.listActions = {pressOf("runs.new", text("runs.new")), pressOf("runs.import", text("runs.from-list")),
                        pressOf("runs.toggle", text(m_finished ? "runs.show-planned" : "runs.show-finished"))};
    page.back = pressOf("runs.back", text("runs.back"));
    page.detailOnly = m_form || m_import || m_run;
    if (m_form) {
        const auto& draft = m_form->draft();
        page.title = toQString(!draft.run.empty() ? text("runs.form-change", {{"run", std::to_string(draft.number)}})
                               : draft.kind == records::PlanKind::run ? text("runs.form-new")
                                                                      : text("runs.form-new-card"));
        page.blocks = m_form->blocks(m_needs.speech());
        page.actions = {pressOf("runs.save", text("runs.save"), true), pressOf("runs.back", text("runs.give-up"))};
    } else if (m_import) {
        page.title = toQString(text("runs.from-list"));
        page.blocks = m_import->blocks(m_needs.speech());
        const auto plans = m_import->plans().size();
        if (plans > 0) {
            page.actions.append(
                pressOf("runs.import-now", text("runs.import-now", {{"count", std::to_string(plans)}}), true));
        }
        page.actions.append(pressOf("runs.back", text("runs.give-up")));
    } else if (m_run && m_finishing) {
        addFinishing(page);
    } else if (m_run) {
        addPlan(page);
    } else {
        const auto sentence =
            m_imported ? text("runs.import-done", {{"count", std::to_string(*m_imported)}}) : text("runs.pick");
        page.blocks.append(textBlock(SheetKinds::Sentence, sentence));
    }
    return page;
}

void RunsPlace::addPlan(SheetPageState& page) const {
    const auto& plan = m_run->plan;
    const auto& speech = m_needs.speech();
    const bool isRun = plan.kind == records::PlanKind::run;
    page.title = toQString(isRun ? text("runs.title", {{"run", std::to_string(plan.number)}, {"title", plan.title}})
                                 : text("runs.card-title", {{"title", plan.title}}));
    std::vector<SheetRow> facts;
    const auto fact = [&](const char* key, const std::string& value) {
        if (!value.empty()) {
            facts.push_back(factRow(text(key), value));
        }
    };
    fact("runs.fact.customer", plan.customer);
    fact("runs.fact.reference", plan.reference);
    fact("runs.fact.pieces", plan.pieces ? std::to_string(*plan.pieces) : std::string{});
    fact("runs.fact.fabric", plan.fabric);
    fact("runs.fact.garment", plan.garmentColour);
    fact("runs.fact.children", plan.childrensWear ? text("runs.fact.yes") : std::string{});
    page.blocks.append(rowsBlock(SheetKinds::Facts, facts));
    page.blocks.append(textBlock(SheetKinds::Heading, text("runs.print-heading")));
    std::vector<SheetRow> layers;
    for (auto layer = plan.layers.rbegin(); layer != plan.layers.rend(); ++layer) {
        layers.push_back(factRow(text("runs.layer", {{"colour", layer->colour}, {"ink", layer->ink}}),
                                 layer->underbase ? text("runs.layer-underbase") : std::string{}));
    }
    page.blocks.append(rowsBlock(SheetKinds::Facts, layers));
    if (m_run->usable) {
        if (const auto window = analytics::windowOf(m_run->layers)) {
            page.blocks.append(textBlock(SheetKinds::Heading, text("runs.fact.window")));
            page.blocks.append(textBlock(SheetKinds::Lead, wording::windowText(*window, speech)));
        }
    }
    const bool done = m_finished;
    if (!done) {
        page.actions.append(pressOf("runs.belt", text("runs.put-on-belt"), true));
    }
    page.actions.append(pressOf("runs.ticket", text("runs.print-ticket")));
    if (!done) {
        page.actions.append(pressOf("runs.change", text("runs.change")));
        if (isRun) {
            page.actions.append(pressOf("runs.finish", text("runs.finish")));
        }
    }
}

void RunsPlace::addFinishing(SheetPageState& page) const {
    page.title = toQString(text("runs.finish-heading", {{"run", std::to_string(m_run->plan.number)}}));
    page.blocks.append(
        fieldsBlock({fieldOf("runs.made", text("runs.made"), m_finishing->made, {}, SheetKinds::Number),
                     fieldOf("runs.spoiled", text("runs.spoiled"), m_finishing->spoiled, {}, SheetKinds::Number)}));
    page.actions = {pressOf("runs.finish-now", text("runs.finish-now"), true),
                    pressOf("runs.back", text("runs.give-up"))};
}

bool RunsPlace::act(const std::string& id) {
    if (id == "runs.back") {
        const bool wasOver = m_form || m_import || m_finishing;
        m_form.reset();
        m_import.reset();
        m_finishing.reset();
        if (!wasOver) {
            m_run.reset();
        }
    } else if (id == "runs.toggle") {
        m_finished = !m_finished;
        m_run.reset();
        reload();
    } else if (id == "runs.new") {
        startForm({});
    } else if (id == "runs.import") {
        startImport();
    } else if (id.compare(0, kPick.size(), kPick) == 0) {
        m_form.reset();
        m_import.reset();
        choose(id.substr(kPick.size()));
    } else {
        return actOnForm(id) || actOnRun(id);
    }
    return true;
}

bool RunsPlace::actOnForm(const std::string& id) {
    if (id == "runs.save" && m_form) {
        savePlan();
        return true;
    }
    if (id == "runs.import-now" && m_import) {
        importPlans();
        return true;
    }
    return (m_form && m_form->act(id)) || (m_import && m_import->act(id));
}

bool RunsPlace::actOnRun(const std::string& id) {
    if (!m_run) {
        return false;
    }
    const auto& plan = m_run->plan;
    const bool isRun = plan.kind == records::PlanKind::run;
    if (id == "runs.belt") {
        m_needs.scan(drivers::encode(isRun ? drivers::TicketKind::run : drivers::TicketKind::window,
                                     static_cast<std::uint64_t>(plan.number), kTicketWidth));
    } else if (id == "runs.ticket") {
        m_needs.print({isRun ? PrintWish::What::runTicket : PrintWish::What::windowCard, plan.number});
    } else if (id == "runs.change") {
        startForm(shop::draftOf(plan));
    } else if (id == "runs.finish") {
        m_finishing = Finishing{plan.pieces ? std::to_string(*plan.pieces) : std::string{}, {}};
    } else if (id == "runs.finish-now" && m_finishing) {
        finish();
    } else {
        return false;
    }
    return true;
}

bool RunsPlace::enter(const std::string& field, const std::string& typed) {
    if (m_finishing && (field == "runs.made" || field == "runs.spoiled")) {
        (field == "runs.made" ? m_finishing->made : m_finishing->spoiled) = typed;
        return true;
    }
    return m_form && m_form->enter(field, typed);
}

bool RunsPlace::scanned(const drivers::TicketCode&, bool) {
    return false; // a ticket goes to the belt from everywhere
}

void RunsPlace::startForm(shop::PlanDraft draft) {
    m_import.reset();
    m_finishing.reset();
    if (draft.layers.empty()) {
        draft.layers.emplace_back();
    }
    m_form.emplace(std::move(draft), stockOf(*m_needs.book));
}

void RunsPlace::startImport() {
    std::vector<std::string> known;
    for (const bool finished : {false, true}) {
        const auto rows = records::runsOnFile(m_needs.book->reader(), records::PlanKind::run, finished, INT32_MAX);
        for (const auto& row : rows ? *rows : std::vector<records::RunRow>{}) {
            if (!row.reference.empty()) {
                known.push_back(row.reference);
            }
        }
    }
    m_form.reset();
    m_imported.reset();
    m_import.emplace(m_needs.exchange, stockOf(*m_needs.book), std::move(known));
}

void RunsPlace::keep(std::vector<records::Record> list) {
    m_needs.keep({std::move(list)}, [this](const std::optional<ledger::Failure>& failure) {
        if (failure) {
            m_needs.tell(wording::noticeOf(*failure, wording::Kept::book, m_needs.speech()));
        }
    });
}

void RunsPlace::savePlan() {
    auto plan = m_form->plan();
    if (!plan) {
        return;
    }
    const bool isNew = plan->run.empty();
    if (isNew) {
        const auto kind = plan->kind == records::PlanKind::run ? records::Numbered::run : records::Numbered::windowCard;
        const auto number = records::nextNumber(m_needs.book->reader(), kind);
        if (!number) {
            m_needs.tell(wording::noticeOf(number.error(), wording::Kept::book, m_needs.speech()));
            return;
        }
        plan->run = m_needs.newId();
        plan->number = *number;
    }
    const auto before = records::runById(m_needs.book->reader(), plan->run);
    auto list = shop::recordsOfPlan(*plan, before && *before ? &**before : nullptr, stockOf(*m_needs.book).families,
                                    m_needs.newId());
    const auto run = plan->run;
    m_needs.keep({std::move(list)}, [this, run](const std::optional<ledger::Failure>& failure) {
        if (failure) { // the form stays as it was typed
            m_needs.tell(wording::noticeOf(*failure, wording::Kept::book, m_needs.speech()));
            return;
        }
        m_form.reset();
        m_finished = false;
        reload();
        choose(run);
    });
}

void RunsPlace::finish() {
    const auto made = count(m_finishing->made);
    const auto spoiled = count(m_finishing->spoiled);
    keep(shop::recordsOfFinish(*m_run, made, spoiled));
    m_finishing.reset();
    m_run.reset();
}

void RunsPlace::importPlans() {
    auto number = records::nextNumber(m_needs.book->reader(), records::Numbered::run);
    if (!number) {
        m_needs.tell(wording::noticeOf(number.error(), wording::Kept::book, m_needs.speech()));
        return;
    }
    std::vector<records::Record> list;
    for (auto plan : m_import->plans()) {
        plan.run = m_needs.newId();
        plan.number = (*number)++;
        list.emplace_back(std::move(plan));
    }
    const auto planned = list.size();
    m_needs.keep({std::move(list)}, [this, planned](const std::optional<ledger::Failure>& failure) {
        if (failure) {
            m_needs.tell(wording::noticeOf(*failure, wording::Kept::book, m_needs.speech()));
            return;
        }
        m_import.reset();
        m_imported = planned;
        m_run.reset();
        reload();
    });
}

} // namespace holdfast::kiosk::screens
