#include "kiosk/demo/history/history_findings.hpp"

#include "kiosk/shop/trending/causes.hpp"

#include <algorithm>

namespace holdfast::kiosk::demo {
namespace {

using shop::trending::CureCause;

std::string finding(CureCause cause, const char* decidedBy) {
    return std::string{shop::trending::wordOf(cause)} + ": " + decidedBy;
}

bool isPoured(const HistoryFacts& facts, std::size_t run) {
    const auto& poured = facts.planted.poured;
    return std::find(poured.begin(), poured.end(), run) != poured.end();
}

bool wasRepaired(const HistoryFacts& facts, DemoDryer dryer) {
    return std::any_of(facts.turns.begin(), facts.turns.end(),
                       [&](const TurnFact& turn) { return turn.dryer == dryer && turn.turn == Turn::repaired; });
}

/// A reading of the run was taken with the instrument that failed its check.
bool wasReadWrong(const HistoryFacts& facts, std::size_t run) {
    const bool failed = std::any_of(facts.checks.begin(), facts.checks.end(), [&](const CheckFact& check) {
        return !check.passed && facts.instruments[check.instrument].name == std::string{kInstrumentDrift.instrument};
    });
    return failed && std::any_of(facts.readings.begin(), facts.readings.end(), [&](const ReadingFact& reading) {
               return reading.run == run &&
                      facts.instruments[reading.instrument].name == std::string{kInstrumentDrift.instrument};
           });
}

std::string ours(const HistoryFacts& facts, std::size_t place) {
    const auto& run = facts.runs[place];
    const int back = facts.daysBack(run.begins);
    const double belt = facts.episodes[run.episode].beltMetresPerMinute;
    if (isPoured(facts, place)) {
        return finding(CureCause::mislabelledInk, "a square cured 30 °F hotter washes well, the label's own does not");
    }
    if (run.dryer == kBeltChange.dryer && kBeltChange.days.holds(back) && belt >= kBeltChange.fastMetresPerMinute) {
        return finding(CureCause::beltTooFast, "the margin fell on the day the belt was turned up");
    }
    if (run.dryer == kHeatLoss.dryer && kHeatLoss.days.holds(back) && wasRepaired(facts, run.dryer)) {
        return finding(CureCause::dryerLosingHeat, "the margin sank for weeks, with nothing changed");
    }
    if (kInstrumentDrift.days.holds(back) && wasReadWrong(facts, place)) {
        return finding(CureCause::instrumentWrong, "the probe reads high in ice");
    }
    return finding(CureCause::underCured, "the retained piece goes the same way in the wash");
}

std::string theirs(const ComplaintFact& complaint, const RunFact& run) {
    switch (complaint.what) {
    case Complaint::washedOut:
    case Complaint::cracked:
        return finding(CureCause::washTooHarsh, "washed hotter than the care label says; the retained piece is good");
    case Complaint::peeled:
        return run.finish == Finish::repellent || run.finish == Finish::softened
                   ? finding(CureCause::clothFinish, "a print on washed cloth of the same lot holds")
                   : finding(CureCause::falseAlarm, "the retained piece and two more pass");
    case Complaint::feel:
        return "the ink is as it was ordered; the customer knows the softer one only";
    case Complaint::other:
        break;
    }
    return "packed from the wrong carton: nothing of the print";
}

} // namespace

std::string findingOf(const HistoryFacts& facts, const ComplaintFact& complaint) {
    return complaint.ours ? ours(facts, complaint.run) : theirs(complaint, facts.runs[complaint.run]);
}

} // namespace holdfast::kiosk::demo
