#pragma once

#include "analytics/cure/window.hpp"
#include "analytics/metrology/calibration.hpp"
#include "kiosk/command/command_fault.hpp"
#include "kiosk/command/judge.hpp"
#include "kiosk/records/shop_file.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::command {

/// What `judge` works on once everything typed has been found and understood.
struct JudgeInput final {
    records::ShopStock stock;
    analytics::RunPlan plan;
    analytics::Date today;
    std::optional<analytics::Calibration> instrument; ///< named or assumed; absent: the window alone, guards 0
    bool assumed = false;                             ///< the instrument was not named
};

[[nodiscard]] tl::expected<JudgeInput, CommandFault> judgeInputFrom(const JudgeOptions& options);

/// The instrument that stands for an unnamed one (contracts, Command line); each is in date on `today`.
[[nodiscard]] analytics::Instrument assumedInstrument(analytics::InstrumentKind kind, analytics::Date today);

} // namespace holdfast::kiosk::command
