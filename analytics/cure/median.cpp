#include "analytics/cure/valid_rows.hpp"

#include <utility>

namespace holdfast::analytics::tracing {

double medianOf(std::vector<std::int64_t>& values) {
    if (values.empty()) {
        return 0.0;
    }
    const auto [least, most] = std::minmax_element(values.begin(), values.end());
    if (*least == *most) {
        return static_cast<double>(*least);
    }
    const auto middle = values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2);
    std::nth_element(values.begin(), middle, values.end());
    const auto upper = static_cast<double>(*middle);
    if (values.size() % 2 == 1) {
        return upper;
    }
    return (static_cast<double>(*std::max_element(values.begin(), middle)) + upper) / 2.0;
}

} // namespace holdfast::analytics::tracing
