#pragma once

#include "kiosk/reports/page/placed_page.hpp"

#include <optional>

/// The verdict as a film in section, in black: its shape alone tells it (look.md, "Verdict mark").
namespace holdfast::kiosk::reports {

enum class FilmMark {
    blank,      ///< no verdict
    cured,      ///< filled up to the line
    underCured, ///< half filled, the upper half cracked
    overheated, ///< filled and buckled
    notProven,  ///< a broken outline
};

/// Fitted into `box` at 20 : 16, centred. Nothing is drawn outside of it.
void putMark(PlacedPage& page, FilmMark mark, const Box& box);

} // namespace holdfast::kiosk::reports
