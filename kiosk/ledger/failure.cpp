#include "kiosk/ledger/failure.hpp"

#include <SQLiteCpp/Exception.h>
#include <array>
#include <cerrno>
#include <cstring>
#include <new>
#include <sqlite3.h>
#include <utility>

namespace holdfast::kiosk::ledger {

namespace {

FailureCode codeOfSqlite(int primary, int extended) {
    switch (primary) {
    case SQLITE_FULL:
        return FailureCode::diskFull;
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        return FailureCode::busy;
    case SQLITE_READONLY:
    case SQLITE_PERM:
        return FailureCode::folderReadOnly;
    case SQLITE_CORRUPT:
        return FailureCode::damaged;
    case SQLITE_NOTADB:
        return FailureCode::damaged;
    case SQLITE_CONSTRAINT:
    case SQLITE_TOOBIG:
    case SQLITE_MISMATCH:
    case SQLITE_RANGE:
    case SQLITE_ERROR:
        return FailureCode::refused;
    case SQLITE_IOERR:
        return extended == SQLITE_IOERR_CORRUPTFS ? FailureCode::damaged : FailureCode::inputOutput;
    default:
        return FailureCode::inputOutput;
    }
}

FailureCode codeOfErrno(int error) {
    switch (error) {
    case ENOSPC:
    case EDQUOT:
    case EFBIG:
        return FailureCode::diskFull;
    case EROFS:
    case EACCES:
    case EPERM:
        return FailureCode::folderReadOnly;
    case ENOENT:
    case ENOTDIR:
        return FailureCode::folderMissing;
    case EWOULDBLOCK:
        return FailureCode::lockedByAnotherKiosk;
    default:
        return FailureCode::inputOutput;
    }
}

std::string sentence(std::string_view doing, std::string_view why) {
    std::string text{doing};
    text += ": ";
    text += why;
    return text;
}

} // namespace

std::string_view nameOf(FailureCode code) {
    switch (code) {
    case FailureCode::folderMissing:
        return "folderMissing";
    case FailureCode::folderReadOnly:
        return "folderReadOnly";
    case FailureCode::diskFull:
        return "diskFull";
    case FailureCode::lockedByAnotherKiosk:
        return "lockedByAnotherKiosk";
    case FailureCode::busy:
        return "busy";
    case FailureCode::newerBook:
        return "newerBook";
    case FailureCode::notABook:
        return "notABook";
    case FailureCode::damaged:
        return "damaged";
    case FailureCode::refused:
        return "refused";
    case FailureCode::notFound:
        return "notFound";
    case FailureCode::dropped:
        return "dropped";
    case FailureCode::readOnlyBook:
        return "readOnlyBook";
    case FailureCode::cancelled:
        return "cancelled";
    case FailureCode::inputOutput:
        return "inputOutput";
    }
    return "unknown";
}

Failure failureFrom(const std::exception& thrown, std::string_view doing) {
    if (const auto* sqlite = dynamic_cast<const SQLite::Exception*>(&thrown)) {
        // SQLiteCpp gives -1 for its own complaints, such as a column that is not there.
        const int primary = sqlite->getErrorCode() < 0 ? SQLITE_ERROR : sqlite->getErrorCode() & 0xff;
        return {codeOfSqlite(primary, sqlite->getExtendedErrorCode()), sentence(doing, thrown.what())};
    }
    if (dynamic_cast<const std::bad_alloc*>(&thrown) != nullptr) {
        return {FailureCode::inputOutput, sentence(doing, "out of memory")};
    }
    return {FailureCode::refused, sentence(doing, thrown.what())};
}

Failure failureFromErrno(int error, std::string_view doing) {
    return {codeOfErrno(error), sentence(doing, std::strerror(error))};
}

} // namespace holdfast::kiosk::ledger
