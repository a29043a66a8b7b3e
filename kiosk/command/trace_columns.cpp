#include "kiosk/command/trace_columns.hpp"

#include <algorithm>
#include <array>
#include <cmath>

namespace holdfast::kiosk::command::tracefile {

namespace {

using analytics::TemperatureUnit;
using Columns = std::vector<std::size_t>;

constexpr std::size_t kLookedRows = 1000;

template <std::size_t N>
bool hasAny(const std::string& name, const std::array<std::string_view, N>& parts) {
    return std::any_of(parts.begin(), parts.end(),
                       [&name](std::string_view part) { return name.find(part) != std::string::npos; });
}

constexpr std::array<std::string_view, 7> kFahrenheit{"\xC2\xB0"
                                                      "f",
                                                      "(f)",
                                                      "[f]",
                                                      "degf",
                                                      "deg f",
                                                      "fahrenheit",
                                                      "_f"};
constexpr std::array<std::string_view, 7> kCelsius{"\xC2\xB0"
                                                   "c",
                                                   "(c)",
                                                   "[c]",
                                                   "degc",
                                                   "deg c",
                                                   "celsius",
                                                   "_c"};
constexpr std::array<std::string_view, 4> kHeat{"temp", "thermocouple", "probe", "film"};
/// Temperatures of something else than what is measured.
constexpr std::array<std::string_view, 15> kElsewhere{"ambient", "room",   "junction", "reference", "setpoint",
                                                      "set p",   "target", "internal", "chip",      "board",
                                                      "case",    "cjc",    "outside",  "limit",     "cold"};
constexpr std::array<std::string_view, 8> kState{"open", "fault", "flag", "status", "error", "alarm", "valid", "unit"};
constexpr std::array<std::string_view, 2> kFault{"open", "fault"};

/// "temp_f" ends in its unit; "temp_final" does not.
template <std::size_t N>
bool saysUnit(const std::string& name, const std::array<std::string_view, N>& parts) {
    return std::any_of(parts.begin(), parts.end(), [&name](std::string_view part) {
        return part.front() == '_' ? name.ends_with(part) : name.find(part) != std::string::npos;
    });
}

std::optional<TemperatureUnit> unitIn(const std::string& name) {
    if (saysUnit(name, kCelsius)) {
        return TemperatureUnit::celsius;
    }
    return saysUnit(name, kFahrenheit) ? std::optional{TemperatureUnit::fahrenheit} : std::nullopt;
}

class Chooser final {
public:
    Chooser(const Table& table, const TraceFileOptions& options) : m_table{table}, m_options{options} {
        for (const std::string& name : table.names) {
            m_names.push_back(lowered(name));
        }
    }

    TraceFileResult<Choice> choose() {
        Choice choice;
        const auto time = m_options.time ? timeAsked(choice) : timeByLook();
        if (!time) {
            return tl::unexpected(time.error());
        }
        choice.time = *time;
        choice.timeUnit = choice.timeUnit ? choice.timeUnit : timeUnitIn(m_names[choice.time]);
        if (m_options.flag) {
            const auto flag = asked(*m_options.flag);
            if (!flag) {
                return tl::unexpected(flag.error());
            }
            choice.flag = *flag;
        } else if (m_options.flagByName) {
            const Columns faults = where([this](std::size_t i) { return hasAny(m_names[i], kFault); });
            choice.flag = faults.size() == 1 ? std::optional{faults.front()} : std::nullopt;
        }
        const auto heat = m_options.temperature ? asked(*m_options.temperature) : temperatureByLook(choice);
        if (!heat) {
            return tl::unexpected(heat.error());
        }
        choice.temperature = *heat;
        choice.unit = unitIn(m_names[choice.temperature]);
        return choice;
    }

private:
    template <class Predicate>
    Columns where(Predicate predicate) const {
        Columns columns;
        for (std::size_t i = 0; i < m_names.size(); ++i) {
            if (predicate(i)) {
                columns.push_back(i);
            }
        }
        return columns;
    }

    [[nodiscard]] TraceFileFailure failure(TraceFileFault fault, const Columns& columns, std::string what) const {
        TraceFileFailure result{fault, 0, {}, {}, std::move(what)};
        for (const std::size_t i : columns) {
            result.columns.push_back(m_table.names[i]);
        }
        return result;
    }

    /// By number, by name, or by a part of it that only one has.
    TraceFileResult<std::size_t> asked(const std::string& spec) const {
        const std::string wanted = lowered(trimmed(spec));
        Columns found = where([&](std::size_t i) { return m_names[i] == wanted; });
        if (found.empty() && !wanted.empty() && wanted.size() < 5 &&
            std::all_of(wanted.begin(), wanted.end(), isDigit)) {
            const auto number = static_cast<std::size_t>(std::stoul(wanted));
            if (number >= 1 && number <= m_names.size()) {
                return number - 1;
            }
        }
        if (found.empty() && !wanted.empty()) {
            found = where([&](std::size_t i) { return m_names[i].find(wanted) != std::string::npos; });
        }
        if (found.size() == 1) {
            return found.front();
        }
        TraceFileFailure result =
            found.empty()
                ? failure(TraceFileFault::columnNotFound, where([](std::size_t) { return true; }), "no such column")
                : failure(TraceFileFault::columnNotUnique, found, "more than one such column");
        result.asked = spec;
        return tl::unexpected(std::move(result));
    }

    TraceFileResult<std::size_t> timeAsked(Choice& choice) const {
        const std::string& spec = *m_options.time;
        auto found = asked(spec);
        const std::size_t colon = spec.rfind(':');
        if (found || found.error().fault != TraceFileFault::columnNotFound || colon == std::string::npos) {
            return found;
        }
        const auto unit = timeUnitIn(std::string_view{spec}.substr(colon + 1));
        auto shorter = unit ? asked(spec.substr(0, colon)) : found;
        choice.timeUnit = shorter ? unit : std::nullopt;
        return shorter;
    }

    /// 3 the name of a time, 2 a name with "time" in it, 1 a date or a unit of time, 0 none.
    [[nodiscard]] int timeLikeness(std::size_t i) const {
        std::string name = m_names[i];
        name = name.substr(0, name.find_first_of("([,:"));
        name = std::string{trimmed(name)};
        for (const std::string_view known :
             {"time", "timestamp", "elapsed", "elapsed time", "t", "time_s", "time_ms", "date time", "datetime"}) {
            if (name == known) {
                return 3;
            }
        }
        if (hasAny(m_names[i], std::array<std::string_view, 2>{"time", "elapsed"})) {
            return 2;
        }
        return name == "date" || timeUnitIn(m_names[i]) ? 1 : 0;
    }

    TraceFileResult<std::size_t> timeByLook() const {
        for (int likeness = m_table.named ? 3 : 0; likeness > 0; --likeness) {
            const Columns like = where([&](std::size_t i) { return timeLikeness(i) == likeness && isMostly(i, true); });
            if (like.size() == 1) {
                return like.front();
            }
            if (like.size() > 1) {
                return tl::unexpected(failure(TraceFileFault::timeAmbiguous, like, "several names of a time"));
            }
        }
        const Columns clocks = where([this](std::size_t i) { return isClock(i); });
        if (clocks.size() == 1) {
            return clocks.front();
        }
        const Columns rising = clocks.empty() ? where([this](std::size_t i) { return rises(i); }) : clocks;
        if (rising.empty()) {
            return tl::unexpected(failure(TraceFileFault::noTimeColumn, where([](std::size_t) { return true; }),
                                          "no column reads like a time"));
        }
        if (rising.size() > 1 && m_names.size() > 2) {
            return tl::unexpected(failure(TraceFileFault::timeAmbiguous, rising, "several columns rise like a time"));
        }
        return rising.front();
    }

    TraceFileResult<std::size_t> temperatureByLook(const Choice& choice) const {
        const auto free = [&](std::size_t i) { return i != choice.time && i != choice.flag && isMostly(i, false); };
        Columns heat;
        if (m_table.named) {
            heat = where([&](std::size_t i) {
                return free(i) && (hasAny(m_names[i], kHeat) || unitIn(m_names[i])) && !hasAny(m_names[i], kState);
            });
            Columns here = heat;
            std::erase_if(here, [this](std::size_t i) { return hasAny(m_names[i], kElsewhere); });
            heat = here.empty() ? heat : here;
        }
        if (heat.empty()) {
            heat = where([&](std::size_t i) { return free(i) && !hasAny(m_names[i], kState); });
        }
        if (heat.empty()) {
            return tl::unexpected(failure(TraceFileFault::noTemperatureColumn, where([](std::size_t) { return true; }),
                                          "no column reads like a temperature"));
        }
        if (heat.size() == 2) {
            heat = oneOfTwins(heat);
        }
        if (heat.size() > 1) {
            return tl::unexpected(
                failure(TraceFileFault::temperatureAmbiguous, heat, "several columns read like a temperature"));
        }
        return heat.front();
    }

    /// Two columns that say the same in °C and °F are one; the unit asked for, else °C.
    [[nodiscard]] Columns oneOfTwins(const Columns& pair) const {
        const auto first = unitIn(m_names[pair[0]]);
        const auto second = unitIn(m_names[pair[1]]);
        if (!first || !second || *first == *second) {
            return pair;
        }
        const bool celsiusFirst = *first == TemperatureUnit::celsius;
        const std::size_t celsius = celsiusFirst ? pair[0] : pair[1];
        const std::size_t fahrenheit = celsiusFirst ? pair[1] : pair[0];
        int same = 0;
        int both = 0;
        eachRow([&](const TableRow& row) {
            const auto c = parseNumber(row.fields[celsius]);
            const auto f = parseNumber(row.fields[fahrenheit]);
            if (c && f) {
                ++both;
                same += std::abs(c->value * 9.0 / 5.0 + 32.0 - f->value) <= 1.0 ? 1 : 0;
            }
        });
        if (both == 0 || same * 10 < both * 9) {
            return pair;
        }
        return {m_options.unit == TemperatureUnit::fahrenheit ? fahrenheit : celsius};
    }

    template <class Action>
    void eachRow(Action action) const {
        std::size_t looked = 0;
        for (std::size_t i = m_table.firstData; i < m_table.rows.size() && looked < kLookedRows; ++i) {
            if (m_table.rows[i].fields.size() >= m_table.columns && Table::isData(m_table.rows[i])) {
                action(m_table.rows[i]);
                ++looked;
            }
        }
    }

    [[nodiscard]] bool isMostly(std::size_t column, bool time) const {
        int values = 0;
        eachRow([&](const TableRow& row) {
            const std::string& field = row.fields[column];
            values += (time ? parseStamp(field, guessUnit(field)).has_value() : parseNumber(field).has_value()) ? 1 : 0;
        });
        return values > 0;
    }

    [[nodiscard]] bool isClock(std::size_t column) const {
        int clocks = 0;
        int rows = 0;
        eachRow([&](const TableRow& row) {
            const std::string& field = row.fields[column];
            ++rows;
            clocks += field.find(':') != std::string::npos && looksLikeDateOrClock(field) ? 1 : 0;
        });
        return rows > 0 && clocks * 2 > rows;
    }

    /// Four steps in five do not fall and more than half climb.
    [[nodiscard]] bool rises(std::size_t column) const {
        std::optional<std::int64_t> before;
        int steps = 0;
        int climbs = 0;
        int falls = 0;
        eachRow([&](const TableRow& row) {
            const auto stamp = parseStamp(row.fields[column], guessUnit(row.fields[column]));
            if (stamp && before) {
                ++steps;
                climbs += stamp->microseconds > *before ? 1 : 0;
                falls += stamp->microseconds < *before ? 1 : 0;
            }
            before = stamp ? std::optional{stamp->microseconds} : before;
        });
        return climbs * 2 > steps && falls * 5 <= steps;
    }

    const Table& m_table;
    const TraceFileOptions& m_options;
    std::vector<std::string> m_names; ///< in lower case
};

} // namespace

TraceFileResult<Choice> chooseColumns(const Table& table, const TraceFileOptions& options) {
    return Chooser{table, options}.choose();
}

} // namespace holdfast::kiosk::command::tracefile
