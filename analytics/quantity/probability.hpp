#pragma once

#include <compare>

namespace holdfast::analytics {

/// A probability or risk between 0 and 1; the maker clamps nothing, so ask isValid() of what a person typed.
class Probability final {
public:
    [[nodiscard]] static constexpr Probability fromFraction(double fraction) noexcept { return Probability{fraction}; }
    [[nodiscard]] static constexpr Probability fromPercent(double percent) noexcept {
        return Probability{percent / 100.0};
    }
    [[nodiscard]] constexpr double fraction() const noexcept { return m_fraction; }
    [[nodiscard]] constexpr double percent() const noexcept { return m_fraction * 100.0; }
    [[nodiscard]] constexpr bool isValid() const noexcept { return m_fraction >= 0.0 && m_fraction <= 1.0; }
    constexpr auto operator<=>(const Probability&) const noexcept = default;

private:
    constexpr explicit Probability(double fraction) noexcept : m_fraction{fraction} {}
    double m_fraction = 0.0;
};

} // namespace holdfast::analytics
