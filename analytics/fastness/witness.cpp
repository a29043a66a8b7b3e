#include "analytics/fastness/witness.hpp"

#include "analytics/fastness/same.hpp"

#include <algorithm>
#include <cmath>
#include <numeric>

namespace holdfast::analytics {
namespace {

constexpr double kIndividuals = 3.0 / 1.128; ///< three sigma from the mean of ranges of two, d2 = 1.128

using Swatch = std::optional<double> WitnessReading::*;

bool onScale(double reading) noexcept {
    return reading >= 1.0 && reading <= 5.0;
}

bool onScale(const WitnessReading& reading) noexcept {
    return onScale(reading.good.value_or(1.0)) && onScale(reading.weak.value_or(1.0));
}

std::vector<double> readingsOf(std::span<const WitnessReading> loads, Swatch swatch, bool byInstrument) {
    std::vector<double> readings;
    for (const auto& load : loads)
        if (load.byInstrument == byInstrument && load.*swatch)
            readings.push_back(*(load.*swatch));
    return readings;
}

double nextHalf(double reading) noexcept {
    return std::ceil(2.0 * reading - 0.5 - kSame) / 2.0;
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

/// One swatch: which of the two it is, what the shop gives for it, and the side its limit lies on.
struct Kind {
    Swatch swatch;
    double given;
    double side; ///< −1 a lower limit, +1 an upper
};

WitnessLimit limitOf(const Kind& kind, std::span<const WitnessReading> loads, std::size_t needed) {
    const auto measured = readingsOf(loads, kind.swatch, true);
    const auto seen = readingsOf(loads, kind.swatch, false);
    if (measured.size() >= needed) {
        const auto chart = chartOf(std::span{measured}.first(needed));
        if (chart.width <= kSame)
            return {kind.given, LimitOrigin::noSpread, needed};
        return {chart.mean + kind.side * chart.width, LimitOrigin::charted, needed};
    }
    if (seen.size() < needed)
        return {kind.given, LimitOrigin::shop, std::max(measured.size(), seen.size())};
    const auto first = std::span{seen}.first(needed);
    const auto [lowest, highest] = std::minmax_element(first.begin(), first.end());
    return {kind.side < 0.0 ? *lowest : *highest, LimitOrigin::ranked, needed};
}

/// How far the reading is above its limit; 0 without a reading.
double above(const std::optional<double>& reading, bool byInstrument, const WitnessLimit& limit) noexcept {
    if (!reading)
        return 0.0;
    if (byInstrument && limit.origin == LimitOrigin::charted)
        return *reading - limit.value;
    return nextHalf(*reading) - nextHalf(limit.value);
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
    const Kind good{&WitnessReading::good, settings.goodAtLeast, -1.0};
    const Kind weak{&WitnessReading::weak, settings.weakAtMost, 1.0};
    return WitnessLimits{limitOf(good, validLoads, settings.loadsToFreeze),
                         limitOf(weak, validLoads, settings.loadsToFreeze)};
}

tl::expected<LoadVerdict, WitnessFault> judgeLoad(const WitnessReading& reading, const WitnessLimits& limits) {
    if (!onScale(reading) || !std::isfinite(limits.goodAtLeast.value) || !std::isfinite(limits.weakAtMost.value))
        return tl::unexpected(WitnessFault::offScale);
    LoadVerdict verdict{LoadState::valid, {}, limits};
    const auto add = [&](bool found, LoadReason reason) {
        if (found)
            verdict.reasons.push_back(reason);
    };
    add(above(reading.good, reading.byInstrument, limits.goodAtLeast) < -kSame, LoadReason::goodBelowLimit);
    add(above(reading.weak, reading.byInstrument, limits.weakAtMost) > kSame, LoadReason::weakAboveLimit);
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
