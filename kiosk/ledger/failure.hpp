#pragma once

#include <exception>
#include <string>
#include <string_view>
#include <tl/expected.hpp>

namespace holdfast::kiosk::ledger {

/// Everything that can be expected to go wrong with a book. The list is closed so that kiosk/wording can be exhaustive.
enum class FailureCode {
    folderMissing,        ///< the book folder does not exist, or its path is no folder
    folderReadOnly,       ///< the folder, its file system or a file in it cannot be written
    diskFull,             ///< no room: nothing of the request was stored
    lockedByAnotherKiosk, ///< another process holds the lock file
    busy,                 ///< another program held the database for longer than the wait
    newerBook,            ///< written by a newer program: may be read, never written
    notABook,             ///< an SQLite file of some other program, or no SQLite file where one was named
    damaged,              ///< the file, the chain, a blob, a spool or a trace does not hold together
    refused,              ///< a constraint, a guard or the projection said no; nothing was stored
    notFound,             ///< no such entry, blob or file
    dropped,              ///< the blob was dropped by the owner's rule; only its hash is left
    readOnlyBook,         ///< the book was opened or made read-only
    cancelled,            ///< a stop was requested
    inputOutput,          ///< any other error of the disk
};

/// Name of the code as written here, for logs and tests.
[[nodiscard]] std::string_view nameOf(FailureCode code);

struct Failure {
    FailureCode code;
    std::string what; ///< English, for the log only
};

template <class T>
using Result = tl::expected<T, Failure>;

/// Turns what a library threw into a Failure; `doing` names the work, e.g. "commit". For the rooms above too: their
/// queries over Book::reader() throw SQLite::Exception.
[[nodiscard]] Failure failureFrom(const std::exception& thrown, std::string_view doing);

/// The Failure for a value of errno.
[[nodiscard]] Failure failureFromErrno(int error, std::string_view doing);

} // namespace holdfast::kiosk::ledger
