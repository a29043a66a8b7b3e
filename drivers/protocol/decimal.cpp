#include "drivers/protocol/decimal.hpp"

#include <cassert>
#include <cmath>

namespace holdfast::drivers {

namespace {

constexpr int kMostDigits = 15;
constexpr double kMostCounts = 1e15;
constexpr double kStepTolerance = 1e-6; // of one step: a multiple is off by rounding only

} // namespace

double Decimal::value() const noexcept {
    const double scale = std::pow(10.0, std::abs(exponent));
    return exponent < 0 ? static_cast<double>(digits) / scale : static_cast<double>(digits) * scale;
}

tl::expected<Decimal, ProtocolFault> parseDecimal(std::string_view text, char point) {
    Decimal number;
    const bool negative = !text.empty() && text.front() == '-';
    if (negative || (!text.empty() && text.front() == '+')) {
        text.remove_prefix(1);
    }
    bool afterPoint = false;
    bool anyDigit = false;
    for (const char sign : text) {
        if (sign == point && !afterPoint) {
            afterPoint = true;
            continue;
        }
        if (sign < '0' || sign > '9') {
            return tl::unexpected(ProtocolFault::notANumber);
        }
        anyDigit = true;
        number.digits = number.digits * 10 + (sign - '0');
        number.exponent -= afterPoint ? 1 : 0;
        if (number.digits >= static_cast<std::int64_t>(1e15) || number.exponent < -kMostDigits) {
            return tl::unexpected(ProtocolFault::numberTooLarge);
        }
    }
    if (!anyDigit) {
        return tl::unexpected(ProtocolFault::notANumber);
    }
    number.digits = negative ? -number.digits : number.digits;
    return number;
}

tl::expected<std::int64_t, ProtocolFault> toCounts(double value, double step, bool exact) {
    assert(step > 0.0);
    const double steps = value / step;
    if (!(std::abs(steps) <= kMostCounts)) {
        return tl::unexpected(ProtocolFault::numberTooLarge);
    }
    const double rounded = std::round(steps);
    if (exact && std::abs(steps - rounded) > kStepTolerance) {
        return tl::unexpected(ProtocolFault::finerThanStep);
    }
    return static_cast<std::int64_t>(rounded);
}

} // namespace holdfast::drivers
