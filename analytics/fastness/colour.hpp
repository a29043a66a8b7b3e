#pragma once

#include <tl/expected.hpp>

#include <optional>

/// Colours as an instrument gives them and the difference of two.
namespace holdfast::analytics {

/// A colour in CIELAB 1976 (ISO/CIE 11664-4): L* from 0 black to 100 white, a* red (+) to green (−), b* yellow (+) to
/// blue (−). No unit. May hold what was typed: ask faultOf().
struct Lab final {
    double l = 0.0;
    double a = 0.0;
    double b = 0.0;
    bool operator==(const Lab&) const = default;
};

enum class ColourFault {
    notFinite,
    lightnessOutOfRange,  ///< L* below 0 or above 100
    chromaticOutOfRange,  ///< |a*| or |b*| above kLargestChromatic
    settingInvalid,       ///< a weight zero or negative, an angle outside 0 to 90°, anything not finite
    differenceOutOfRange, ///< a colour difference below 0, or a lightness part larger than the whole
};

/// No surface is more colourful than this: the range of a* and b* an ICC profile's 8-bit connection space holds
/// (ICC.1:2022, 6.3.4.2, −128 to 127); the real surfaces of Pointer, Color Res. Appl. 5 (1980), lie inside.
inline constexpr double kLargestChromatic = 128.0;

/// The first thing that makes this no colour of a surface; absent when nothing does. The ends of a range are inside.
[[nodiscard]] std::optional<ColourFault> faultOf(const Lab& colour) noexcept;

/// CIELAB colour difference ΔE*ab = √(ΔL*² + Δa*² + Δb*²), ISO/CIE 11664-4:2019. Zero for identical colours.
[[nodiscard]] tl::expected<double, ColourFault> cielabDifference(const Lab& reference, const Lab& sample) noexcept;

/// Parametric factors of CIEDE2000; 1 each under reference conditions. Textile practice often takes kL = 2.
struct DifferenceWeights final {
    double kL = 1.0;
    double kC = 1.0;
    double kH = 1.0;
};

/// CIEDE2000 colour difference ΔE00, ISO/CIE 11664-6:2014, in the steps of Sharma, Wu and Dalal, Color Res. Appl. 30
/// (2005), 21–30. Symmetric, zero for identical colours. Two hues exactly 180° apart count as not more than 180° apart,
/// as the published pairs 10 and 14 need; with binary fractions "exactly" means within 1e-9 degree, since rounding of
/// the two angles must not choose the branch (where it would jump: ΔE00 is not continuous there).
[[nodiscard]] tl::expected<double, ColourFault> ciede2000(const Lab& reference, const Lab& sample,
                                                          const DifferenceWeights& weights = {}) noexcept;

} // namespace holdfast::analytics
