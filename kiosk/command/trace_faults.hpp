#pragma once

#include "kiosk/command/command_fault.hpp"
#include "kiosk/command/trace_file.hpp"

namespace holdfast::kiosk::command {

/// Which sentence says why a trace file cannot be used.
[[nodiscard]] CommandFault commandFaultOf(const TraceFileFailure& failure, const std::string& path);

} // namespace holdfast::kiosk::command
