#pragma once

#include <cstdint>
#include <optional>
#include <string_view>

/// Times as loggers write them, to whole microseconds and without a float in between. Private to trace_file.
namespace holdfast::kiosk::command::tracefile {

enum class TimeUnit { nanosecond, microsecond, millisecond, second, minute, hour };

/// The unit a header or an option names: "Time (ms)", "elapsed_s", "millis"; absent when it names none.
[[nodiscard]] std::optional<TimeUnit> timeUnitIn(std::string_view header);

enum class StampKind { number, timeOfDay, dateTime };

struct Stamp final {
    std::int64_t microseconds = 0; ///< since the origin of the kind: the file's own, midnight, or 1970-01-01
    StampKind kind = StampKind::number;
};

/// A plain number in `unit` (its own suffix goes before: "12.5s", "300 ms"), "13:8:2.5" (with fraction also minutes and
/// seconds: "1:05.2"), "2019.02.21T22:19:21.591", "21/02/2019 10:19 PM", with Z or an offset. The seventh decimal of a
/// second rounds, half away from zero. Absent for anything else.
[[nodiscard]] std::optional<Stamp> parseStamp(std::string_view text, TimeUnit unit);

/// A plain number without a unit: seconds, unless it is so large that it must count finer since 1970.
[[nodiscard]] TimeUnit guessUnit(std::string_view text);

/// A date alone, or any date-time or time of day.
[[nodiscard]] bool looksLikeDateOrClock(std::string_view text);

} // namespace holdfast::kiosk::command::tracefile
