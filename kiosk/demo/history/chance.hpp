#pragma once

#include <cmath>
#include <cstddef>
#include <cstdint>
#include <numbers>

namespace holdfast::kiosk::demo {

/// Chance that is the same for the same seed on every machine (the standard's distributions are not). SplitMix64 of
/// Steele, Lea and Flood (OOPSLA 2014); normal values by Box and Muller (1958).
class Chance final {
public:
    explicit Chance(std::uint64_t seed) noexcept : m_state{seed} {}

    [[nodiscard]] std::uint64_t bits() noexcept {
        m_state += 0x9E3779B97F4A7C15U;
        auto z = m_state;
        z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
        z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
        return z ^ (z >> 31U);
    }
    /// In [0, 1).
    [[nodiscard]] double uniform() noexcept { return static_cast<double>(bits() >> 11U) * 0x1.0p-53; }
    [[nodiscard]] double between(double low, double high) noexcept { return low + (high - low) * uniform(); }
    /// Both ends inside.
    [[nodiscard]] int between(int low, int high) noexcept {
        return low + static_cast<int>(uniform() * static_cast<double>(high - low + 1));
    }
    [[nodiscard]] bool happens(double probability) noexcept { return uniform() < probability; }
    /// Index below `count`, which is at least 1.
    [[nodiscard]] std::size_t pick(std::size_t count) noexcept {
        return static_cast<std::size_t>(uniform() * static_cast<double>(count));
    }
    /// Mean 0, standard deviation 1.
    [[nodiscard]] double normal() noexcept {
        if (m_hasSpare) {
            m_hasSpare = false;
            return m_spare;
        }
        const double radius = std::sqrt(-2.0 * std::log(1.0 - uniform()));
        const double angle = 2.0 * std::numbers::pi * uniform();
        m_spare = radius * std::sin(angle);
        m_hasSpare = true;
        return radius * std::cos(angle);
    }

private:
    std::uint64_t m_state;
    double m_spare = 0.0;
    bool m_hasSpare = false;
};

} // namespace holdfast::kiosk::demo
