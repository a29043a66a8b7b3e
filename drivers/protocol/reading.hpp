#pragma once

#include <cstdint>

namespace holdfast::drivers {

/// Why an instrument's reading is not to be used; a bit mask, several may hold at once.
enum class SampleFlag : std::uint8_t {
    none = 0,
    openCircuit = 1,     ///< the instrument says that its thermocouple is broken or not plugged in
    outOfRange = 2,      ///< over or under what the instrument states it can read
    instrumentFault = 4, ///< the instrument reports a fault of its own
    unreadable = 8,      ///< a line came, but not one this instrument would send; its counts are 0
};

[[nodiscard]] constexpr SampleFlag operator|(SampleFlag a, SampleFlag b) noexcept {
    return static_cast<SampleFlag>(static_cast<std::uint8_t>(a) | static_cast<std::uint8_t>(b));
}
[[nodiscard]] constexpr SampleFlag operator&(SampleFlag a, SampleFlag b) noexcept {
    return static_cast<SampleFlag>(static_cast<std::uint8_t>(a) & static_cast<std::uint8_t>(b));
}
constexpr SampleFlag& operator|=(SampleFlag& a, SampleFlag b) noexcept {
    return a = a | b;
}
[[nodiscard]] constexpr bool has(SampleFlag flags, SampleFlag asked) noexcept {
    return (flags & asked) != SampleFlag::none;
}

/// The unit an instrument sends its numbers in.
enum class ReadingUnit { celsius, fahrenheit };

/// What one count of a sample stands for: `step` degrees of `unit`, without offset.
struct CountScale {
    double step = 1.0;
    ReadingUnit unit = ReadingUnit::celsius;
    bool operator==(const CountScale&) const = default;
};

} // namespace holdfast::drivers
