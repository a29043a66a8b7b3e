#pragma once

#include "kiosk/command/trace_file.hpp"
#include "kiosk/command/trace_stamp.hpp"
#include "kiosk/command/trace_table.hpp"

/// Which column is the time, which the temperature, which the flag. Private to trace_file.
namespace holdfast::kiosk::command::tracefile {

struct Choice final {
    std::size_t time = 0;
    std::optional<TimeUnit> timeUnit; ///< by option or header
    std::size_t temperature = 0;
    std::optional<analytics::TemperatureUnit> unit; ///< by header
    std::optional<std::size_t> flag;
};

/// What the options name; else what the names say; else what the values look like. More than one that could be is a
/// failure that names them, never a guess. Of columns that say the same in °C and °F, °C is taken.
[[nodiscard]] TraceFileResult<Choice> chooseColumns(const Table& table, const TraceFileOptions& options);

} // namespace holdfast::kiosk::command::tracefile
