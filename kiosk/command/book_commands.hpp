#pragma once

#include <filesystem>
#include <iosfwd>

/// The commands over a book that stands still: each says what it found or why it could not, and exits 0 or 3 (2: the
/// input cannot be used).
namespace holdfast::kiosk::command {

[[nodiscard]] int runCheckBook(const std::filesystem::path& data, bool json, std::ostream& out, std::ostream& err);
[[nodiscard]] int runBackup(const std::filesystem::path& data, const std::filesystem::path& to, std::ostream& out,
                            std::ostream& err);
[[nodiscard]] int runRestore(const std::filesystem::path& from, const std::filesystem::path& data, std::ostream& out,
                             std::ostream& err);

} // namespace holdfast::kiosk::command
