#include "analytics/metrology/aim.hpp"

#include "analytics/metrology/conformance.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

constexpr double kGuardsAboveLower = 2.5;
constexpr double kGuardsAboveLowerWithBleed = 1.5;

bool isGuard(TemperatureDifference guard) noexcept {
    return guard.isFinite() && guard >= TemperatureDifference{};
}

bool isSound(const AimRequest& r) noexcept {
    return r.lower.isFinite() && isGuard(r.guardLower) &&
           (!r.hardUpper || (r.hardUpper->isFinite() && isGuard(r.guardHard))) &&
           (!r.bleedUpper || (r.bleedUpper->isFinite() && isGuard(r.guardBleed)));
}

/// Room between a bottom and a top that may be open.
struct Room final {
    Temperature bottom;
    std::optional<Temperature> top;
    [[nodiscard]] bool isEmpty() const noexcept { return top && !atLeast(*top, bottom); }
    [[nodiscard]] Temperature middle() const noexcept { return bottom + (*top - bottom) / 2.0; }
    [[nodiscard]] bool holds(Temperature t) const noexcept { return !top || atMost(t, *top); }
};

/// Chance that a normal value around `at` stays above `low` and below each ceiling.
class Chance final {
public:
    Chance(Temperature at, double z) noexcept : m_at{at}, m_z{z} {}
    void above(Temperature low, TemperatureDifference guard) noexcept {
        m_below = 1.0 - within(guard, {low, std::nullopt});
    }
    void below(Temperature high, TemperatureDifference guard) noexcept {
        m_over = std::max(m_over, 1.0 - within(guard, {std::nullopt, high}));
    }
    [[nodiscard]] Probability value() const noexcept {
        return Probability::fromFraction(std::max(0.0, 1.0 - m_below - m_over));
    }

private:
    [[nodiscard]] double within(TemperatureDifference guard, const Limits& limits) const noexcept {
        const auto chance = conformanceProbability(m_at, guard / m_z, limits);
        return chance ? chance->fraction() : 0.0;
    }

    Temperature m_at;
    double m_z;
    double m_below = 0.0;
    double m_over = 0.0;
};

} // namespace

std::optional<Aim> aimFor(const AimRequest& request) noexcept {
    if (!isSound(request)) {
        return std::nullopt;
    }
    Room withoutBleed{request.lower + request.guardLower, std::nullopt};
    if (request.hardUpper) {
        withoutBleed.top = *request.hardUpper - request.guardHard;
    }
    Room room = withoutBleed;
    if (request.bleedUpper) {
        const auto bleedTop = *request.bleedUpper - request.guardBleed;
        room.top = room.top ? std::min(*room.top, bleedTop) : bleedTop;
    }
    if (!room.isEmpty()) {
        const auto high = request.lower + request.guardLower * kGuardsAboveLower;
        const bool middleIsLower = room.top && room.middle() < high;
        return middleIsLower ? Aim{room.middle(), AimRule::middle} : Aim{high, AimRule::aboveLower};
    }
    if (withoutBleed.isEmpty()) {
        return std::nullopt;
    }
    const auto low = request.lower + request.guardLower * kGuardsAboveLowerWithBleed;
    return Aim{withoutBleed.holds(low) ? low : withoutBleed.middle(), AimRule::bleedOnly};
}

std::optional<AimChance> chanceAt(const AimRequest& request, const Aim& aim, const GuardSetting& setting) noexcept {
    const double z = setting.z();
    if (!isSound(request) || !aim.at.isFinite() || !std::isfinite(z)) {
        return std::nullopt;
    }
    Chance conforming{aim.at, z};
    Chance proven{aim.at, z};
    const auto ceiling = [&](const std::optional<Temperature>& upper, TemperatureDifference guard) {
        if (upper) {
            conforming.below(*upper, guard);
            proven.below(*upper - guard, guard);
        }
    };
    conforming.above(request.lower, request.guardLower);
    proven.above(request.lower + request.guardLower, request.guardLower);
    ceiling(request.hardUpper, request.guardHard);
    if (aim.rule != AimRule::bleedOnly) {
        ceiling(request.bleedUpper, request.guardBleed);
    }
    return AimChance{conforming.value(), proven.value()};
}

} // namespace holdfast::analytics
