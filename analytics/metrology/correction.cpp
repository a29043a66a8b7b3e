#include "analytics/metrology/correction.hpp"

#include "analytics/metrology/instrument_faults.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

using Points = std::vector<CalibrationPoint>;

/// First point at or above `at`.
Points::const_iterator pointAbove(const Points& points, Temperature at) noexcept {
    return std::lower_bound(points.begin(), points.end(), at,
                            [](const CalibrationPoint& p, Temperature t) { return p.at < t; });
}

/// The straight line through two points, read at `at`.
TemperatureDifference lineAt(const CalibrationPoint& a, const CalibrationPoint& b, Temperature at) noexcept {
    return a.correction + (b.correction - a.correction) * ((at - a.at) / (b.at - a.at));
}

bool isNear(Temperature a, Temperature b) noexcept {
    return atMost((a - b).magnitude(), kPointReach);
}

} // namespace

bool isUsable(const Certificate& certificate) {
    return faultsOf(certificate).empty();
}

bool isInDate(const Certificate& certificate, Date today) noexcept {
    return certificate.date <= today && today <= certificate.due;
}

TemperatureDifference correctionFrom(const Certificate& certificate, Temperature raw) noexcept {
    const auto& points = certificate.points;
    const auto above = pointAbove(points, raw);
    if (above == points.begin()) {
        return points.front().correction;
    }
    return above == points.end() ? points.back().correction : lineAt(*std::prev(above), *above, raw);
}

TemperatureDifference expandedUncertaintyFrom(const Certificate& certificate, Temperature at) noexcept {
    const auto& points = certificate.points;
    const auto above = pointAbove(points, at);
    if (above == points.begin()) {
        return points.front().expandedUncertainty;
    }
    const auto below = std::prev(above)->expandedUncertainty;
    return above == points.end() ? below : std::max(below, above->expandedUncertainty);
}

std::optional<TemperatureDifference> extensionError(const Certificate& certificate, Temperature at) noexcept {
    const auto& points = certificate.points;
    if (points.size() < 2) {
        return std::nullopt;
    }
    if (at < points.front().at) {
        return (lineAt(points[0], points[1], at) - points.front().correction).magnitude();
    }
    if (at > points.back().at) {
        return (lineAt(points[points.size() - 2], points.back(), at) - points.back().correction).magnitude();
    }
    return TemperatureDifference{};
}

bool hasPointNear(const Certificate& certificate, Temperature at) noexcept {
    const auto& points = certificate.points;
    const auto above = pointAbove(points, at);
    return (above != points.end() && isNear(above->at, at)) ||
           (above != points.begin() && isNear(std::prev(above)->at, at));
}

TemperatureDifference largestCorrection(const Certificate& certificate) noexcept {
    TemperatureDifference largest;
    for (const auto& point : certificate.points) {
        largest = std::max(largest, point.correction.magnitude());
    }
    return largest;
}

std::optional<TemperatureDifference> driftBetween(const Certificate& older, const Certificate& newer,
                                                  Temperature limit) noexcept {
    TemperatureDifference largest;
    bool sharedNearLimit = false;
    for (const auto& point : newer.points) {
        if (!hasPointNear(older, point.at)) {
            continue;
        }
        largest = std::max(largest, (point.correction - correctionFrom(older, point.at)).magnitude());
        sharedNearLimit = sharedNearLimit || isNear(point.at, limit);
    }
    return sharedNearLimit ? std::optional{largest} : std::nullopt;
}

} // namespace holdfast::analytics
