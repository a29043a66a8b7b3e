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
    bool byInstrument = false;  ///< by eye it is a half step: ordinal
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
    noSpread, ///< given by the shop: the instrument's readings are all alike, a chart of them has no width
    ranked,   ///< worst grade (of the weak swatch the best) that the valid loads were given by eye
    charted   ///< individuals with moving range of readings by an instrument
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

/// From the first loadsToFreeze valid loads in order of time, and frozen then: later loads change nothing. Each swatch
/// has its own limit. Read by an instrument: chart of individuals with moving range, mean − 2.66·MRbar for the good
/// swatch, mean + 2.66·MRbar for the weak one (2.66 = 3/1.128; NIST/SEMATECH e-Handbook 6.3.2.2). Not enough of those,
/// but enough graded by eye: grades are ordinal and have no ranges, so the limit is the worst grade the good swatch was
/// given and the best of the weak one; of n loads alike and one more, that one lies beyond the other n at a chance of
/// at most 1/(n + 1), whatever their distribution (Wilks, Ann. Math. Stat. 12, 1941; 4.8 % for twenty). Only loads that
/// were valid belong in `validLoads`; those without that swatch are passed over.
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
/// within 1e-9); else not shown if a swatch is missing; else valid. A reading by an instrument and a charted limit are
/// compared as they are; wherever one of the two is a grade, both are taken to the nearest half step (half way the
/// worse), so that a rating of 3.9 meets a limit of grade 4.
[[nodiscard]] tl::expected<LoadVerdict, WitnessFault> judgeLoad(const WitnessReading& reading,
                                                                const WitnessLimits& limits);

} // namespace holdfast::analytics
