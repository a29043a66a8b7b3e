#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/shop/testing/due_tests.hpp"

namespace holdfast::kiosk::shop {

/// What dueTests() is asked with, as it stands in the book: a handful of questions, however many prints are under test.
/// Of prints under test the newest three hundred, of loads the newest four hundred.
[[nodiscard]] ledger::Result<DueFacts> dueFacts(const SQLite::Database& database);

} // namespace holdfast::kiosk::shop
