#pragma once

#include "kiosk/records/test_queries.hpp"
#include "kiosk/shop/testing/due_tests.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// Of a row of what is due; the same for the same thing, whatever stands before it.
[[nodiscard]] std::string dueId(const shop::DueTest& due);

/// Names that the shop gave its own methods, but one.
[[nodiscard]] std::vector<std::string> ownNames(const std::vector<records::MethodDescribed>& methods,
                                                const std::string& but);

} // namespace holdfast::kiosk::screens
