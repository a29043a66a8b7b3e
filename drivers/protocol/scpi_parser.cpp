#include "drivers/protocol/scpi_parser.hpp"

#include "drivers/protocol/decimal.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <vector>

namespace holdfast::drivers {

namespace {

constexpr double kOverload = 9.9e37;
constexpr double kNotANumber = 9.91e37;
constexpr int kMostExponent = 99;
constexpr std::size_t kMostNumberSigns = 40;

bool isPrintable(std::string_view text) noexcept {
    return std::all_of(text.begin(), text.end(), [](char sign) { return sign >= ' ' && sign <= '~'; });
}

/// Takes the sign and the digits at the front of `text`; how many digits there were.
std::size_t takeDigits(std::string_view& text) noexcept {
    const auto end = std::find_if(text.begin(), text.end(), [](char sign) { return sign < '0' || sign > '9'; });
    const auto count = static_cast<std::size_t>(end - text.begin());
    text.remove_prefix(count);
    return count;
}

bool take(std::string_view& text, std::string_view anyOf) noexcept {
    if (text.empty() || anyOf.find(text.front()) == std::string_view::npos) {
        return false;
    }
    text.remove_prefix(1);
    return true;
}

tl::expected<NumericForm, ProtocolFault> formOf(std::string_view text) {
    const auto bad = tl::unexpected(ProtocolFault::notANumber);
    take(text, "+-");
    if (takeDigits(text) == 0) {
        return bad;
    }
    if (text.empty()) {
        return NumericForm::nr1;
    }
    if (!take(text, ".") || takeDigits(text) == 0) {
        return bad;
    }
    if (text.empty()) {
        return NumericForm::nr2;
    }
    if (!take(text, "E") || !take(text, "+-") || takeDigits(text) == 0 || !text.empty()) {
        return bad;
    }
    return NumericForm::nr3;
}

ScpiSpecial specialOf(double value) noexcept {
    const auto near = [value](double mark) { return std::abs(value - mark) <= 1e-6 * std::abs(mark); };
    if (near(kOverload)) {
        return ScpiSpecial::overHigh;
    }
    if (near(-kOverload)) {
        return ScpiSpecial::overLow;
    }
    return near(kNotANumber) ? ScpiSpecial::notANumber : ScpiSpecial::none;
}

std::string withoutOuterSpaces(std::string_view text) {
    const auto first = text.find_first_not_of(' ');
    return first == std::string_view::npos ? std::string{}
                                           : std::string{text.substr(first, text.find_last_not_of(' ') - first + 1)};
}

} // namespace

tl::expected<ScpiNumber, ProtocolFault> parseScpiNumber(std::string_view answer) {
    const auto form = formOf(answer);
    if (!form) {
        return tl::unexpected(form.error());
    }
    if (answer.front() == '+') {
        answer.remove_prefix(1);
    }
    ScpiNumber number;
    number.form = *form;
    const auto result = std::from_chars(answer.data(), answer.data() + answer.size(), number.value);
    if (result.ec != std::errc{} || answer.size() > kMostNumberSigns ||
        std::abs(number.value) > std::pow(10.0, kMostExponent)) {
        return tl::unexpected(ProtocolFault::numberTooLarge);
    }
    number.special = specialOf(number.value);
    return number;
}

tl::expected<ScpiIdentity, ProtocolFault> parseScpiIdentity(std::string_view answer) {
    if (!isPrintable(answer)) {
        return tl::unexpected(ProtocolFault::notText);
    }
    std::vector<std::string> fields(1);
    for (const char sign : answer) {
        if (sign == ',') {
            fields.emplace_back();
        } else {
            fields.back().push_back(sign);
        }
    }
    std::transform(fields.begin(), fields.end(), fields.begin(), withoutOuterSpaces);
    if (fields.size() != 4 || fields[0].empty() || fields[1].empty()) {
        return tl::unexpected(ProtocolFault::wrongFields);
    }
    return ScpiIdentity{fields[0], fields[1], fields[2] == "0" ? std::string{} : fields[2], fields[3]};
}

tl::expected<ScpiError, ProtocolFault> parseScpiError(std::string_view answer) {
    if (!isPrintable(answer)) {
        return tl::unexpected(ProtocolFault::notText);
    }
    const auto comma = answer.find(',');
    std::string_view digits = answer.substr(0, comma);
    if (!digits.empty() && digits.front() == '+') {
        digits.remove_prefix(1);
    }
    ScpiError error;
    const auto result = std::from_chars(digits.data(), digits.data() + digits.size(), error.number);
    if (result.ec != std::errc{} || result.ptr != digits.data() + digits.size()) {
        return tl::unexpected(ProtocolFault::notANumber);
    }
    const std::string text =
        comma == std::string_view::npos ? std::string{} : withoutOuterSpaces(answer.substr(comma + 1));
    if (text.size() < 2 || text.front() != '"' || text.back() != '"') {
        return tl::unexpected(ProtocolFault::wrongFields);
    }
    error.text = text.substr(1, text.size() - 2);
    return error;
}

tl::expected<LineReading, ProtocolFault> parseScpiReading(const ScpiRules& rules, std::string_view answer) {
    const auto number = parseScpiNumber(answer);
    if (!number) {
        return tl::unexpected(number.error());
    }
    if (number->special == ScpiSpecial::notANumber) {
        return LineReading{0, SampleFlag::instrumentFault, {}};
    }
    if (number->special != ScpiSpecial::none) {
        return LineReading{0, rules.overload, {}};
    }
    const auto counts = toCounts(number->value, rules.scale.step, false);
    if (!counts) {
        return tl::unexpected(counts.error());
    }
    const bool inside = rules.range.contains(number->value);
    return LineReading{*counts, inside ? SampleFlag::none : SampleFlag::outOfRange, {}};
}

} // namespace holdfast::drivers
