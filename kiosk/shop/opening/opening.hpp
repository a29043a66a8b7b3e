#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/uuid.hpp"
#include "kiosk/records/test_records.hpp"

#include <functional>
#include <string>
#include <vector>

/// A book's first start, and what every later start must find in it.
namespace holdfast::kiosk::shop {

/// Who this kiosk is and where it stands, as the book says.
struct KioskIdentity final {
    std::string kiosk; ///< id that its entries carry
    std::string dryer; ///< id; empty: none is described
};

/// In an empty book that may be written: who opened it, the starter families and fabrics, one dryer. In any that may be
/// written and knows no test method: `methods`. Then: makes it read-only if it holds kinds of entries that this program
/// does not know, and says who this kiosk is.
[[nodiscard]] ledger::Result<KioskIdentity> openShop(ledger::Book& book, drivers::WallTime now,
                                                     const std::function<ledger::UuidRandom()>& random,
                                                     const std::vector<records::MethodDescribed>& methods = {});

} // namespace holdfast::kiosk::shop
