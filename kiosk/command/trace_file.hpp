#pragma once

#include "analytics/cure/trace.hpp"

#include <filesystem>
#include <optional>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

/// Reads what other people's loggers write: lines of fields, with or without a header, banner or preamble.
namespace holdfast::kiosk::command {

/// A column is named by its header (any case, or a part of it that only one header has) or by its number, 1 = first.
struct TraceFileOptions final {
    std::optional<std::string> time; ///< may end in ":ns", ":us", ":ms", ":s", ":min" or ":h"
    std::optional<std::string> temperature;
    std::optional<std::string> flag; ///< not 0, and not "ok", "false" or "no": the instrument doubts this row
    bool flagByName = false;         ///< without `flag`: take the one column whose name says fault or open
    std::optional<analytics::TemperatureUnit> unit; ///< else what the header or the values say, else °C
    std::optional<std::pair<double, double>> range; ///< in the file's unit, ends inside
    std::vector<std::string> missing;               ///< values that mean "no reading": as numbers, else as text
    std::optional<char> separator;                  ///< ' ' = any white space
};

/// Why a row carries no temperature.
enum class MissingWhy {
    no,        ///< it carries one
    empty,     ///< nothing there, or a word such as NaN
    asked,     ///< a value named by TraceFileOptions::missing
    notNumber, ///< text, two numbers run together, or another unit than the rest
    fieldLost, ///< fewer fields than the other rows: later columns may have moved left
    cutOff     ///< last line of the file, ended within the number
};

struct TraceFileRow final {
    analytics::MonotonicTime at{0}; ///< as the file counts; exact to the microsecond, never through a float
    std::optional<analytics::Temperature> temperature;
    MissingWhy missing = MissingWhy::no;
    bool flagged = false;
    std::size_t line = 0; ///< 1 = first line of the file
};

struct TraceColumns final {
    std::vector<std::string> names; ///< as in the header, "column 1" and so on without one
    std::size_t time = 0;           ///< index
    std::size_t temperature = 0;
    std::optional<std::size_t> flag;
    char separator = ',';
};

struct TraceFile final {
    std::vector<TraceFileRow> rows;
    TraceColumns columns;
    analytics::TemperatureUnit unit = analytics::TemperatureUnit::celsius;
    bool unitStated = false;                     ///< by option, header or value; otherwise °C was assumed
    analytics::TemperatureDifference resolution; ///< one unit of the last decimal written
    std::optional<analytics::MeasuringRange> range;
    std::size_t otherLines = 0; ///< preamble, headers, banners, lines without a time
};

enum class TraceFileFault {
    unreadable,           ///< the path cannot be opened or read
    tooLarge,             ///< over 64 MiB
    empty,                ///< nothing in it
    utf16,                ///< save it as UTF-8 or plain text first
    noRows,               ///< no line has a time and another number
    noTimeColumn,         ///< none of `columns` reads like a time
    timeAmbiguous,        ///< `columns` all could be: name one
    noTemperatureColumn,  ///< none of `columns` reads like a temperature
    temperatureAmbiguous, ///< `columns` all could be: name one
    columnNotFound,       ///< `asked` is none of `columns`
    columnNotUnique,      ///< `asked` is part of each of `columns`
    badRange              ///< the low end is above the high one, or not a number
};

struct TraceFileFailure final {
    TraceFileFault fault = TraceFileFault::unreadable;
    std::size_t line = 0;             ///< 0 = the file as a whole
    std::string asked;                ///< the option's text, if one is at fault
    std::vector<std::string> columns; ///< the names to choose from
    std::string what;                 ///< English, for the log only
};

template <class T>
using TraceFileResult = tl::expected<T, TraceFileFailure>;

[[nodiscard]] TraceFileResult<TraceFile> parseTraceFile(std::string_view bytes, const TraceFileOptions& options = {});
[[nodiscard]] TraceFileResult<TraceFile> readTraceFile(const std::filesystem::path& path,
                                                       const TraceFileOptions& options = {});

/// The recording as the analytics want it; a missing temperature becomes one that is not finite.
[[nodiscard]] analytics::RawTrace rawTraceOf(const TraceFile& file);

} // namespace holdfast::kiosk::command
