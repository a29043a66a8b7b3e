#include "analytics/cure/valid_rows.hpp"

#include <utility>

namespace holdfast::analytics::tracing {

double medianOf(std::vector<std::int64_t>& values) {
    if (values.empty()) {
        return 0.0;
    }
    if (std::all_of(values.begin(), values.end(), [&](std::int64_t value) { return value == values.front(); })) {
        return static_cast<double>(values.front());
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
