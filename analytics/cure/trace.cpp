#include "analytics/cure/trace.hpp"

#include "analytics/cure/passes.hpp"
#include "analytics/cure/unit_switch.hpp"
#include "analytics/cure/valid_rows.hpp"

#include <cassert>

namespace holdfast::analytics {

namespace {

using tracing::DropCounts;
using tracing::Row;
using tracing::StepRules;
using tracing::Whole;

bool startsHot(const RawTrace& trace, const std::vector<CleanSample>& samples, const TraceRules& rules) {
    if (samples.empty()) {
        return false;
    }
    const Temperature first = samples.front().t;
    const Temperature below = trace.unitConfirmed ? rules.coldStartBelowOnceConfirmed : rules.coldStartBelow;
    return !atMost(first, below) || !atLeast(first, rules.coldStartAbove);
}

/// Step 4: what follows a unit switch leaves `rows`.
void endAtUnitSwitch(std::vector<Row>& rows, const RawTrace& trace, const StepRules& steps, const TraceRules& rules,
                     Whole& whole, DropCounts& dropped) {
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (!steps.tooFastForFilm(rows[i - 1], rows[i]) ||
            !tracing::isUnitSwitch(rows[i - 1], rows[i], trace.unit, rules.filmRate)) {
            continue;
        }
        whole.unitSwitchedAt = rows[i - 1].at;
        whole.unitSwitchSeenAt = rows[i].at;
        const auto behind = rows.begin() + static_cast<std::ptrdiff_t>(i);
        whole.hotAfterUnitSwitch = std::any_of(
            behind, rows.end(), [&rules](const Row& row) { return !atMost(row.indicated, rules.passFrom); });
        tracing::countDrop(dropped, DropWhy::afterUnitSwitch, rows.size() - i);
        rows.erase(behind, rows.end());
        return;
    }
}

/// How the rows hang together, and whether a step asks for the unit.
void joinUp(const RawTrace& trace, const StepRules& steps, const TraceRules& rules, Whole& whole) {
    const std::vector<Row>& rows = whole.samples;
    whole.joins.assign(rows.empty() ? 0 : rows.size() - 1, Join::line);
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (steps.isPlain(rows[i - 1], rows[i])) {
            continue;
        }
        whole.joins[i - 1] = steps.joinOf(rows[i - 1], rows[i]);
        if (!trace.unitConfirmed && !whole.unitInDoubtFrom &&
            tracing::leavesUnitInDoubt(rows[i - 1], rows[i], trace.unit, rules)) {
            whole.unitInDoubtFrom = i;
        }
    }
}

void correct(std::vector<CleanSample>& samples, const Calibration* calibration) {
    if (calibration == nullptr) {
        return;
    }
    for (CleanSample& sample : samples) {
        sample.t = calibration->corrected(sample.indicated);
    }
}

/// Steps 0 to 7. A recording that is too coarse keeps what step 1 leaves of it.
Whole cleaned(const RawTrace& trace, const Calibration* calibration, const TraceRules& rules, DropCounts& dropped,
              bool& tooCoarse) {
    Whole whole;
    whole.median = medianInterval(trace);
    tooCoarse = !atLeast(rules.coarsestMedian, whole.median);
    const StepRules steps{rules, whole.median, trace.resolution};
    std::vector<Row>& rows = whole.samples;
    tracing::UsableRows usable = tracing::usableRows(trace, steps, dropped);
    rows = std::move(usable.rows);
    if (usable.plain && rows.size() >= tracing::kFewestSamples) {
        whole.joins.assign(rows.size() - 1, Join::line);
    } else {
        if (!tooCoarse) {
            tracing::removeSpikes(rows, steps, dropped);
            tracing::removeShortRuns(rows, steps, dropped);
            endAtUnitSwitch(rows, trace, steps, rules, whole, dropped);
        }
        joinUp(trace, steps, rules, whole);
    }
    correct(whole.samples, calibration);
    whole.startsHot = startsHot(trace, whole.samples, rules);
    return whole;
}

Pass asOnePass(Whole&& whole, const RawTrace& trace, const TraceRules& rules) {
    Pass pass;
    pass.samples = std::move(whole.samples);
    pass.joins = std::move(whole.joins);
    pass.medianInterval = whole.median;
    pass.startsHot = whole.startsHot;
    pass.unitInDoubt = whole.unitInDoubtFrom.has_value();
    pass.unitSwitchedAt = whole.unitSwitchedAt;
    pass.everAbove80 = whole.hotAfterUnitSwitch ||
                       std::any_of(pass.samples.begin(), pass.samples.end(),
                                   [&rules](const CleanSample& s) { return !atMost(s.t, rules.passFrom); });
    pass.stoppedByHand = trace.stoppedByHand;
    pass.cutOff = trace.cutOff;
    return pass;
}

} // namespace

Duration gapLimit(Duration median) noexcept {
    return Duration{std::min(5.0, std::max(2.0, 4.0 * median.count()))};
}

Duration medianInterval(const RawTrace& trace) {
    std::vector<std::int64_t> steps(trace.samples.size());
    std::size_t forward = 0;
    for (std::size_t i = 1; i < trace.samples.size(); ++i) {
        const auto step = tracing::stepBetween(trace.samples[i - 1].at, trace.samples[i].at).count();
        steps[forward] = step; // the next one writes over a step that is not forward
        forward += step > 0 ? 1U : 0U;
    }
    steps.resize(forward);
    return Duration{tracing::medianOf(steps) / 1e6};
}

UncutRecording cleanWithoutCutting(const RawTrace& trace, const Calibration* calibration, const TraceRules& rules) {
    UncutRecording result;
    bool tooCoarse = false;
    Whole whole = cleaned(trace, calibration, rules, result.dropped, tooCoarse);
    result.unitSwitchSeenAt = whole.unitSwitchSeenAt;
    result.whole = asOnePass(std::move(whole), trace, rules);
    result.whole.tooCoarse = tooCoarse;
    return result;
}

CleanedRecording cleanRecording(const RawTrace& trace, const Calibration* calibration, const TraceRules& rules) {
    CleanedRecording result;
    bool tooCoarse = false;
    Whole whole = cleaned(trace, calibration, rules, result.dropped, tooCoarse);
    if (tooCoarse) {
        result.passes.push_back(asOnePass(std::move(whole), trace, rules));
        result.passes.back().tooCoarse = true;
        return result;
    }
    int tail = 0;
    result.passes = cutIntoPasses(std::move(whole), rules, tail);
    assert(!result.passes.empty());
    tracing::countDrop(result.dropped, DropWhy::tail, static_cast<std::size_t>(tail));
    result.passes.back().stoppedByHand = trace.stoppedByHand;
    result.passes.back().cutOff = trace.cutOff;
    return result;
}

} // namespace holdfast::analytics
