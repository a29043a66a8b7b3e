#pragma once

#include "analytics/cure/window.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/run_on_file.hpp"

#include <string>
#include <vector>

/// Taking a way out: the plan changes, and so does the lot, since other inks need another proof (decisions 5: pieces
/// between changes of bucket or revision are one lot).
namespace holdfast::kiosk::shop {

/// The entries that record it, in order: run.replanned, lot.closed of an open lot, lot.opened of the next. `newest` are
/// the families that count now; a way out names only such.
[[nodiscard]] std::vector<records::Record> recordsOfWayOut(const records::RunOnFile& run, const analytics::WayOut& way,
                                                           const std::vector<analytics::InkFamily>& newest,
                                                           const std::string& freshLot);

} // namespace holdfast::kiosk::shop
