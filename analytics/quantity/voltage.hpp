#pragma once

#include <compare>

namespace holdfast::analytics {

/// A thermocouple's electromotive force; millivolts inside, as the reference tables print it.
class Emf final {
public:
    [[nodiscard]] static constexpr Emf fromMillivolts(double millivolts) noexcept { return Emf{millivolts}; }
    [[nodiscard]] constexpr double millivolts() const noexcept { return m_millivolts; }
    constexpr auto operator<=>(const Emf&) const noexcept = default;
    friend constexpr Emf operator+(Emf a, Emf b) noexcept { return Emf{a.m_millivolts + b.m_millivolts}; }
    friend constexpr Emf operator-(Emf a, Emf b) noexcept { return Emf{a.m_millivolts - b.m_millivolts}; }

private:
    constexpr explicit Emf(double millivolts) noexcept : m_millivolts{millivolts} {}
    double m_millivolts = 0.0;
};

} // namespace holdfast::analytics
