#pragma once

#include "analytics/cure/ink_family.hpp"
#include "kiosk/records/run_on_file.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::shop {

/// The lot that follows when a plan changes: opened with the newest revisions of the families it now names, and with
/// the cloth's revision that counted before (a cloth that changed by name: its revision 1 until the book says more).
[[nodiscard]] records::LotOpened nextLot(const records::RunPlanned& plan, const records::RunOnFile& before,
                                         const std::vector<analytics::InkFamily>& newest, const std::string& freshLot);

} // namespace holdfast::kiosk::shop
