#include "kiosk/screens/presenting/deciding/complaint_place.hpp"

#include "kiosk/records/lot_state.hpp"
#include "kiosk/screens/presenting/deciding/finding_form.hpp"
#include "kiosk/wording/deciding_sentences.hpp"
#include "kiosk/wording/instrument_sentences.hpp"

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kPick = "complaint.pick.";

} // namespace

void ComplaintPlace::failed(const ledger::Failure& failure) const {
    m_needs.tell(wording::noticeOf(failure, wording::Kept::book, m_needs.speech()));
}

void ComplaintPlace::reload() {
    auto rows = records::complaints(m_needs.book->reader(), m_closedToo);
    auto people = peopleNow(*m_needs.book);
    if (!rows || !people) {
        failed(!rows ? rows.error() : people.error());
        return;
    }
    m_rows = std::move(*rows);
    m_people = std::move(*people);
    if (m_chosen) {
        const auto complaint = m_chosen->taken.complaint;
        choose(complaint);
    }
    if (m_page) {
        m_page->reload();
    }
}

void ComplaintPlace::choose(const std::string& complaint) {
    const auto& reader = m_needs.book->reader();
    auto row = records::complaintById(reader, complaint);
    if (!row) {
        failed(row.error());
        return;
    }
    m_chosen = std::move(*row);
    m_runTitle.clear();
    m_lot.reset();
    if (m_chosen && m_chosen->taken.run) {
        const auto run = records::runById(reader, *m_chosen->taken.run);
        m_runTitle = run && *run ? text("holds.trace.row",
                                        {{"run", std::to_string((*run)->plan.number)}, {"title", (*run)->plan.title}})
                                 : std::string{};
    }
    if (m_chosen && m_chosen->taken.lot) {
        auto lot = records::lotById(reader, *m_chosen->taken.lot);
        m_lot = lot ? std::move(*lot) : std::nullopt;
    }
}

bool ComplaintPlace::isWriting() const {
    return m_page && m_page->isWriting();
}

/// What is half typed stays until it is kept or left.
bool ComplaintPlace::mayTurn() {
    if (isWriting()) {
        m_needs.tell({text("holds.half-typed"), {}, {}});
        return false;
    }
    m_closed = std::move(m_page);
    m_said.clear();
    return true;
}

void ComplaintPlace::showComplaint(const std::string& complaint) {
    if (!mayTurn()) {
        return;
    }
    m_chosen.reset();
    reload();
    if (!complaint.empty()) {
        choose(complaint);
    }
}

void ComplaintPlace::open(std::unique_ptr<HoldsPage> page) {
    if (mayTurn()) {
        m_page = std::move(page);
    }
}

void ComplaintPlace::startForm(bool isNew) {
    shop::deciding::ComplaintDraft draft;
    if (!isNew) {
        draft = shop::deciding::draftOf(m_chosen->taken);
    } else {
        draft.received = wording::dateText(drivers::localDay(m_needs.clock->wall()));
    }
    const bool closed = !isNew && m_chosen->finding.has_value();
    const auto done = [this](const std::string& said) {
        const auto* form = dynamic_cast<ComplaintForm*>(m_page.get());
        const auto complaint = form != nullptr ? form->complaint() : std::string{};
        m_closed = std::move(m_page); // it is still answering
        reload();
        choose(complaint);
        m_said = said;
    };
    open(std::make_unique<ComplaintForm>(m_needs, done, std::move(draft), closed));
}

bool ComplaintPlace::act(const std::string& id) {
    if (id == "complaint.back") {
        if (m_page) {
            m_closed = std::move(m_page);
        } else {
            m_chosen.reset();
        }
        m_said.clear();
        return true;
    }
    if (m_page && m_page->act(id)) {
        return true;
    }
    if (const auto complaint = restOf(id, kPick)) {
        if (mayTurn()) {
            choose(*complaint);
        }
    } else if (id == "complaint.new") {
        startForm(true);
    } else if (id == "complaint.toggle") {
        m_closedToo = !m_closedToo;
        reload();
    } else if (id == "complaint.change" && m_chosen) {
        startForm(false);
    } else if (id == "complaint.close" && m_chosen && !m_chosen->finding) {
        open(std::make_unique<FindingForm>(
            m_needs,
            [this](const std::string& said) {
                m_closed = std::move(m_page);
                reload();
                m_said = said;
            },
            *m_chosen));
    } else if (id == "complaint.trace" && m_chosen && m_chosen->taken.run) {
        m_links->trace(*m_chosen->taken.run);
    } else if (id == "complaint.lot" && m_chosen && m_chosen->taken.lot) {
        m_links->lot(*m_chosen->taken.lot);
    } else if (id == "complaint.holds") {
        m_needs.go("holds");
    } else {
        return false;
    }
    return true;
}

bool ComplaintPlace::enter(const std::string& field, const std::string& typed) {
    return m_page && m_page->enter(field, typed);
}

bool ComplaintPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    return onScreen && m_page && m_page->scanned(code);
}

void ComplaintPlace::addList(SheetPageState& page) const {
    for (const auto& row : m_rows) {
        const auto& taken = row.taken;
        auto shown = factRow(
            text("holds.complaint.row", {{"number", std::to_string(taken.number)}, {"customer", taken.customer}}),
            row.finding ? text("holds.complaint.closed") : std::string{},
            text("holds.complaint.row-detail",
                 {{"what", wording::word(taken.what, m_needs.speech())},
                  {"day", taken.received ? wording::dateText(*taken.received)
                                         : wording::dayOf(row.takenAt, how().utcOffsetMinutes)}}));
        shown.id = toQString(std::string{kPick} + taken.complaint);
        shown.chosen = m_chosen && m_chosen->taken.complaint == taken.complaint;
        shown.strong = !row.finding && records::isPrintFailure(taken.what);
        page.list.append(shown);
    }
}

void ComplaintPlace::addFacts(SheetPageState& page) const {
    const auto& taken = m_chosen->taken;
    std::vector<SheetRow> facts;
    const auto fact = [&](const char* key, const std::string& value) {
        if (!value.empty()) {
            facts.push_back(factRow(text(key), value));
        }
    };
    fact("holds.complaint.field.customer", taken.customer);
    fact("holds.complaint.field.pieces", taken.pieces ? std::to_string(*taken.pieces) : std::string{});
    fact("holds.complaint.field.received", taken.received ? wording::dateText(*taken.received) : std::string{});
    fact("holds.complaint.field.clue", taken.clue);
    fact("holds.complaint.run", m_runTitle.empty() ? text("holds.complaint.run-none") : m_runTitle);
    fact("holds.complaint.lot", m_lot ? text("holds.trace.lot", {{"lot", std::to_string(m_lot->number)}}) + " · " +
                                            wording::word(records::standingOf(m_lot->state), m_needs.speech())
                                      : text("holds.complaint.lot-none"));
    page.blocks.append(rowsBlock(SheetKinds::Facts, facts));
    if (!taken.words.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, taken.words));
    }
    if (m_chosen->versions > 1) {
        page.blocks.append(textBlock(
            SheetKinds::Note, text("holds.complaint.changed", {{"count", std::to_string(m_chosen->versions - 1)}})));
    }
    if (!taken.pictures.empty()) {
        SheetBlock block;
        block.kind = SheetKinds::Pictures;
        block.text = toQString(text("holds.trace.pictures"));
        for (const auto& sha : taken.pictures) {
            PictureEntry entry;
            entry.source = QUrl{QStringLiteral("image://picture/") + toQString(sha)};
            entry.label = QString::number(block.pictures.size() + 1);
            block.pictures.append(entry);
        }
        page.blocks.append(block);
    }
}

void ComplaintPlace::addFinding(SheetPageState& page) const {
    const auto& finding = *m_chosen->finding;
    page.blocks.append(textBlock(SheetKinds::Heading, text("holds.complaint.finding")));
    std::vector<SheetRow> facts{factRow(text("holds.complaint.finding-cause"), finding.cause)};
    if (!finding.action.empty()) {
        facts.push_back(factRow(text("holds.complaint.finding-action"), finding.action));
    }
    facts.push_back(factRow(
        text("holds.complaint.finding-proven"),
        text(finding.provenLater ? "holds.complaint.finding-proven.yes" : "holds.complaint.finding-proven.no")));
    page.blocks.append(rowsBlock(SheetKinds::Facts, facts));
    page.blocks.append(
        textBlock(SheetKinds::Note, text("holds.complaint.finding-signed",
                                         {{"names", namesOf(finding.signers, m_people, m_needs.speech())}})));
}

void ComplaintPlace::addChosen(SheetPageState& page) const {
    page.title = toQString(text("holds.complaint.title", {{"number", std::to_string(m_chosen->taken.number)}}));
    page.blocks.append(textBlock(SheetKinds::Lead, wording::word(m_chosen->taken.what, m_needs.speech())));
    addFacts(page);
    const bool closed = m_chosen->finding.has_value();
    if (closed) {
        addFinding(page);
    } else {
        page.actions = {pressOf("complaint.close", text("holds.complaint.close"), true),
                        pressOf("complaint.change", text("holds.complaint.change"))};
    }
    if (m_chosen->taken.run) {
        page.actions.append(pressOf("complaint.trace", text("holds.trace")));
    }
    if (m_chosen->taken.lot) {
        page.actions.append(pressOf("complaint.lot", text("holds.complaint.to-hold")));
    }
}

SheetPageState ComplaintPlace::sheet() const {
    SheetPageState page;
    page.heading = toQString(text("holds.complaint.heading"));
    page.listNone = toQString(text("holds.complaint.none"));
    addList(page);
    page.listActions = {
        pressOf("complaint.new", text("holds.complaint.new")),
        pressOf("complaint.toggle", text(m_closedToo ? "holds.complaint.show-open" : "holds.complaint.show-closed")),
        pressOf("complaint.holds", text("holds.heading"))};
    page.back = pressOf("complaint.back", text("holds.back"));
    page.detailOnly = m_page || m_chosen;
    if (m_page) {
        m_page->addTo(page);
        return page;
    }
    if (!m_said.empty()) {
        page.blocks.append(textBlock(SheetKinds::Lead, m_said));
    }
    if (m_chosen) {
        addChosen(page);
    } else {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.complaint.pick")));
    }
    return page;
}

} // namespace holdfast::kiosk::screens
