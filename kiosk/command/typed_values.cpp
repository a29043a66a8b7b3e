#include "kiosk/command/typed_values.hpp"

#include <charconv>
#include <chrono>
#include <cmath>

namespace holdfast::kiosk::command {

namespace {

template <class Number>
bool readWhole(std::string_view text, Number& out) {
    if (!text.empty() && text.front() == '+') {
        text.remove_prefix(1);
    }
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), out);
    return error == std::errc{} && end == text.data() + text.size();
}

} // namespace

std::optional<analytics::Temperature> temperatureFrom(std::string_view text) {
    if (text.size() < 2) {
        return std::nullopt;
    }
    const char unit = text.back();
    text.remove_suffix(1);
    while (!text.empty() && text.back() == ' ') {
        text.remove_suffix(1);
    }
    double value = 0.0;
    if ((unit != 'C' && unit != 'F') || !readWhole(text, value) || !std::isfinite(value)) {
        return std::nullopt;
    }
    return unit == 'C' ? analytics::Temperature::fromCelsius(value) : analytics::Temperature::fromFahrenheit(value);
}

std::optional<analytics::Date> dateFrom(std::string_view text) {
    int year = 0;
    unsigned month = 0;
    unsigned day = 0;
    if (text.size() != 10 || text[4] != '-' || text[7] != '-' || !readWhole(text.substr(0, 4), year) ||
        !readWhole(text.substr(5, 2), month) || !readWhole(text.substr(8, 2), day)) {
        return std::nullopt;
    }
    const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{month}, std::chrono::day{day}};
    return date.ok() ? std::optional{analytics::Date{std::chrono::sys_days{date}}} : std::nullopt;
}

InkSpec inkFrom(std::string_view text) {
    const auto colon = text.rfind(':');
    if (colon == std::string_view::npos) {
        return {std::string{text}, {}};
    }
    return {std::string{text.substr(0, colon)}, std::string{text.substr(colon + 1)}};
}

std::optional<StripSpec> stripFrom(std::string_view text) {
    const auto slash = text.find('/');
    if (slash == std::string_view::npos) {
        return std::nullopt;
    }
    const auto dark = text.substr(0, slash);
    const auto light = text.substr(slash + 1);
    StripSpec spec;
    if (dark != "none" && !(spec.lastDark = temperatureFrom(dark))) {
        return std::nullopt;
    }
    if (light != "none" && !(spec.firstLight = temperatureFrom(light))) {
        return std::nullopt;
    }
    return spec.lastDark || spec.firstLight ? std::optional{spec} : std::nullopt;
}

} // namespace holdfast::kiosk::command
