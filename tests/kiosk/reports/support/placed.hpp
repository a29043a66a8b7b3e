#pragma once

#include "kiosk/reports/report.hpp"

/// What must hold of every page, whatever stands on it.
namespace holdfast::reports_test {

/// Everything inside the margins, no line on another line or on a code with its quiet zone, no rule in a code, no text
/// on a picture.
void checkPage(const kiosk::reports::PlacedPage& page, double margin);

/// Every page of it, and that it becomes a PDF; only the card may be too small for it.
void checkReport(const kiosk::reports::Reported& report, const kiosk::reports::ReportStyle& style);

/// Texts that people and machines bring forth.
std::vector<std::string> hostileTexts();

/// Every paper with bars and with squares.
std::vector<kiosk::reports::ReportStyle> everyStyle();

/// All texts as they were placed, each with a blank behind it; no-break blanks are blanks.
QString placedText(const kiosk::reports::Reported& report);

} // namespace holdfast::reports_test
