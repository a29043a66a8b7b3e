#include "kiosk/screens/presenting/deciding/complaint_place.hpp"

#include "kiosk/screens/presenting/deciding/complaint_causes.hpp"
#include "kiosk/screens/presenting/deciding/complaint_recall.hpp"
#include "kiosk/screens/presenting/deciding/complaint_said.hpp"
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
    if (m_way) {
        const auto complaint = m_way->row().taken.complaint;
        choose(complaint);
    }
    if (m_page) {
        m_page->reload();
    }
}

void ComplaintPlace::choose(const std::string& complaint) {
    auto row = records::complaintById(m_needs.book->reader(), complaint);
    if (!row) {
        failed(row.error());
        return;
    }
    if (!*row) {
        m_wayBefore = std::move(m_way);
        return;
    }
    if (!m_way || m_way->row().taken.complaint != complaint) {
        m_wayBefore = std::exchange(m_way, std::make_unique<ComplaintWay>(m_needs, **row));
    }
    m_way->renew(std::move(**row), m_people);
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
    m_wayBefore = std::move(m_way);
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

void ComplaintPlace::startForm(shop::deciding::ComplaintDraft draft, bool closed) {
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

void ComplaintPlace::startNew() {
    shop::deciding::ComplaintDraft draft;
    draft.received = wording::dateText(drivers::localDay(m_needs.clock->wall()));
    startForm(std::move(draft), false);
}

/// `tie`: to the run that is looked at.
void ComplaintPlace::startChange(bool tie) {
    auto draft = shop::deciding::draftOf(m_way->row().taken);
    if (tie) {
        draft.run = m_way->run();
        const auto lot = m_way->lot();
        draft.lot = lot.empty() ? std::nullopt : std::optional{lot};
    }
    startForm(std::move(draft), m_way->row().finding.has_value());
}

void ComplaintPlace::startFinding() {
    open(std::make_unique<FindingForm>(
        m_needs,
        [this](const std::string& said) {
            m_closed = std::move(m_page);
            reload();
            m_said = said;
        },
        m_way->row()));
}

void ComplaintPlace::showCauses() {
    open(std::make_unique<ComplaintCauses>(m_needs, [this](const std::string& complaint) {
        m_closed = std::move(m_page); // it is still answering
        choose(complaint);
    }));
}

bool ComplaintPlace::act(const std::string& id) {
    if (id == "complaint.back") {
        if (m_page) {
            m_closed = std::move(m_page);
        } else {
            m_wayBefore = std::move(m_way);
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
        startNew();
    } else if (id == "complaint.toggle") {
        m_closedToo = !m_closedToo;
        reload();
    } else if (id == "complaint.causes") {
        showCauses();
    } else {
        return m_way && actOnChosen(id);
    }
    return true;
}

bool ComplaintPlace::actOnChosen(const std::string& id) {
    const auto& row = m_way->row();
    if (id == "complaint.all") {
        if (mayTurn()) {
            m_wayBefore = std::move(m_way);
        }
    } else if (id == "complaint.change" || (id == "complaint.tie" && !m_way->run().empty())) {
        startChange(id == "complaint.tie");
    } else if (id == "complaint.close" && !row.finding) {
        startFinding();
    } else if (id == "complaint.said") {
        open(std::make_unique<ComplaintSaid>(m_needs, row));
    } else if (id == "complaint.recall") {
        open(std::make_unique<ComplaintRecall>(m_needs, row.taken.number, m_way->lotsAtRisk()));
    } else if (id == "complaint.trace" && !m_way->run().empty()) {
        m_links->trace(m_way->run());
    } else if (id == "complaint.lot" && !m_way->lot().empty()) {
        m_links->lot(m_way->lot());
    } else if (m_page && m_page->isWriting()) {
        return mayTurn(); // false: what is half typed stays
    } else {
        if (!m_way->act(id)) {
            return false;
        }
        m_closed = std::move(m_page);
        m_said.clear();
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
        shown.strong = !row.finding && records::isPrintFailure(taken.what);
        page.list.append(shown);
    }
    page.listActions = {
        pressOf("complaint.new", text("holds.complaint.new")), pressOf("complaint.causes", text("holds.risk.causes")),
        pressOf("complaint.toggle", text(m_closedToo ? "holds.complaint.show-open" : "holds.complaint.show-closed"))};
}

SheetPageState ComplaintPlace::sheet() const {
    SheetPageState page;
    page.heading = toQString(text("holds.complaint.heading"));
    page.head = page.heading;
    if (m_way) {
        page.head = toQString(text("holds.complaint.title", {{"number", std::to_string(m_way->row().taken.number)}}));
    }
    page.listNone = toQString(text("holds.complaint.none"));
    page.back = pressOf("complaint.back", text("holds.back"));
    page.detailOnly = m_page != nullptr;
    if (!m_page && !m_said.empty()) {
        page.blocks.append(textBlock(SheetKinds::Lead, m_said));
    }
    if (m_way && !m_page) {
        m_way->addTo(page);
        return page;
    }
    addList(page);
    if (m_page) {
        m_page->addTo(page);
    } else if (m_said.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, text("holds.complaint.pick")));
    }
    return page;
}

} // namespace holdfast::kiosk::screens
