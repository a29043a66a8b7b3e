#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <string_view>

namespace holdfast::kiosk::ledger {

/// Randomness for one id: the low 12 bits of the first two bytes (big-endian) and the low 62 bits of the other eight.
using UuidRandom = std::array<std::uint8_t, 10>;

/// UUID version 7 (RFC 9562 section 5.7) in lower case. Only the low 48 bits of the time are used.
[[nodiscard]] std::string uuid7(std::uint64_t unixMilliseconds, const UuidRandom& random);

/// 36 characters, lower-case hexadecimal with hyphens in place, version 7, variant 10.
[[nodiscard]] bool isUuid7(std::string_view text);

/// Gives ids that only ever rise, also within a millisecond and when the clock is set back (RFC 9562 section 6.2,
/// method 2): then the last time is kept and the 74 random bits are counted up. Not for use by several threads at once.
class UuidSequence {
public:
    [[nodiscard]] std::string next(std::uint64_t unixMilliseconds, const UuidRandom& random);

private:
    bool m_started = false;
    std::uint64_t m_milliseconds = 0;
    UuidRandom m_random{};
};

} // namespace holdfast::kiosk::ledger
