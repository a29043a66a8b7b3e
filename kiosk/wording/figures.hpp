#pragma once

#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/temperature.hpp"

#include <cstdint>
#include <string>

/// Numbers and units as people read them: real minus, no break before a unit, a point in every language so far.
namespace holdfast::kiosk::wording {

struct Figures final {
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::fahrenheit;
    int decimals =
        0; ///< of temperatures; one more is shown where rounding would hide on which side of a limit one lies

    /// "286 °F"; not finite: "no figure".
    [[nodiscard]] std::string temperature(analytics::Temperature t) const;
    /// The figure without its unit: "286".
    [[nodiscard]] std::string bare(analytics::Temperature t) const;
    /// "3 °F", never signed.
    [[nodiscard]] std::string difference(analytics::TemperatureDifference d) const;
    /// "+1 °F", "−8 °F", "0 °F".
    [[nodiscard]] std::string signedDifference(analytics::TemperatureDifference d) const;
    /// "5": the figure of a difference without sign and unit, for "±5".
    [[nodiscard]] std::string bareDifference(analytics::TemperatureDifference d) const;
    [[nodiscard]] std::string unitSign() const;

    /// The same figures with as many decimals (up to three) as it takes for `value` to show on its own side of `limit`.
    [[nodiscard]] Figures tellingApart(analytics::Temperature value, analytics::Temperature limit) const;
    [[nodiscard]] Figures tellingApart(analytics::TemperatureDifference value,
                                       analytics::TemperatureDifference limit) const;
};

/// "7 s", "0.4 s" (under 10 s with a tenth unless whole), "1 min 20 s"; negative counts as 0.
[[nodiscard]] std::string durationText(analytics::Duration duration);
/// For times to wait: from two minutes on rounded up to whole ones.
[[nodiscard]] std::string waitText(analytics::Duration duration);

/// `decimals` digits after the point, real minus, "0" never signed.
[[nodiscard]] std::string numberText(double value, int decimals);

/// "14:02" of a wall time with its offset.
[[nodiscard]] std::string clockText(std::int64_t millisecondsSinceEpoch, int utcOffsetMinutes);

} // namespace holdfast::kiosk::wording
