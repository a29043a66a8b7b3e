#pragma once

#include "kiosk/reports/certificate.hpp"
#include "kiosk/reports/page/document.hpp"

#include <vector>

/// The sections of a certificate, in its order.
namespace holdfast::kiosk::reports {

void addOrder(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech);
void addLots(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech);
void addInks(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech);
void addWindow(std::vector<DocPart>& parts, const Certificate& certificate, const ReportStyle& style);
void addReadings(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech);
void addTests(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech);
void addRetained(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech);
void addDecisions(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech);
void addNotTested(std::vector<DocPart>& parts, const Certificate& certificate, const wording::Speech& speech);

/// "2026-03-01 14:02"
[[nodiscard]] QString momentText(std::int64_t wallMilliseconds, const Certificate& certificate);
/// "A. Night, person 12"
[[nodiscard]] QString namesText(const std::vector<Signer>& signers, const wording::Speech& speech);
/// "A7K2M"
[[nodiscard]] QString signsText(std::int64_t print);

} // namespace holdfast::kiosk::reports
