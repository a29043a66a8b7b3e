#pragma once

#include "kiosk/ledger/failure.hpp"

#include <SQLiteCpp/Database.h>
#include <filesystem>

namespace holdfast::kiosk::ledger {

inline constexpr const char* restoringSuffix = ".restoring";
inline constexpr const char* setAsideSuffix = ".set-aside-";

/// Online copy into a file that is made anew, in rollback mode so that it is one file; checked, and not left behind if
/// it is not sound.
[[nodiscard]] Result<void> copyVerified(SQLite::Database& source, const std::filesystem::path& file);

/// Renames a book and its write-ahead log to the next free name beside it.
[[nodiscard]] Result<void> setAside(const std::filesystem::path& book);

/// What says that a book was here: its log, a copy set aside, an unfinished restore, a ride in progress. Empty if
/// nothing does.
[[nodiscard]] std::filesystem::path traceOfLostBook(const std::filesystem::path& folder);

} // namespace holdfast::kiosk::ledger
