#pragma once

#include "analytics/cure/ride/rise_fit.hpp"

#include <optional>

namespace holdfast::analytics {

/// How a dryer may be set otherwise than it was during a ride: another time under the heat, and hotter or cooler air.
struct Heating final {
    Duration inTunnel{0};
    TemperatureDifference hotter;
};

/// A ride as the fit of an earlier one predicts it: from `entry` towards the air for so long, then back towards `entry`
/// with the time constant of the earlier ride's fall (that of its rise where it had none). The rise above `entry` is
/// stretched so that the earlier ride's own heating gives its own raw peak: the model answers for the change only.
class PredictedRide final {
public:
    explicit PredictedRide(const RiseFit& fit) noexcept;

    [[nodiscard]] Heating asRidden() const noexcept { return {m_fit.inTunnel, {}}; }
    [[nodiscard]] Temperature rawPeak(const Heating& heating) const noexcept;
    /// As far below the raw peak as in the earlier ride, but for what a steeper or flatter top changes: 2 s fit under
    /// two lines that meet at the peak at 2/(1/rise + 1/fall) below it.
    [[nodiscard]] Temperature sustainedPeak(const Heating& heating) const noexcept;
    /// The lowest and highest sustained peak that the limits of τ leave.
    [[nodiscard]] Temperature lowestPeak(const Heating& heating) const noexcept;
    [[nodiscard]] Temperature highestPeak(const Heating& heating) const noexcept;

    /// The time under the heat that gives this raw peak at the air as ridden; absent if the air is not hot enough or
    /// the film cannot be that cool.
    [[nodiscard]] std::optional<Duration> timeFor(Temperature rawPeak) const noexcept;
    /// How much hotter the air must be to give this raw peak in this time.
    [[nodiscard]] TemperatureDifference hotterFor(Temperature rawPeak, Duration inTunnel) const noexcept;

    /// A recording of it as this instrument would have sent it: ten seconds of pre-roll at `entry`, down to 5 °C above
    /// it (at most ten time constants), a sample each half second or as often as the earlier ride if that was oftener.
    [[nodiscard]] RawTrace trace(const Heating& heating, const Calibration& calibration) const;

private:
    [[nodiscard]] Temperature alongCurve(const FirstOrderCurve& curve, const Heating& heating) const noexcept;
    [[nodiscard]] TemperatureDifference underTop(const Heating& heating) const noexcept;
    [[nodiscard]] Temperature moved(const FirstOrderCurve& curve, const Heating& heating) const noexcept;

    RiseFit m_fit;
    double m_stretch = 1.0;
    Duration m_cooling{1.0};
};

} // namespace holdfast::analytics
