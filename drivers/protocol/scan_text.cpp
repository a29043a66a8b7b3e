#include "drivers/protocol/scan_text.hpp"

#include <cstdint>
#include <optional>

namespace holdfast::drivers {

namespace {

/// Takes one UTF-8 character off the front (RFC 3629, table in section 4).
std::optional<char32_t> takeCharacter(std::string_view& bytes) noexcept {
    const auto byteAt = [&bytes](std::size_t i) { return static_cast<std::uint8_t>(bytes[i]); };
    const std::uint8_t lead = byteAt(0);
    if (lead < 0x80) {
        bytes.remove_prefix(1);
        return lead;
    }
    const std::size_t length = lead >= 0xF0 ? 4 : lead >= 0xE0 ? 3 : 2;
    if (lead < 0xC2 || lead > 0xF4 || bytes.size() < length) {
        return std::nullopt;
    }
    char32_t character = lead & (0xFFU >> (length + 1));
    for (std::size_t i = 1; i < length; ++i) {
        if ((byteAt(i) & 0xC0U) != 0x80U) {
            return std::nullopt;
        }
        character = (character << 6U) | (byteAt(i) & 0x3FU);
    }
    const bool overlong = (length == 3 && character < 0x800) || (length == 4 && character < 0x10000);
    const bool surrogate = character >= 0xD800 && character <= 0xDFFF;
    if (overlong || surrogate || character > 0x10FFFF) {
        return std::nullopt;
    }
    bytes.remove_prefix(length);
    return character;
}

bool isControl(char32_t character) noexcept {
    return character < 0x20 || (character >= 0x7F && character < 0xA0) || character == 0x2028 || character == 0x2029;
}

} // namespace

tl::expected<std::string, ScanFault> checkScan(std::string_view bytes) {
    const auto first = bytes.find_first_not_of(" \t\r\n");
    if (first == std::string_view::npos) {
        return tl::unexpected(ScanFault::empty);
    }
    const std::string_view text = bytes.substr(first, bytes.find_last_not_of(" \t\r\n") - first + 1);
    std::string_view rest = text;
    for (std::size_t count = 1; !rest.empty(); ++count) {
        if (count > kLongestScan) {
            return tl::unexpected(ScanFault::tooLong);
        }
        const auto character = takeCharacter(rest);
        if (!character) {
            return tl::unexpected(ScanFault::notUtf8);
        }
        if (isControl(*character)) {
            return tl::unexpected(ScanFault::controlSign);
        }
    }
    return std::string{text};
}

} // namespace holdfast::drivers
