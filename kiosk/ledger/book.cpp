#include "kiosk/ledger/book_inside.hpp"
#include "kiosk/ledger/check.hpp"
#include "kiosk/ledger/copies.hpp"
#include "kiosk/ledger/read_tables.hpp"
#include "kiosk/ledger/schema.hpp"
#include "kiosk/ledger/spool.hpp"

#include <SQLiteCpp/Statement.h>
#include <SQLiteCpp/Transaction.h>
#include <algorithm>
#include <cassert>
#include <system_error>
#include <utility>

namespace holdfast::kiosk::ledger {

namespace {

constexpr std::int64_t entriesCheckedAtStart = 64;
/// A larger book is looked at as a whole by check(), off the start: reading it all would make the shop wait.
constexpr std::uintmax_t largestFileCheckedAtStart = 64U << 20U;

} // namespace

Result<void> Book::Inside::makeBook() const {
    if (const auto lost = traceOfLostBook(folder); !lost.empty()) {
        return tl::unexpected(Failure{FailureCode::damaged, "no book, but " + lost.string() + " says there was one"});
    }
    const auto unfinished = withSuffix(file(), ".new");
    std::error_code ignored;
    std::filesystem::remove(unfinished, ignored);
    std::filesystem::remove(withSuffix(unfinished, "-journal"), ignored);
    if (auto made = makeEmptyBook(unfinished); !made) {
        std::filesystem::remove(unfinished, ignored);
        return made;
    }
    return putInPlace(unfinished, file());
}

Result<void> Book::Inside::openToWrite(OpenMode mode) {
    if (mode == OpenMode::firstStart) {
        std::error_code error;
        std::filesystem::create_directories(folder, error);
        if (error && !std::filesystem::is_directory(folder)) {
            return tl::unexpected(failureFromErrno(error.value(), "make " + folder.string()));
        }
    }
    if (auto there = requireFolder(folder); !there) {
        return there;
    }
    auto taken = LockFile::take(folder / lockName);
    if (!taken) {
        return tl::unexpected(taken.error());
    }
    lock = std::move(*taken);
    std::error_code error;
    if (!std::filesystem::exists(file(), error)) {
        if (auto made = makeBook(); !made) {
            return made;
        }
    }
    auto opened = openReading(file());
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    reader = std::move(*opened);
    noteNewer();
    return reason ? Result<void>{} : prepare();
}

void Book::Inside::noteNewer() {
    const auto looked = guarded("open", *reader, [this]() -> Result<bool> {
        return schemaVersionOf(*reader) > schemaVersion || projectionVersion(*reader) > projection->version();
    });
    if (looked && *looked) {
        reason = Failure{FailureCode::newerBook, file().string() + " was written by a newer program"};
    }
}

Result<void> Book::Inside::prepare() {
    auto opened = openWriting(file());
    if (!opened) {
        return tl::unexpected(opened.error());
    }
    writer = std::move(*opened);
    log = std::make_unique<LogKeeper>(*writer);
    kept = std::make_unique<KeptStatements>(*writer);
    if (auto sound = requireSound(); !sound) {
        return sound;
    }
    auto made = guarded("prepare " + file().string(), *writer, [this]() -> Result<void> {
        if (projectionVersion(*writer) < projection->version()) {
            const KeptStatements::Use keeping{*kept};
            SQLite::Transaction transaction{*writer, SQLite::TransactionBehavior::IMMEDIATE};
            rebuildTables(*writer, *projection);
            transaction.commit();
        }
        store = std::make_unique<Store>(*writer);
        removeRedundantSpools();
        return {};
    });
    return made;
}

Result<void> Book::Inside::requireSound() {
    return guarded("look at " + file().string(), *writer, [this]() -> Result<void> {
        std::error_code error;
        if (std::filesystem::file_size(file(), error) <= largestFileCheckedAtStart && !error) {
            if (const std::string fault = structureFault(*writer); !fault.empty()) {
                return tl::unexpected(Failure{FailureCode::damaged, file().string() + ": " + fault});
            }
        }
        if (const auto altered = alteredGuards(*writer); !altered.empty()) {
            return tl::unexpected(Failure{FailureCode::damaged, file().string() + ": altered " + altered.front()});
        }
        if (!tailFollows(*writer, entriesCheckedAtStart)) {
            return tl::unexpected(Failure{FailureCode::damaged, file().string() + ": the chain's end is broken"});
        }
        return {};
    });
}

/// A spool whose ride is in the book may still be there: the power went between the commit and its removal. May throw.
void Book::Inside::removeRedundantSpools() {
    std::vector<std::filesystem::path> files;
    SQLite::Statement query{*writer, "SELECT name FROM redundant_spools"};
    while (query.executeStep()) {
        files.push_back(folder / query.getColumn(0).getString());
    }
    std::error_code error;
    for (const auto& at : std::filesystem::directory_iterator{folder, error}) {
        if (at.path().string().ends_with(std::string{Spool::suffix} + ".new")) {
            std::filesystem::remove(at.path(), error); // never got as far as its header
        }
    }
    if (files.empty()) {
        return;
    }
    for (const auto& spool : files) {
        std::filesystem::remove(spool, error);
    }
    const bool gone =
        std::none_of(files.begin(), files.end(), [](const auto& spool) { return std::filesystem::exists(spool); });
    if (gone && syncFolder(folder)) {
        writer->exec("DELETE FROM redundant_spools");
    }
}

Book::Book(std::unique_ptr<Inside> inside) : m_inside(std::move(inside)) {}
Book::~Book() = default;

Result<std::unique_ptr<Book>> Book::open(const std::filesystem::path& folder,
                                         std::shared_ptr<const Projection> projection, OpenMode mode) {
    assert(projection);
    auto inside = std::make_unique<Inside>();
    inside->folder = folder;
    inside->projection = std::move(projection);
    if (mode != OpenMode::readOnly) {
        if (auto opened = inside->openToWrite(mode); !opened) {
            return tl::unexpected(opened.error());
        }
    } else {
        if (auto there = requireFolder(folder); !there) {
            return tl::unexpected(there.error());
        }
        auto opened = openReading(inside->file());
        if (!opened) {
            return tl::unexpected(opened.error());
        }
        inside->reader = std::move(*opened);
        inside->reason = Failure{FailureCode::readOnlyBook, inside->file().string() + " was opened read-only"};
        inside->noteNewer();
    }
    return std::unique_ptr<Book>{new Book{std::move(inside)}};
}

bool Book::readOnly() const {
    return readOnlyReason().has_value();
}

std::optional<Failure> Book::readOnlyReason() const {
    const std::lock_guard alone{m_inside->writing};
    return m_inside->reason;
}

void Book::makeReadOnly(Failure reason) {
    const std::lock_guard alone{m_inside->writing};
    m_inside->reason = std::move(reason);
}

SQLite::Database& Book::reader() const {
    return *m_inside->reader;
}

Result<std::unique_ptr<SQLite::Database>> Book::openReader() const {
    return openReading(m_inside->file());
}

const std::filesystem::path& Book::folder() const {
    return m_inside->folder;
}

} // namespace holdfast::kiosk::ledger
