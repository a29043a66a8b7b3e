#include "kiosk/screens/presenting/deciding/complaint_form.hpp"

#include "kiosk/screens/presenting/deciding/pictures_laid.hpp"
#include "kiosk/screens/presenting/deciding/shown_limits.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

#include <array>

namespace holdfast::kiosk::screens {
namespace {

using records::ComplaintKind;

constexpr std::string_view kKind = "complaint.kind.";
constexpr std::string_view kFormRun = "complaint.run.";
constexpr std::string_view kFormLot = "complaint.lot.";
constexpr std::array kKinds{ComplaintKind::washedOut, ComplaintKind::cracked,  ComplaintKind::peeled,
                            ComplaintKind::bled,      ComplaintKind::scorched, ComplaintKind::rubbedOff,
                            ComplaintKind::feel,      ComplaintKind::other};

} // namespace

ComplaintForm::ComplaintForm(const PlaceNeeds& needs, Done done, shop::deciding::ComplaintDraft draft, bool closed)
    : HoldsPage{needs, std::move(done)}, m_draft{std::move(draft)}, m_ids{needs.newId(), needs.newId()}, m_closed{
                                                                                                             closed} {
    if (m_draft.run) {
        tie(*m_draft.run, m_draft.lot);
    }
}

void ComplaintForm::tie(const std::string& run, const std::optional<std::string>& lot) {
    const auto& reader = needs().book->reader();
    const auto plan = records::runById(reader, run);
    auto lots = records::lotsOfRun(reader, run);
    if (!plan || !lots) {
        tell(!plan ? plan.error() : lots.error());
        return;
    }
    m_draft.run = run;
    m_lots = std::move(*lots);
    m_draft.lot = lot ? lot : m_lots.size() == 1 ? std::optional{m_lots.front().id} : std::nullopt;
    m_runTitle =
        *plan ? text("holds.trace.row", {{"run", std::to_string((*plan)->plan.number)}, {"title", (*plan)->plan.title}})
              : std::string{};
    m_found.clear();
}

const records::LotRow* ComplaintForm::lotRow(const std::string& lot) const {
    for (const auto& row : m_lots) {
        if (row.id == lot) {
            return &row;
        }
    }
    return nullptr;
}

shop::deciding::ComplaintFacts ComplaintForm::facts() const {
    const auto& reader = needs().book->reader();
    shop::deciding::ComplaintFacts facts;
    facts.closed = m_closed;
    const auto number = records::nextComplaint(reader);
    const auto bin = records::nextBin(reader);
    facts.nextNumber = number ? *number : 1;
    facts.nextBin = bin ? *bin : 1;
    const auto shown = m_draft.lot ? lotShown(*needs().book, *m_draft.lot) : ledger::Result<std::optional<LotShown>>{};
    if (shown && *shown) {
        shop::deciding::LotComplained lot;
        lot.lot = (*shown)->row.id;
        lot.standing = (*shown)->facts.standing;
        lot.shipped = (*shown)->pieces.shipped;
        lot.made = (*shown)->pieces.made;
        for (const auto& hold : (*shown)->holds) {
            if (hold.placed.cause == records::HoldCause::complaint) {
                lot.complaintsThatHold.push_back(hold.placed.because);
            }
        }
        facts.lot = std::move(lot);
    }
    return facts;
}

void ComplaintForm::lookUp(const std::string& clue) {
    m_found.clear();
    if (clue.empty() || m_draft.run) {
        return;
    }
    auto found = records::runsByClue(needs().book->reader(), clue, kMostFound);
    if (!found) {
        tell(found.error());
        return;
    }
    m_found = std::move(*found);
    if (m_found.size() == 1) {
        const auto run = m_found.front().run;
        tie(run, std::nullopt);
    }
}

bool ComplaintForm::scanned(const drivers::TicketCode& code) {
    using Kind = drivers::TicketKind;
    const auto& reader = needs().book->reader();
    const auto number = static_cast<std::int64_t>(code.number);
    if (code.kind == Kind::run) {
        const auto run = records::runByNumber(reader, records::PlanKind::run, number);
        if (!run || !*run) {
            return false;
        }
        tie((*run)->plan.run, std::nullopt);
    } else if (code.kind == Kind::print) {
        const auto print = records::printByNumber(reader, number);
        if (!print || !*print) {
            return false;
        }
        tie((*print)->named.run, (*print)->named.lot);
    } else if (code.kind == Kind::bin) {
        const auto hold = records::holdByBin(reader, number);
        if (!hold || !*hold) {
            return false;
        }
        tie((*hold)->run, (*hold)->placed.lot);
    } else {
        return false;
    }
    m_touched = true;
    m_faults.clear();
    return true;
}

bool ComplaintForm::act(const std::string& id) {
    if (id == "complaint.keep") {
        auto kept = shop::deciding::complaintFrom(m_draft, facts(), m_ids);
        m_faults = kept ? shop::deciding::Faults{} : kept.error();
        if (kept) {
            signOnce(shop::Right::takeComplaints, [this](std::int64_t person) { keepIt(person); });
        }
        return true;
    }
    if (const auto kind = restOf(id, kKind)) {
        for (const auto one : kKinds) {
            if (wording::nameOf(one) == *kind) {
                m_draft.what = one;
            }
        }
    } else if (const auto run = restOf(id, kFormRun)) {
        tie(*run, std::nullopt);
    } else if (const auto lot = restOf(id, kFormLot)) {
        m_draft.lot = *lot;
    } else if (id == "complaint.untie") {
        m_draft.run.reset();
        m_draft.lot.reset();
        m_lots.clear();
        lookUp(m_draft.clue);
        m_found = m_draft.run ? std::vector<records::ClueRow>{} : m_found;
    } else if (id == "complaint.pictures") {
        takePictures();
    } else {
        return false;
    }
    m_touched = true;
    m_faults.clear();
    return true;
}

bool ComplaintForm::enter(const std::string& field, const std::string& typed) {
    if (field == "complaint.field.customer") {
        m_draft.customer = typed;
    } else if (field == "complaint.field.words") {
        m_draft.words = typed;
    } else if (field == "complaint.field.pieces") {
        m_draft.pieces = typed;
    } else if (field == "complaint.field.received") {
        m_draft.received = typed;
    } else if (field == "complaint.field.clue") {
        m_draft.clue = typed;
        lookUp(typed);
    } else {
        return false;
    }
    m_touched = true;
    m_faults.clear();
    return true;
}

void ComplaintForm::takePictures() {
    auto laid = picturesLaid(needs().exchange, shop::deciding::kMostPictures);
    for (auto& picture : laid.pictures) {
        const auto sha = ledger::toHex(ledger::sha256(picture.bytes));
        if (std::find(m_draft.pictures.begin(), m_draft.pictures.end(), sha) == m_draft.pictures.end()) {
            m_draft.pictures.push_back(sha);
            m_blobs.push_back({"picture", std::move(picture.bytes)});
            m_files.push_back(std::move(picture.file));
        }
    }
    m_said = laid.pictures.empty()
                 ? text("holds.complaint.pictures-nothing", {{"folder", needs().exchange.string()}})
                 : text("holds.complaint.pictures-taken", {{"count", std::to_string(laid.pictures.size())}});
    if (laid.leftAlone > 0) {
        m_said += " " + text("holds.complaint.pictures-left", {{"count", std::to_string(laid.leftAlone)}});
    }
}

void ComplaintForm::keepIt(std::int64_t person) {
    auto kept = shop::deciding::complaintFrom(m_draft, facts(), m_ids);
    if (!kept) {
        m_faults = kept.error();
        return;
    }
    const auto number = std::get<records::ComplaintTaken>(kept->front()).number;
    Keeping keeping;
    keeping.list = std::move(*kept);
    keeping.person = person;
    keeping.blobs = m_blobs;
    write(std::move(keeping), [this, number] {
        putAside(m_files);
        m_touched = false;
        done(text("holds.complaint.kept", {{"number", std::to_string(number)}}));
    });
}

void ComplaintForm::addFields(SheetPageState& page) const {
    std::vector<Choice> choices;
    for (const auto kind : kKinds) {
        choices.push_back({std::string{kKind} + wording::nameOf(kind), wording::word(kind, speech())});
    }
    page.blocks.append(
        choicesBlock(text("holds.complaint.field.what"), choices,
                     m_draft.what ? std::string{kKind} + wording::nameOf(*m_draft.what) : std::string{}));
    const auto field = [&](const char* name, const std::string& value, SheetKinds::Keys keys,
                           const std::string& hint = {}) {
        return fieldWith(std::string{"complaint.field."} + name, name,
                         text(std::string{"holds.complaint.field."} + name), value, keys, hint);
    };
    page.blocks.append(fieldsBlock({field("customer", m_draft.customer, SheetKinds::Text),
                                    field("pieces", m_draft.pieces, SheetKinds::Number),
                                    field("received", m_draft.received, SheetKinds::Date, text("holds.field.day-hint")),
                                    field("words", m_draft.words, SheetKinds::Text),
                                    field("clue", m_draft.clue, SheetKinds::Text, text("holds.complaint.tie-hint"))}));
}

void ComplaintForm::addTie(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.complaint.tie-run")));
    if (!m_draft.run) {
        std::vector<SheetRow> rows;
        for (const auto& found : m_found) {
            auto row =
                factRow(text("holds.trace.row", {{"run", std::to_string(found.runNumber)}, {"title", found.runTitle}}),
                        found.what, found.customer);
            row.id = toQString(std::string{kFormRun} + found.run);
            rows.push_back(row);
        }
        page.blocks.append(rows.empty() ? textBlock(SheetKinds::Sentence, text("holds.complaint.tie-hint"))
                                        : rowsBlock(SheetKinds::Rows, rows));
        return;
    }
    page.blocks.append(textBlock(SheetKinds::Sentence, m_runTitle));
    std::vector<Choice> lots;
    for (const auto& row : m_lots) {
        lots.push_back(
            {std::string{kFormLot} + row.id, text("holds.trace.lot", {{"lot", std::to_string(row.number)}})});
    }
    if (!lots.empty()) {
        page.blocks.append(choicesBlock(text("holds.complaint.tie-lot"), lots,
                                        m_draft.lot ? std::string{kFormLot} + *m_draft.lot : std::string{}));
    }
    page.blocks.append(pressBlock({pressOf("complaint.untie", text("holds.complaint.untie"))}));
}

void ComplaintForm::addEffect(SheetPageState& page) const {
    if (!m_draft.what) {
        return;
    }
    const auto* row = m_draft.lot ? lotRow(*m_draft.lot) : nullptr;
    page.blocks.append(textBlock(SheetKinds::Lead, wording::sentence(shop::deciding::effectOf(m_draft, facts()),
                                                                     row != nullptr ? row->number : 0, speech())));
}

void ComplaintForm::addPictures(SheetPageState& page) const {
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.trace.pictures")));
    if (!m_said.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, m_said));
    }
    page.blocks.append(
        textBlock(SheetKinds::Sentence,
                  m_draft.pictures.empty()
                      ? text("holds.complaint.pictures-none", {{"folder", needs().exchange.string()}})
                      : text("holds.complaint.pictures", {{"count", std::to_string(m_draft.pictures.size())}})));
    page.blocks.append(pressBlock({pressOf("complaint.pictures", text("holds.complaint.take-pictures"))}));
}

void ComplaintForm::addTo(SheetPageState& page) const {
    page.title = toQString(m_draft.complaint.empty()
                               ? text("holds.complaint.title-new")
                               : text("holds.complaint.title", {{"number", std::to_string(m_draft.number)}}));
    addOtherFaults(page.blocks, {"customer", "pieces", "received", "words", "clue"});
    addFields(page);
    addTie(page);
    addEffect(page);
    addPictures(page);
    page.actions = {pressOf("complaint.keep", text("holds.complaint.keep"), true),
                    pressOf("complaint.back", text("holds.leave"))};
}

} // namespace holdfast::kiosk::screens
