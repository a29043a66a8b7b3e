#include "analytics/fastness/colour.hpp"

#include <cmath>

namespace holdfast::analytics {

std::optional<ColourFault> faultOf(const Lab& colour) noexcept {
    if (!std::isfinite(colour.l) || !std::isfinite(colour.a) || !std::isfinite(colour.b))
        return ColourFault::notFinite;
    if (colour.l < 0.0 || colour.l > 100.0)
        return ColourFault::lightnessOutOfRange;
    if (std::abs(colour.a) > kLargestChromatic || std::abs(colour.b) > kLargestChromatic)
        return ColourFault::chromaticOutOfRange;
    return std::nullopt;
}

tl::expected<double, ColourFault> cielabDifference(const Lab& reference, const Lab& sample) noexcept {
    for (const auto& colour : {reference, sample})
        if (const auto fault = faultOf(colour))
            return tl::unexpected(*fault);
    return std::hypot(sample.l - reference.l, sample.a - reference.a, sample.b - reference.b);
}

} // namespace holdfast::analytics
