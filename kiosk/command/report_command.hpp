#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/command/answer.hpp"

#include <filesystem>
#include <iosfwd>
#include <string>

namespace holdfast::kiosk::command {

/// `holdfast report`, as typed: the briefing.
struct ReportTyped final {
    std::string day{}; ///< last day of the week; empty: today
    std::string pdf{};
    std::string language = "en";
    bool fahrenheit = true;
    bool json = false;
};

[[nodiscard]] int runReport(const ReportTyped& typed, const std::filesystem::path& data, const drivers::WallTime& now,
                            const DrawingReady& ready, std::ostream& out, std::ostream& err);

} // namespace holdfast::kiosk::command
