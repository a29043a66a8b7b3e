#include "analytics/fastness/angles.hpp"
#include "analytics/fastness/colour.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

constexpr double k25To7 = 6103515625.0;

/// √(C⁷/(C⁷ + 25⁷)), the step from near-grey to colourful.
double colourfulShare(double chroma) noexcept {
    const double c7 = std::pow(chroma, 7);
    return std::sqrt(c7 / (c7 + k25To7));
}

/// Lightness, chroma and hue with a* stretched near the grey axis.
struct Polar {
    double l;
    double c;
    double h;
};

Polar polar(const Lab& colour, double g) noexcept {
    const double a = (1.0 + g) * colour.a;
    return {colour.l, std::hypot(a, colour.b), hueDegrees(a, colour.b)};
}

struct Means {
    double l;
    double c;
    double h;
};

Means meansOf(const Polar& x, const Polar& y) noexcept {
    const bool grey = x.c * y.c == 0.0;
    return {(x.l + y.l) / 2.0, (x.c + y.c) / 2.0, grey ? x.h + y.h : meanHue(x.h, y.h)};
}

double hueWeighting(double h) noexcept {
    return 1.0 - 0.17 * std::cos(radians(h - 30.0)) + 0.24 * std::cos(radians(2.0 * h)) +
           0.32 * std::cos(radians(3.0 * h + 6.0)) - 0.20 * std::cos(radians(4.0 * h - 63.0));
}

/// Turns the ellipses of blue colours.
double rotation(const Means& mean) noexcept {
    const double turn = (mean.h - 275.0) / 25.0;
    return -std::sin(radians(60.0 * std::exp(-turn * turn))) * 2.0 * colourfulShare(mean.c);
}

double difference(const Polar& x, const Polar& y, const DifferenceWeights& weights) noexcept {
    const bool grey = x.c * y.c == 0.0;
    const double dh = grey ? 0.0 : hueStep(x.h, y.h);
    const Means mean = meansOf(x, y);
    const double fromMiddle = (mean.l - 50.0) * (mean.l - 50.0);
    const double sl = 1.0 + 0.015 * fromMiddle / std::sqrt(20.0 + fromMiddle);
    const double sc = 1.0 + 0.045 * mean.c;
    const double sh = 1.0 + 0.015 * mean.c * hueWeighting(mean.h);
    const double l = (y.l - x.l) / (weights.kL * sl);
    const double c = (y.c - x.c) / (weights.kC * sc);
    const double h = 2.0 * std::sqrt(x.c * y.c) * std::sin(radians(dh / 2.0)) / (weights.kH * sh);
    return std::sqrt(std::max(0.0, l * l + c * c + h * h + rotation(mean) * c * h));
}

bool usable(double weight) noexcept {
    return std::isfinite(weight) && weight > 0.0;
}

} // namespace

tl::expected<double, ColourFault> ciede2000(const Lab& reference, const Lab& sample,
                                            const DifferenceWeights& weights) noexcept {
    for (const auto& colour : {reference, sample})
        if (const auto fault = faultOf(colour))
            return tl::unexpected(*fault);
    if (!usable(weights.kL) || !usable(weights.kC) || !usable(weights.kH))
        return tl::unexpected(ColourFault::settingInvalid);
    const double chroma = (std::hypot(reference.a, reference.b) + std::hypot(sample.a, sample.b)) / 2.0;
    const double g = 0.5 * (1.0 - colourfulShare(chroma));
    return difference(polar(reference, g), polar(sample, g), weights);
}

} // namespace holdfast::analytics
