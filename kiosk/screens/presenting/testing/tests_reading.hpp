#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/shop/testing/due_tests.hpp"

namespace holdfast::kiosk::screens {

/// What is due now, from the book: also for the head of the screen, wherever the person is.
[[nodiscard]] ledger::Result<std::vector<shop::DueTest>> dueNow(const SQLite::Database& book,
                                                                const drivers::WallTime& now);

} // namespace holdfast::kiosk::screens
