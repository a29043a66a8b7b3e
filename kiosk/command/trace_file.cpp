#include "kiosk/command/trace_file.hpp"

#include "kiosk/command/trace_columns.hpp"

#include <algorithm>
#include <cmath>
#include <fstream>
#include <limits>
#include <sstream>

namespace holdfast::kiosk::command {

namespace {

using namespace tracefile;
using analytics::MonotonicTime;
using analytics::Temperature;
using analytics::TemperatureUnit;

constexpr std::uintmax_t kLargest = 64U << 20U;

TraceFileFailure fail(TraceFileFault fault, std::string what) {
    return {fault, 0, {}, {}, std::move(what)};
}

bool isSet(std::string_view flag) {
    if (const auto number = parseNumber(flag)) {
        return number->value != 0.0;
    }
    constexpr std::array<std::string_view, 7> kFine{"", "ok", "false", "no", "n", "none", "good"};
    return std::none_of(kFine.begin(), kFine.end(), [flag](std::string_view word) { return sameWord(flag, word); });
}

/// A clock that says only the time of day goes on at midnight.
class DayCount final {
public:
    std::int64_t goOn(const Stamp& stamp) {
        constexpr std::int64_t kDay = 86'400'000'000;
        if (stamp.kind != StampKind::timeOfDay) {
            return stamp.microseconds;
        }
        m_days += m_before && stamp.microseconds < *m_before - kDay / 2 ? kDay : 0;
        m_before = stamp.microseconds;
        return stamp.microseconds + m_days;
    }

private:
    std::optional<std::int64_t> m_before;
    std::int64_t m_days = 0;
};

class RowReader final {
public:
    RowReader(const Table& table, const Choice& choice, const TraceFileOptions& options)
        : m_table{table}, m_choice{choice}, m_options{options} {
        for (const std::string& text : options.missing) {
            const auto number = parseNumber(text);
            m_missing.push_back(number ? number->value : std::numeric_limits<double>::quiet_NaN());
        }
    }

    TraceFile read(TraceFile file) {
        for (std::size_t i = 0; i < m_table.rows.size(); ++i) {
            const TableRow& row = m_table.rows[i];
            if (i < m_table.firstData || !readRow(row, file)) {
                ++file.otherLines;
            }
        }
        file.unit = m_unit.value_or(TemperatureUnit::celsius);
        file.unitStated = m_unit.has_value();
        file.resolution = analytics::TemperatureDifference::from(std::pow(10.0, -m_decimals), file.unit);
        for (std::size_t i = 0; i < file.rows.size(); ++i) {
            if (file.rows[i].missing == MissingWhy::no) {
                file.rows[i].temperature = Temperature::from(m_values[i], file.unit);
            }
        }
        return file;
    }

    /// Known before the first row, or found on it.
    void setUnit(std::optional<TemperatureUnit> unit) { m_unit = unit; }

private:
    bool readRow(const TableRow& row, TraceFile& file) {
        const bool whole = row.fields.size() >= m_table.columns;
        if (row.fields.size() <= m_choice.time || (!whole && !row.ended) || isCut(row, m_choice.time)) {
            return false;
        }
        const std::string& timeText = row.fields[m_choice.time];
        const TimeUnit unit = m_choice.timeUnit ? *m_choice.timeUnit : m_guess.value_or(guessUnit(timeText));
        const auto stamp = parseStamp(timeText, unit);
        if (!stamp || (!whole && !isPlausible(*stamp, file))) {
            return false;
        }
        m_guess = unit;
        TraceFileRow result;
        result.at = MonotonicTime{m_days.goOn(*stamp)};
        result.line = row.line;
        result.flagged = whole && m_choice.flag && isSet(row.fields[*m_choice.flag]);
        double value = 0.0;
        result.missing = whole ? readHeat(row, value) : MissingWhy::fieldLost;
        file.rows.push_back(result);
        m_values.push_back(value);
        m_before = whole ? &row : m_before;
        return true;
    }

    MissingWhy readHeat(const TableRow& row, double& value) {
        const std::string& text = row.fields[m_choice.temperature];
        if (isAsked(text)) {
            return MissingWhy::asked;
        }
        if (isMissingWord(text)) {
            return MissingWhy::empty;
        }
        const auto number = parseNumber(text);
        if (!number) {
            return MissingWhy::notNumber;
        }
        if (isCut(row, m_choice.temperature)) {
            return MissingWhy::cutOff;
        }
        if (number->unit) {
            const auto own = *number->unit == 'F' ? TemperatureUnit::fahrenheit : TemperatureUnit::celsius;
            m_unit = m_unit ? m_unit : std::optional{own};
            if (*m_unit != own) {
                return MissingWhy::notNumber;
            }
        }
        value = number->value;
        m_decimals = std::max(m_decimals, number->decimals);
        return MissingWhy::no;
    }

    [[nodiscard]] bool isAsked(const std::string& text) const {
        const auto number = parseNumber(text);
        for (std::size_t i = 0; i < m_missing.size(); ++i) {
            if (number ? number->value == m_missing[i] : sameWord(text, trimmed(m_options.missing[i]))) {
                return true;
            }
        }
        return false;
    }

    /// The last field of a last line without an end is taken as cut when it is shorter, or has fewer decimals, than the
    /// row before shows.
    [[nodiscard]] bool isCut(const TableRow& row, std::size_t column) const {
        if (row.ended || column + 1 != row.fields.size() || m_before == nullptr) {
            return false;
        }
        const std::string& text = row.fields[column];
        const std::string& usual = m_before->fields[column];
        const auto number = parseNumber(text);
        const auto before = parseNumber(usual);
        return text.size() < usual.size() || (number && before && number->decimals < before->decimals);
    }

    /// Of a row that lost a field, the time may be another column's number.
    [[nodiscard]] static bool isPlausible(const Stamp& stamp, const TraceFile& file) {
        const std::size_t count = file.rows.size();
        if (count < 2) {
            return false;
        }
        const std::int64_t before = file.rows[count - 1].at.count();
        const std::int64_t step = before - file.rows[count - 2].at.count();
        return step > 0 && stamp.microseconds > before && (stamp.microseconds - before) / 10 <= step;
    }

    const Table& m_table;
    const Choice& m_choice;
    const TraceFileOptions& m_options;
    std::vector<double> m_missing;
    std::vector<double> m_values; ///< beside file.rows, in the file's unit
    std::optional<TemperatureUnit> m_unit;
    std::optional<TimeUnit> m_guess;
    int m_decimals = 0;
    DayCount m_days;
    const TableRow* m_before = nullptr;
};

} // namespace

TraceFileResult<TraceFile> parseTraceFile(std::string_view bytes, const TraceFileOptions& options) {
    if (options.range && !(options.range->first <= options.range->second)) {
        return tl::unexpected(fail(TraceFileFault::badRange, "the range ends below its start"));
    }
    if (isUtf16(bytes)) {
        return tl::unexpected(fail(TraceFileFault::utf16, "the file is UTF-16"));
    }
    const std::vector<Line> lines = linesOf(bytes);
    if (lines.empty()) {
        return tl::unexpected(fail(TraceFileFault::empty, "the file is empty"));
    }
    const auto separator = options.separator ? options.separator : separatorOf(lines);
    const Table table = separator ? tableOf(lines, *separator) : Table{};
    if (table.columns < 2) {
        return tl::unexpected(fail(TraceFileFault::noRows, "no line has a time and another number"));
    }
    const auto choice = chooseColumns(table, options);
    if (!choice) {
        return tl::unexpected(choice.error());
    }
    TraceFile file;
    file.columns = {table.names, choice->time, choice->temperature, choice->flag, *separator};
    RowReader reader{table, *choice, options};
    reader.setUnit(options.unit ? options.unit : choice->unit);
    file = reader.read(std::move(file));
    if (file.rows.empty()) {
        return tl::unexpected(fail(TraceFileFault::noRows, "no line has a time"));
    }
    if (options.range) {
        file.range = analytics::MeasuringRange{Temperature::from(options.range->first, file.unit),
                                               Temperature::from(options.range->second, file.unit)};
    }
    return file;
}

TraceFileResult<TraceFile> readTraceFile(const std::filesystem::path& path, const TraceFileOptions& options) {
    std::error_code error;
    const auto size = std::filesystem::file_size(path, error);
    if (error) {
        return tl::unexpected(fail(TraceFileFault::unreadable, error.message()));
    }
    if (size > kLargest) {
        return tl::unexpected(fail(TraceFileFault::tooLarge, std::to_string(size) + " bytes"));
    }
    std::ifstream stream{path, std::ios::binary};
    std::string bytes(static_cast<std::size_t>(size), '\0');
    if (!stream.read(bytes.data(), static_cast<std::streamsize>(size)) && size > 0) {
        return tl::unexpected(fail(TraceFileFault::unreadable, "the file ended early"));
    }
    return parseTraceFile(bytes, options);
}

analytics::RawTrace rawTraceOf(const TraceFile& file) {
    analytics::RawTrace trace;
    trace.unit = file.unit;
    trace.resolution = file.resolution;
    trace.range = file.range;
    trace.samples.reserve(file.rows.size());
    const Temperature none = Temperature::fromCelsius(std::numeric_limits<double>::quiet_NaN());
    for (const TraceFileRow& row : file.rows) {
        trace.samples.push_back({row.at, row.temperature.value_or(none), row.flagged});
    }
    return trace;
}

} // namespace holdfast::kiosk::command
