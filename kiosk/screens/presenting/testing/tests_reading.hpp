#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/shop/testing/due_tests.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::screens {

/// What is due now, from the book: also for the head of the screen, wherever the person is.
[[nodiscard]] ledger::Result<std::vector<shop::DueTest>> dueNow(const SQLite::Database& book,
                                                                const drivers::WallTime& now);

/// The one that is due first, as the head of the screen says it; empty: none is due, or the book cannot be read.
[[nodiscard]] std::string nextTestText(const SQLite::Database& book, const drivers::WallTime& now,
                                       const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
