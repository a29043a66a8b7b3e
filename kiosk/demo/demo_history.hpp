#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/writer.hpp"

#include <string>

namespace holdfast::kiosk::demo {

/// Writes the invented shop and its rides into an empty book, the rides through the proving desk itself with simulated
/// samples; goes on where an interrupted first start stopped; any other book with entries is left as it is.
/// Deterministic but for the wall time. Needs a QCoreApplication.
[[nodiscard]] ledger::Result<void> writeDemo(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now,
                                             const std::string& probeAddress);

} // namespace holdfast::kiosk::demo
