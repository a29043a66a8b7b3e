// What the Runs show.
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/places/runs_place.hpp"
#include "kiosk/wording/plan_sentences.hpp"

#include <charconv>

namespace holdfast::kiosk::screens {
namespace {

/// On hold can be for too little heat or too much, or for a test: no mark says which.
std::optional<MarkKind> markOfState(records::LotState state) {
    switch (state) {
    case records::LotState::cleared:
        return MarkKind::Cured;
    case records::LotState::unproven:
        return MarkKind::NotProven;
    default:
        return std::nullopt;
    }
}

} // namespace

SheetRow RunsPlace::rowOf(const records::RunRow& row) const {
    SheetRow shown;
    shown.id = toQString(std::string{kRunsPick} + row.id);
    shown.title = toQString(row.kind == records::PlanKind::run
                                ? text("runs.row", {{"run", std::to_string(row.number)}, {"title", row.title}})
                                : text("runs.card-title", {{"title", row.title}}));
    shown.detail =
        toQString(row.customer.empty() ? row.fabric
                                       : text("runs.row-detail", {{"customer", row.customer}, {"fabric", row.fabric}}));
    shown.value = row.pieces ? QString::number(*row.pieces) : QString{};
    const auto mark = row.worst ? markOfState(*row.worst) : std::nullopt;
    shown.marked = mark.has_value();
    shown.mark = mark.value_or(MarkKind::Blank);
    if (row.worst == records::LotState::onHold) {
        shown.strong = true;
        shown.value = toQString(text("lot.on-hold"));
    }
    shown.chosen = m_run && m_run->plan.run == row.id && !isFormShown() && !m_import;
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
    if (m_form && m_aside) {
        page.listActions.prepend(pressOf("runs.resume", text("runs.resume")));
    }
    if (isFormShown()) {
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
    fact("runs.fact.cloth-lot", plan.clothLot);
    fact("runs.fact.finish", plan.finish);
    fact("runs.fact.children", plan.childrensWear ? text("runs.fact.yes") : std::string{});
    page.blocks.append(rowsBlock(SheetKinds::Facts, facts));
    page.blocks.append(textBlock(SheetKinds::Heading, text("runs.print-heading")));
    std::vector<SheetRow> layers;
    for (auto layer = plan.layers.rbegin(); layer != plan.layers.rend(); ++layer) {
        std::string buckets;
        for (const auto number : layer->buckets) {
            buckets += (buckets.empty() ? "" : ", ") + text("runs.layer-bucket", {{"bucket", std::to_string(number)}});
        }
        layers.push_back(factRow(text("runs.layer", {{"colour", layer->colour}, {"ink", layer->ink}}),
                                 layer->underbase ? text("runs.layer-underbase") : std::string{}, buckets));
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

RunsPlace::PieceCount RunsPlace::pieceCount(const std::string& typed) {
    PieceCount count;
    if (typed.empty()) {
        return count;
    }
    int value = 0;
    const auto [end, error] = std::from_chars(typed.data(), typed.data() + typed.size(), value);
    count.readable = error == std::errc{} && end == typed.data() + typed.size() && value >= 0;
    if (count.readable) {
        count.value = value;
    }
    return count;
}

void RunsPlace::addFinishing(SheetPageState& page) const {
    page.title = toQString(text("runs.finish-heading", {{"run", std::to_string(m_run->plan.number)}}));
    const auto field = [&](const char* id, const std::string& typed) {
        auto made = fieldOf(id, text(id), typed, {}, SheetKinds::Number);
        if (m_finishing->tried && !pieceCount(typed).readable) {
            made.fault = toQString(text("runs.fault.pieces-not-a-number", {{"text", typed}}));
        }
        return made;
    };
    page.blocks.append(
        fieldsBlock({field("runs.made", m_finishing->made), field("runs.spoiled", m_finishing->spoiled)}));
    page.actions = {pressOf("runs.finish-now", text("runs.finish-now"), true),
                    pressOf("runs.back", text("runs.give-up"))};
}

} // namespace holdfast::kiosk::screens
