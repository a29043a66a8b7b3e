#pragma once

#include "kiosk/reports/cards.hpp"
#include "kiosk/reports/labels.hpp"
#include "kiosk/reports/run_ticket.hpp"

#include <string>
#include <vector>

/// Invented things to print. Temperatures are from memory: what such inks and cloths usually ask.
namespace holdfast::reports_test {

/// White under red and blue on cotton: open.
kiosk::reports::RunTicket openRun();
/// Standard black over low-cure white on polyester: closed.
kiosk::reports::RunTicket closedRun();
/// As many layers of low-cure ink on cotton.
kiosk::reports::RunTicket layeredRun(int layers);
/// The text in every place that takes one.
kiosk::reports::RunTicket runOfTexts(const std::string& text);

kiosk::reports::BucketLabel bucket(const std::string& text);
kiosk::reports::BinLabel bin(const std::string& text);
kiosk::reports::PrintLabel printUnderTest(const std::string& text);
kiosk::reports::PersonBadge badge(const std::string& text);
kiosk::reports::InstrumentLabel instrument(const std::string& text);
kiosk::reports::ActionCards everyCard();
kiosk::reports::StripLabels strips(int count);

/// The things that have a page of their own, with the codes that stand on them.
struct Single final {
    kiosk::reports::Reported report;
    std::string code;
};
std::vector<Single> everySingle(const kiosk::reports::ReportStyle& style);

} // namespace holdfast::reports_test
