#pragma once

#include "analytics/cure/trace.hpp"

#include <algorithm>
#include <cmath>

/// What the steps of decisions 3 share; private to this room.
namespace holdfast::analytics::tracing {

/// A row that is still valid: at = since the first row of the recording, t not yet corrected.
using Row = CleanSample;

/// The yardsticks of one recording.
class StepRules final {
public:
    StepRules(const TraceRules& rules, Duration median, TemperatureDifference resolution) noexcept
        : m_film{rules.filmRate}, m_probe{rules.probeRate}, m_halfMedian{median.count() / 2.0},
          m_allowance{std::max(3.0 * std::abs(resolution.celsius()), 2.0) + kDecisionTolerance},
          m_gapLimit{gapLimit(median).count() + kDecisionTolerance} {
        if (!std::isfinite(m_allowance)) {
            m_allowance = 2.0 + kDecisionTolerance;
        }
    }

    /// |ΔT| > v · max(Δt, half the median interval) + max(3 resolution steps, 2 °C).
    [[nodiscard]] bool tooFastForFilm(const Row& from, const Row& to) const noexcept {
        return tooFast(from, to, m_film.celsiusPerSecond());
    }
    [[nodiscard]] bool tooFastForProbe(const Row& from, const Row& to) const noexcept {
        return tooFast(from, to, m_probe.celsiusPerSecond());
    }
    /// A step that no rule can mind: forward, at most 2 s, and within the allowance alone.
    [[nodiscard]] bool isPlain(const Row& from, const Row& to) const noexcept {
        const double step = (to.at - from.at).count();
        return step > 0.0 && step <= 2.0 && std::abs(to.indicated.celsius() - from.indicated.celsius()) <= m_allowance;
    }
    /// Exactly at the limit is none.
    [[nodiscard]] bool isGap(const Row& from, const Row& to) const noexcept {
        return (to.at - from.at).count() > m_gapLimit;
    }
    [[nodiscard]] static bool isClockFault(const Row& from, const Row& to) noexcept { return to.at <= from.at; }

    [[nodiscard]] Join joinOf(const Row& from, const Row& to) const noexcept {
        if (isPlain(from, to)) {
            return Join::line;
        }
        if (tooFastForProbe(from, to)) {
            return Join::jump;
        }
        if (isClockFault(from, to)) {
            return Join::clockFault;
        }
        return isGap(from, to) ? Join::gap : Join::line;
    }

private:
    [[nodiscard]] bool tooFast(const Row& from, const Row& to, double rate) const noexcept {
        const double change = std::abs(to.indicated.celsius() - from.indicated.celsius());
        if (change <= m_allowance) {
            return false;
        }
        const double step = (to.at - from.at).count();
        return change > rate * std::max(step, m_halfMedian) + m_allowance;
    }

    HeatingRate m_film;
    HeatingRate m_probe;
    double m_halfMedian; ///< s
    double m_allowance;  ///< °C
    double m_gapLimit;   ///< s
};

} // namespace holdfast::analytics::tracing
