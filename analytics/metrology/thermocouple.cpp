#include "analytics/metrology/thermocouple.hpp"

#include "analytics/metrology/thermocouple_tables.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

/// mV; the tables print whole microvolts, so their end cells may lie this far beyond the function's.
constexpr double kPrintedRounding = 0.0005;

struct ValueAndSlope final {
    double value;
    double slope;
};

ValueAndSlope polynomial(std::span<const double> coefficients, double x) noexcept {
    ValueAndSlope sum{0.0, 0.0};
    for (auto c = coefficients.rbegin(); c != coefficients.rend(); ++c) {
        sum.slope = sum.slope * x + sum.value;
        sum.value = sum.value * x + *c;
    }
    return sum;
}

/// The last segment that starts at or below x; the first if none does.
template <class Segment>
const Segment& segmentAt(std::span<const Segment> segments, double x) noexcept {
    auto after =
        std::upper_bound(segments.begin(), segments.end(), x, [](double v, const Segment& s) { return v < s.low; });
    return after == segments.begin() ? *after : *std::prev(after);
}

/// E in mV and its slope in mV/°C at t °C, t inside the range.
ValueAndSlope reference(ThermocoupleType type, const ThermocoupleTable& table, double t) noexcept {
    ValueAndSlope e = polynomial(segmentAt(table.reference, t).coefficients, t);
    if (type == ThermocoupleType::k && t >= 0.0) {
        const double offset = t - TypeKExponential::a2;
        const double bump = TypeKExponential::a0 * std::exp(TypeKExponential::a1 * offset * offset);
        e.value += bump;
        e.slope += bump * 2.0 * TypeKExponential::a1 * offset;
    }
    return e;
}

/// Newton's method kept inside [low, high], which is halved whenever a step would leave it.
double solve(ThermocoupleType type, const ThermocoupleTable& table, double emf, double low, double high,
             double start) noexcept {
    constexpr int kSteps = 200;
    constexpr double kResolved = 1e-11; // °C
    double t = start;
    for (int i = 0; i < kSteps && high - low > kResolved; ++i) {
        const auto [value, slope] = reference(type, table, t);
        (value < emf ? low : high) = t;
        const double next = t - (value - emf) / slope;
        const bool inside = next > low && next < high;
        if (inside && std::abs(next - t) <= kResolved) {
            return next;
        }
        t = inside ? next : (low + high) / 2.0;
    }
    return t;
}

} // namespace

MeasuringRange referenceRange(ThermocoupleType type) noexcept {
    const auto table = thermocoupleTable(type);
    return {Temperature::fromCelsius(table.reference.front().low),
            Temperature::fromCelsius(table.reference.back().high)};
}

tl::expected<Emf, ThermocoupleError> emfOf(ThermocoupleType type, Temperature junction) noexcept {
    if (!junction.isFinite()) {
        return tl::unexpected(ThermocoupleError::notFinite);
    }
    const auto [low, high] = referenceRange(type);
    if (junction < low) {
        return tl::unexpected(ThermocoupleError::belowRange);
    }
    if (junction > high) {
        return tl::unexpected(ThermocoupleError::aboveRange);
    }
    return Emf::fromMillivolts(reference(type, thermocoupleTable(type), junction.celsius()).value);
}

tl::expected<Temperature, ThermocoupleError> temperatureOf(ThermocoupleType type, Emf emf) noexcept {
    const double wanted = emf.millivolts();
    if (!std::isfinite(wanted)) {
        return tl::unexpected(ThermocoupleError::notFinite);
    }
    const auto table = thermocoupleTable(type);
    const auto [low, high] = referenceRange(type);
    const double lowest = reference(type, table, low.celsius()).value;
    const double highest = reference(type, table, high.celsius()).value;
    if (wanted < lowest - kPrintedRounding) {
        return tl::unexpected(ThermocoupleError::belowRange);
    }
    if (wanted > highest + kPrintedRounding) {
        return tl::unexpected(ThermocoupleError::aboveRange);
    }
    if (wanted <= lowest || wanted >= highest) {
        return wanted <= lowest ? low : high;
    }
    const auto estimate = inversePolynomial(type, emf);
    const double start = estimate ? estimate->celsius() : (low.celsius() + high.celsius()) / 2.0;
    return Temperature::fromCelsius(
        solve(type, table, wanted, low.celsius(), high.celsius(), std::clamp(start, low.celsius(), high.celsius())));
}

tl::expected<Temperature, ThermocoupleError> inversePolynomial(ThermocoupleType type, Emf emf) noexcept {
    const double wanted = emf.millivolts();
    if (!std::isfinite(wanted)) {
        return tl::unexpected(ThermocoupleError::notFinite);
    }
    const auto segments = thermocoupleTable(type).inverse;
    if (wanted < segments.front().low) {
        return tl::unexpected(ThermocoupleError::belowRange);
    }
    if (wanted > segments.back().high) {
        return tl::unexpected(ThermocoupleError::aboveRange);
    }
    return Temperature::fromCelsius(polynomial(segmentAt(segments, wanted).coefficients, wanted).value);
}

tl::expected<Temperature, ThermocoupleError> compensated(ThermocoupleType type, Emf measured,
                                                         Temperature referenceJunction) noexcept {
    const auto offset = emfOf(type, referenceJunction);
    if (!offset) {
        return tl::unexpected(offset.error());
    }
    return temperatureOf(type, measured + *offset);
}

} // namespace holdfast::analytics
