#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/reports/report.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"

#include <optional>

namespace holdfast::kiosk::screens {

/// The report that a wish asks for, from what stands in the book now; nothing if the thing is not in the book.
[[nodiscard]] std::optional<reports::Reported> reportFor(const PrintWish& wish, const ledger::Book& book,
                                                         const drivers::WallTime& now, const wording::Speech& speech);

/// Of the label printer's paper; else a sheet's.
[[nodiscard]] bool isLabel(const PrintWish& wish) noexcept;

} // namespace holdfast::kiosk::screens
