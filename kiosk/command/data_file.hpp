#pragma once

#include "kiosk/command/command_fault.hpp"

#include <cstdint>
#include <functional>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <tl/expected.hpp>
#include <unordered_map>
#include <vector>

/// Tables that people bring: RFC 4180 and its cousins, with or without a header.
namespace holdfast::kiosk::command {

struct DataFileOptions final {
    std::string separator{};            ///< as typed: one sign, "tab", "space"; empty: comma, semicolon or tab
    std::vector<std::string> missing{}; ///< cells that mean no value, beside empty, nan, n/a and the like
};

/// Why rows do not count.
struct LeftOut final {
    std::int64_t missing = 0;
    std::int64_t unreadable = 0;
    std::size_t firstUnreadable = 0; ///< its line; 0: none
    [[nodiscard]] std::int64_t all() const noexcept { return missing + unreadable; }
};

/// A cell as a number: absent with `unreadable` false means that there is no value.
struct NumberCell final {
    std::optional<double> value{};
    bool unreadable = false;
};

/// One table in memory, cut into rows only as they are asked for: a million rows take a fraction of a second.
class DataFile final {
public:
    using Cells = std::span<const std::string_view>;
    using TakeRow = std::function<void(std::size_t line, Cells cells)>;

    [[nodiscard]] static tl::expected<DataFile, CommandFault> read(const std::string& path,
                                                                   const DataFileOptions& options);

    /// One a column; "column 1" and so on without a header.
    [[nodiscard]] const std::vector<std::string>& names() const noexcept { return m_names; }
    /// By its name, or the only one that it is a part of, either way whatever the case of letters; or by its number.
    [[nodiscard]] tl::expected<std::size_t, CommandFault> column(const std::string& asked) const;
    /// Each row's cells of these columns, trimmed; one that a short row lacks is empty. The cells live until `take` is
    /// done.
    void forEach(const std::vector<std::size_t>& columns, const TakeRow& take) const;
    /// A decimal number with a point, or a comma where cells are not parted by commas.
    [[nodiscard]] NumberCell number(std::string_view cell) const;
    [[nodiscard]] bool isMissing(std::string_view cell) const;
    [[nodiscard]] const std::string& path() const noexcept { return m_path; }

private:
    /// The rows from `at`, each with all of its cells.
    void scan(std::size_t at, std::size_t line, const std::function<bool(std::size_t, std::size_t, Cells)>& take) const;

    std::string m_path;
    std::string m_text;
    char m_separator = ',';
    std::vector<std::string> m_missing;
    std::vector<std::string> m_names;
    std::size_t m_firstData = 0; ///< offset of the first row that is no header
    std::size_t m_firstLine = 1;
};

struct NumberColumns final {
    std::vector<std::vector<double>> columns{}; ///< as asked, rows where every one has a number
    LeftOut leftOut{};
};
[[nodiscard]] tl::expected<NumberColumns, CommandFault> numbersOf(const DataFile& file,
                                                                  const std::vector<std::string>& asked);

/// Labels as small numbers in the order in which they come.
class Labels final {
public:
    [[nodiscard]] std::int32_t of(std::string_view label);
    [[nodiscard]] const std::vector<std::string>& names() const noexcept { return m_names; }

private:
    struct Hash final {
        using is_transparent = void;
        std::size_t operator()(std::string_view text) const noexcept { return std::hash<std::string_view>{}(text); }
    };
    std::vector<std::string> m_names;
    std::unordered_map<std::string, std::int32_t, Hash, std::equal_to<>> m_places;
};

/// "1", "yes", "failed", "true" and their opposites; absent: neither.
[[nodiscard]] std::optional<bool> truthOf(std::string_view cell);

/// A time: a number, or a day such as 2026-11-25 with or without a clock, in days since 1970-01-01.
struct TimeCell final {
    double at = 0.0;
    bool isDay = false;
};
[[nodiscard]] std::optional<TimeCell> timeOf(const DataFile& file, std::string_view cell);

} // namespace holdfast::kiosk::command
