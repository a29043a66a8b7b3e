#pragma once

#include <limits>

namespace holdfast::testing {

inline constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();

} // namespace holdfast::testing
