#pragma once

#include "analytics/cure/ride/predicted_ride.hpp"
#include "analytics/cure/ride/turn.hpp"

#include <functional>
#include <optional>

namespace holdfast::analytics {

/// Private to this folder: which heating the runs of a belt want, by one knob.
class TurnSearch final {
public:
    /// `window` is the belt's; both must outlive the search.
    TurnSearch(const TurnRequest& request, const RunWindow& window, const TurnRules& rules);

    /// The heating by which a knob gives a raw peak; absent where it cannot.
    using Knob = std::function<std::optional<Heating>(Temperature rawPeak)>;

    /// The raw peak to go for with a knob that reaches at most `reach`; absent if no peak up to there is judged cured.
    [[nodiscard]] std::optional<Temperature> target(const Knob& knob, Temperature reach) const;

    /// Of the predicted trace, in every run of the belt.
    [[nodiscard]] Verdict judged(const Heating& heating) const;
    /// Whether every layer's margin is at least its guard in the predicted trace.
    [[nodiscard]] bool reaches(const Heating& heating) const { return margins(heating, 1.0); }
    /// Ceiling less its guard, the smaller of those the aim counts.
    [[nodiscard]] std::optional<Temperature> highest() const noexcept;
    [[nodiscard]] const PredictedRide& ride() const noexcept { return m_ride; }

private:
    [[nodiscard]] bool byTimeOrDose() const noexcept;
    [[nodiscard]] bool margins(const Heating& heating, double guards) const;
    [[nodiscard]] Temperature rawPeakForAim(const Knob& knob, Temperature top) const;
    [[nodiscard]] std::optional<Temperature> least(const Knob& knob, Temperature reach, double guards) const;
    [[nodiscard]] std::vector<Verdict> verdicts(const Heating& heating) const;

    const TurnRequest& m_request;
    const RunWindow& m_window;
    const TurnRules& m_rules;
    std::vector<RunPlan> m_plans; ///< without troubled buckets: no heat mends those
    PredictedRide m_ride;
};

} // namespace holdfast::analytics
