#pragma once

#include <string>
#include <string_view>

namespace holdfast::kiosk::wording {

/// The key of a word of ours: `prefix` ends in a dot.
[[nodiscard]] inline std::string under(const char* prefix, std::string_view name) {
    std::string key{prefix};
    key.append(name);
    return key;
}

} // namespace holdfast::kiosk::wording
