#pragma once

#include "kiosk/ledger/failure.hpp"

#include <SQLiteCpp/Database.h>
#include <filesystem>
#include <memory>
#include <string_view>

namespace holdfast::kiosk::ledger {

using Connection = std::unique_ptr<SQLite::Database>;

/// As failureFrom, and looks at what the system said last: SQLite calls a full disk an input or output error when a
/// quota or a largest file size is the cause.
[[nodiscard]] Failure failureFrom(const std::exception& thrown, std::string_view doing, SQLite::Database& database);

/// Runs work that may throw at the border of the room.
template <class Work>
[[nodiscard]] auto guarded(std::string_view doing, SQLite::Database& database, Work&& work) -> decltype(work()) {
    try {
        return work();
    } catch (const std::exception& thrown) {
        return tl::unexpected(failureFrom(thrown, doing, database));
    }
}

/// A connection that may write to an existing book: WAL, synchronous FULL, foreign keys, recursive triggers, each read
/// back. folderReadOnly if the file cannot be written.
[[nodiscard]] Result<Connection> openWriting(const std::filesystem::path& file);

/// A connection that cannot write. On a file system that is read-only as well, the file is taken to be unchanging.
/// notFound, notABook or damaged if it is no book.
[[nodiscard]] Result<Connection> openReading(const std::filesystem::path& file);

/// A new file with nothing in it but the ledger's own tables, in rollback mode, closed and synced by the caller.
[[nodiscard]] Result<void> makeEmptyBook(const std::filesystem::path& file);

/// PRAGMA user_version. May throw.
[[nodiscard]] int schemaVersionOf(SQLite::Database& database);

} // namespace holdfast::kiosk::ledger
