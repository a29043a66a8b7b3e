#pragma once

#include "kiosk/records/kinds.hpp"

#include <vector>

namespace holdfast::kiosk::records::testing {

/// One record a kind, in the order of kinds(), with every optional field set somewhere; names are invented.
[[nodiscard]] std::vector<Record> sampleOfEveryKind();
[[nodiscard]] analytics::Date day(int year, unsigned month, unsigned dayOfMonth);
[[nodiscard]] ReadingTaken sampleReading();

} // namespace holdfast::kiosk::records::testing
