#pragma once

#include "analytics/quantity/temperature.hpp"
#include "kiosk/reports/page/placed_page.hpp"

#include <QString>
#include <optional>
#include <vector>

/// A window as a small heat scale in black: what is not proven is inked over, the clear paper is the window (look.md).
namespace holdfast::kiosk::reports {

struct HeatLine final {
    analytics::Temperature at = analytics::Temperature::fromCelsius(0);
    QString figure; ///< left of the scale
    QString word;   ///< right of it
};

/// Where one reading's peak lay; an end that is not known is open.
struct HeatPeak final {
    std::optional<analytics::Temperature> low;
    std::optional<analytics::Temperature> high;
};

struct HeatWindow final {
    analytics::Temperature lower = analytics::Temperature::fromCelsius(0);
    std::optional<analytics::Temperature> upper;
    std::vector<HeatLine> lines; ///< cures and ceilings
    std::vector<HeatPeak> peaks; ///< oldest first; those without either end are left out
};

/// Everything inside `box`. Words that would lie on one another are moved apart; their lines are not.
void drawHeatWindow(PlacedPage& page, const HeatWindow& window, const Box& box, double em);

} // namespace holdfast::kiosk::reports
