#include "kiosk/shop/instruments/form_reader.hpp"

#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/typed/typed.hpp"

namespace holdfast::kiosk::shop::instruments {

std::string FormReader::text(const std::string& typed, const std::string& field) {
    auto text = trimmed(typed);
    const auto wrong = textFault(text);
    if (wrong == TextFault::tooLong) {
        fault(FormCause::textTooLong, field, text);
    } else if (wrong == TextFault::controlSign) {
        fault(FormCause::controlSign, field);
    }
    return text;
}

std::optional<double> FormReader::number(const std::string& typed, const std::string& field, std::optional<int> item) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto value = numberFrom(text);
    if (!value) {
        fault(FormCause::notANumber, field, text, item);
    }
    return value;
}

std::optional<double> FormReader::neededNumber(const std::string& typed, const std::string& field,
                                               std::optional<int> item) {
    if (trimmed(typed).empty()) {
        fault(FormCause::valueMissing, field, {}, item);
        return std::nullopt;
    }
    return number(typed, field, item);
}

std::optional<analytics::AuthoredTemperature>
FormReader::temperature(const std::string& typed, const std::string& field,
                        const std::optional<analytics::AuthoredTemperature>& before) {
    if (before && trimmed(typed) == authoredTyped(before, m_unit)) {
        return before;
    }
    const auto value = number(typed, field);
    return value ? std::optional{analytics::AuthoredTemperature{*value, m_unit}} : std::nullopt;
}

std::optional<analytics::AuthoredDifference>
FormReader::difference(const std::string& typed, const std::string& field,
                       const std::optional<analytics::AuthoredDifference>& before) {
    if (before && trimmed(typed) == authoredTyped(before, m_unit)) {
        return before;
    }
    const auto value = number(typed, field);
    return value ? std::optional{analytics::AuthoredDifference{*value, m_unit}} : std::nullopt;
}

std::optional<analytics::Date> FormReader::date(const std::string& typed, const std::string& field, bool needed) {
    const auto text = trimmed(typed);
    if (text.empty()) {
        if (needed) {
            fault(FormCause::dateMissing, field);
        }
        return std::nullopt;
    }
    const auto date = records::dateFrom(text);
    if (!date) {
        fault(FormCause::notADate, field, text);
    }
    return date;
}

void FormReader::fault(FormCause cause, std::string field, std::string shown, std::optional<int> item) {
    m_faults.push_back({cause, std::move(field), firstSigns(shown), item});
}

} // namespace holdfast::kiosk::shop::instruments
