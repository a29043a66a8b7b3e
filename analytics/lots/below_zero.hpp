#pragma once

#include <optional>

namespace holdfast::analytics {

/// A count that is not known is not below zero.
[[nodiscard]] constexpr bool isBelowZero(const std::optional<int>& count) noexcept {
    return count && *count < 0;
}

} // namespace holdfast::analytics
