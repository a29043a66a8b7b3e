#pragma once

#include "kiosk/shop/testing/due_tests.hpp"

namespace holdfast::kiosk::shop {

/// What is due, with what it is called by.
struct NamedDue final {
    DueTest due{};
    std::int64_t print = 0; ///< number; 0 of a load
    std::int64_t run = 0;   ///< number; 0 of a load
    records::MethodDescribed method{};
};

/// The owner's view of dueTests().
struct TestsDue final {
    int today = 0;                  ///< due by the end of today, late ones too
    int late = 0;                   ///< of them
    int soon = 0;                   ///< not yet, but within the days asked for; of a series its next step only
    std::vector<NamedDue> latest{}; ///< of the late ones those that are late longest, longest first
    [[nodiscard]] bool none() const noexcept { return today == 0 && soon == 0; }
};

/// At most `named` are named.
[[nodiscard]] TestsDue testsDue(const DueFacts& facts, const drivers::WallTime& now, int daysAhead,
                                std::size_t named = 3);

} // namespace holdfast::kiosk::shop
