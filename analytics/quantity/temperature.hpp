#pragma once

#include <cmath>
#include <compare>

namespace holdfast::analytics {

/// The two units people write temperatures in. Kelvin appears only inside formulas.
enum class TemperatureUnit { celsius, fahrenheit };

/// Two quantities are equal for a decision when they differ by no more than this many kelvin: equality counts as met.
inline constexpr double kDecisionTolerance = 1e-9;

/// A temperature difference: tolerance, guard, margin, correction, uncertainty. Converts by 9/5 only, never with
/// the 32.
class TemperatureDifference final {
public:
    constexpr TemperatureDifference() noexcept = default;
    [[nodiscard]] static constexpr TemperatureDifference fromCelsius(double kelvins) noexcept {
        return TemperatureDifference{kelvins};
    }
    [[nodiscard]] static constexpr TemperatureDifference fromFahrenheit(double degrees) noexcept {
        return TemperatureDifference{degrees * 5.0 / 9.0};
    }
    [[nodiscard]] static constexpr TemperatureDifference from(double value, TemperatureUnit unit) noexcept {
        return unit == TemperatureUnit::celsius ? fromCelsius(value) : fromFahrenheit(value);
    }

    [[nodiscard]] constexpr double celsius() const noexcept { return m_kelvin; }
    [[nodiscard]] constexpr double fahrenheit() const noexcept { return m_kelvin * 9.0 / 5.0; }
    [[nodiscard]] constexpr double in(TemperatureUnit unit) const noexcept {
        return unit == TemperatureUnit::celsius ? celsius() : fahrenheit();
    }
    [[nodiscard]] bool isFinite() const noexcept { return std::isfinite(m_kelvin); }
    [[nodiscard]] constexpr TemperatureDifference magnitude() const noexcept {
        return TemperatureDifference{m_kelvin < 0 ? -m_kelvin : m_kelvin};
    }

    constexpr auto operator<=>(const TemperatureDifference&) const noexcept = default;
    constexpr TemperatureDifference operator-() const noexcept { return TemperatureDifference{-m_kelvin}; }
    constexpr TemperatureDifference& operator+=(TemperatureDifference other) noexcept {
        m_kelvin += other.m_kelvin;
        return *this;
    }
    constexpr TemperatureDifference& operator-=(TemperatureDifference other) noexcept {
        m_kelvin -= other.m_kelvin;
        return *this;
    }
    friend constexpr TemperatureDifference operator+(TemperatureDifference a, TemperatureDifference b) noexcept {
        return a += b;
    }
    friend constexpr TemperatureDifference operator-(TemperatureDifference a, TemperatureDifference b) noexcept {
        return a -= b;
    }
    friend constexpr TemperatureDifference operator*(TemperatureDifference a, double factor) noexcept {
        return TemperatureDifference{a.m_kelvin * factor};
    }
    friend constexpr TemperatureDifference operator*(double factor, TemperatureDifference a) noexcept {
        return a * factor;
    }
    friend constexpr TemperatureDifference operator/(TemperatureDifference a, double divisor) noexcept {
        return TemperatureDifference{a.m_kelvin / divisor};
    }
    /// Ratio of two differences; the caller sees to it that the divisor is not zero.
    friend constexpr double operator/(TemperatureDifference a, TemperatureDifference b) noexcept {
        return a.m_kelvin / b.m_kelvin;
    }

private:
    constexpr explicit TemperatureDifference(double kelvin) noexcept : m_kelvin{kelvin} {}
    double m_kelvin = 0.0;
};

/// A temperature on the Celsius scale inside; °F = °C × 9/5 + 32, K = °C + 273.15 (ITS-90).
/// May hold a value that is not finite (a broken sample): ask isFinite() before comparing.
class Temperature final {
public:
    [[nodiscard]] static constexpr Temperature fromCelsius(double degrees) noexcept { return Temperature{degrees}; }
    [[nodiscard]] static constexpr Temperature fromFahrenheit(double degrees) noexcept {
        return Temperature{(degrees - 32.0) * 5.0 / 9.0};
    }
    [[nodiscard]] static constexpr Temperature fromKelvin(double kelvins) noexcept {
        return Temperature{kelvins - kIcePointKelvin};
    }
    [[nodiscard]] static constexpr Temperature from(double value, TemperatureUnit unit) noexcept {
        return unit == TemperatureUnit::celsius ? fromCelsius(value) : fromFahrenheit(value);
    }

    [[nodiscard]] constexpr double celsius() const noexcept { return m_celsius; }
    [[nodiscard]] constexpr double fahrenheit() const noexcept { return m_celsius * 9.0 / 5.0 + 32.0; }
    [[nodiscard]] constexpr double kelvin() const noexcept { return m_celsius + kIcePointKelvin; }
    [[nodiscard]] constexpr double in(TemperatureUnit unit) const noexcept {
        return unit == TemperatureUnit::celsius ? celsius() : fahrenheit();
    }
    [[nodiscard]] bool isFinite() const noexcept { return std::isfinite(m_celsius); }

    constexpr auto operator<=>(const Temperature&) const noexcept = default;
    friend constexpr TemperatureDifference operator-(Temperature a, Temperature b) noexcept {
        return TemperatureDifference::fromCelsius(a.m_celsius - b.m_celsius);
    }
    friend constexpr Temperature operator+(Temperature a, TemperatureDifference d) noexcept {
        return Temperature{a.m_celsius + d.celsius()};
    }
    friend constexpr Temperature operator-(Temperature a, TemperatureDifference d) noexcept {
        return Temperature{a.m_celsius - d.celsius()};
    }

private:
    static constexpr double kIcePointKelvin = 273.15;
    constexpr explicit Temperature(double celsius) noexcept : m_celsius{celsius} {}
    double m_celsius;
};

/// a ≥ b, equality counting as met within kDecisionTolerance.
[[nodiscard]] constexpr bool atLeast(Temperature a, Temperature b) noexcept {
    return a.celsius() >= b.celsius() - kDecisionTolerance;
}
/// a ≤ b, equality counting as met within kDecisionTolerance.
[[nodiscard]] constexpr bool atMost(Temperature a, Temperature b) noexcept {
    return atLeast(b, a);
}
[[nodiscard]] constexpr bool atLeast(TemperatureDifference a, TemperatureDifference b) noexcept {
    return a.celsius() >= b.celsius() - kDecisionTolerance;
}
[[nodiscard]] constexpr bool atMost(TemperatureDifference a, TemperatureDifference b) noexcept {
    return atLeast(b, a);
}

/// A number with the unit it was typed in; kept as typed, converted only when asked.
struct AuthoredTemperature final {
    double value = 0.0;
    TemperatureUnit unit = TemperatureUnit::celsius;
    [[nodiscard]] constexpr Temperature temperature() const noexcept { return Temperature::from(value, unit); }
    bool operator==(const AuthoredTemperature&) const = default;
};

/// A difference with the unit it was typed in.
struct AuthoredDifference final {
    double value = 0.0;
    TemperatureUnit unit = TemperatureUnit::celsius;
    [[nodiscard]] constexpr TemperatureDifference difference() const noexcept {
        return TemperatureDifference::from(value, unit);
    }
    bool operator==(const AuthoredDifference&) const = default;
};

} // namespace holdfast::analytics
