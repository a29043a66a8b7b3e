#pragma once

#include "kiosk/reports/certificate.hpp"
#include "kiosk/reports/quarantine_list.hpp"
#include "kiosk/reports/recall_list.hpp"

#include <string>

/// Invented lots, holds and tests to print.
namespace holdfast::reports_test {

/// Hash of the book's newest entry.
inline constexpr const char* kHead = "000000000000000000000000000000000000000000000000000000000000beef";

/// 2026-11-25 14:02 at UTC−5 (date -d 2026-11-25T14:02:00-05:00 +%s).
drivers::WallTime afternoon();

/// As many bins of 10 pieces, numbered from 31; every seventh of unknown count, every ninth of the whole lot.
kiosk::reports::QuarantineList quarantine(int bins, const std::string& text);

/// Lot 1 shipped to two customers in three cartons, lot 2 still here, lot 3 shipped in part.
std::vector<kiosk::reports::RecallLot> recallLots(const std::string& text);
/// As many shipments of one carton each to the one customer.
kiosk::reports::RecallList longRecall(int shipments, const std::string& text);

/// A run of children's wear with a cleared lot and one of `second`, as many readings and tests.
kiosk::reports::CertificateFacts certified(int readings, int tests, kiosk::records::LotState second,
                                           const std::string& text);

} // namespace holdfast::reports_test
