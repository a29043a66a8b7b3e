#pragma once

#include <tl/expected.hpp>

#include <cstddef>
#include <string>
#include <string_view>

namespace holdfast::drivers {

/// Why a scan was refused; a closed list.
enum class ScanFault {
    empty,
    tooLong,     ///< more than 10,000 characters
    controlSign, ///< a control character inside the text
    unfinished,  ///< no end of line came: the scanner must be set to send one
    notUtf8,     ///< bytes that are no UTF-8: a wrong speed, or a scanner set to another character set
};

inline constexpr std::size_t kLongestScan = 10'000; // characters: a handheld scanner's whole two-dimensional code fits

/// The text of a scan, blanks at either end dropped. Refuses overlong forms and surrogates too (RFC 3629).
[[nodiscard]] tl::expected<std::string, ScanFault> checkScan(std::string_view bytes);

} // namespace holdfast::drivers
