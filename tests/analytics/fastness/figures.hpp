#pragma once

#include "analytics/fastness/extension.hpp"
#include "analytics/fastness/grade.hpp"
#include "analytics/quantity/length.hpp"

#include <string_view>

/// Short ways to write the figures of these tests.
namespace holdfast::analytics::testing {

/// Throws if the text is no grade.
inline Grade grade(std::string_view text) {
    return Grade::fromText(text).value();
}
inline RelativeLength percent(double value) {
    return RelativeLength::fromPercent(value);
}

} // namespace holdfast::analytics::testing
