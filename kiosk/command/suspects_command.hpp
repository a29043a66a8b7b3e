#pragma once

#include "kiosk/command/answer.hpp"

#include <filesystem>
#include <iosfwd>
#include <string>
#include <vector>

namespace holdfast::kiosk::command {

/// `holdfast suspects`, as typed.
struct SuspectsTyped final {
    std::string input{}; ///< empty: the book
    std::string failed{};
    std::string episode{};
    std::string stratum{};
    std::vector<std::string> factors{}; ///< empty: every other column that has few enough values
    std::size_t most = 12;
    DataFileOptions file{};
    // Of the book:
    std::string data{};
    std::string from{};
    std::string to{};
    bool shift = false;
    bool json = false;
};

/// What failed rows share, of a table.
[[nodiscard]] Answered suspectsOf(const DataFile& file, const SuspectsTyped& typed);
[[nodiscard]] int runSuspects(const SuspectsTyped& typed, const std::filesystem::path& data, std::ostream& out,
                              std::ostream& err);

} // namespace holdfast::kiosk::command
