#include "analytics/cure/trace_facts.hpp"

#include <algorithm>

namespace holdfast::analytics {

namespace {

constexpr Duration kLongestDip{2.0};

/// Walks the lines of a pass and tells of every stretch at or above a level, in order.
template <class Above, class Below, class Part>
void walk(const Pass& pass, Temperature level, Above above, Below below, Part part) {
    const double bar = level.celsius() - kDecisionTolerance;
    for (std::size_t i = 0; i < pass.joins.size(); ++i) {
        if (pass.joins[i] != Join::line) {
            part();
            continue;
        }
        const CleanSample& a = pass.samples[i];
        const CleanSample& b = pass.samples[i + 1];
        const double ta = a.t.celsius();
        const double tb = b.t.celsius();
        const double step = (b.at - a.at).count();
        if (ta >= bar && tb >= bar) {
            above(step);
        } else if (ta >= bar) {
            const double share = std::clamp((ta - level.celsius()) / (ta - tb), 0.0, 1.0);
            above(step * share);
            below(step * (1.0 - share), tb);
        } else if (tb >= bar) {
            const double share = std::clamp((tb - level.celsius()) / (tb - ta), 0.0, 1.0);
            below(step * (1.0 - share), ta);
            above(step * share);
        } else {
            below(step, std::min(ta, tb));
        }
    }
}

} // namespace

TimeAbove timeAtOrAbove(const Pass& pass, Temperature level) {
    double total = 0.0;
    double spell = 0.0;
    double longest = 0.0;
    walk(
        pass, level,
        [&](double seconds) {
            total += seconds;
            spell += seconds;
            longest = std::max(longest, spell);
        },
        [&](double, double) { spell = 0.0; }, [&] { spell = 0.0; });
    return {Duration{total}, Duration{longest}};
}

Duration longestSpellBridgingDips(const Pass& pass, Temperature level, TemperatureDifference guard, bool dipsCount) {
    const double floor = (level - guard).celsius() - kDecisionTolerance;
    double spell = 0.0;
    double dip = 0.0;
    double longest = 0.0;
    const auto end = [&] { spell = dip = 0.0; };
    walk(
        pass, level,
        [&](double seconds) {
            spell += seconds + (dipsCount ? dip : 0.0);
            dip = 0.0;
            longest = std::max(longest, spell);
        },
        [&](double seconds, double lowest) {
            dip += spell > 0.0 ? seconds : 0.0;
            if (lowest < floor || dip > kLongestDip.count() + kDecisionTolerance) {
                end();
            }
        },
        end);
    return Duration{longest};
}

} // namespace holdfast::analytics
