#include "kiosk/shop/keeping/typed.hpp"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <cstdio>

namespace holdfast::kiosk::shop {
namespace {

constexpr std::size_t kShownSigns = 40;
constexpr std::size_t kThousands = 3;
constexpr double kTenThousandth = 1e4;

} // namespace

std::string trimmed(const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    return first == std::string::npos ? std::string{}
                                      : text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

std::optional<TextFault> textFault(const std::string& text) {
    if (text.empty()) {
        return TextFault::missing;
    }
    if (text.size() > kLongestText) {
        return TextFault::tooLong;
    }
    const bool unprintable = std::any_of(
        text.begin(), text.end(), [](char sign) { return static_cast<unsigned char>(sign) < 0x20U || sign == 0x7F; });
    return unprintable ? std::optional{TextFault::controlSign} : std::nullopt;
}

std::string firstSigns(const std::string& text) {
    auto end = std::min(text.size(), kShownSigns);
    while (end < text.size() && end > 0 && (static_cast<unsigned char>(text[end]) & 0xC0U) == 0x80U) {
        --end;
    }
    return text.substr(0, end);
}

std::optional<double> numberFrom(const std::string& typed) {
    auto text = trimmed(typed);
    if (const auto comma = text.find(','); comma != std::string::npos) {
        if (text.size() - comma - 1 == kThousands || text.find('.') != std::string::npos) {
            return std::nullopt;
        }
        text[comma] = '.';
    }
    double value = 0.0;
    const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value, std::chars_format::fixed);
    const bool whole = error == std::errc{} && end == text.data() + text.size();
    return whole && std::isfinite(value) ? std::optional{value} : std::nullopt;
}

std::string numberTyped(double value) {
    char buffer[400];
    std::snprintf(buffer, sizeof buffer, "%.6f", value);
    std::string text{buffer};
    text.erase(text.find_last_not_of('0') + 1);
    if (!text.empty() && text.back() == '.') {
        text.pop_back();
    }
    return text == "-0" ? "0" : text;
}

std::string temperatureTyped(const std::optional<analytics::AuthoredTemperature>& t, analytics::TemperatureUnit unit) {
    if (!t) {
        return {};
    }
    return numberTyped(t->unit == unit ? t->value
                                       : std::round(t->temperature().in(unit)*kTenThousandth) / kTenThousandth);
}

} // namespace holdfast::kiosk::shop
