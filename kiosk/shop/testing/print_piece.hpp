#pragma once

#include "kiosk/records/lot_records.hpp"
#include "kiosk/records/print_records.hpp"

#include <optional>
#include <string>

/// What becomes of a print's piece in the sum of its lot: made = shipped + here + retained + tested + scrapped.
namespace holdfast::kiosk::shop {

/// Where the piece is counted once the print has ended, by where it is counted now. Absent: nowhere, so the sum shows a
/// difference. A tested piece is lost to the lot however it ended, unless it was shipped.
[[nodiscard]] std::optional<records::PiecePlace> placeAfter(records::PrintEnd end, records::PiecePlace now);

/// The correction of the move `entry`, which counts one piece of the lot at `now`; absent if it is counted at `then`
/// already. Taken back where `then` is absent.
[[nodiscard]] std::optional<records::PiecesMoved> movedOn(const std::string& entry, const std::string& lot,
                                                          records::PiecePlace now,
                                                          std::optional<records::PiecePlace> then);

} // namespace holdfast::kiosk::shop
