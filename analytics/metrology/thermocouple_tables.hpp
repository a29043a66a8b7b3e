#pragma once

#include "analytics/metrology/instrument.hpp"

#include <span>

/// The published coefficients; used by thermocouple.cpp alone.
namespace holdfast::analytics {

/// E in mV = Σ cᵢ·tⁱ for t in °C between `low` and `high`.
struct ReferenceSegment final {
    double low;
    double high;
    std::span<const double> coefficients;
};

/// t in °C ≈ Σ dᵢ·Eⁱ for E in mV between `low` and `high`.
struct InverseSegment final {
    double low;
    double high;
    std::span<const double> coefficients;
};

/// Segments in ascending order, each starting where the one before ends.
struct ThermocoupleTable final {
    std::span<const ReferenceSegment> reference;
    std::span<const InverseSegment> inverse;
};

/// Type K adds a₀·exp(a₁·(t − a₂)²) mV at and above 0 °C.
struct TypeKExponential final {
    static constexpr double a0 = 0.118597600000e+00;
    static constexpr double a1 = -0.118343200000e-03;
    static constexpr double a2 = 0.126968600000e+03;
};

[[nodiscard]] ThermocoupleTable thermocoupleTable(ThermocoupleType type) noexcept;

} // namespace holdfast::analytics
