#include "kiosk/command/data_file.hpp"

#include "kiosk/command/trace_text.hpp"

#include <algorithm>
#include <array>
#include <charconv>
#include <chrono>
#include <cmath>
#include <filesystem>
#include <fstream>

namespace holdfast::kiosk::command {

namespace {

constexpr std::uintmax_t kMostBytes = std::uintmax_t{1} << 30U;

tl::unexpected<CommandFault> fault(const char* key, wording::Arguments arguments) {
    return tl::unexpected(CommandFault{key, std::move(arguments)});
}

tl::expected<std::string, CommandFault> bytesOf(const std::string& path) {
    std::error_code failed;
    const auto size = std::filesystem::is_regular_file(path, failed) ? std::filesystem::file_size(path, failed) : 0;
    std::ifstream file{path, std::ios::binary};
    if (failed || !std::filesystem::is_regular_file(path, failed) || !file) {
        return fault("data-unreadable", {{"path", path}});
    }
    if (size > kMostBytes) {
        return fault("data-too-large", {{"path", path}});
    }
    std::string text(static_cast<std::size_t>(size), '\0');
    file.read(text.data(), static_cast<std::streamsize>(size));
    text.resize(static_cast<std::size_t>(std::max<std::streamsize>(file.gcount(), 0)));
    if (tracefile::isUtf16(text)) {
        return fault("data-utf16", {{"path", path}});
    }
    if (tracefile::trimmed(text).empty()) {
        return fault("data-empty", {{"path", path}});
    }
    return text;
}

/// Of the signs that part cells, the one that stands most often in the line, outside of quotes.
char separatorIn(std::string_view line) {
    constexpr std::array<char, 3> kSigns{',', ';', '\t'};
    std::array<std::size_t, 3> counts{};
    bool quoted = false;
    for (const char sign : line) {
        quoted = sign == '"' ? !quoted : quoted;
        for (std::size_t i = 0; !quoted && i < kSigns.size(); ++i) {
            counts[i] += sign == kSigns[i] ? 1U : 0U;
        }
    }
    const auto most = std::max_element(counts.begin(), counts.end());
    return kSigns[static_cast<std::size_t>(most - counts.begin())];
}

tl::expected<char, CommandFault> separatorOf(const std::string& typed, std::string_view line) {
    if (typed.empty()) {
        return separatorIn(line);
    }
    if (typed == "tab" || typed == "\\t") {
        return '\t';
    }
    if (typed == "space") {
        return ' ';
    }
    if (typed.size() != 1 || typed.front() == '"' || typed.front() == '\n') {
        return fault("separator-unreadable", {{"text", typed}});
    }
    return typed.front();
}

/// Takes one cell off the text from `at`; what had quotes in it is put together in `scratch`.
struct Cutter final {
    std::string_view text;
    char separator;
    std::size_t at = 0;
    std::size_t line = 1;

    [[nodiscard]] bool atEnd() const { return at >= text.size(); }

    /// True: the row goes on behind it.
    bool cut(std::string& scratch, std::string_view& cell) {
        while (separator != ' ' && at < text.size() && text[at] == ' ') {
            ++at;
        }
        if (at < text.size() && text[at] == '"') {
            return cutQuoted(scratch, cell);
        }
        const std::size_t from = at;
        while (at < text.size() && text[at] != separator && text[at] != '\n' && text[at] != '\r') {
            ++at;
        }
        cell = tracefile::trimmed(text.substr(from, at - from));
        return step();
    }

private:
    bool cutQuoted(std::string& scratch, std::string_view& cell) {
        scratch.clear();
        ++at;
        while (at < text.size() && (text[at] != '"' || (at + 1 < text.size() && text[at + 1] == '"'))) {
            line += text[at] == '\n' ? 1U : 0U;
            scratch += text[at];
            at += text[at] == '"' ? 2 : 1;
        }
        at = std::min(at + 1, text.size());
        while (at < text.size() && text[at] != separator && text[at] != '\n' && text[at] != '\r') {
            scratch += text[at++]; // behind the closing quote: kept rather than lost
        }
        cell = tracefile::trimmed(scratch);
        return step();
    }

    bool step() {
        if (at < text.size() && text[at] == separator) {
            ++at;
            while (separator == ' ' && at < text.size() && text[at] == ' ') {
                ++at;
            }
            return true;
        }
        if (at < text.size() && text[at] == '\r') {
            ++at;
            if (at < text.size() && text[at] != '\n') {
                ++line;
            }
        }
        if (at < text.size() && text[at] == '\n') {
            ++at;
            ++line;
        }
        return false;
    }
};

} // namespace

void DataFile::scan(std::size_t at, std::size_t line,
                    const std::function<bool(std::size_t, std::size_t, Cells)>& take) const {
    Cutter cutter{m_text, m_separator, at, line};
    std::vector<std::string> scratches(m_names.size() + 1);
    std::vector<std::string_view> cells;
    while (!cutter.atEnd()) {
        const std::size_t number = cutter.line;
        cells.clear();
        for (bool more = true; more;) {
            if (cells.size() == scratches.size()) {
                const auto place = scratches.size();
                std::vector<std::string> wider(2 *
                                               place); // short texts move with their string: the cells are made anew
                for (std::size_t i = 0; i < place; ++i) {
                    const bool own = cells[i].data() >= scratches[i].data() &&
                                     cells[i].data() <= scratches[i].data() + scratches[i].size();
                    const auto offset = own ? static_cast<std::size_t>(cells[i].data() - scratches[i].data()) : 0;
                    wider[i] = std::move(scratches[i]);
                    cells[i] = own ? std::string_view{wider[i]}.substr(offset, cells[i].size()) : cells[i];
                }
                scratches = std::move(wider);
            }
            std::string_view cell;
            more = cutter.cut(scratches[cells.size()], cell);
            cells.push_back(cell);
        }
        const bool blank = std::all_of(cells.begin(), cells.end(), [](auto cell) { return cell.empty(); });
        if (!blank && !take(number, cutter.at, cells)) {
            return;
        }
        if (blank && cells.size() > 1 && !take(number, cutter.at, cells)) {
            return;
        }
    }
}

tl::expected<DataFile, CommandFault> DataFile::read(const std::string& path, const DataFileOptions& options) {
    auto bytes = bytesOf(path);
    if (!bytes) {
        return tl::unexpected(bytes.error());
    }
    DataFile file;
    file.m_path = path;
    file.m_text = std::move(*bytes);
    file.m_missing = options.missing;
    std::size_t at = file.m_text.starts_with("\xEF\xBB\xBF") ? 3 : 0;
    std::size_t line = 1;
    // What stands over the table: remarks and empty lines.
    while (at < file.m_text.size() && (file.m_text[at] == '#' || file.m_text[at] == '\n' || file.m_text[at] == '\r')) {
        const auto end = file.m_text.find('\n', at);
        at = end == std::string::npos ? file.m_text.size() : end + 1;
        ++line;
    }
    const auto first = std::string_view{file.m_text}.substr(at);
    const auto separator = separatorOf(options.separator, first.substr(0, first.find_first_of("\r\n")));
    if (!separator) {
        return tl::unexpected(separator.error());
    }
    file.m_separator = *separator;
    file.m_firstData = at;
    file.m_firstLine = line;
    file.scan(at, line, [&](std::size_t, std::size_t next, Cells cells) {
        const bool header =
            std::none_of(cells.begin(), cells.end(), [&](auto cell) { return file.number(cell).value.has_value(); });
        for (std::size_t i = 0; i < cells.size(); ++i) {
            file.m_names.push_back(header && !cells[i].empty() ? std::string{cells[i]}
                                                               : "column " + std::to_string(i + 1));
        }
        if (header) {
            file.m_firstData = next;
            file.m_firstLine = line + 1;
        }
        return false;
    });
    if (file.m_names.empty()) {
        return fault("data-empty", {{"path", path}});
    }
    return file;
}

tl::expected<std::size_t, CommandFault> DataFile::column(const std::string& asked) const {
    std::string all;
    std::vector<std::size_t> exact;
    std::vector<std::size_t> parts;
    const auto wanted = tracefile::lowered(tracefile::trimmed(asked));
    for (std::size_t i = 0; i < m_names.size(); ++i) {
        const auto name = tracefile::lowered(m_names[i]);
        all += (all.empty() ? "" : ", ") + m_names[i];
        if (name == wanted) {
            exact.push_back(i);
        } else if (!wanted.empty() && name.find(wanted) != std::string::npos) {
            parts.push_back(i);
        }
    }
    const auto& found = exact.empty() ? parts : exact;
    if (found.size() == 1) {
        return found.front();
    }
    std::size_t number = 0;
    const auto [end, error] = std::from_chars(wanted.data(), wanted.data() + wanted.size(), number);
    if (found.empty() && error == std::errc{} && end == wanted.data() + wanted.size() && number >= 1 &&
        number <= m_names.size()) {
        return number - 1;
    }
    return fault(found.empty() ? "data-column-not-found" : "data-column-not-unique",
                 {{"asked", asked}, {"path", m_path}, {"columns", all}});
}

void DataFile::forEach(const std::vector<std::size_t>& columns, const TakeRow& take) const {
    std::vector<std::string_view> picked(columns.size());
    scan(m_firstData, m_firstLine, [&](std::size_t line, std::size_t, Cells cells) {
        for (std::size_t i = 0; i < columns.size(); ++i) {
            picked[i] = columns[i] < cells.size() ? cells[columns[i]] : std::string_view{};
        }
        take(line, picked);
        return true;
    });
}

bool DataFile::isMissing(std::string_view cell) const {
    return tracefile::isMissingWord(cell) || std::any_of(m_missing.begin(), m_missing.end(), [cell](const auto& word) {
               return tracefile::sameWord(word, cell);
           });
}

NumberCell DataFile::number(std::string_view cell) const {
    if (!m_missing.empty() && isMissing(cell)) {
        return {};
    }
    double value = 0.0;
    const bool sign = cell.size() > 1 && cell.front() == '+' && cell[1] != '-';
    const auto* const begin = cell.data() + (sign ? 1 : 0);
    const auto* const last = cell.data() + cell.size();
    auto [end, error] = std::from_chars(begin, last, value);
    if (error == std::errc{} && end != last && *end == ',' && m_separator != ',') {
        std::string point{begin, last};
        point[static_cast<std::size_t>(end - begin)] = '.';
        const auto again = std::from_chars(point.data(), point.data() + point.size(), value);
        error = again.ec;
        end = again.ptr == point.data() + point.size() ? last : begin;
    }
    if (error == std::errc{} && end == last && !cell.empty() && std::isfinite(value)) {
        return {value, false};
    }
    return {std::nullopt, !isMissing(cell)};
}

tl::expected<NumberColumns, CommandFault> numbersOf(const DataFile& file, const std::vector<std::string>& asked) {
    std::vector<std::size_t> places;
    for (const auto& name : asked) {
        const auto place = file.column(name);
        if (!place) {
            return tl::unexpected(place.error());
        }
        places.push_back(*place);
    }
    NumberColumns out;
    out.columns.resize(asked.size());
    std::vector<double> row(asked.size());
    file.forEach(places, [&](std::size_t line, DataFile::Cells cells) {
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const auto cell = file.number(cells[i]);
            if (!cell.value) {
                ++(cell.unreadable ? out.leftOut.unreadable : out.leftOut.missing);
                out.leftOut.firstUnreadable =
                    cell.unreadable && out.leftOut.firstUnreadable == 0 ? line : out.leftOut.firstUnreadable;
                return;
            }
            row[i] = *cell.value;
        }
        for (std::size_t i = 0; i < row.size(); ++i) {
            out.columns[i].push_back(row[i]);
        }
    });
    if (out.columns.front().empty()) {
        return fault("data-no-numbers", {{"path", file.path()}, {"column", asked.front()}});
    }
    return out;
}

std::int32_t Labels::of(std::string_view label) {
    const auto found = m_places.find(label);
    if (found != m_places.end()) {
        return found->second;
    }
    const auto place = static_cast<std::int32_t>(m_names.size());
    m_names.emplace_back(label);
    m_places.emplace(m_names.back(), place);
    return place;
}

std::optional<bool> truthOf(std::string_view cell) {
    constexpr std::array<std::string_view, 9> kTrue{"1", "yes", "y", "true", "t", "failed", "fail", "bad", "x"};
    constexpr std::array<std::string_view, 11> kFalse{"0",    "no",   "n",    "false", "f",    "passed",
                                                      "pass", "good", "held", "ok",    "cured"};
    const auto is = [cell](std::string_view word) { return tracefile::sameWord(word, cell); };
    if (std::any_of(kTrue.begin(), kTrue.end(), is)) {
        return true;
    }
    return std::any_of(kFalse.begin(), kFalse.end(), is) ? std::optional{false} : std::nullopt;
}

std::optional<TimeCell> timeOf(const DataFile& file, std::string_view cell) {
    if (const auto number = file.number(cell); number.value) {
        return TimeCell{*number.value, false};
    }
    constexpr std::size_t kDay = 10;
    const auto part = [cell](std::size_t from, std::size_t count, int& out) {
        const auto text = from + count <= cell.size() ? cell.substr(from, count) : std::string_view{};
        const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), out);
        return !text.empty() && error == std::errc{} && end == text.data() + text.size();
    };
    int year = 0;
    int month = 0;
    int day = 0;
    if (cell.size() < kDay || cell[4] != '-' || cell[7] != '-' || !part(0, 4, year) || !part(5, 2, month) ||
        !part(8, 2, day)) {
        return std::nullopt;
    }
    const std::chrono::year_month_day date{std::chrono::year{year}, std::chrono::month{static_cast<unsigned>(month)},
                                           std::chrono::day{static_cast<unsigned>(day)}};
    if (!date.ok()) {
        return std::nullopt;
    }
    double at = static_cast<double>(std::chrono::sys_days{date}.time_since_epoch().count());
    int hour = 0;
    int minute = 0;
    int second = 0;
    if (cell.size() > kDay) {
        if (!part(11, 2, hour) || cell.size() < 16 || !part(14, 2, minute) || hour > 23 || minute > 59) {
            return std::nullopt;
        }
        if (cell.size() >= 19 && !part(17, 2, second)) {
            return std::nullopt;
        }
        at += (hour * 3600.0 + minute * 60.0 + second) / 86400.0;
    }
    return TimeCell{at, true};
}

} // namespace holdfast::kiosk::command
