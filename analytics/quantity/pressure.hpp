#pragma once

#include <cmath>
#include <compare>

namespace holdfast::analytics {

/// Units a barometer or a weather report gives. A hectopascal is a millibar.
enum class PressureUnit { kilopascal, hectopascal, inchOfMercury, millimetreOfMercury };

/// Pascals in one of the unit: conventional mercury at 0 °C, NIST SP 811 (2008), B.8.
[[nodiscard]] constexpr double pascalsIn(PressureUnit unit) noexcept {
    switch (unit) {
    case PressureUnit::kilopascal:
        return 1000.0;
    case PressureUnit::hectopascal:
        return 100.0;
    case PressureUnit::inchOfMercury:
        return 3386.389;
    case PressureUnit::millimetreOfMercury:
        return 133.3224;
    }
    return 1.0;
}

/// A difference or uncertainty of pressure.
class PressureDifference final {
public:
    constexpr PressureDifference() noexcept = default;
    [[nodiscard]] static constexpr PressureDifference fromPascal(double pascals) noexcept {
        return PressureDifference{pascals};
    }
    [[nodiscard]] static constexpr PressureDifference fromKilopascal(double kilopascals) noexcept {
        return PressureDifference{kilopascals * 1000.0};
    }
    [[nodiscard]] constexpr double pascals() const noexcept { return m_pascals; }
    [[nodiscard]] constexpr double kilopascals() const noexcept { return m_pascals / 1000.0; }
    [[nodiscard]] bool isFinite() const noexcept { return std::isfinite(m_pascals); }
    [[nodiscard]] constexpr PressureDifference magnitude() const noexcept {
        return PressureDifference{m_pascals < 0 ? -m_pascals : m_pascals};
    }
    constexpr auto operator<=>(const PressureDifference&) const noexcept = default;
    friend constexpr PressureDifference operator*(PressureDifference a, double factor) noexcept {
        return PressureDifference{a.m_pascals * factor};
    }
    friend constexpr PressureDifference operator/(PressureDifference a, double divisor) noexcept {
        return PressureDifference{a.m_pascals / divisor};
    }

private:
    constexpr explicit PressureDifference(double pascals) noexcept : m_pascals{pascals} {}
    double m_pascals = 0.0;
};

/// An absolute pressure; may hold one that is not finite or not positive, as typed.
class Pressure final {
public:
    [[nodiscard]] static constexpr Pressure fromPascal(double pascals) noexcept { return Pressure{pascals}; }
    [[nodiscard]] static constexpr Pressure fromKilopascal(double kilopascals) noexcept {
        return Pressure{kilopascals * 1000.0};
    }
    [[nodiscard]] static constexpr Pressure from(double value, PressureUnit unit) noexcept {
        return Pressure{value * pascalsIn(unit)};
    }
    [[nodiscard]] constexpr double pascals() const noexcept { return m_pascals; }
    [[nodiscard]] constexpr double kilopascals() const noexcept { return m_pascals / 1000.0; }
    [[nodiscard]] constexpr double in(PressureUnit unit) const noexcept { return m_pascals / pascalsIn(unit); }
    [[nodiscard]] bool isFinite() const noexcept { return std::isfinite(m_pascals); }

    constexpr auto operator<=>(const Pressure&) const noexcept = default;
    friend constexpr PressureDifference operator-(Pressure a, Pressure b) noexcept {
        return PressureDifference::fromPascal(a.m_pascals - b.m_pascals);
    }
    friend constexpr Pressure operator+(Pressure a, PressureDifference d) noexcept {
        return Pressure{a.m_pascals + d.pascals()};
    }
    friend constexpr Pressure operator-(Pressure a, PressureDifference d) noexcept {
        return Pressure{a.m_pascals - d.pascals()};
    }

private:
    constexpr explicit Pressure(double pascals) noexcept : m_pascals{pascals} {}
    double m_pascals;
};

} // namespace holdfast::analytics
