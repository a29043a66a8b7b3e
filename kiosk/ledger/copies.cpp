#include "kiosk/ledger/copies.hpp"

#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/check.hpp"
#include "kiosk/ledger/connection.hpp"
#include "kiosk/ledger/files.hpp"
#include "kiosk/ledger/schema.hpp"
#include "kiosk/ledger/spool.hpp"

#include <SQLiteCpp/Backup.h>
#include <SQLiteCpp/Statement.h>
#include <cerrno>
#include <cstdio>
#include <sqlite3.h>
#include <string>
#include <system_error>

namespace holdfast::kiosk::ledger {

namespace {

constexpr const char* partSuffix = ".part";

void removeCopy(const std::filesystem::path& file) {
    std::error_code ignored;
    for (const char* suffix : {"", "-journal", "-wal", "-shm"}) {
        std::filesystem::remove(withSuffix(file, suffix), ignored);
    }
}

Result<void> fillCopy(SQLite::Database& source, const std::filesystem::path& file) {
    Connection copy;
    try {
        copy = std::make_unique<SQLite::Database>(file.string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE);
        {
            SQLite::Backup backup{*copy, source};
            const int result = backup.executeStep(-1); // all pages under one read lock: writers go on beside it
            if (result != SQLITE_DONE) {
                return tl::unexpected(Failure{FailureCode::busy, "copy to " + file.string() + ": source is busy"});
            }
        }
        copy->exec("PRAGMA journal_mode = DELETE");
        const auto report = checkBook(*copy, NoProjection{}, {});
        if (!report) {
            return tl::unexpected(report.error());
        }
        if (!report->sound()) {
            return tl::unexpected(
                Failure{FailureCode::damaged, "copy to " + file.string() + ": " + summaryOf(*report)});
        }
        return {};
    } catch (const std::exception& thrown) {
        const std::string doing = "copy to " + file.string();
        return tl::unexpected(copy ? failureFrom(thrown, doing, *copy) : failureFrom(thrown, doing));
    }
}

Result<void> moveAway(const std::filesystem::path& from, const std::filesystem::path& to) {
    if (std::rename(from.c_str(), to.c_str()) != 0 && errno != ENOENT) {
        return tl::unexpected(failureFromErrno(errno, "set aside " + from.string()));
    }
    return {};
}

/// Refuses names under which something else than an earlier copy stands.
Result<void> mayReplace(const std::filesystem::path& file, const std::filesystem::path& live) {
    std::error_code error;
    if (!std::filesystem::exists(file, error)) {
        return requireFolder(file.has_parent_path() ? file.parent_path() : ".");
    }
    if (std::filesystem::equivalent(file, live, error)) {
        return tl::unexpected(Failure{FailureCode::refused, file.string() + " is the book itself"});
    }
    const auto earlier = openReading(file);
    if (!earlier) {
        return tl::unexpected(Failure{FailureCode::refused, file.string() + " is there and no earlier copy"});
    }
    return guarded("look at " + file.string(), **earlier, [&]() -> Result<void> {
        SQLite::Statement mode{**earlier, "PRAGMA journal_mode"};
        if (!mode.executeStep() || mode.getColumn(0).getString() == "wal") {
            return tl::unexpected(Failure{FailureCode::refused, file.string() + " is a book in use, no copy"});
        }
        return {};
    });
}

/// The copy in the folder, under another name until it is whole.
Result<void> bringIn(const std::filesystem::path& backupFile, const std::filesystem::path& unfinished) {
    const auto source = openReading(backupFile);
    if (!source) {
        return tl::unexpected(source.error());
    }
    return guarded("restore " + backupFile.string(), **source, [&]() -> Result<void> {
        if (schemaVersionOf(**source) > schemaVersion) {
            return tl::unexpected(Failure{FailureCode::newerBook, backupFile.string() + " is of a newer program"});
        }
        return copyVerified(**source, unfinished);
    });
}

} // namespace

Result<void> copyVerified(SQLite::Database& source, const std::filesystem::path& file) {
    removeCopy(file);
    auto filled = fillCopy(source, file);
    if (!filled) {
        removeCopy(file);
    }
    return filled;
}

Result<void> setAside(const std::filesystem::path& book) {
    std::error_code error;
    const bool onlyLog = !std::filesystem::exists(book, error);
    const auto named = [&](int number) { return withSuffix(book, (setAsideSuffix + std::to_string(number)).c_str()); };
    int number = 1;
    while (std::filesystem::exists(named(number), error) ||
           std::filesystem::exists(withSuffix(named(number), "-wal"), error)) {
        ++number;
    }
    // A log without its book is what a power cut between the two renames leaves: it belongs to the newest one.
    if (onlyLog && number > 1 && !std::filesystem::exists(withSuffix(named(number - 1), "-wal"), error)) {
        --number;
    }
    for (const char* suffix : {"", "-wal"}) {
        if (auto moved = moveAway(withSuffix(book, suffix), withSuffix(named(number), suffix)); !moved) {
            return moved;
        }
    }
    std::filesystem::remove(withSuffix(book, "-shm"), error);
    return syncFolder(book.parent_path());
}

std::filesystem::path traceOfLostBook(const std::filesystem::path& folder) {
    const std::string name = Book::fileName;
    std::error_code error;
    for (std::filesystem::directory_iterator at{folder, error}, end; !error && at != end; at.increment(error)) {
        const std::string found = at->path().filename().string();
        if (found == name + "-wal" || found == name + restoringSuffix || found.starts_with(name + setAsideSuffix) ||
            isSpoolName(found)) {
            return at->path();
        }
    }
    return {};
}

Result<void> Book::backupTo(const std::filesystem::path& file) const {
    if (auto allowed = mayReplace(file, folder() / fileName); !allowed) {
        return allowed;
    }
    const auto source = openReader();
    if (!source) {
        return tl::unexpected(source.error());
    }
    const auto part = withSuffix(file, partSuffix);
    auto done = copyVerified(**source, part);
    if (done) {
        done = putInPlace(part, file);
    }
    return done;
}

Result<void> Book::restore(const std::filesystem::path& backupFile, const std::filesystem::path& folder) {
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (auto there = requireFolder(folder); !there) {
        return error ? tl::unexpected(failureFromErrno(error.value(), "make " + folder.string())) : there;
    }
    const auto lock = LockFile::take(folder / lockName);
    if (!lock) {
        return tl::unexpected(lock.error());
    }
    const auto book = folder / fileName;
    if (std::filesystem::equivalent(backupFile, book, error)) {
        return tl::unexpected(Failure{FailureCode::refused, backupFile.string() + " is the book itself"});
    }
    const auto unfinished = withSuffix(book, restoringSuffix);
    if (auto brought = bringIn(backupFile, unfinished); !brought) {
        return brought;
    }
    if (auto aside = setAside(book); !aside) {
        return aside;
    }
    return putInPlace(unfinished, book);
}

} // namespace holdfast::kiosk::ledger
