#include "kiosk/shop/instruments/typed.hpp"

#include "kiosk/records/json_object.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdio>

namespace holdfast::kiosk::shop::instruments {
namespace {

constexpr std::size_t kShownSigns = 40;
constexpr std::size_t kSignsOfGroup = 3;
constexpr std::string_view kMinus = "\xE2\x88\x92"; // U+2212

std::string shownPart(const std::string& text) {
    auto end = std::min(text.size(), kShownSigns);
    while (end < text.size() && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {
        --end; // not within a letter of several bytes
    }
    return text.substr(0, end);
}

} // namespace

std::string withoutEnds(const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    return first == std::string::npos ? std::string{}
                                      : text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

std::optional<double> numberTyped(const std::string& typed) {
    auto text = withoutEnds(typed);
    if (text.compare(0, kMinus.size(), kMinus) == 0) {
        text.replace(0, kMinus.size(), "-");
    } else if (!text.empty() && text.front() == '+') {
        text.erase(0, 1);
        if (!text.empty() && text.front() == '-') {
            return std::nullopt;
        }
    }
    const auto comma = text.find(',');
    if (comma != std::string::npos) {
        if (text.size() - comma - 1 == kSignsOfGroup || text.find('.') != std::string::npos) {
            return std::nullopt; // 1,600 is one thing to one reader and another to the next
        }
        text[comma] = '.';
    }
    double value = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    const bool whole = error == std::errc{} && end == text.data() + text.size();
    return whole && std::isfinite(value) ? std::optional{value} : std::nullopt;
}

std::string textOf(double value) {
    char buffer[400];
    std::snprintf(buffer, sizeof buffer, "%.6f", value);
    std::string text{buffer};
    text.erase(text.find_last_not_of('0') + 1);
    if (!text.empty() && text.back() == '.') {
        text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

double stepTyped(const std::string& typed) {
    const auto text = withoutEnds(typed);
    const auto point = text.find_first_of(".,");
    return point == std::string::npos ? 1.0 : std::pow(10.0, -static_cast<double>(text.size() - point - 1));
}

namespace {

constexpr double kTenThousandth = 1e4; ///< figures turned into the other unit are shown to this part

double rounded(double value) {
    return std::round(value * kTenThousandth) / kTenThousandth;
}

} // namespace

std::string textOf(const std::optional<analytics::AuthoredTemperature>& t, analytics::TemperatureUnit unit) {
    if (!t) {
        return {};
    }
    return textOf(t->unit == unit ? t->value : rounded(t->temperature().in(unit)));
}

std::string textOf(const std::optional<analytics::AuthoredDifference>& d, analytics::TemperatureUnit unit) {
    if (!d) {
        return {};
    }
    return textOf(d->unit == unit ? d->value : rounded(d->difference().in(unit)));
}

std::string FormReader::text(const std::string& typed, const std::string& field) {
    auto text = withoutEnds(typed);
    if (text.size() > kMostSigns) {
        fault(FormCause::textTooLong, field, text);
    }
    const auto unprintable = [](char sign) { return static_cast<unsigned char>(sign) < 0x20U || sign == 0x7F; };
    if (std::any_of(text.begin(), text.end(), unprintable)) {
        fault(FormCause::controlSign, field);
    }
    return text;
}

std::optional<double> FormReader::number(const std::string& typed, const std::string& field, std::optional<int> item) {
    const auto text = withoutEnds(typed);
    if (text.empty()) {
        return std::nullopt;
    }
    const auto value = numberTyped(text);
    if (!value) {
        fault(FormCause::notANumber, field, text, item);
    }
    return value;
}

std::optional<double> FormReader::neededNumber(const std::string& typed, const std::string& field,
                                               std::optional<int> item) {
    if (withoutEnds(typed).empty()) {
        fault(FormCause::valueMissing, field, {}, item);
        return std::nullopt;
    }
    return number(typed, field, item);
}

std::optional<analytics::AuthoredTemperature>
FormReader::temperature(const std::string& typed, const std::string& field,
                        const std::optional<analytics::AuthoredTemperature>& before) {
    if (before && withoutEnds(typed) == textOf(before, m_unit)) {
        return before;
    }
    const auto value = number(typed, field);
    return value ? std::optional{analytics::AuthoredTemperature{*value, m_unit}} : std::nullopt;
}

std::optional<analytics::AuthoredDifference>
FormReader::difference(const std::string& typed, const std::string& field,
                       const std::optional<analytics::AuthoredDifference>& before) {
    if (before && withoutEnds(typed) == textOf(before, m_unit)) {
        return before;
    }
    const auto value = number(typed, field);
    return value ? std::optional{analytics::AuthoredDifference{*value, m_unit}} : std::nullopt;
}

std::optional<analytics::Date> FormReader::date(const std::string& typed, const std::string& field, bool needed) {
    const auto text = withoutEnds(typed);
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
    m_faults.push_back({cause, std::move(field), shownPart(shown), item});
}

} // namespace holdfast::kiosk::shop::instruments
