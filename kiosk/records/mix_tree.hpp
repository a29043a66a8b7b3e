#pragma once

#include "kiosk/records/json_object.hpp"
#include "kiosk/records/shop_file.hpp"

namespace holdfast::kiosk::records {

/// The file's mixes flattened to families, in the file's order; those that cannot be are left out and noted, each once
/// and where it is wrong: unknown parts, no mass, chemistries that differ, mixes that contain themselves.
[[nodiscard]] std::vector<analytics::Ink> mixesOf(const ShopFile& file, Faults& faults);

void noteMixFaults(const ShopFile& file, Faults& faults);

} // namespace holdfast::kiosk::records
