#pragma once

#include <cstddef>
#include <string>
#include <vector>

/// How much of what is found these places show, and how they write it.
namespace holdfast::kiosk::screens {

/// Runs that a complaint's clue fits.
inline constexpr int kMostFound = 12;
/// Lines of a recall.
inline constexpr std::size_t kMostShown = 200;
/// Digits of a print's number in its code, at least.
inline constexpr int kPrintWidth = 4;

/// What is there of the parts, with `between` between two of them.
[[nodiscard]] inline std::string joined(const std::vector<std::string>& parts, const char* between) {
    std::string all;
    for (const auto& part : parts) {
        all += (all.empty() || part.empty() ? "" : between) + part;
    }
    return all;
}

} // namespace holdfast::kiosk::screens
