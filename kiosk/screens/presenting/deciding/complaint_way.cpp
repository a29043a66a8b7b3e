#include "kiosk/screens/presenting/deciding/complaint_way.hpp"

#include "kiosk/records/lot_state.hpp"
#include "kiosk/screens/presenting/deciding/shown_limits.hpp"
#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/risk_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {
namespace {

constexpr std::string_view kFits = "complaint.fits.";
constexpr std::string_view kLotAtRisk = "complaint.at-risk.";
constexpr std::string_view kWash = "complaint.wash.";

/// A clue's parts, and the customer: each may fit for itself.
std::vector<std::string> partsOf(const records::ComplaintTaken& taken) {
    std::vector<std::string> parts;
    std::string part;
    for (const char sign : taken.clue + ",") {
        if (sign == ',' || sign == ';') {
            parts.push_back(shop::trimmed(part));
            part.clear();
        } else {
            part += sign;
        }
    }
    parts.push_back(shop::trimmed(taken.customer));
    std::erase_if(parts, [](const std::string& one) { return one.empty(); });
    return parts;
}

} // namespace

ComplaintWay::ComplaintWay(const PlaceNeeds& needs, records::ComplaintRow row)
    : HoldsPage{needs, {}}, m_row{std::move(row)} {}

ComplaintWay::~ComplaintWay() {
    m_stop.request_stop();
}

void ComplaintWay::renew(records::ComplaintRow row, shop::PeopleNow people) {
    const bool tiedAnew = m_sequence < 0 || row.taken.run != m_row.taken.run || row.taken.lot != m_row.taken.lot;
    m_row = std::move(row);
    m_people = std::move(people);
    findRuns();
    const auto head = needs().book->head();
    const auto sequence = head ? head->sequence : 0;
    if (tiedAnew) {
        m_sequence = sequence;
        m_run.clear();
        look(m_row.taken.run.value_or(std::string{}));
    } else if (sequence != m_sequence) {
        m_sequence = sequence;
        readRun();
        m_stale = true;
        if (!m_working) { // else it is asked again once it is told
            study(0);
        }
    }
}

void ComplaintWay::findRuns() {
    m_fits.clear();
    const auto& reader = needs().book->reader();
    for (const auto& part : partsOf(m_row.taken)) {
        const auto found = records::runsByClue(reader, part, kMostFound);
        for (const auto& row : found ? *found : std::vector<records::ClueRow>{}) {
            const auto known = std::find_if(m_fits.begin(), m_fits.end(),
                                            [&](const RunFitting& one) { return one.run.run == row.run; });
            auto& fit = known == m_fits.end() ? m_fits.emplace_back(RunFitting{row, {}}) : *known;
            if (std::find(fit.by.begin(), fit.by.end(), row.hit) == fit.by.end()) {
                fit.by.push_back(row.hit);
            }
        }
    }
    // One customer has many runs: that alone is a clue only where there is no other.
    const auto byCustomerAlone = [](const RunFitting& one) {
        return one.by.size() == 1 && one.by.front() == records::ClueHit::customer;
    };
    if (!std::all_of(m_fits.begin(), m_fits.end(), byCustomerAlone)) {
        std::erase_if(m_fits,
                      [&](const RunFitting& one) { return byCustomerAlone(one) && one.run.run != m_row.taken.run; });
    }
    const auto isTied = [&](const RunFitting& one) { return one.run.run == m_row.taken.run; };
    if (m_row.taken.run && std::none_of(m_fits.begin(), m_fits.end(), isTied)) {
        const auto run = records::runById(reader, *m_row.taken.run);
        if (run && *run) {
            const auto& plan = (*run)->plan;
            m_fits.push_back({{plan.run, plan.number, plan.title, plan.customer, {}, {}}, {}});
        }
    }
    std::stable_sort(m_fits.begin(), m_fits.end(), [&](const RunFitting& one, const RunFitting& other) {
        return isTied(one) != isTied(other) ? isTied(one) : one.by.size() > other.by.size();
    });
    m_fits.resize(std::min(m_fits.size(), static_cast<std::size_t>(kMostFound)));
}

void ComplaintWay::look(const std::string& run) {
    m_clueShown = false;
    if (run == m_run) {
        return;
    }
    m_run = run;
    m_first.reset();
    m_found.reset();
    m_chosenLot.clear();
    m_allLots = false;
    m_heldHere.clear();
    m_fault.reset();
    m_said.clear();
    readRun();
    m_stop.request_stop();
    m_working = false;
    study(0);
}

void ComplaintWay::readRun() {
    m_plan.reset();
    m_lots.clear();
    m_dryer.clear();
    m_thenAndNow.reset();
    if (m_run.empty()) {
        return;
    }
    const auto& reader = needs().book->reader();
    auto run = records::runById(reader, m_run);
    auto lots = records::lotsOfRun(reader, m_run);
    const auto dryers = records::dryers(reader);
    if (!run || !lots || !dryers) {
        tell(!run ? run.error() : !lots ? lots.error() : dryers.error());
        return;
    }
    if (*run) {
        m_plan = std::move((*run)->plan);
    }
    m_lots = std::move(*lots);
    const bool tied = m_row.taken.lot && m_row.taken.run == m_run;
    for (const auto& lot : m_lots) {
        const bool asked = !tied || lot.id == *m_row.taken.lot;
        for (const auto& dryer : *dryers) {
            m_dryer = asked && dryer.dryer == lot.dryer ? dryer.name : m_dryer;
        }
    }
    const auto readings =
        tied ? records::readingsOfLot(reader, *m_row.taken.lot) : records::readingsOfRun(reader, m_run);
    const auto* row = readings ? shop::deciding::weightiest(*readings) : nullptr;
    auto shown = row != nullptr ? shop::deciding::thenAndNow(*needs().book, *row)
                                : ledger::Result<std::optional<shop::deciding::ThenAndNow>>{};
    if (!shown) {
        tell(shown.error());
    } else {
        m_thenAndNow = std::move(*shown);
    }
}

void ComplaintWay::study(std::size_t suspect) {
    if (!needs().study || m_run.empty() || !records::isPrintFailure(m_row.taken.what)) {
        return;
    }
    RiskAsked asked;
    asked.complaint = m_row.taken.complaint;
    asked.run = m_run;
    asked.lot = m_row.taken.run == m_run ? m_row.taken.lot : std::nullopt;
    asked.now = needs().clock->wall().millisecondsSinceEpoch;
    if (suspect > 0 && m_first && m_first->risk) {
        asked.suspect = m_first->risk->others[suspect - 1].level;
        asked.facts = m_first->facts;
    }
    m_stale = suspect == 0 ? false : m_stale;
    m_working = true;
    const auto answer = std::make_shared<ledger::Result<std::shared_ptr<const RiskFound>>>();
    m_stop = needs().study(
        [asked, answer](const SQLite::Database& reader, const std::stop_token& stop) {
            *answer = studyRisk(reader, asked, stop);
        },
        [this, open = std::weak_ptr{m_alive}, answer, suspect](const std::optional<ledger::Failure>& failure) {
            if (open.expired()) {
                return;
            }
            m_working = false;
            if (failure || !*answer) {
                tell(failure ? *failure : answer->error());
            } else if (**answer) {
                told(**answer, suspect);
            }
            needs().show();
        });
}

void ComplaintWay::told(const std::shared_ptr<const RiskFound>& found, std::size_t suspect) {
    m_found = found;
    m_suspect = suspect;
    if (suspect == 0) {
        m_first = found;
        m_heldHere.clear();
    }
    const auto ids = lotsAtRisk();
    if (std::find(ids.begin(), ids.end(), m_chosenLot) == ids.end()) {
        m_chosenLot.clear();
    }
    if (m_stale) {
        study(0);
    }
}

std::size_t ComplaintWay::suspects() const {
    return m_first && m_first->risk ? 1 + m_first->risk->others.size() : 0;
}

void ComplaintWay::nextSuspect() {
    if (m_working || suspects() < 2) {
        return;
    }
    const auto next = (m_suspect + 1) % suspects();
    if (next == 0) {
        told(m_first, 0);
    } else {
        study(next);
    }
}

std::string ComplaintWay::lot() const {
    if (m_row.taken.lot && m_row.taken.run == m_run) {
        return *m_row.taken.lot;
    }
    for (const auto& lot : risk() != nullptr ? risk()->lots : std::vector<LotAtRisk>{}) {
        if (lot.asked) {
            return lotOf(lot).id;
        }
    }
    return m_lots.size() == 1 ? m_lots.front().id : std::string{};
}

const records::TrendLot& ComplaintWay::lotOf(const LotAtRisk& lot) const {
    return m_found->facts->lots[static_cast<std::size_t>(lot.lot)];
}

std::vector<std::string> ComplaintWay::lotsAtRisk() const {
    std::vector<std::string> ids;
    for (const auto& lot : risk() != nullptr ? risk()->lots : std::vector<LotAtRisk>{}) {
        ids.push_back(lotOf(lot).id);
    }
    return ids;
}

bool ComplaintWay::canHold(const LotAtRisk& lot) const {
    shop::deciding::LotToHold held{lotOf(lot).id, records::standingOf(lot.state), lot.pieces, {}};
    for (const auto& hold : m_found->facts->holds) {
        if (hold.lot == lot.lot && hold.cause == records::HoldCause::complaint) {
            held.complaintsThatHold.push_back(hold.because);
        }
    }
    return m_heldHere.count(held.lot) == 0 && shop::deciding::canHold(held, m_row.taken.complaint);
}

std::vector<std::string> ComplaintWay::holdable() const {
    std::vector<std::string> ids;
    for (const auto& lot : risk() != nullptr ? risk()->lots : std::vector<LotAtRisk>{}) {
        if (canHold(lot)) {
            ids.push_back(lotOf(lot).id);
        }
    }
    return ids;
}

void ComplaintWay::askToHold(std::vector<std::string> lots) {
    m_said.clear();
    m_fault.reset();
    signOnce(shop::Right::takeComplaints, [this, lots = std::move(lots)](std::int64_t person) { hold(lots, person); });
}

/// As the book has it now, not as it was when the risk was worked out.
shop::deciding::LotToHold ComplaintWay::heldNow(const std::string& lot) const {
    const auto& reader = needs().book->reader();
    shop::deciding::LotToHold now{lot};
    const auto row = records::lotById(reader, lot);
    const auto pieces = records::piecesOfLot(reader, lot);
    const auto holds = records::holdsOfLot(reader, lot);
    if (row && *row) {
        now.standing = records::standingOf((*row)->state);
    }
    now.made = pieces ? pieces->made : std::nullopt;
    for (const auto& hold : holds ? *holds : std::vector<records::HoldRow>{}) {
        if (hold.placed.cause == records::HoldCause::complaint) {
            now.complaintsThatHold.push_back(hold.placed.because);
        }
    }
    return now;
}

void ComplaintWay::hold(const std::vector<std::string>& lots, std::int64_t person) {
    std::vector<shop::deciding::LotToHold> now;
    now.reserve(lots.size());
    for (const auto& lot : lots) {
        now.push_back(heldNow(lot));
    }
    const auto bin = records::nextBin(needs().book->reader());
    if (!bin) {
        tell(bin.error());
        return;
    }
    auto list = shop::deciding::holdsForRisk(m_row.taken, now, person, needs().newId, *bin);
    if (!list) {
        m_fault = list.error();
        return;
    }
    const auto count = list->size();
    Keeping keeping;
    keeping.list = std::move(*list);
    keeping.person = person;
    write(std::move(keeping), [this, lots, count] {
        m_heldHere.insert(lots.begin(), lots.end());
        m_chosenLot.clear();
        m_said = say("held", {{"count", std::to_string(count)}});
    });
}

bool ComplaintWay::act(const std::string& id) {
    if (const auto run = restOf(id, kFits)) {
        look(*run);
    } else if (id == "complaint.clue") {
        m_clueShown = true;
    } else if (const auto lot = restOf(id, kLotAtRisk)) {
        m_chosenLot = m_chosenLot == *lot ? std::string{} : *lot;
        m_fault.reset();
    } else if (id == "complaint.all-lots") {
        m_allLots = true;
    } else if (id == "complaint.hold-one" && !m_chosenLot.empty()) {
        askToHold({m_chosenLot});
    } else if (id == "complaint.hold-all") {
        askToHold(holdable());
    } else if (id == "complaint.next-suspect") {
        nextSuspect();
    } else if (const auto print = restOf(id, kWash)) {
        const auto number = std::strtoull(print->c_str(), nullptr, 10);
        needs().scan(drivers::encode(drivers::TicketKind::print, number, kPrintWidth));
    } else {
        return false;
    }
    return true;
}

} // namespace holdfast::kiosk::screens
