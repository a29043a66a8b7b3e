#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <cctype>
#include <charconv>
#include <cmath>
#include <cstdio>
#include <string_view>

namespace holdfast::kiosk::shop {
namespace {

constexpr std::size_t kShownSigns = 40;
constexpr std::size_t kThousands = 3;
constexpr double kTenThousandth = 1e4;              ///< figures turned into the other unit are shown to this part
constexpr std::string_view kMinus = "\xE2\x88\x92"; // U+2212

/// A real minus as a hyphen, a plus in front dropped; "+-1" stays unreadable.
std::string plainSign(std::string text) {
    if (text.compare(0, kMinus.size(), kMinus) == 0) {
        text.replace(0, kMinus.size(), "-");
    } else if (text.size() > 1 && text.front() == '+' && text[1] != '-') {
        text.erase(0, 1);
    }
    return text;
}

/// Bytes of the character that begins at `at`: 1 for a byte that is part of none.
std::size_t lengthOfCharacter(const std::string& text, std::size_t at) {
    const auto lead = static_cast<unsigned char>(text[at]);
    const std::size_t length = lead < 0xC2U ? 1 : lead < 0xE0U ? 2 : lead < 0xF0U ? 3 : lead < 0xF5U ? 4 : 1;
    for (std::size_t i = 1; i < length; ++i) {
        if (at + i >= text.size() || (static_cast<unsigned char>(text[at + i]) & 0xC0U) != 0x80U) {
            return 1;
        }
    }
    return length;
}

template <class Authored>
std::string typedIn(const Authored& authored, double converted, analytics::TemperatureUnit unit) {
    return numberTyped(authored.unit == unit ? authored.value
                                             : std::round(converted * kTenThousandth) / kTenThousandth);
}

} // namespace

std::string trimmed(const std::string& text) {
    const auto first = text.find_first_not_of(" \t\r\n");
    return first == std::string::npos ? std::string{}
                                      : text.substr(first, text.find_last_not_of(" \t\r\n") - first + 1);
}

bool sameName(const std::string& one, const std::string& other) {
    return one.size() == other.size() && std::equal(one.begin(), one.end(), other.begin(), [](char a, char b) {
               return std::tolower(static_cast<unsigned char>(a)) == std::tolower(static_cast<unsigned char>(b));
           });
}

std::optional<TextFault> textFault(const std::string& text) {
    if (text.empty()) {
        return TextFault::missing;
    }
    if (charactersIn(text) > kLongestText) {
        return TextFault::tooLong;
    }
    const bool unprintable = std::any_of(
        text.begin(), text.end(), [](char sign) { return static_cast<unsigned char>(sign) < 0x20U || sign == 0x7F; });
    return unprintable ? std::optional{TextFault::controlSign} : std::nullopt;
}

std::size_t charactersIn(const std::string& text) {
    std::size_t count = 0;
    for (std::size_t at = 0; at < text.size(); at += lengthOfCharacter(text, at)) {
        ++count;
    }
    return count;
}

std::string firstSigns(const std::string& text) {
    std::size_t end = 0;
    for (std::size_t shown = 0; shown < kShownSigns && end < text.size(); ++shown) {
        end += lengthOfCharacter(text, end);
    }
    return text.substr(0, end);
}

std::optional<double> numberFrom(const std::string& typed) {
    auto text = plainSign(trimmed(typed));
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

double stepTyped(const std::string& typed) {
    const auto text = trimmed(typed);
    const auto point = text.find_first_of(".,");
    return point == std::string::npos ? 1.0 : std::pow(10.0, -static_cast<double>(text.size() - point - 1));
}

std::string authoredTyped(const std::optional<analytics::AuthoredTemperature>& t, analytics::TemperatureUnit unit) {
    return t ? typedIn(*t, t->temperature().in(unit), unit) : std::string{};
}

std::string authoredTyped(const std::optional<analytics::AuthoredDifference>& d, analytics::TemperatureUnit unit) {
    return d ? typedIn(*d, d->difference().in(unit), unit) : std::string{};
}

std::vector<std::string> namesTyped(const std::string& text) {
    std::vector<std::string> names;
    for (std::size_t from = 0; from <= text.size();) {
        const auto to = std::min(text.find(',', from), text.size());
        auto name = trimmed(text.substr(from, to - from));
        const bool known =
            std::any_of(names.begin(), names.end(), [&](const auto& one) { return sameName(one, name); });
        if (!name.empty() && !known) {
            names.push_back(std::move(name));
        }
        from = to + 1;
    }
    return names;
}

std::string namesJoined(const std::vector<std::string>& names) {
    std::string all;
    for (const auto& name : names) {
        all += (all.empty() ? "" : ", ") + name;
    }
    return all;
}

} // namespace holdfast::kiosk::shop
