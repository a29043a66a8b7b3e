#include "kiosk/shop/trending/lot_outcomes.hpp"

#include "kiosk/shop/trending/causes.hpp"

#include <algorithm>
#include <map>

namespace holdfast::kiosk::shop::trending {
namespace {

using analytics::Word;
using records::DecisionWord;
using records::HoldCause;
using records::ReadingReason;
using records::TestOutcome;
using records::TrendReading;

constexpr int kRepeats = 2; ///< later tests that pass and so outweigh one that failed

class Judging final {
public:
    explicit Judging(const TrendFacts& facts) : m_facts{facts}, m_testsOf(facts.lots.size()) {
        for (const auto& hold : facts.holds) {
            const bool cleared = hold.lifted || (hold.decided == DecisionWord::released && !hold.belowLimit);
            if (cleared && hold.cause == HoldCause::instrument) {
                m_instrumentCleared.emplace(hold.lot, true);
            }
            if (!hold.because.empty()) {
                m_cleared[hold.because] = cleared;
            }
        }
        for (std::size_t i = 0; i < facts.tests.size(); ++i) {
            m_testsOf[static_cast<std::size_t>(facts.tests[i].lot)].push_back(static_cast<FactIndex>(i));
        }
        for (const auto& finding : facts.findings) {
            const auto cause = causeOf(finding.cause);
            if (finding.complaint != kNoFact && (cause == CureCause::washTooHarsh || cause == CureCause::falseAlarm)) {
                m_cleared[facts.complaints[static_cast<std::size_t>(finding.complaint)].id] = true;
            }
        }
    }

    void takeReading(FactIndex index, LotOutcome& lot) const {
        const auto& reading = m_facts.readings[static_cast<std::size_t>(index)];
        const bool drawn = isDrawn(reading.reason);
        const bool bad = reading.word == Word::underCured || reading.word == Word::overheated;
        lot.drawn += drawn ? 1 : 0;
        if (!bad || reading.reason == ReadingReason::setUp || isTakenBack(reading)) {
            return;
        }
        lot.badDrawn += drawn ? 1 : 0;
        lot.badReadings.push_back(index);
        note(drawn || reading.reason == ReadingReason::retake ? FailedBy::drawnReading : FailedBy::otherReading, lot);
    }

    void takeTests(LotOutcome& lot) const {
        const auto& tests = m_testsOf[static_cast<std::size_t>(lot.lot)];
        for (const auto index : tests) {
            const auto& test = m_facts.tests[static_cast<std::size_t>(index)];
            if (test.counts != TestOutcome::failed || isCleared(test.id)) {
                continue;
            }
            if (isOutweighed(test, tests)) {
                lot.overruledTests.push_back(index);
            } else {
                lot.failedTests.push_back(index);
                note(FailedBy::test, lot);
            }
        }
    }

    void takeComplaint(FactIndex index, LotOutcome& lot) const {
        const auto& complaint = m_facts.complaints[static_cast<std::size_t>(index)];
        if (records::isPrintFailure(complaint.what) && !isCleared(complaint.id)) {
            lot.complaints.push_back(index);
            note(FailedBy::complaint, lot);
        }
    }

private:
    static void note(FailedBy by, LotOutcome& lot) {
        lot.failed = true;
        lot.inRates = lot.inRates || by != FailedBy::otherReading;
        if (std::find(lot.by.begin(), lot.by.end(), by) == lot.by.end()) {
            lot.by.push_back(by);
        }
    }

    [[nodiscard]] bool isCleared(const std::string& id) const {
        const auto at = m_cleared.find(id);
        return at != m_cleared.end() && at->second;
    }

    [[nodiscard]] bool isTakenBack(const TrendReading& reading) const {
        return isCleared(reading.id) || (reading.byCheck && m_instrumentCleared.count(reading.lot) != 0);
    }

    /// By later tests of the same kind on other prints, of which none failed.
    [[nodiscard]] bool isOutweighed(const records::TrendTest& failed, const std::vector<FactIndex>& tests) const {
        int passed = 0;
        for (const auto index : tests) {
            const auto& test = m_facts.tests[static_cast<std::size_t>(index)];
            if (test.kind != failed.kind || test.print == failed.print) {
                continue;
            }
            if (test.counts == TestOutcome::failed) {
                return false;
            }
            passed += test.counts == TestOutcome::passed && test.at > failed.at ? 1 : 0;
        }
        return passed >= kRepeats;
    }

    const TrendFacts& m_facts;
    std::vector<std::vector<FactIndex>> m_testsOf;
    std::map<std::string, bool, std::less<>> m_cleared; ///< by what holds were placed for
    std::map<FactIndex, bool> m_instrumentCleared;      ///< lots
};

/// The lots that each complaint speaks of: its own, else every lot of its run that is no second way through.
std::vector<std::vector<FactIndex>> complaintsByLot(const TrendFacts& facts) {
    std::vector<std::vector<FactIndex>> lotsOfRun(facts.runs.size());
    for (std::size_t i = 0; i < facts.lots.size(); ++i) {
        if (facts.lots[i].run != kNoFact && !facts.lots[i].isReRun) {
            lotsOfRun[static_cast<std::size_t>(facts.lots[i].run)].push_back(static_cast<FactIndex>(i));
        }
    }
    std::vector<std::vector<FactIndex>> all(facts.lots.size());
    for (std::size_t i = 0; i < facts.complaints.size(); ++i) {
        const auto& complaint = facts.complaints[i];
        if (complaint.lot != kNoFact) {
            all[static_cast<std::size_t>(complaint.lot)].push_back(static_cast<FactIndex>(i));
        } else if (complaint.run != kNoFact) {
            for (const auto lot : lotsOfRun[static_cast<std::size_t>(complaint.run)]) {
                all[static_cast<std::size_t>(lot)].push_back(static_cast<FactIndex>(i));
            }
        }
    }
    return all;
}

} // namespace

std::vector<LotOutcome> lotOutcomes(const TrendFacts& facts, const TrendFilter& filter) {
    const Filtered filtered{facts, filter};
    const Judging judging{facts};
    std::vector<LotOutcome> all(facts.lots.size());
    for (std::size_t i = 0; i < facts.readings.size(); ++i) {
        if (facts.readings[i].lot != kNoFact) {
            judging.takeReading(static_cast<FactIndex>(i), all[static_cast<std::size_t>(facts.readings[i].lot)]);
        }
    }
    for (const auto& missed : facts.missed) {
        ++all[static_cast<std::size_t>(missed.lot)].missed;
    }
    const auto complaints = complaintsByLot(facts);
    std::vector<LotOutcome> held;
    for (std::size_t i = 0; i < all.size(); ++i) {
        const auto& lot = facts.lots[i];
        auto& outcome = all[i];
        outcome.lot = static_cast<FactIndex>(i);
        judging.takeTests(outcome);
        for (const auto complaint : complaints[i]) {
            judging.takeComplaint(complaint, outcome);
        }
        const bool began = lot.state != records::LotState::settingUp || outcome.drawn > 0 || outcome.failed;
        if (began && !lot.isReRun && filtered.holds(lot)) {
            held.push_back(std::move(outcome));
        }
    }
    std::stable_sort(held.begin(), held.end(), [&](const auto& a, const auto& b) {
        return facts.lots[static_cast<std::size_t>(a.lot)].openedAt <
               facts.lots[static_cast<std::size_t>(b.lot)].openedAt;
    });
    return held;
}

} // namespace holdfast::kiosk::shop::trending
