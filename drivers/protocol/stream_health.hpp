#pragma once

#include "drivers/protocol/protocol_fault.hpp"

#include <array>
#include <cstddef>
#include <string_view>

namespace holdfast::drivers {

/// What a stream that yields no readings looks like.
enum class StreamLook {
    quiet,     ///< too few bytes to tell
    text,      ///< text, and no reason to doubt it
    garbled,   ///< text, but line after line is not this instrument's
    noise,     ///< no text: at a wrong speed or parity the bits are cut in other places
    otherUnit, ///< this instrument's lines, in the other unit
};

/// Watches the bytes and lines of one port. A wrong speed is told from a wrong instrument by the share of bytes that no
/// line of text has: a quarter or more of the last 64 (MEM; random bytes have 62 %, text has none).
class StreamHealth final {
public:
    void bytes(std::string_view bytes) noexcept;
    void goodLine() noexcept;
    void badLine(ProtocolFault fault) noexcept;
    /// Forgets everything; for a port just opened.
    void reset() noexcept { *this = StreamHealth{}; }
    [[nodiscard]] StreamLook look() const noexcept;

private:
    static constexpr std::size_t kWindow = 64;
    static constexpr std::size_t kFewest = 16;    // bytes before anything is said
    static constexpr std::size_t kNoLineIn = 512; // bytes of text without one good line
    static constexpr int kBadLines = 5;           // in a row

    std::array<bool, kWindow> m_isNoise{};
    std::size_t m_next = 0;
    std::size_t m_seen = 0;
    std::size_t m_sinceGood = 0;
    int m_badLines = 0;
    ProtocolFault m_lastFault = ProtocolFault::notText;
};

} // namespace holdfast::drivers
