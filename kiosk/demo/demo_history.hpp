#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/demo/history/history_plan.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/writer.hpp"

#include <filesystem>
#include <string>

namespace holdfast::kiosk::demo {

enum class DemoSize {
    twelveDays,     ///< the last twelve working days: a second's work
    eighteenMonths, ///< those, and the eighteen months before them (kiosk/demo/history)
};

/// What the eighteen months before the twelve days of a demo that is written `now` are made from: historyOf() of it
/// gives the facts that stand in its book, and where the planted failures are.
[[nodiscard]] HistoryPlan demoHistoryPlan(drivers::WallTime now);

/// Writes the invented shop into an empty book: its past as facts, and its last twelve working days played through the
/// shop's own use cases and its proving desks with simulated samples. Any book with entries is left as it is.
/// Deterministic but for the wall time. Needs a QCoreApplication.
///
/// The twelve days alone are one commit, so that what is interrupted leaves the book empty; the eighteen months are
/// many, and what is interrupted is half a demo: makeDemoBook() is for those.
[[nodiscard]] ledger::Result<void> writeDemo(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now,
                                             const std::string& probeAddress, DemoSize size = DemoSize::twelveDays);

/// Whether the folder has no book, or an empty one. False as well where it can be neither looked into nor made: whoever
/// opens the book there is told why.
[[nodiscard]] bool wantsDemoBook(const std::filesystem::path& folder);

/// Makes the demo's book in a folder that wants one, and leaves every other as it is. It is written elsewhere and put
/// in place when it is whole, so that what is interrupted leaves nothing of it. Needs a QCoreApplication.
[[nodiscard]] ledger::Result<void> makeDemoBook(const std::filesystem::path& folder, drivers::WallTime now,
                                                const std::string& probeAddress,
                                                DemoSize size = DemoSize::eighteenMonths);

} // namespace holdfast::kiosk::demo
