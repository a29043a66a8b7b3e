#include "kiosk/ledger/uuid.hpp"

#include <cstddef>

namespace holdfast::kiosk::ledger {

namespace {

constexpr std::uint64_t timeMask = 0xffff'ffff'ffffULL;

bool isHyphenPlace(std::size_t place) {
    return place == 8 || place == 13 || place == 18 || place == 23;
}

/// Adds one to the 74 bits; false if they were all ones (then they are all zero).
bool countUp(UuidRandom& random) {
    for (std::size_t i = random.size(); i-- > 0;) {
        const unsigned full = i == 0 ? 0x0fU : i == 2 ? 0x3fU : 0xffU;
        const unsigned value = (random[i] & full) + 1U;
        random[i] = static_cast<std::uint8_t>(value & full);
        if (value <= full) {
            return true;
        }
    }
    return false;
}

} // namespace

std::string uuid7(std::uint64_t unixMilliseconds, const UuidRandom& random) {
    std::array<std::uint8_t, 16> bytes{};
    for (std::size_t i = 0; i < 6; ++i) {
        bytes[i] = static_cast<std::uint8_t>((unixMilliseconds >> (8 * (5 - i))) & 0xff);
    }
    for (std::size_t i = 0; i < random.size(); ++i) {
        bytes[6 + i] = random[i];
    }
    bytes[6] = static_cast<std::uint8_t>(0x70 | (bytes[6] & 0x0f));
    bytes[8] = static_cast<std::uint8_t>(0x80 | (bytes[8] & 0x3f));

    constexpr std::string_view digits = "0123456789abcdef";
    std::string text;
    text.reserve(36);
    for (const std::uint8_t byte : bytes) {
        if (isHyphenPlace(text.size())) {
            text += '-';
        }
        text += digits[byte >> 4];
        text += digits[byte & 0xf];
    }
    return text;
}

bool isUuid7(std::string_view text) {
    if (text.size() != 36) {
        return false;
    }
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char sign = text[i];
        const bool digit = (sign >= '0' && sign <= '9') || (sign >= 'a' && sign <= 'f');
        if (isHyphenPlace(i) ? sign != '-' : !digit) {
            return false;
        }
    }
    return text[14] == '7' && std::string_view{"89ab"}.find(text[19]) != std::string_view::npos;
}

std::string UuidSequence::next(std::uint64_t unixMilliseconds, const UuidRandom& random) {
    const std::uint64_t now = unixMilliseconds & timeMask;
    if (!m_started || now > m_milliseconds) {
        m_started = true;
        m_milliseconds = now;
        m_random = random;
    } else if (!countUp(m_random)) {
        ++m_milliseconds;
    }
    return uuid7(m_milliseconds, m_random);
}

} // namespace holdfast::kiosk::ledger
