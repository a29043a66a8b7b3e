#pragma once

#include "analytics/fastness/colour.hpp"
#include "analytics/fastness/grade.hpp"

/// Grades from colour differences.
namespace holdfast::analytics {

/// One pair of chips of a grey scale: its CIELAB difference and how far a scale may be off.
struct GreyStep final {
    Grade grade = Grade::best();
    double difference = 0.0;
    double tolerance = 0.0;
};

/// Change in colour, ISO 105-A02:1993 (EN 20105-A02), table in 2.4; from grade 5 down.
[[nodiscard]] std::span<const GreyStep, Grade::kSteps> changeScale() noexcept;

/// Staining, ISO 105-A03:1993 (EN 20105-A03); from grade 5 down.
[[nodiscard]] std::span<const GreyStep, Grade::kSteps> stainingScale() noexcept;

/// Grade whose step is nearest to a measured CIELAB difference; half way (within 1e-9) the worse; anything beyond the
/// last step is grade 1. Refused: below 0, not finite.
[[nodiscard]] tl::expected<Grade, ColourFault> changeGrade(double cielabDifference) noexcept;
[[nodiscard]] tl::expected<Grade, ColourFault> stainingGrade(double cielabDifference) noexcept;

/// ISO 105-A05:1996, instrumental assessment of change in colour.
struct InstrumentalChange final {
    double deltaEf = 0.0;   ///< ΔE_F, clause 7
    double greyScale = 5.0; ///< GS, 1 to 5, clause 8
    Grade grade = Grade::best();
};

/// A colour without chroma has hue 0, as the formula gives it. Mean hue and chroma of the two give D, which moves part
/// of the chroma difference; ΔE_F = √(ΔL*² + ΔC_F² + ΔH_F²); GS = 5 − ΔE_F/1.7 up to 3.4, then 5 − log2(ΔE_F/0.85),
/// never below 1. The grade is the step of A02 nearest to ΔE_F, half way the worse: the limits
/// 0.40, 1.25, 2.10, 2.95, 4.10, 5.80, 8.20, 11.60 are the middles of that scale.
[[nodiscard]] tl::expected<InstrumentalChange, ColourFault> instrumentalChange(const Lab& original,
                                                                               const Lab& treated) noexcept;

/// ISO 105-A04:1989, instrumental assessment of staining of adjacent cloth.
struct InstrumentalStaining final {
    double deltaEgs = 0.0; ///< ΔE_GS = ΔE*ab − 0.4·√(ΔE*ab² − ΔL*²)
    double ssr = 5.0;      ///< staining scale rating, 5 and below; under 1 past the last step of the scale
    Grade grade = Grade::best();
};

/// SSR = 6.1 − 1.45·ln ΔE_GS; where that exceeds 4, 5 − 0.23·ΔE_GS instead; ΔE_GS = 0 gives 5. Not cut at 1.
/// Reported in the bands of clause 6.6: 4.75 and above is 5, 4.25 is 4-5, 3.75 is 4 … 1.25 is 1-2, below it 1; the
/// edge itself belongs to the better grade, within 1e-9.
[[nodiscard]] tl::expected<InstrumentalStaining, ColourFault> instrumentalStaining(const Lab& unstained,
                                                                                   const Lab& stained) noexcept;

/// The same from ΔE*ab and its lightness part. Refused: not finite, below 0, |ΔL*| above ΔE*ab by more than 1e-9.
[[nodiscard]] tl::expected<InstrumentalStaining, ColourFault> stainingRating(double cielabDifference,
                                                                             double lightnessPart) noexcept;

/// The band of clause 6.6 a rating falls in; refused when not finite or above 5.
[[nodiscard]] tl::expected<Grade, ColourFault> stainingBand(double ssr) noexcept;

} // namespace holdfast::analytics
