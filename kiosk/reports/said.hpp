#pragma once

#include "analytics/metrology/instrument.hpp"
#include "drivers/clock/clock.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/reports/page/document.hpp"
#include "kiosk/reports/page/sheet.hpp"
#include "kiosk/reports/report.hpp"

#include <QString>
#include <QStringList>
#include <string>

/// Small texts that several reports say.
namespace holdfast::kiosk::reports {

[[nodiscard]] QString said(const wording::Speech& speech, std::string_view key,
                           const wording::Arguments& arguments = {});
/// A finished sentence that may hold names as people typed them.
[[nodiscard]] QString cleaned(const std::string& sentence);
/// "2026-11-25"
[[nodiscard]] QString dateText(analytics::Date date);
/// "285 °F", "285 °F, 30 s"
[[nodiscard]] QString cureText(analytics::Temperature cure, analytics::Duration hold, const wording::Speech& speech);
/// DEMO, or nothing.
[[nodiscard]] QStringList marksOf(const ReportStyle& style);
/// "Cleared"
[[nodiscard]] QString lotStateText(records::LotState state, const wording::Speech& speech);
/// A list or record whose pages are headed by the text of `kind`: with DEMO, cautions, who printed it when, and page
/// numbers.
[[nodiscard]] Document documentOf(std::string_view kind, const std::string& shop, const drivers::WallTime& printed,
                                  const ReportStyle& style);
[[nodiscard]] Reported reportOf(std::string_view name, const Document& document, const ReportStyle& style);
/// Lays the sheet out under the code of that number.
[[nodiscard]] Reported reportOf(std::string_view name, Sheet sheet, drivers::TicketKind kind, std::int64_t number,
                                const ReportStyle& style);

} // namespace holdfast::kiosk::reports
