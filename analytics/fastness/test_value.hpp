#pragma once

#include "analytics/fastness/pass_rule.hpp"

#include <cmath>

/// What the rule and its judge both ask of a value and a place.
namespace holdfast::analytics {

[[nodiscard]] inline ValueKind kindOf(const TestValue& value) noexcept {
    return static_cast<ValueKind>(value.index());
}

/// The value on a line, for comparing two of one kind: grade and length as their number, a crack class by its order.
[[nodiscard]] inline double onLine(const TestValue& value) noexcept {
    struct Visitor {
        double operator()(Grade grade) const noexcept { return grade.number(); }
        double operator()(CrackClass seen) const noexcept { return static_cast<double>(seen); }
        double operator()(RelativeLength length) const noexcept { return length.fraction(); }
        double operator()(double number) const noexcept { return number; }
        double operator()(bool yes) const noexcept { return yes ? 1.0 : 0.0; }
    };
    return std::visit(Visitor{}, value);
}

[[nodiscard]] inline bool isFinite(const TestValue& value) noexcept {
    return std::isfinite(onLine(value));
}

[[nodiscard]] inline bool isPossible(const TestPlace& place) noexcept {
    if (place.cycle && *place.cycle < 0)
        return false;
    return !place.elongation || (place.elongation->isFinite() && place.elongation->fraction() > 0.0);
}

} // namespace holdfast::analytics
