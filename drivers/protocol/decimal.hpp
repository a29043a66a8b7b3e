#pragma once

#include "drivers/protocol/protocol_fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <string_view>

namespace holdfast::drivers {

/// A decimal number as it stood in the text: digits × 10^exponent, exactly.
struct Decimal {
    std::int64_t digits = 0;
    int exponent = 0;
    [[nodiscard]] double value() const noexcept;
};

/// Sign, digits, point, digits: "+0160.4", "-.5", "12.". No exponent, no blanks, no words; at most fifteen significant
/// digits, so that a double holds them all. `point` is '.' or ','.
[[nodiscard]] tl::expected<Decimal, ProtocolFault> parseDecimal(std::string_view text, char point = '.');

/// How many steps the number is, rounded to the nearest; finerThanStep if `exact` and the number is no multiple.
/// numberTooLarge above 10^15 steps. `step` must be above 0 (asserted).
[[nodiscard]] tl::expected<std::int64_t, ProtocolFault> toCounts(double value, double step, bool exact);

} // namespace holdfast::drivers
