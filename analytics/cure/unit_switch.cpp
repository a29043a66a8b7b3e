#include "analytics/cure/unit_switch.hpp"

namespace holdfast::analytics::tracing {

namespace {

constexpr double kShareOfValue = 0.01;
constexpr Duration kUnseen{2.0};

// The same number read in the other unit; the quantity types do not help here, since neither unit is known to be true.
double convertUp(double number) {
    return number * 9.0 / 5.0 + 32.0;
}
double convertDown(double number) {
    return (number - 32.0) * 5.0 / 9.0;
}

} // namespace

bool isUnitSwitch(const Row& from, const Row& to, TemperatureUnit unit, HeatingRate filmRate) noexcept {
    const double before = from.indicated.in(unit);
    const double now = to.indicated.in(unit);
    const Duration step{std::max(0.0, (to.at - from.at).count())};
    const TemperatureDifference change = filmRate * step;
    const auto matches = [now](double converted, double allowed) {
        return std::abs(now - converted) <= kShareOfValue * std::abs(converted) + allowed + kDecisionTolerance;
    };
    return matches(convertUp(before), change.fahrenheit()) || matches(convertDown(before), change.celsius());
}

bool leavesUnitInDoubt(const Row& from, const Row& to, TemperatureUnit unit, const TraceRules& rules) noexcept {
    if (atMost(rules.passFrom, from.indicated) || atLeast(kUnseen, to.at - from.at)) {
        return false;
    }
    const double before = from.indicated.in(unit);
    const double now = to.indicated.in(unit);
    const double stay = std::abs(now - before);
    return std::abs(now - convertUp(before)) < stay || std::abs(now - convertDown(before)) < stay;
}

} // namespace holdfast::analytics::tracing
