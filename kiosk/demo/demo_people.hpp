#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/records/kinds.hpp"

#include <vector>

namespace holdfast::kiosk::demo {

struct DemoPeople final {
    std::vector<records::Record> list{};
    std::vector<ledger::PersonName> names{};
};

/// Everybody who works in the shop, with badges and without PINs: the first who signs as an owner chooses one. The
/// names are first names, invented.
[[nodiscard]] DemoPeople demoPeople();

} // namespace holdfast::kiosk::demo
