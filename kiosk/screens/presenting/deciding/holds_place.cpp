#include "kiosk/screens/presenting/deciding/holds_place.hpp"

#include "kiosk/records/floor_queries.hpp"
#include "kiosk/screens/presenting/deciding/decision_form.hpp"
#include "kiosk/screens/presenting/deciding/pieces_sheet.hpp"
#include "kiosk/screens/presenting/deciding/reading_sheet.hpp"
#include "kiosk/screens/presenting/deciding/recall_sheet.hpp"
#include "kiosk/screens/presenting/deciding/shelf_sheet.hpp"
#include "kiosk/screens/presenting/deciding/shown_limits.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

using analytics::LotStanding;
using records::HoldCause;

constexpr int kMostRuns = 500;
constexpr int kPastLots = 40; // of each dryer, whose reasons are offered again
constexpr std::size_t kMostReasonsOffered = 5;

} // namespace

void HoldsPlace::failed(const ledger::Failure& failure) const {
    m_needs.tell(wording::noticeOf(failure, wording::Kept::book, m_needs.speech()));
}

void HoldsPlace::reload() {
    auto open = records::openHolds(m_needs.book->reader());
    if (!open) {
        failed(open.error());
        return;
    }
    m_open = std::move(*open);
    m_unproven = unprovenLots();
    m_heldBare.clear();
    const auto held = records::holds(m_needs.book->reader());
    for (const auto& lot : held ? *held : std::vector<records::HeldLot>{}) {
        const bool listed =
            std::any_of(m_open.begin(), m_open.end(), [&](const auto& hold) { return hold.placed.lot == lot.lot.id; });
        if (!listed) {
            m_heldBare.push_back(lot);
        }
    }
    if (m_lot && !m_byItself) {
        choose(m_lot->row.id, m_hold);
    } else if (m_said.empty() && !m_page) {
        chooseFirst();
    }
    if (m_page) {
        m_page->reload();
    }
}

std::vector<HoldsPlace::ListedLot> HoldsPlace::unprovenLots() const {
    std::vector<ListedLot> lots;
    for (const bool finished : {false, true}) {
        const auto runs = records::runsOnFile(m_needs.book->reader(), records::PlanKind::run, finished, kMostRuns);
        for (const auto& run : runs ? *runs : std::vector<records::RunRow>{}) {
            if (run.worst != records::LotState::unproven && run.worst != records::LotState::onHold) {
                continue;
            }
            const auto rows = records::lotsOfRun(m_needs.book->reader(), run.id);
            for (const auto& row : rows ? *rows : std::vector<records::LotRow>{}) {
                if (row.state == records::LotState::unproven) {
                    lots.push_back({row, run.number, run.title});
                }
            }
        }
    }
    std::stable_sort(lots.begin(), lots.end(),
                     [](const auto& one, const auto& other) { return one.row.openedAt < other.row.openedAt; });
    return lots;
}

void HoldsPlace::choose(const std::string& lot, const std::string& hold) {
    auto shown = lotShown(*m_needs.book, lot);
    if (!shown) {
        failed(shown.error());
        return;
    }
    m_byItself = false;
    m_lot = std::move(*shown);
    m_hold = m_lot && m_lot->hold(hold) != nullptr ? hold : std::string{};
}

/// Who comes to Holds sees what is to be decided first without a touch.
void HoldsPlace::chooseFirst() {
    m_lot.reset();
    m_hold.clear();
    const auto recall = std::find_if(m_open.begin(), m_open.end(), [](const auto& hold) { return hold.shipped; });
    if (const auto first = recall != m_open.end() ? recall : m_open.begin(); first != m_open.end()) {
        const auto placed = first->placed;
        choose(placed.lot, placed.hold);
    } else if (!m_heldBare.empty()) {
        choose(std::string{m_heldBare.front().lot.id}, {});
    }
    m_byItself = m_lot.has_value();
}

void HoldsPlace::showLot(const std::string& lot) {
    if (mayTurn()) {
        choose(lot, {});
        if (m_lot && !m_lot->openHolds().empty()) {
            m_hold = m_lot->openHolds().front()->placed.hold;
        }
    }
}

/// What is half typed stays until it is kept or left.
bool HoldsPlace::mayTurn() {
    if (isWriting()) {
        m_needs.tell({text("holds.half-typed"), {}, {}});
        return false;
    }
    m_closed = std::move(m_page);
    m_said.clear();
    return true;
}

void HoldsPlace::open(std::unique_ptr<HoldsPage> page) {
    if (mayTurn()) {
        m_page = std::move(page);
    }
}

void HoldsPlace::close(const std::string& said) {
    m_closed = std::move(m_page); // it is still answering
    m_said = said;
    reload();
}

bool HoldsPlace::act(const std::string& id) {
    if (id == "holds.back") {
        if (m_page) {
            m_closed = std::move(m_page);
        } else {
            m_lot.reset();
            m_hold.clear();
        }
        m_said.clear();
        return true;
    }
    return actOnPage(id) || actOnList(id) || actOnLot(id);
}

bool HoldsPlace::actOnPage(const std::string& id) {
    if (const auto run = restOf(id, kHoldsReached)) {
        m_links->trace(*run);
        return true;
    }
    return m_page && m_page->act(id);
}

bool HoldsPlace::actOnList(const std::string& id) {
    const auto done = [this](const std::string& said) { close(said); };
    if (const auto hold = restOf(id, kHoldsHold)) {
        const auto row =
            std::find_if(m_open.begin(), m_open.end(), [&](const auto& one) { return one.placed.hold == *hold; });
        if (row != m_open.end() && mayTurn()) {
            const auto lot = row->placed.lot;
            choose(lot, *hold);
        }
    } else if (const auto lot = restOf(id, kHoldsLot)) {
        if (mayTurn()) {
            choose(*lot, {});
        }
    } else if (id == "holds.shelf") {
        open(std::make_unique<ShelfSheet>(m_needs, done));
    } else if (id == "holds.mock") {
        open(std::make_unique<RecallSheet>(m_needs, done));
    } else if (id == "holds.clue") {
        m_links->trace({});
    } else {
        return false;
    }
    return true;
}

bool HoldsPlace::actOnLot(const std::string& id) {
    if (!m_lot) {
        return false;
    }
    m_byItself = false;
    const auto done = [this](const std::string& said) { close(said); };
    const auto* hold = m_lot->hold(m_hold);
    if (id == "holds.decide" || id == "holds.release-unproven") {
        decide(id == "holds.release-unproven");
    } else if (id == "holds.pieces") {
        open(std::make_unique<PiecesSheet>(m_needs, done, *m_lot));
    } else if (id == "holds.recall") {
        open(std::make_unique<RecallSheet>(m_needs, done, *m_lot));
    } else if (id == "holds.label" && hold != nullptr) {
        m_needs.print({PrintWish::What::binLabel, hold->placed.bin});
    } else if (id == "holds.trace") {
        m_links->trace(m_lot->plan.run);
    } else if (id == "holds.certificate") {
        m_needs.print({PrintWish::What::certificate, m_lot->plan.number});
    } else if (const auto reading = restOf(id, kHoldsReading)) {
        showReading(*reading);
    } else if (const auto because = restOf(id, kHoldsBecause)) {
        showCause(*because);
    } else {
        return false;
    }
    return true;
}

void HoldsPlace::decide(bool unproven) {
    auto form = std::make_unique<DecisionForm>(
        m_needs, [this](const std::string& said) { close(said); }, *m_lot, earlierReasons());
    auto* shown = form.get();
    open(std::move(form));
    if (unproven && m_page.get() == shown) {
        shown->signUnproven();
    }
}

void HoldsPlace::showReading(const std::string& reading) {
    for (const auto& row : m_lot->readings) {
        if (row.id == reading) {
            open(std::make_unique<ReadingSheet>(
                m_needs, [this](const std::string& said) { close(said); }, row));
            return;
        }
    }
}

/// To what put the lot on hold.
void HoldsPlace::showCause(const std::string& hold) {
    const auto* row = m_lot->hold(hold);
    if (row == nullptr) {
        return;
    }
    const auto because = row->placed.because;
    switch (row->placed.cause) {
    case HoldCause::reading:
        showReading(because);
        break;
    case HoldCause::test:
        for (const auto& test : m_lot->tests) {
            const auto print = test.id == because ? records::printById(m_needs.book->reader(), test.done.print)
                                                  : ledger::Result<std::optional<records::PrintRow>>{};
            if (print && *print) {
                const auto number = static_cast<std::uint64_t>((*print)->named.number);
                m_needs.scan(drivers::encode(drivers::TicketKind::print, number, kPrintWidth));
                return;
            }
        }
        break;
    case HoldCause::complaint:
        m_links->complaint(because);
        break;
    case HoldCause::instrument:
        m_needs.go("instruments");
        break;
    case HoldCause::missedReading:
    case HoldCause::beltStopped:
        m_links->trace(m_lot->plan.run);
        break;
    }
}

std::vector<std::string> HoldsPlace::earlierReasons() const {
    const auto& reader = m_needs.book->reader();
    std::vector<std::string> reasons;
    const auto dryers = records::dryers(reader);
    for (const auto& dryer : dryers ? *dryers : std::vector<records::DryerDescribed>{}) {
        const auto past = records::pastLots(reader, dryer.dryer, kPastLots);
        for (const auto& lot : past ? *past : std::vector<records::PastLot>{}) {
            const auto decisions = records::decisionsOfLot(reader, lot.lot.id);
            for (const auto& row : decisions ? *decisions : std::vector<records::DecisionRow>{}) {
                reasons.push_back(row.signedAs.reason);
            }
        }
    }
    return shop::deciding::frequentReasons(reasons, kMostReasonsOffered);
}

bool HoldsPlace::enter(const std::string& field, const std::string& typed) {
    return m_page && m_page->enter(field, typed);
}

bool HoldsPlace::scanned(const drivers::TicketCode& code, bool onScreen) {
    if (onScreen && m_page && m_page->scanned(code)) {
        return true;
    }
    return code.kind == drivers::TicketKind::bin && chooseBin(static_cast<std::int64_t>(code.number));
}

bool HoldsPlace::chooseBin(std::int64_t bin) {
    const auto hold = records::holdByBin(m_needs.book->reader(), bin);
    if (!hold) {
        failed(hold.error());
    } else if (!*hold) {
        m_needs.tell({text("holds.unknown-bin", {{"bin", std::to_string(bin)}}), {}, {}});
    } else if (mayTurn()) {
        reload();
        choose((*hold)->placed.lot, (*hold)->placed.hold);
    }
    return true;
}

} // namespace holdfast::kiosk::screens
