#include "kiosk/ledger/connection.hpp"

#include "kiosk/ledger/files.hpp"
#include "kiosk/ledger/log_files.hpp"
#include "kiosk/ledger/schema.hpp"

#include <SQLiteCpp/Exception.h>
#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <sqlite3.h>
#include <string>
#include <system_error>

namespace holdfast::kiosk::ledger {

namespace {

constexpr int waitMilliseconds = 2000;

std::string pragma(SQLite::Database& database, const char* statement) {
    SQLite::Statement query{database, statement};
    return query.executeStep() ? query.getColumn(0).getString() : std::string{};
}

/// The file: URI of SQLite, in which %, ? and # would mean something.
std::string uriOf(const std::filesystem::path& file) {
    std::string uri = "file:";
    for (const char sign : std::filesystem::absolute(file).string()) {
        switch (sign) {
        case '%':
            uri += "%25";
            break;
        case '?':
            uri += "%3f";
            break;
        case '#':
            uri += "%23";
            break;
        default:
            uri += sign;
        }
    }
    return uri;
}

/// Throws, or says that the file is of another program.
Result<void> requireBook(SQLite::Database& database) {
    if (pragma(database, "PRAGMA application_id") != std::to_string(bookApplicationId)) {
        return tl::unexpected(Failure{FailureCode::notABook, database.getFilename() + " is not a book"});
    }
    return {};
}

Result<Connection> tryReading(const std::string& uri) {
    Connection database;
    try {
        database = std::make_unique<SQLite::Database>(uri, SQLite::OPEN_READONLY | SQLite::OPEN_URI, waitMilliseconds);
        database->exec("PRAGMA query_only = ON");
        if (auto book = requireBook(*database); !book) {
            return tl::unexpected(book.error());
        }
        return database;
    } catch (const std::exception& thrown) {
        return tl::unexpected(database ? failureFrom(thrown, "open " + uri, *database)
                                       : failureFrom(thrown, "open " + uri));
    }
}

bool hasWriteAheadLog(const std::filesystem::path& file) {
    std::error_code error;
    const auto size = std::filesystem::file_size(withSuffix(file, "-wal"), error);
    return !error && size > 0;
}

} // namespace

Failure failureFrom(const std::exception& thrown, std::string_view doing, SQLite::Database& database) {
    Failure failure = failureFrom(thrown, doing);
    if (failure.code == FailureCode::inputOutput) {
        const Failure system = failureFromErrno(sqlite3_system_errno(database.getHandle()), doing);
        if (system.code == FailureCode::diskFull || system.code == FailureCode::folderReadOnly) {
            failure.code = system.code;
        }
    }
    return failure;
}

Result<Connection> openWriting(const std::filesystem::path& file) {
    Connection database;
    const auto failed = [&](const std::exception& thrown) {
        const std::string doing = "open " + file.string();
        return tl::unexpected(database ? failureFrom(thrown, doing, *database) : failureFrom(thrown, doing));
    };
    try {
        database = std::make_unique<SQLite::Database>(file.string(), SQLite::OPEN_READWRITE, waitMilliseconds,
                                                      gatheringFiles());
        if (auto book = requireBook(*database); !book) {
            return tl::unexpected(book.error());
        }
        if (sqlite3_db_readonly(database->getHandle(), "main") != 0) {
            return tl::unexpected(Failure{FailureCode::folderReadOnly, file.string() + " cannot be written"});
        }
        const bool writeAhead = pragma(*database, "PRAGMA journal_mode = WAL") == "wal";
        database->exec("PRAGMA synchronous = FULL; PRAGMA foreign_keys = ON; PRAGMA recursive_triggers = ON");
        if (!writeAhead || pragma(*database, "PRAGMA synchronous") != "2" ||
            pragma(*database, "PRAGMA foreign_keys") != "1" || pragma(*database, "PRAGMA recursive_triggers") != "1") {
            return tl::unexpected(Failure{FailureCode::inputOutput, file.string() + ": settings did not take"});
        }
        database->exec("PRAGMA journal_size_limit = 16777216");
        return database;
    } catch (const std::exception& thrown) {
        return failed(thrown);
    }
}

Result<Connection> openReading(const std::filesystem::path& file) {
    std::error_code error;
    if (!std::filesystem::is_regular_file(file, error)) {
        return tl::unexpected(Failure{FailureCode::notFound, file.string() + " is not there"});
    }
    const std::string uri = uriOf(file);
    auto opened = tryReading(uri + "?mode=ro");
    const bool unreadable = !opened && (opened.error().code == FailureCode::folderReadOnly ||
                                        opened.error().code == FailureCode::inputOutput);
    if (unreadable && !hasWriteAheadLog(file)) {
        return tryReading(uri + "?mode=ro&immutable=1");
    }
    return opened;
}

Result<void> makeEmptyBook(const std::filesystem::path& file) {
    Connection database;
    try {
        database = std::make_unique<SQLite::Database>(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        database->exec("PRAGMA synchronous = FULL");
        SQLite::Transaction transaction{*database, SQLite::TransactionBehavior::IMMEDIATE};
        createSchema(*database);
        transaction.commit();
        return {};
    } catch (const std::exception& thrown) {
        const std::string doing = "make " + file.string();
        return tl::unexpected(database ? failureFrom(thrown, doing, *database) : failureFrom(thrown, doing));
    }
}

int schemaVersionOf(SQLite::Database& database) {
    return std::stoi(pragma(database, "PRAGMA user_version"));
}

} // namespace holdfast::kiosk::ledger
