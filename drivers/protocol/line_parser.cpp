#include "drivers/protocol/line_parser.hpp"

#include "drivers/protocol/decimal.hpp"

#include <algorithm>
#include <vector>

namespace holdfast::drivers {

namespace {

using Fields = std::vector<std::string_view>;

bool isBlank(char sign) noexcept {
    return sign == ' ' || sign == '\t';
}

bool isText(std::string_view line) noexcept {
    return std::all_of(line.begin(), line.end(),
                       [](char sign) { return sign == '\t' || (sign >= ' ' && sign <= '~'); });
}

std::string_view trimmed(std::string_view text) noexcept {
    while (!text.empty() && isBlank(text.front())) {
        text.remove_prefix(1);
    }
    while (!text.empty() && isBlank(text.back())) {
        text.remove_suffix(1);
    }
    return text;
}

Fields splitAtBlanks(std::string_view line) {
    Fields fields;
    while (!(line = trimmed(line)).empty()) {
        const auto end = std::find_if(line.begin(), line.end(), isBlank);
        const auto length = static_cast<std::size_t>(end - line.begin());
        fields.push_back(line.substr(0, length));
        line.remove_prefix(length);
    }
    return fields;
}

Fields splitAt(std::string_view line, char separator) {
    Fields fields;
    for (;;) {
        const auto end = line.find(separator);
        fields.push_back(trimmed(line.substr(0, end)));
        if (end == std::string_view::npos) {
            return fields;
        }
        line.remove_prefix(end + 1);
    }
}

tl::expected<SampleFlag, ProtocolFault> statusFlag(const LineRules& rules, std::string_view word) {
    const auto found = rules.statusWords.find(std::string{word});
    if (found == rules.statusWords.end()) {
        return tl::unexpected(ProtocolFault::unknownStatus);
    }
    return found->second;
}

tl::expected<void, ProtocolFault> readStatus(const LineRules& rules, const Fields& fields, LineReading& reading) {
    if (!rules.fields.status) {
        return {};
    }
    const auto flag = statusFlag(rules, fields[*rules.fields.status]);
    if (!flag) {
        return tl::unexpected(flag.error());
    }
    reading.flags |= *flag;
    return {};
}

tl::expected<void, ProtocolFault> readValue(const LineRules& rules, const Fields& fields, LineReading& reading) {
    const std::string_view text = fields[rules.fields.value];
    const auto word = statusFlag(rules, text);
    if (word && *word != SampleFlag::none) {
        reading.flags |= *word;
        return {};
    }
    const auto number = parseDecimal(text, rules.decimalComma ? ',' : '.');
    if (!number) {
        return tl::unexpected(number.error());
    }
    const auto counts = toCounts(number->value(), rules.scale.step, true);
    if (!counts) {
        return tl::unexpected(counts.error());
    }
    reading.counts = *counts;
    if (!rules.range.contains(number->value())) {
        reading.flags |= SampleFlag::outOfRange;
    }
    return {};
}

tl::expected<void, ProtocolFault> checkUnit(const LineRules& rules, const Fields& fields) {
    if (!rules.fields.unit) {
        return {};
    }
    const auto word = rules.unitWords.find(std::string{fields[*rules.fields.unit]});
    if (word == rules.unitWords.end()) {
        return tl::unexpected(ProtocolFault::unknownUnit);
    }
    if (word->second != rules.scale.unit) {
        return tl::unexpected(ProtocolFault::otherUnit);
    }
    return {};
}

tl::expected<void, ProtocolFault> readSerial(const LineRules& rules, const Fields& fields, LineReading& reading) {
    if (!rules.fields.serial) {
        return {};
    }
    std::string_view text = fields[*rules.fields.serial];
    const std::string_view prefix = rules.fields.serialPrefix;
    if (text.size() <= prefix.size() || text.substr(0, prefix.size()) != prefix) {
        return tl::unexpected(ProtocolFault::missingSerial);
    }
    text.remove_prefix(prefix.size());
    reading.serialNumber = std::string{text};
    return {};
}

std::size_t fieldsNeeded(const LineFields& fields) noexcept {
    return 1 + std::max({fields.value, fields.unit.value_or(0), fields.status.value_or(0), fields.serial.value_or(0)});
}

} // namespace

tl::expected<LineReading, ProtocolFault> parseLine(const LineRules& rules, std::string_view line) {
    if (line.size() > rules.longestLine) {
        return tl::unexpected(ProtocolFault::lineTooLong);
    }
    if (!isText(line)) {
        return tl::unexpected(ProtocolFault::notText);
    }
    const Fields fields = rules.fields.separator == ' ' ? splitAtBlanks(line) : splitAt(line, rules.fields.separator);
    if (fields.size() != rules.fields.count || fields.size() < fieldsNeeded(rules.fields)) {
        return tl::unexpected(ProtocolFault::wrongFields);
    }
    LineReading reading;
    return readSerial(rules, fields, reading)
        .and_then([&] { return checkUnit(rules, fields); })
        .and_then([&] { return readStatus(rules, fields, reading); })
        .and_then([&] { return readValue(rules, fields, reading); })
        .map([&] { return reading; });
}

} // namespace holdfast::drivers
