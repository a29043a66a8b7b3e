#include "kiosk/shop/stock/form_reader.hpp"

#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::shop {
std::string spanTyped(const std::optional<analytics::Duration>& span, double secondsEach) {
    return span ? numberTyped(span->count() / secondsEach) : std::string{};
}

std::string StockReader::text(const std::string& typed, const std::string& field) {
    auto text = trimmed(typed);
    const auto wrong = textFault(text);
    if (wrong == TextFault::tooLong) {
        fault({StockFaultCause::textTooLong, field, firstSigns(text)});
    } else if (wrong == TextFault::controlSign) {
        fault({StockFaultCause::controlSign, field});
    }
    return text;
}

std::string StockReader::name(const std::string& typed, const std::string& field) {
    auto name = text(typed, field);
    if (name.empty()) {
        fault({StockFaultCause::nameMissing, field});
    }
    return name;
}

std::optional<double> StockReader::number(const std::string& typed, const std::string& field) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto value = numberFrom(text);
    if (!value || *value < 0.0) {
        fault({value ? StockFaultCause::negative : StockFaultCause::notANumber, field, firstSigns(text)});
        return std::nullopt;
    }
    return value;
}

std::optional<double> StockReader::percent(const std::string& typed, const std::string& field) {
    const auto value = number(typed, field);
    constexpr double kAll = 100.0;
    if (value && *value > kAll) {
        fault({StockFaultCause::overHundredPercent, field, firstSigns(trimmed(typed))});
        return std::nullopt;
    }
    return value;
}

std::optional<int> StockReader::whole(const std::string& typed, const std::string& field) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto value = numberFrom(text);
    if (!value || *value < 1.0 || *value > kMostEase || std::floor(*value) != *value) {
        fault({StockFaultCause::notWhole, field, firstSigns(text)});
        return std::nullopt;
    }
    return static_cast<int>(*value);
}

std::optional<analytics::AuthoredTemperature>
StockReader::temperature(const std::string& typed, const std::string& field,
                         const std::optional<analytics::AuthoredTemperature>& before) {
    const auto text = trimmed(typed);
    if (before && text == authoredTyped(before, m_unit)) {
        return before;
    }
    if (text.empty()) {
        return std::nullopt;
    }
    const auto value = numberFrom(text);
    if (!value) {
        fault({StockFaultCause::notANumber, field, firstSigns(text)});
        return std::nullopt;
    }
    const analytics::AuthoredTemperature t{*value, m_unit};
    if (!analytics::atLeast(t.temperature(), analytics::Temperature::fromCelsius(0)) ||
        !analytics::atMost(t.temperature(), kHottestAuthored)) {
        fault({StockFaultCause::temperatureUnlikely, field, firstSigns(text)});
        return std::nullopt;
    }
    return t;
}

std::optional<analytics::Duration> StockReader::span(const std::string& typed, const std::string& field,
                                                     double secondsEach,
                                                     const std::optional<analytics::Duration>& before) {
    if (before && trimmed(typed) == spanTyped(before, secondsEach)) {
        return before;
    }
    const auto value = number(typed, field);
    return value ? std::optional{analytics::Duration{*value * secondsEach}} : std::nullopt;
}

std::optional<analytics::Date> StockReader::date(const std::string& typed, const std::string& field) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto date = records::dateFrom(text);
    if (!date) {
        fault({StockFaultCause::notADate, field, firstSigns(text)});
    }
    return date;
}

bool StockReader::together(const std::vector<std::pair<std::string, std::string>>& fieldsAndTexts) {
    const auto isEmpty = [](const auto& one) { return trimmed(one.second).empty(); };
    if (std::all_of(fieldsAndTexts.begin(), fieldsAndTexts.end(), isEmpty)) {
        return false;
    }
    bool all = true;
    for (const auto& one : fieldsAndTexts) {
        if (isEmpty(one)) {
            fault({StockFaultCause::halfGiven, one.first});
            all = false;
        }
    }
    return all;
}

void StockReader::newName(const std::string& name, const std::string& field, const std::vector<std::string>& taken) {
    const auto found =
        std::find_if(taken.begin(), taken.end(), [&](const auto& one) { return !name.empty() && sameName(one, name); });
    if (found != taken.end()) {
        fault({StockFaultCause::nameTaken, field, *found});
    }
}

void StockReader::source(analytics::Mark mark, const std::string& source) {
    if (mark != analytics::Mark::fromMemory && source.empty()) {
        fault({StockFaultCause::sourceMissing, "source"});
    }
}

} // namespace holdfast::kiosk::shop
