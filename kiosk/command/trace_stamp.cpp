#include "kiosk/command/trace_stamp.hpp"

#include "kiosk/command/trace_text.hpp"

#include <array>
#include <chrono>
#include <limits>
#include <string>

namespace holdfast::kiosk::command::tracefile {

namespace {

constexpr std::int64_t kMicrosecondsPerMinute = 60'000'000;

struct UnitRow final {
    TimeUnit unit;
    int powerOfTen;      ///< of a microsecond …
    std::int64_t factor; ///< … and what is left over
    std::array<std::string_view, 5> names;
};

constexpr std::array<UnitRow, 6> kUnits{{
    {TimeUnit::nanosecond, -3, 1, {"ns", "nanoseconds", "nanos", "", ""}},
    {TimeUnit::microsecond, 0, 1, {"us", "\xC2\xB5s", "\xCE\xBCs", "microseconds", "micros"}},
    {TimeUnit::millisecond, 3, 1, {"ms", "msec", "milliseconds", "millis", ""}},
    {TimeUnit::second, 6, 1, {"s", "sec", "seconds", "secs", "second"}},
    {TimeUnit::minute, 6, 60, {"min", "minutes", "mins", "minute", ""}},
    {TimeUnit::hour, 6, 3600, {"h", "hours", "hrs", "hour", "hr"}},
}};

const UnitRow& rowOf(TimeUnit unit) {
    return kUnits[static_cast<std::size_t>(unit)];
}

std::optional<TimeUnit> unitNamed(std::string_view name) {
    for (const UnitRow& row : kUnits) {
        for (const std::string_view known : row.names) {
            if (!known.empty() && sameWord(name, known)) {
                return row.unit;
            }
        }
    }
    return std::nullopt;
}

/// The digits of a decimal number; value = digits · 10^(−decimals).
struct Digits final {
    std::string digits;
    int decimals = 0;
    bool negative = false;
};

/// Takes a number off the front of `text`; the decimal mark is a point or a comma.
std::optional<Digits> takeDigits(std::string_view& text) {
    Digits result;
    std::size_t i = 0;
    if (i < text.size() && (text[i] == '-' || text[i] == '+')) {
        result.negative = text[i++] == '-';
    }
    bool marked = false;
    for (; i < text.size(); ++i) {
        if (isDigit(text[i])) {
            result.digits += text[i];
            result.decimals += marked ? 1 : 0;
        } else if ((text[i] == '.' || text[i] == ',') && !marked) {
            marked = true;
        } else {
            break;
        }
    }
    if (result.digits.empty()) {
        return std::nullopt;
    }
    if (i + 1 < text.size() && (text[i] == 'e' || text[i] == 'E')) {
        std::size_t j = i + 1;
        const bool down = text[j] == '-';
        j += text[j] == '-' || text[j] == '+' ? 1 : 0;
        int exponent = 0;
        const std::size_t first = j;
        for (; j < text.size() && isDigit(text[j]) && exponent < 100; ++j) {
            exponent = exponent * 10 + (text[j] - '0');
        }
        if (j > first) {
            result.decimals += down ? exponent : -exponent;
            i = j;
        }
    }
    text.remove_prefix(i);
    return result;
}

std::optional<std::int64_t> toMicroseconds(Digits number, TimeUnit unit) {
    const UnitRow& row = rowOf(unit);
    const int shift = row.powerOfTen - number.decimals;
    bool roundUp = false;
    std::string& digits = number.digits;
    if (shift >= 0) {
        if (shift > 30) {
            return std::nullopt;
        }
        digits.append(static_cast<std::size_t>(shift), '0');
    } else {
        const auto dropped = static_cast<std::size_t>(-shift);
        roundUp = dropped <= digits.size() && digits[digits.size() - dropped] >= '5';
        digits.resize(digits.size() - std::min(dropped, digits.size()));
    }
    std::int64_t value = 0;
    for (const char digit : digits) {
        if (__builtin_mul_overflow(value, 10, &value) || __builtin_add_overflow(value, digit - '0', &value)) {
            return std::nullopt;
        }
    }
    if (__builtin_add_overflow(value, roundUp ? 1 : 0, &value) || __builtin_mul_overflow(value, row.factor, &value)) {
        return std::nullopt;
    }
    return number.negative ? -value : value;
}

std::optional<int> takeNumber(std::string_view& text, std::size_t most) {
    std::size_t i = 0;
    int value = 0;
    for (; i < text.size() && i < most && isDigit(text[i]); ++i) {
        value = value * 10 + (text[i] - '0');
    }
    if (i == 0) {
        return std::nullopt;
    }
    text.remove_prefix(i);
    return value;
}

bool takeOne(std::string_view& text, std::string_view of) {
    if (text.empty() || of.find(text.front()) == std::string_view::npos) {
        return false;
    }
    text.remove_prefix(1);
    return true;
}

/// Year first, or last with day and month in either order: with dots the day comes first, with strokes the month
/// unless it cannot be one.
std::optional<std::int64_t> takeDate(std::string_view& text) {
    std::string_view rest = text;
    const auto first = takeNumber(rest, 4);
    const char mark = rest.empty() ? '\0' : rest.front();
    if (!first || !takeOne(rest, ".-/")) {
        return std::nullopt;
    }
    const auto second = takeNumber(rest, 2);
    if (!second || rest.empty() || rest.front() != mark || !takeOne(rest, ".-/")) {
        return std::nullopt;
    }
    const auto third = takeNumber(rest, 4);
    if (!third) {
        return std::nullopt;
    }
    const bool yearFirst = *first > 31;
    int year = yearFirst ? *first : *third;
    int month = *second;
    int day = yearFirst ? *third : *first;
    if (!yearFirst && mark == '/' && *first <= 12) {
        month = *first;
        day = *second;
    }
    year += year < 100 ? 2000 : 0;
    const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                                           std::chrono::day{static_cast<unsigned>(day)}};
    if (!date.ok()) {
        return std::nullopt;
    }
    text = rest;
    return std::chrono::sys_days{date}.time_since_epoch().count();
}

/// Seconds with their fraction, as microseconds.
std::optional<std::int64_t> takeSeconds(std::string_view& text) {
    if (text.empty() || !isDigit(text.front())) {
        return std::nullopt;
    }
    const auto digits = takeDigits(text);
    return digits ? toMicroseconds(*digits, TimeUnit::second) : std::nullopt;
}

/// H:M, H:M:S, H:M:S.f, H:M:S:mmm, and M:S.f.
std::optional<std::int64_t> takeClock(std::string_view& text) {
    const auto first = takeNumber(text, 6);
    if (!first || !takeOne(text, ":")) {
        return std::nullopt;
    }
    std::string_view rest = text;
    const auto second = takeNumber(rest, 2);
    if (!second) {
        return std::nullopt;
    }
    const bool fraction = !rest.empty() && (rest.front() == '.' || rest.front() == ',');
    if (fraction) {
        const auto seconds = takeSeconds(text);
        return seconds ? std::optional{*first * kMicrosecondsPerMinute + *seconds} : std::nullopt;
    }
    text = rest;
    std::int64_t value = (std::int64_t{*first} * 60 + *second) * kMicrosecondsPerMinute;
    if (!takeOne(text, ":")) {
        return value;
    }
    const auto seconds = takeSeconds(text);
    if (!seconds || *seconds >= 61'000'000) {
        return std::nullopt;
    }
    value += *seconds;
    if (takeOne(text, ":")) {
        const auto thousandths = takeNumber(text, 3);
        value += thousandths ? std::int64_t{*thousandths} * 1000 : 0;
    }
    return value;
}

/// AM or PM, then Z or an offset; false when something else is left.
bool takeZone(std::string_view text, std::int64_t& value) {
    constexpr std::int64_t kHalfDay = 12 * 60 * kMicrosecondsPerMinute;
    text = trimmed(text);
    if (text.size() >= 2 && (sameWord(text.substr(0, 2), "am") || sameWord(text.substr(0, 2), "pm"))) {
        const std::int64_t dayPart = value % (2 * kHalfDay);
        const bool twelve = dayPart >= kHalfDay;
        const bool afternoon = sameWord(text.substr(0, 2), "pm");
        value += afternoon && !twelve ? kHalfDay : (!afternoon && twelve ? -kHalfDay : 0);
        text = trimmed(text.substr(2));
    }
    if (text.empty() || sameWord(text, "z") || sameWord(text, "utc")) {
        return true;
    }
    const bool west = text.front() == '-';
    if (!takeOne(text, "+-")) {
        return false;
    }
    const auto hours = takeNumber(text, 2);
    takeOne(text, ":");
    const auto minutes = takeNumber(text, 2);
    if (!hours || !text.empty()) {
        return false;
    }
    const std::int64_t offset = (std::int64_t{*hours} * 60 + minutes.value_or(0)) * kMicrosecondsPerMinute;
    value += west ? offset : -offset;
    return true;
}

std::optional<Stamp> parseClock(std::string_view text) {
    constexpr std::int64_t kDay = 24 * 60 * kMicrosecondsPerMinute;
    const auto date = takeDate(text);
    if (date && !takeOne(text, "Tt _")) {
        return std::nullopt;
    }
    text = trimmed(text);
    auto value = takeClock(text);
    if (!value) {
        return std::nullopt;
    }
    std::int64_t stamp = *value + date.value_or(0) * kDay;
    if (!takeZone(text, stamp)) {
        return std::nullopt;
    }
    return Stamp{stamp, date ? StampKind::dateTime : StampKind::timeOfDay};
}

} // namespace

std::optional<TimeUnit> timeUnitIn(std::string_view header) {
    std::optional<TimeUnit> found;
    std::size_t from = 0;
    const auto endsWord = [](char c) {
        return std::string_view{" _()[]{},;:/.\t\""}.find(c) != std::string_view::npos;
    };
    for (std::size_t i = 0; i <= header.size(); ++i) {
        if (i < header.size() && !endsWord(header[i])) {
            continue;
        }
        if (const auto unit = unitNamed(header.substr(from, i - from))) {
            found = unit;
        }
        from = i + 1;
    }
    return found;
}

std::optional<Stamp> parseStamp(std::string_view text, TimeUnit unit) {
    text = trimmed(text);
    if (text.find(':') != std::string_view::npos) {
        return parseClock(text);
    }
    const auto digits = takeDigits(text);
    if (!digits) {
        return std::nullopt;
    }
    text = trimmed(text);
    if (!text.empty()) {
        const auto own = unitNamed(text);
        if (!own) {
            return std::nullopt;
        }
        unit = *own;
    }
    const auto value = toMicroseconds(*digits, unit);
    return value ? std::optional{Stamp{*value, StampKind::number}} : std::nullopt;
}

TimeUnit guessUnit(std::string_view text) {
    text = trimmed(text);
    const auto digits = takeDigits(text);
    if (!digits) {
        return TimeUnit::second;
    }
    std::string_view whole = digits->digits;
    const std::size_t decimals = digits->decimals > 0 ? static_cast<std::size_t>(digits->decimals) : 0;
    whole.remove_suffix(std::min(decimals, whole.size()));
    while (!whole.empty() && whole.front() == '0') {
        whole.remove_prefix(1);
    }
    if (whole.size() >= 18) {
        return TimeUnit::nanosecond;
    }
    if (whole.size() >= 15) {
        return TimeUnit::microsecond;
    }
    return whole.size() >= 12 ? TimeUnit::millisecond : TimeUnit::second;
}

bool looksLikeDateOrClock(std::string_view text) {
    text = trimmed(text);
    if (text.find(':') != std::string_view::npos) {
        return parseClock(text).has_value();
    }
    return takeDate(text).has_value() && text.empty();
}

} // namespace holdfast::kiosk::command::tracefile
