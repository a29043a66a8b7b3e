#pragma once

#include "analytics/metrology/instrument.hpp"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::command {

/// `holdfast judge` as typed, what was not typed being absent; at most one of trace, strip, spot and surface is set.
struct JudgeOptions final {
    std::optional<std::string> trace;
    std::vector<std::string> inks; ///< FAMILY[:COLOUR], bottom layer first
    std::string fabric;
    std::optional<std::string> instrument;
    std::optional<std::string> placement; ///< wet, taped, cloth; absent: the instrument's own
    std::optional<std::string> strip;     ///< LAST_DARK/FIRST_LIGHT
    std::optional<std::string> spot;      ///< 291F
    std::optional<std::string> surface;   ///< 305F[:tunnel]
    std::optional<std::string> shopFile;
    std::optional<std::string> today; ///< YYYY-MM-DD; absent: `todayByClock`
    bool json = false;
    bool fahrenheit = true; ///< what the sentences speak
    analytics::Date todayByClock;
};

/// Exit status: 0 cured (or, without a reading, the window is open), 3 otherwise, 2 unusable input with a sentence on
/// `err`.
[[nodiscard]] int runJudge(const JudgeOptions& options, std::ostream& out, std::ostream& err);

} // namespace holdfast::kiosk::command
