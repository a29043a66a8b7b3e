#pragma once

#include "analytics/cure/trace.hpp"
#include "kiosk/command/command_fault.hpp"

#include <tl/expected.hpp>

#include <string>

namespace holdfast::kiosk::command {

/// Reads a trace file as this instrument's recording: its resolution and range, the unit the file says.
[[nodiscard]] tl::expected<analytics::RawTrace, CommandFault> rawTraceFrom(const std::string& path,
                                                                           const analytics::Calibration& instrument);

} // namespace holdfast::kiosk::command
