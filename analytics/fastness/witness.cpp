#include "analytics/fastness/witness.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace holdfast::analytics {
namespace {

constexpr double kSame = 1e-9;
constexpr double kIndividuals = 3.0 / 1.128; ///< three sigma from the mean of ranges of two, d2 = 1.128

using Swatch = std::optional<double> WitnessReading::*;

bool onScale(double reading) noexcept {
    return reading >= 1.0 && reading <= 5.0;
}

bool onScale(const WitnessReading& reading) noexcept {
    return onScale(reading.good.value_or(1.0)) && onScale(reading.weak.value_or(1.0));
}

std::vector<double> readByInstrument(std::span<const WitnessReading> loads, Swatch swatch) {
    std::vector<double> readings;
    for (const auto& load : loads)
        if (load.byInstrument && load.*swatch)
            readings.push_back(*(load.*swatch));
    return readings;
}

struct Chart {
    double mean;
    double width; ///< 2.66·MRbar
};

Chart chartOf(std::span<const double> readings) noexcept {
    const auto n = static_cast<double>(readings.size());
    double ranges = 0.0;
    for (std::size_t i = 1; i < readings.size(); ++i)
        ranges += std::abs(readings[i] - readings[i - 1]);
    return {std::accumulate(readings.begin(), readings.end(), 0.0) / n, kIndividuals * ranges / (n - 1.0)};
}

/// `side` −1 for a lower limit, +1 for an upper.
WitnessLimit limitFrom(const std::vector<double>& readings, double given, double side, std::size_t needed) noexcept {
    if (readings.size() < needed)
        return {given, LimitOrigin::shop, readings.size()};
    const auto chart = chartOf(std::span{readings}.first(needed));
    if (chart.width <= kSame)
        return {given, LimitOrigin::noSpread, needed};
    return {chart.mean + side * chart.width, LimitOrigin::charted, needed};
}

} // namespace

tl::expected<WitnessLimits, WitnessFault> witnessLimits(std::span<const WitnessReading> validLoads,
                                                        const WitnessSettings& settings) {
    if (!onScale(settings.goodAtLeast) || !onScale(settings.weakAtMost) ||
        !std::all_of(validLoads.begin(), validLoads.end(), [](const auto& load) { return onScale(load); }))
        return tl::unexpected(WitnessFault::offScale);
    if (settings.goodAtLeast < settings.weakAtMost)
        return tl::unexpected(WitnessFault::limitsContradict);
    if (settings.loadsToFreeze < kFewestLoads)
        return tl::unexpected(WitnessFault::tooFewToFreeze);
    const auto needed = settings.loadsToFreeze;
    return WitnessLimits{
        limitFrom(readByInstrument(validLoads, &WitnessReading::good), settings.goodAtLeast, -1.0, needed),
        limitFrom(readByInstrument(validLoads, &WitnessReading::weak), settings.weakAtMost, 1.0, needed)};
}

tl::expected<LoadVerdict, WitnessFault> judgeLoad(const WitnessReading& reading, const WitnessLimits& limits) {
    if (!onScale(reading) || !std::isfinite(limits.goodAtLeast.value) || !std::isfinite(limits.weakAtMost.value))
        return tl::unexpected(WitnessFault::offScale);
    LoadVerdict verdict{LoadState::valid, {}, limits};
    const auto add = [&](bool found, LoadReason reason) {
        if (found)
            verdict.reasons.push_back(reason);
    };
    add(reading.good && *reading.good < limits.goodAtLeast.value - kSame, LoadReason::goodBelowLimit);
    add(reading.weak && *reading.weak > limits.weakAtMost.value + kSame, LoadReason::weakAboveLimit);
    add(reading.good && reading.weak && *reading.good < *reading.weak - kSame, LoadReason::witnessesSwapped);
    if (!verdict.reasons.empty())
        verdict.state = LoadState::voided;
    add(!reading.good, LoadReason::goodMissing);
    add(!reading.weak, LoadReason::weakMissing);
    if (verdict.state == LoadState::valid && !verdict.reasons.empty())
        verdict.state = LoadState::notShown;
    return verdict;
}

} // namespace holdfast::analytics
