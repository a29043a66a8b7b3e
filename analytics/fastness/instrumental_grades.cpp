#include "analytics/fastness/angles.hpp"
#include "analytics/fastness/grey_scale.hpp"
#include "analytics/fastness/same.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

/// ISO 105-A05 clause 7: the part of the chroma difference taken out, most of it near hue 280°.
double bluePart(double chromaStep, double meanChroma, double meanHueAngle) noexcept {
    const double away = std::abs(meanHueAngle - 280.0);
    const double x = square((away <= 180.0 ? away : 360.0 - away) / 30.0);
    return chromaStep * meanChroma * std::exp(-x) / 100.0;
}

double deltaEf(const Lab& original, const Lab& treated) noexcept {
    const double co = std::hypot(original.a, original.b);
    const double ct = std::hypot(treated.a, treated.b);
    const double ho = hueDegrees(original.a, original.b);
    const double ht = hueDegrees(treated.a, treated.b);
    const double mean = (co + ct) / 2.0;
    const double d = bluePart(ct - co, mean, meanHue(ho, ht));
    const double hueDifference = 2.0 * std::sqrt(co * ct) * std::sin(radians(hueStep(ho, ht) / 2.0));
    const double c = (ct - co - d) / (1.0 + square(20.0 * mean / 1000.0));
    const double h = (hueDifference - d) / (1.0 + square(10.0 * mean / 1000.0));
    return std::hypot(treated.l - original.l, c, h);
}

double greyScaleOf(double ef) noexcept {
    const double gs = ef <= 3.4 ? 5.0 - ef / 1.7 : 5.0 - std::log2(ef / 0.85);
    return std::max(1.0, gs);
}

double ratingOf(double egs) noexcept {
    if (egs <= 0.0)
        return 5.0;
    const double logarithmic = 6.1 - 1.45 * std::log(egs);
    return logarithmic > 4.0 ? 5.0 - 0.23 * egs : logarithmic;
}

} // namespace

tl::expected<InstrumentalChange, ColourFault> instrumentalChange(const Lab& original, const Lab& treated) noexcept {
    for (const auto& colour : {original, treated})
        if (const auto fault = faultOf(colour))
            return tl::unexpected(*fault);
    const double ef = deltaEf(original, treated);
    const auto grade = changeGrade(ef);
    if (!grade)
        return tl::unexpected(grade.error());
    return InstrumentalChange{ef, greyScaleOf(ef), *grade};
}

tl::expected<Grade, ColourFault> stainingBand(double ssr) noexcept {
    if (!std::isfinite(ssr))
        return tl::unexpected(ColourFault::notFinite);
    if (ssr > 5.0 + kSame)
        return tl::unexpected(ColourFault::differenceOutOfRange);
    std::size_t step = 0;
    while (step + 1 < Grade::kSteps && ssr >= Grade::fromStep(step + 1).number() - 0.25 - kSame)
        ++step;
    return Grade::fromStep(step);
}

tl::expected<InstrumentalStaining, ColourFault> stainingRating(double cielabDifference, double lightnessPart) noexcept {
    if (!std::isfinite(cielabDifference) || !std::isfinite(lightnessPart))
        return tl::unexpected(ColourFault::notFinite);
    if (cielabDifference < 0.0 || std::abs(lightnessPart) > cielabDifference + kSame)
        return tl::unexpected(ColourFault::differenceOutOfRange);
    const double colourPart = std::sqrt(std::max(0.0, square(cielabDifference) - square(lightnessPart)));
    const double egs = cielabDifference - 0.4 * colourPart;
    const double ssr = ratingOf(egs);
    const auto grade = stainingBand(ssr);
    if (!grade)
        return tl::unexpected(grade.error());
    return InstrumentalStaining{egs, ssr, *grade};
}

tl::expected<InstrumentalStaining, ColourFault> instrumentalStaining(const Lab& unstained,
                                                                     const Lab& stained) noexcept {
    const auto difference = cielabDifference(unstained, stained);
    if (!difference)
        return tl::unexpected(difference.error());
    return stainingRating(*difference, stained.l - unstained.l);
}

} // namespace holdfast::analytics
