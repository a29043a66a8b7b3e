#pragma once

#include "kiosk/reports/page/document.hpp"
#include "kiosk/reports/page/typesetting.hpp"

#include <functional>
#include <memory>

/// The inside of document.hpp: parts become pieces that are never cut.
namespace holdfast::kiosk::reports {

struct DocMeasure final {
    double left = 0;
    double width = 0;
    double em = 3;
    Symbology code = Symbology::code128;

    [[nodiscard]] double right() const { return left + width; }
    [[nodiscard]] Type type(Weight weight) const;
};

struct DocPiece final {
    double gap = 0; ///< over it, not at a page's top
    double height = 0;
    bool keepWithNext = false;
    std::function<void(PlacedPage&, double top)> place;
    std::shared_ptr<const DocPiece> repeat{}; ///< placed over it where it begins a page
};

void addPieces(std::vector<DocPiece>& pieces, const DocPart& part, const DocMeasure& measure);
void addTable(std::vector<DocPiece>& pieces, const DocTable& table, const DocMeasure& measure);

} // namespace holdfast::kiosk::reports
