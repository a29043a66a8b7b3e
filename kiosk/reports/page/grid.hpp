#pragma once

#include "kiosk/reports/report.hpp"

#include <QString>
#include <vector>

/// Many small cards a page, in groups. All texts are finished.
namespace holdfast::kiosk::reports {

struct GridCard final {
    QString word;   ///< bold, at most two lines
    QString detail; ///< one line; may be empty
    std::string code;
};

struct GridGroup final {
    QString heading;
    std::vector<GridCard> cards;
};

struct Grid final {
    QString kind;    ///< over each page
    QString mark;    ///< on ink beside it; may be empty
    QString caution; ///< under each page
    std::vector<GridGroup> groups;
};

/// As many pages as it takes. A heading never stands without a card, and codes keep a code's height from one another,
/// so that a scanner held over one does not read its neighbour.
[[nodiscard]] tl::expected<std::vector<PlacedPage>, ReportFault> layOut(const Grid& grid, const ReportStyle& style);

} // namespace holdfast::kiosk::reports
