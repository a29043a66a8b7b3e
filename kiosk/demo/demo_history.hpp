#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/writer.hpp"

#include <string>

namespace holdfast::kiosk::demo {

/// Writes the invented shop and its last twelve working days into an empty book, played through the shop's own use
/// cases and its proving desks with simulated samples. All of it in one commit: a first start that is interrupted
/// leaves the book empty. Any book with entries is left as it is. Deterministic but for the wall time. Needs a
/// QCoreApplication.
[[nodiscard]] ledger::Result<void> writeDemo(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now,
                                             const std::string& probeAddress);

} // namespace holdfast::kiosk::demo
