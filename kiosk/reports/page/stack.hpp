#pragma once

#include "kiosk/reports/page/sheet.hpp"

#include <functional>
#include <vector>

namespace holdfast::kiosk::reports {

/// A piece of a page that is kept or dropped as a whole.
struct Block final {
    Worth worth = Worth::must;
    double gap = 0; ///< over it
    double height = 0;
    std::function<void(PlacedPage&, double top)> place;
};

[[nodiscard]] double heightOf(const std::vector<Block>& blocks);
/// Drops blocks, the least worth first and of those the last, until they fit; false if what must stand does not.
[[nodiscard]] bool dropToFit(std::vector<Block>& blocks, double height);
/// Places them under one another; gives back where they end.
double placeAll(const std::vector<Block>& blocks, PlacedPage& page, double top);

} // namespace holdfast::kiosk::reports
