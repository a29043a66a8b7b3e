#pragma once

#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// "a, b, c"
[[nodiscard]] inline std::string listed(const std::vector<std::string>& names) {
    std::string all;
    for (const auto& name : names) {
        all += (all.empty() ? "" : ", ") + name;
    }
    return all;
}

} // namespace holdfast::kiosk::screens
