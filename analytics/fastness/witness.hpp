#pragma once

#include <tl/expected.hpp>

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

/// The two witness swatches of a wash load: did the machine do what it usually does?
namespace holdfast::analytics {

/// How well the two swatches came out, on the grey scale for change, 1 to 5, greater is better: GS of ISO 105-A05 from
/// an instrument, or a grade given by eye.
struct WitnessReading final {
    std::optional<double> good; ///< a fully cured swatch
    std::optional<double> weak; ///< a swatch made too weak on purpose
    bool byInstrument = false;  ///< by eye the steps are ordinal: good for a limit, not for a chart
};

enum class WitnessFault {
    offScale,        ///< a reading or limit below 1, above 5 or not finite
    tooFewToFreeze,  ///< settings ask for fewer than kFewestLoads
    limitsContradict ///< the good swatch's limit lies below the weak one's
};

inline constexpr std::size_t kFewestLoads = 10; ///< no chart from fewer; from memory
inline constexpr std::size_t kUsualLoads = 20;  ///< loads before the limits are frozen; common practice 20 to 25

struct WitnessSettings final {
    double goodAtLeast = 4.0; ///< the shop's own limits until the chart stands; from memory
    double weakAtMost = 3.0;
    std::size_t loadsToFreeze = kUsualLoads;
};

enum class LimitOrigin {
    shop,     ///< given by the shop: too few loads yet
    noSpread, ///< given by the shop: the loads' readings are all alike, a chart of them has no width
    charted
};

struct WitnessLimit final {
    double value = 0.0;
    LimitOrigin origin = LimitOrigin::shop;
    std::size_t loads = 0; ///< that the chart is made of, or that there are so far
};

struct WitnessLimits final {
    WitnessLimit goodAtLeast;
    WitnessLimit weakAtMost;
};

/// Chart of individuals with moving range: mean − 2.66·MRbar for the good swatch, mean + 2.66·MRbar for the weak one
/// (2.66 = 3/1.128; NIST/SEMATECH e-Handbook 6.3.2.2), from the first loadsToFreeze valid loads read by an instrument,
/// in order of time, and frozen then: later loads change nothing. Each swatch has its own chart. Only loads that were
/// valid belong in `validLoads`; those without that swatch or read by eye are passed over.
[[nodiscard]] tl::expected<WitnessLimits, WitnessFault> witnessLimits(std::span<const WitnessReading> validLoads,
                                                                      const WitnessSettings& settings = {});

enum class LoadState { valid, voided, notShown };

enum class LoadReason {
    goodBelowLimit,   ///< machine too harsh, or the wrong programme
    weakAboveLimit,   ///< machine too gentle
    witnessesSwapped, ///< the good one came out worse than the weak one
    goodMissing,
    weakMissing
};

/// A voided load holds nothing and clears nothing.
struct LoadVerdict final {
    LoadState state = LoadState::notShown;
    std::vector<LoadReason> reasons; ///< empty if valid
    WitnessLimits limits;            ///< it was judged by
};

/// Void if the good swatch is below its limit, the weak one above its own, or the two look swapped (equality is inside,
/// within 1e-9); else not shown if a swatch is missing; else valid.
[[nodiscard]] tl::expected<LoadVerdict, WitnessFault> judgeLoad(const WitnessReading& reading,
                                                                const WitnessLimits& limits);

} // namespace holdfast::analytics
