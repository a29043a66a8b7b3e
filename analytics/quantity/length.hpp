#pragma once

#include <cmath>
#include <compare>

namespace holdfast::analytics {

/// A distance; the international foot is 0.3048 m exactly (NIST SP 811, 2008, B.8).
class Length final {
public:
    constexpr Length() noexcept = default;
    [[nodiscard]] static constexpr Length fromMetres(double metres) noexcept { return Length{metres}; }
    [[nodiscard]] static constexpr Length fromFeet(double feet) noexcept { return Length{feet * kFoot}; }
    [[nodiscard]] constexpr double metres() const noexcept { return m_metres; }
    [[nodiscard]] constexpr double feet() const noexcept { return m_metres / kFoot; }
    [[nodiscard]] bool isFinite() const noexcept { return std::isfinite(m_metres); }
    constexpr auto operator<=>(const Length&) const noexcept = default;

private:
    static constexpr double kFoot = 0.3048;
    constexpr explicit Length(double metres) noexcept : m_metres{metres} {}
    double m_metres = 0.0;
};

/// Geometric height above mean sea level, as a map gives it.
class Altitude final {
public:
    [[nodiscard]] static constexpr Altitude fromMetres(double metres) noexcept {
        return Altitude{Length::fromMetres(metres)};
    }
    [[nodiscard]] static constexpr Altitude fromFeet(double feet) noexcept { return Altitude{Length::fromFeet(feet)}; }
    [[nodiscard]] constexpr double metres() const noexcept { return m_above.metres(); }
    [[nodiscard]] constexpr double feet() const noexcept { return m_above.feet(); }
    [[nodiscard]] bool isFinite() const noexcept { return m_above.isFinite(); }
    constexpr auto operator<=>(const Altitude&) const noexcept = default;

private:
    constexpr explicit Altitude(Length above) noexcept : m_above{above} {}
    Length m_above;
};

} // namespace holdfast::analytics
