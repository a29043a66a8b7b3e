#include "kiosk/shop/testing/colour_finding.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::kiosk::shop {
namespace {

using analytics::Lab;

constexpr double kDelta = 6.0 / 29.0; ///< ISO/CIE 11664-4

double behindCube(double t) {
    return t > kDelta ? t * t * t : 3.0 * kDelta * kDelta * (t - 4.0 / 29.0);
}

/// One channel of linear light as its code of 8 bits.
int coded(double linear, bool& clipped) {
    constexpr double kOutside = 1e-3; ///< rounding of white and black is no clipping
    clipped = clipped || linear < -kOutside || linear > 1.0 + kOutside;
    const double light = std::clamp(linear, 0.0, 1.0);
    const double code = light <= 0.0031308 ? 12.92 * light : 1.055 * std::pow(light, 1.0 / 2.4) - 0.055;
    return static_cast<int>(std::lround(code * 255.0));
}

} // namespace

std::optional<Lab> meanOf(const std::vector<Lab>& readings) {
    if (readings.empty()) {
        return std::nullopt;
    }
    Lab sum;
    for (const auto& one : readings) {
        sum = {sum.l + one.l, sum.a + one.a, sum.b + one.b};
    }
    const auto n = static_cast<double>(readings.size());
    return Lab{sum.l / n, sum.a / n, sum.b / n};
}

RepeatLimit repeatLimit(const std::vector<Lab>& before, const std::vector<Lab>& after) {
    const std::array<analytics::RepeatReadings, 2> spots{before, after};
    const auto spread = analytics::repeatSpread(spots);
    if (!spread) {
        return {};
    }
    analytics::ChangeLimitRequest request;
    request.spread = *spread;
    request.referenceReadings = before.size();
    request.sampleReadings = after.size();
    const auto limit = analytics::changeLimit(request);
    return limit ? RepeatLimit{*limit, true} : RepeatLimit{};
}

tl::expected<ColourFinding, analytics::ColourFault>
colourFound(const Lab& before, const Lab& after, const std::optional<Lab>& garment, ColourScale scale, double limit) {
    ColourFinding found;
    const auto cielab = analytics::cielabDifference(before, after);
    const auto newer = analytics::ciede2000(before, after);
    if (!cielab || !newer) {
        return tl::unexpected(cielab ? newer.error() : cielab.error());
    }
    found.cielab = *cielab;
    found.ciede2000 = *newer;
    if (scale == ColourScale::staining) {
        const auto staining = analytics::instrumentalStaining(before, after);
        if (!staining) {
            return tl::unexpected(staining.error());
        }
        found.grade = staining->grade;
        found.rating = staining->ssr;
        return found;
    }
    const auto change = analytics::instrumentalChange(before, after);
    if (!change) {
        return tl::unexpected(change.error());
    }
    found.grade = change->grade;
    found.rating = change->greyScale;
    analytics::ColourMoveRequest request;
    request.before = before;
    request.after = after;
    request.garment = garment.value_or(before); // a direction to where it already is does not count
    request.limit = limit;
    const auto move = analytics::colourMove(request);
    if (!move) {
        return tl::unexpected(move.error());
    }
    found.move = *move;
    return found;
}

PatchColour patchOf(const Lab& colour) noexcept {
    const double fy = (colour.l + 16.0) / 116.0;
    const double x = 0.95047 * behindCube(fy + colour.a / 500.0);
    const double y = behindCube(fy);
    const double z = 1.08883 * behindCube(fy - colour.b / 200.0);
    PatchColour patch;
    patch.red = coded(3.2404542 * x - 1.5371385 * y - 0.4985314 * z, patch.clipped);
    patch.green = coded(-0.9692660 * x + 1.8760108 * y + 0.0415560 * z, patch.clipped);
    patch.blue = coded(0.0556434 * x - 0.2040259 * y + 1.0572252 * z, patch.clipped);
    return patch;
}

} // namespace holdfast::kiosk::shop
