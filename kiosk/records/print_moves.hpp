#pragma once

#include "kiosk/records/lot_queries.hpp"

/// Where the piece of a print went in its lot's sum.
namespace holdfast::kiosk::records {

/// The move that stands for the print's piece: the one written with its name, or the last that corrects it. Absent for
/// a half, whose whole was moved, and for an id that no print has.
[[nodiscard]] ledger::Result<std::optional<MoveRow>> moveOfPrint(const SQLite::Database& database,
                                                                 const std::string& print);

} // namespace holdfast::kiosk::records
