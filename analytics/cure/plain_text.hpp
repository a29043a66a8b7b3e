#pragma once

#include <string_view>

/// Names as people type them: compared without the blanks around them and without regard to ASCII case.
namespace holdfast::analytics {

[[nodiscard]] constexpr std::string_view withoutBlanks(std::string_view text) noexcept {
    constexpr std::string_view kBlanks = " \t\r\n";
    const auto first = text.find_first_not_of(kBlanks);
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(kBlanks) - first + 1);
}

[[nodiscard]] constexpr bool isBlank(std::string_view text) noexcept {
    return withoutBlanks(text).empty();
}

[[nodiscard]] constexpr char lowered(char c) noexcept {
    return c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
}

[[nodiscard]] constexpr bool sameName(std::string_view a, std::string_view b) noexcept {
    a = withoutBlanks(a);
    b = withoutBlanks(b);
    if (a.size() != b.size()) {
        return false;
    }
    for (std::size_t i = 0; i < a.size(); ++i) {
        if (lowered(a[i]) != lowered(b[i])) {
            return false;
        }
    }
    return true;
}

} // namespace holdfast::analytics
