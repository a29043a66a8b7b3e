#pragma once

#include "kiosk/reports/page/placed_page.hpp"
#include "kiosk/reports/report_fault.hpp"

#include <QByteArray>
#include <QFont>
#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace holdfast::kiosk::reports {

/// Measures and paints alike count in hundredths of a millimetre.
inline constexpr double kUnitsPerMillimetre = 100.0;

/// B612 at that em in mm, DejaVu Sans for what it lacks.
[[nodiscard]] QFont fontOf(double size, bool bold);

/// All in black: label printers have no other ink. Codes are filled shapes, never pictures. May be called from any
/// thread.
[[nodiscard]] tl::expected<QByteArray, ReportFault> pdfOf(const std::vector<PlacedPage>& pages,
                                                          const std::string& title);

} // namespace holdfast::kiosk::reports
