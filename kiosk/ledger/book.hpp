#pragma once

#include "kiosk/ledger/entry.hpp"
#include "kiosk/ledger/failure.hpp"
#include "kiosk/ledger/projection.hpp"
#include "kiosk/ledger/report.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <stop_token>
#include <string>
#include <vector>

namespace holdfast::kiosk::ledger {

enum class OpenMode {
    readWrite,  ///< takes the lock; makes a new book if the folder has none; a missing folder is folderMissing, since
                ///< it is more often a disk that is not there than a new shop
    firstStart, ///< as readWrite, and makes the folder
    readOnly,   ///< takes no lock and writes nothing: may look into the book of a running kiosk; no book is notFound
};

/// The book of one kiosk: entries in a chain, blobs under their hash, read tables derived from the entries.
///
/// Threads: commit and the other writing functions may be called by any thread, one waits for the other; the shop does
/// so through a Writer. The reading functions and reader() share one connection and belong to one thread; another
/// reading thread takes openReader(). check, backupTo and tablesDigest open a connection of their own.
class Book {
public:
    static constexpr const char* fileName = "book.sqlite";
    static constexpr const char* lockName = "book.lock";

    /// A damaged file is reported and left as it is. A book of a newer schema, or whose read tables are of a newer
    /// projection, opens read-only with the code newerBook in readOnlyReason().
    [[nodiscard]] static Result<std::unique_ptr<Book>>
    open(const std::filesystem::path& folder, std::shared_ptr<const Projection> projection, OpenMode mode);
    ~Book();
    Book(const Book&) = delete;
    Book& operator=(const Book&) = delete;

    /// One IMMEDIATE transaction, on the disk when this returns. On failure nothing was stored.
    [[nodiscard]] Result<CommitReceipt> commit(const CommitRequest& request);

    /// Does what commits would have to wait for now and then: for a moment in which nobody waits. The Writer calls it
    /// when it has nothing to do. What cannot be done is left, and commits do it themselves.
    void rest();

    /// Entries with sequence ≥ from, in order, at most `limit`.
    [[nodiscard]] Result<std::vector<Entry>> entries(std::int64_t from, std::int64_t limit) const;
    [[nodiscard]] Result<Entry> entry(std::int64_t sequence) const;
    [[nodiscard]] Result<Entry> entryById(const std::string& id) const;
    [[nodiscard]] Result<Head> head() const;
    /// Verified against its hash: notFound, dropped, or damaged if it cannot be given.
    [[nodiscard]] Result<Bytes> blob(const Digest& digest) const;
    /// The same by another thread's own connection, from openReader().
    [[nodiscard]] static Result<Bytes> blob(SQLite::Database& reader, const Digest& digest);
    /// Drops the bytes of every blob of the kind stored before the time; the hash stays. Gives how many.
    [[nodiscard]] Result<std::int64_t> dropBlobs(const std::string& kind, std::int64_t storedBeforeMilliseconds,
                                                 std::int64_t nowMilliseconds);

    [[nodiscard]] Result<std::vector<PersonName>> personNames() const;
    /// Overwrites the name in the file, also in the write-ahead log. notFound if there is none.
    [[nodiscard]] Result<void> forgetPerson(std::int64_t number);
    [[nodiscard]] Result<void> forgetAllPersons();

    /// Recomputes everything; a fault of the book is in the report, a Failure means that it could not be looked at.
    [[nodiscard]] Result<IntegrityReport> check(std::stop_token stop = {}) const;
    /// Drops the read tables and makes them again from all entries, in one transaction.
    [[nodiscard]] Result<void> rebuild();
    [[nodiscard]] Result<TablesDigest> tablesDigest() const;

    /// Online copy, verified and synced before it takes its name. Replaces an earlier book of that name, refuses to
    /// replace anything else.
    [[nodiscard]] Result<void> backupTo(const std::filesystem::path& file) const;
    /// Puts a verified copy of `backupFile` into the folder (made if missing). A book that is there is set aside as
    /// book.sqlite.set-aside-N, never overwritten. Takes the lock for the time.
    [[nodiscard]] static Result<void> restore(const std::filesystem::path& backupFile,
                                              const std::filesystem::path& folder);

    [[nodiscard]] bool readOnly() const;
    /// Why it is read-only: readOnlyBook (as asked) or newerBook.
    [[nodiscard]] std::optional<Failure> readOnlyReason() const;
    /// For the room above that meets a kind or version it does not know; from then on every commit gives `reason`.
    void makeReadOnly(Failure reason);

    /// The reading connection; it cannot write. One thread only.
    [[nodiscard]] SQLite::Database& reader() const;
    /// One more reading connection, for another thread.
    [[nodiscard]] Result<std::unique_ptr<SQLite::Database>> openReader() const;
    [[nodiscard]] const std::filesystem::path& folder() const;

private:
    struct Inside;
    explicit Book(std::unique_ptr<Inside> inside);

    std::unique_ptr<Inside> m_inside;
};

} // namespace holdfast::kiosk::ledger
