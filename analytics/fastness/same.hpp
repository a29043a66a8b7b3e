#pragma once

namespace holdfast::analytics {

/// Figures of this room no further apart than this are the same: it covers the rounding of a few additions, and lies
/// far below any digit that is printed or typed.
inline constexpr double kSame = 1e-9;

[[nodiscard]] constexpr double square(double x) noexcept {
    return x * x;
}

} // namespace holdfast::analytics
