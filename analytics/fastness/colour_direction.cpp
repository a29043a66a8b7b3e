#include "analytics/fastness/colour_direction.hpp"

#include "analytics/fastness/angles.hpp"
#include "analytics/fastness/same.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

constexpr Lab kMidGrey{50.0, 0.0, 0.0};
constexpr Lab kYellow{0.0, 0.0, 1.0};

using Candidates = std::array<MoveCandidate, 3>;

Lab minus(const Lab& x, const Lab& y) noexcept {
    return {x.l - y.l, x.a - y.a, x.b - y.b};
}
double dot(const Lab& x, const Lab& y) noexcept {
    return x.l * y.l + x.a * y.a + x.b * y.b;
}
double sizeOf(const Lab& x) noexcept {
    return std::hypot(x.l, x.a, x.b);
}

/// `direction` need not be a unit vector; too short a one points nowhere.
MoveCandidate candidate(ColourMove move, const Lab& change, const Lab& direction, double shortest) noexcept {
    MoveCandidate result{move, sizeOf(direction) > shortest + kSame, 0.0, 180.0};
    if (!result.defined)
        return result;
    result.projection = dot(change, direction) / sizeOf(direction);
    result.angleDegrees = degrees(std::acos(std::clamp(result.projection / sizeOf(change), -1.0, 1.0)));
    return result;
}

Candidates candidatesOf(const ColourMoveRequest& request, const Lab& change) noexcept {
    return {candidate(ColourMove::towardGarment, change, minus(request.garment, request.before), request.limit),
            candidate(ColourMove::towardYellow, change, kYellow, 0.0),
            candidate(ColourMove::towardGrey, change, minus(kMidGrey, request.before), request.limit)};
}

std::optional<ColourFault> faultOf(const ColourMoveRequest& request) noexcept {
    for (const auto& colour : {request.before, request.after, request.garment})
        if (const auto fault = analytics::faultOf(colour))
            return fault;
    if (!std::isfinite(request.limit))
        return ColourFault::notFinite;
    if (request.limit < 0.0)
        return ColourFault::differenceOutOfRange;
    const auto usable = [](double angle) { return angle >= 0.0 && angle <= 90.0; };
    if (!usable(request.rules.angleLimitDegrees) || !usable(request.rules.tieDegrees))
        return ColourFault::settingInvalid;
    return std::nullopt;
}

/// Nearest first, those without a direction last.
Candidates byAngle(Candidates candidates) noexcept {
    std::stable_sort(candidates.begin(), candidates.end(), [](const MoveCandidate& x, const MoveCandidate& y) {
        return x.defined != y.defined ? x.defined : x.angleDegrees < y.angleDegrees;
    });
    return candidates;
}

MoveDoubt doubtOf(const Candidates& nearestFirst, double limit, const MoveRules& rules) noexcept {
    const auto& nearest = nearestFirst[0];
    const auto& second = nearestFirst[1];
    if (!nearest.defined || nearest.angleDegrees > rules.angleLimitDegrees + kSame)
        return MoveDoubt::noDirectionNear;
    if (second.defined && second.angleDegrees - nearest.angleDegrees <= rules.tieDegrees + kSame)
        return MoveDoubt::twoDirectionsNear;
    if (nearest.projection <= limit + kSame)
        return MoveDoubt::projectionNotAboveLimit;
    return MoveDoubt::none;
}

} // namespace

tl::expected<ColourMoveFinding, ColourFault> colourMove(const ColourMoveRequest& request) noexcept {
    if (const auto fault = faultOf(request))
        return tl::unexpected(*fault);
    const Lab change = minus(request.after, request.before);
    ColourMoveFinding finding;
    finding.difference = sizeOf(change);
    if (finding.difference <= request.limit + kSame)
        return finding;
    finding.candidates = candidatesOf(request, change);
    const auto nearestFirst = byAngle(finding.candidates);
    finding.doubt = doubtOf(nearestFirst, request.limit, request.rules);
    finding.move = finding.doubt == MoveDoubt::none ? nearestFirst[0].move : ColourMove::undecided;
    return finding;
}

} // namespace holdfast::analytics
