#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/records/queries.hpp"

#include <QTemporaryDir>

#include <memory>
#include <string>
#include <vector>

namespace holdfast::tests {

/// 2026-11-25 12:00 UTC, a Wednesday.
inline constexpr drivers::WallTime kNoon{1795608000000, 0};
inline const analytics::Date kToday{std::chrono::floor<std::chrono::days>(
    std::chrono::sys_time<std::chrono::milliseconds>{std::chrono::milliseconds{kNoon.millisecondsSinceEpoch}})};

/// A QCoreApplication for the whole run of the tests: the desks need one.
void ensureApplication();

/// An empty book in a folder of its own.
struct FreshBook final {
    FreshBook();
    QTemporaryDir folder;
    std::unique_ptr<kiosk::ledger::Book> book;
};

/// Written once for all tests, at kNoon; only to be read.
[[nodiscard]] const kiosk::ledger::Book& wholeDemo();

/// Throws by REQUIRE if it could not be written.
void writeDemo(kiosk::ledger::Book& book, drivers::WallTime now = kNoon);

[[nodiscard]] std::vector<kiosk::ledger::Entry> entriesOf(const kiosk::ledger::Book& book);
/// Oldest first, with those that were refused.
[[nodiscard]] std::vector<kiosk::records::ReadingRow> readingsOf(const kiosk::ledger::Book& book);
[[nodiscard]] kiosk::records::RunOnFile runOf(const kiosk::ledger::Book& book, std::int64_t number);
/// As the newest reading of the run says.
[[nodiscard]] std::optional<analytics::Word> wordOf(const kiosk::ledger::Book& book, std::int64_t run);

} // namespace holdfast::tests
