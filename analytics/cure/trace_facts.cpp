#include "analytics/cure/trace_facts.hpp"

#include "analytics/cure/gap_bounds.hpp"

#include <cmath>

namespace holdfast::analytics {

namespace {

bool isBreak(Join join) {
    return join == Join::clockFault || join == Join::jump || join == Join::unitSwitch;
}

bool onlyLines(const Pass& pass) {
    return std::all_of(pass.joins.begin(), pass.joins.end(), [](Join join) { return join == Join::line; });
}

/// Of samples there is at least one.
std::size_t hottest(const std::vector<CleanSample>& samples) {
    std::size_t best = 0;
    double top = samples.front().t.celsius();
    for (std::size_t i = 1; i < samples.size(); ++i) {
        if (const double value = samples[i].t.celsius(); value > top) [[unlikely]] {
            top = value;
            best = i;
        }
    }
    return best;
}

struct JoinSpan final {
    std::size_t from = 0;
    std::size_t to = 0;
};

/// The joins that reach within 10 s of a sample, up to the next break either side.
JoinSpan joinsNear(const Pass& pass, std::size_t sample) {
    constexpr Duration kNear{10.0};
    const Duration at = pass.samples[sample].at;
    JoinSpan span{sample, sample};
    while (span.from > 0 && !isBreak(pass.joins[span.from - 1]) && atLeast(pass.samples[span.from].at, at - kNear)) {
        --span.from;
    }
    while (span.to < pass.joins.size() && !isBreak(pass.joins[span.to]) &&
           atLeast(at + kNear, pass.samples[span.to].at)) {
        ++span.to;
    }
    return span;
}

/// First sample that shows the fall; the number of samples when none does.
std::size_t fallenAt(const Pass& pass, const TraceRules& rules) {
    const std::size_t count = pass.samples.size();
    if (count == 0) {
        return count;
    }
    const std::size_t top = hottest(pass.samples);
    const Temperature peak = pass.samples[top].t;
    if (atMost(peak, rules.passFrom)) {
        return count;
    }
    for (std::size_t i = top + 1; i < count; ++i) {
        if (atLeast(peak - pass.samples[i].t, rules.fall)) {
            return i;
        }
    }
    return count;
}

/// Last sample above a level; absent when none is.
std::optional<std::size_t> lastAbove(const Pass& pass, Temperature level) {
    for (std::size_t i = pass.samples.size(); i-- > 0;) {
        if (!atMost(pass.samples[i].t, level)) {
            return i;
        }
    }
    return std::nullopt;
}

} // namespace

std::optional<PeakAt> rawPeak(const Pass& pass) {
    if (pass.samples.empty()) {
        return std::nullopt;
    }
    const CleanSample& top = pass.samples[hottest(pass.samples)];
    return PeakAt{top.t, top.at};
}

TemperatureDifference samplingTerm(const Pass& pass) {
    constexpr Duration kFine{1.0};
    if (pass.samples.empty()) {
        return {};
    }
    const JoinSpan near = joinsNear(pass, hottest(pass.samples));
    Duration longest{0};
    for (std::size_t i = near.from; i < near.to; ++i) {
        if (pass.joins[i] == Join::line) {
            longest = std::max(longest, pass.samples[i + 1].at - pass.samples[i].at);
        }
    }
    if (atLeast(kFine, longest)) {
        return {};
    }
    HeatingRate steepest = HeatingRate::fromCelsiusPerSecond(0.0);
    for (std::size_t i = near.from; i < near.to; ++i) {
        const Duration step = std::max(pass.samples[i + 1].at - pass.samples[i].at, pass.medianInterval / 2.0);
        if (pass.joins[i] == Join::line && step > Duration{0}) {
            steepest = std::max(steepest, (pass.samples[i + 1].t - pass.samples[i].t).magnitude() / step);
        }
    }
    return steepest * (longest / 2.0);
}

std::vector<HiddenTop> hiddenTops(const Pass& pass, const TraceRules& rules) {
    std::vector<HiddenTop> tops;
    if (pass.beforeLeadGap && !pass.samples.empty()) {
        const CleanSample& after = pass.samples.front();
        tops.push_back(
            {tracing::hiddenTopOf(*pass.beforeLeadGap, after, rules.filmRate), pass.beforeLeadGap->at, after.at});
    }
    if (onlyLines(pass)) {
        return tops;
    }
    bool passed = pass.beforeLeadGap.has_value();
    for (std::size_t i = 0; i < pass.joins.size(); ++i) {
        const CleanSample& a = pass.samples[i];
        const CleanSample& b = pass.samples[i + 1];
        passed = passed || !atMost(a.t, rules.passFrom);
        if (pass.joins[i] != Join::gap) {
            continue;
        }
        const bool coldBefore = !passed && !atLeast(a.t, rules.passEnds) && !atLeast(b.t, rules.passEnds);
        if (!coldBefore) {
            tops.push_back({tracing::hiddenTopOf(a, b, rules.filmRate), a.at, b.at});
        }
    }
    return tops;
}

std::vector<HiddenTop> hiddenTops(const Pass& pass, Temperature lowerMinusGuard, const TraceRules& rules) {
    const Spoiled spoiled = spoiledFor(pass, lowerMinusGuard, rules);
    const bool ended = spoiled.by == Join::line && spoiled.usableSamples < pass.samples.size();
    return hiddenTops(ended ? firstSamples(pass, spoiled.usableSamples) : pass, rules);
}

bool hasFallen(const Pass& pass, const TraceRules& rules) {
    return fallenAt(pass, rules) < pass.samples.size();
}

Spoiled spoiledFor(const Pass& pass, Temperature lowerMinusGuard, const TraceRules& rules) {
    Spoiled result;
    result.usableSamples = pass.samples.size();
    if (!pass.unitSwitchedAt && onlyLines(pass)) {
        return result;
    }
    const std::size_t fallen = fallenAt(pass, rules);
    const auto hot = lastAbove(pass, lowerMinusGuard);
    for (std::size_t i = 0; i < pass.joins.size(); ++i) {
        const Join join = pass.joins[i];
        if (join == Join::line) {
            continue;
        }
        if (i >= fallen && (!hot || *hot <= i)) {
            if (result.by == Join::line) {
                result.usableSamples = std::min(result.usableSamples, i + 1);
            }
            return result;
        }
        if (isBreak(join) && result.by != Join::jump && result.by != join) {
            result.by = join;
            result.at = pass.samples[i].at;
            result.usableSamples = join == Join::clockFault ? i + 1 : 0;
        }
    }
    if (pass.unitSwitchedAt && fallen == pass.samples.size()) {
        result = {Join::unitSwitch, *pass.unitSwitchedAt, 0};
    }
    return result;
}

Pass firstSamples(const Pass& pass, std::size_t samples) {
    Pass part = pass;
    part.samples.erase(part.samples.begin() + static_cast<std::ptrdiff_t>(std::min(samples, part.samples.size())),
                       part.samples.end());
    part.joins.resize(part.samples.empty() ? 0 : part.samples.size() - 1);
    return part;
}

bool isComplete(const Pass& pass, Temperature lowerMinusGuard, const TraceRules& rules) {
    return !pass.startsHot && !pass.unitInDoubt && spoiledFor(pass, lowerMinusGuard, rules).by == Join::line &&
           hasFallen(pass, rules);
}

} // namespace holdfast::analytics
