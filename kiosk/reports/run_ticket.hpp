#pragma once

#include "analytics/cure/window.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/reports/report.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::reports {

/// A run, or one of the shop's usual windows, as a ticket says it.
struct RunTicket final {
    records::RunPlanned plan{};
    std::optional<analytics::RunPlan> layers{};   ///< as judged; absent: an ink or the cloth is not usable
    std::optional<analytics::RunWindow> window{}; ///< absent: there is none, `faults` say why
    std::vector<analytics::WindowFault> faults{};
    std::string dryer{}; ///< its name; empty: any
};

/// From the book, with windowOf or windowWithWaysOut of its layers.
[[nodiscard]] RunTicket
runTicketOf(const records::RunOnFile& run,
            const tl::expected<analytics::RunWindow, std::vector<analytics::WindowFault>>& window, std::string dryer);

/// R…: what travels with the pile. On sheets with room to spare a frame for the strip.
[[nodiscard]] Reported runTicket(const RunTicket& ticket, const ReportStyle& style);
/// W…: the window in large figures; it hangs at the dryer.
[[nodiscard]] Reported windowCard(const RunTicket& card, const ReportStyle& style);

} // namespace holdfast::kiosk::reports
