#include "kiosk/shop/testing/print_piece.hpp"

namespace holdfast::kiosk::shop {

using records::PiecePlace;
using records::PrintEnd;

std::optional<PiecePlace> placeAfter(PrintEnd end, PiecePlace now) {
    if (end == PrintEnd::shipped) {
        return PiecePlace::shipped;
    }
    if (now != PiecePlace::retained) {
        return now;
    }
    switch (end) {
    case PrintEnd::usedUp:
        return PiecePlace::tested;
    case PrintEnd::thrownAway:
        return PiecePlace::scrapped;
    case PrintEnd::shipped:
    case PrintEnd::lost:
        break;
    }
    return std::nullopt;
}

std::optional<records::PiecesMoved> movedOn(const std::string& entry, const std::string& lot, PiecePlace now,
                                            std::optional<PiecePlace> then) {
    if (then == now) {
        return std::nullopt;
    }
    records::PiecesMoved moved;
    moved.lot = lot;
    moved.to = then.value_or(now);
    moved.count = then ? 1 : 0;
    moved.corrects = entry;
    return moved;
}

} // namespace holdfast::kiosk::shop
