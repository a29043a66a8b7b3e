#include "kiosk/ledger/book_inside.hpp"
#include "kiosk/ledger/read_tables.hpp"
#include "kiosk/ledger/spool.hpp"
#include "kiosk/ledger/uuid.hpp"

#include <SQLiteCpp/Statement.h>
#include <system_error>
#include <utility>

namespace holdfast::kiosk::ledger {

namespace {

std::optional<Failure> unusable(const CommitRequest& request) {
    if (request.entries.empty()) {
        return Failure{FailureCode::refused, "commit: nothing is stored without an entry"};
    }
    for (const EntryDraft& draft : request.entries) {
        if (!isUuid7(draft.id)) {
            return Failure{FailureCode::refused, "commit: the id '" + draft.id + "' is no UUID version 7"};
        }
    }
    if (request.spoolMadeRedundant && !isSpoolName(*request.spoolMadeRedundant)) {
        return Failure{FailureCode::refused, "commit: '" + *request.spoolMadeRedundant + "' is no spool"};
    }
    return std::nullopt;
}

} // namespace

Result<CommitReceipt> Book::commit(const CommitRequest& request) {
    if (auto why = unusable(request)) {
        return tl::unexpected(std::move(*why));
    }
    auto receipt = m_inside->inTransaction("commit", [&]() -> Result<CommitReceipt> {
        CommitReceipt made;
        for (const Entry& entry : m_inside->store->put(request)) {
            m_inside->projection->apply(*m_inside->writer, entry);
            made.sequences.push_back(entry.sequence);
            made.head = entry.hash;
        }
        return made;
    });
    if (receipt && request.spoolMadeRedundant) {
        std::error_code ignored; // the next start tries again
        std::filesystem::remove(m_inside->folder / *request.spoolMadeRedundant, ignored);
    }
    return receipt;
}

void Book::rest() {
    const std::lock_guard alone{m_inside->writing};
    if (m_inside->log) {
        m_inside->log->rest();
    }
}

Result<void> Book::rebuild() {
    return m_inside->inTransaction("rebuild", [&]() -> Result<void> {
        rebuildTables(*m_inside->writer, *m_inside->projection);
        return {};
    });
}

Result<std::int64_t> Book::dropBlobs(const std::string& kind, std::int64_t storedBeforeMilliseconds,
                                     std::int64_t nowMilliseconds) {
    return m_inside->inTransaction("drop blobs", [&]() -> Result<std::int64_t> {
        SQLite::Statement drop{*m_inside->writer, "UPDATE blobs SET bytes = NULL, dropped_ms = ?3 "
                                                  "WHERE kind = ?1 AND stored_ms < ?2 AND dropped_ms IS NULL"};
        drop.bind(1, kind);
        drop.bind(2, storedBeforeMilliseconds);
        drop.bind(3, nowMilliseconds);
        return std::int64_t{drop.exec()};
    });
}

Result<void> Book::forgetPerson(std::int64_t number) {
    return m_inside->forget(number);
}

Result<void> Book::forgetAllPersons() {
    return m_inside->forget(std::nullopt);
}

Result<void> Book::Inside::forget(std::optional<std::int64_t> number) {
    auto forgotten = inTransaction("forget names", [&]() -> Result<void> {
        writer->exec("PRAGMA secure_delete = ON");
        SQLite::Statement erase{*writer, "DELETE FROM persons WHERE ?1 IS NULL OR number = ?1"};
        if (number) {
            erase.bind(1, *number);
        }
        if (erase.exec() == 0 && number) {
            return tl::unexpected(Failure{FailureCode::notFound, "no name has the number " + std::to_string(*number)});
        }
        return {};
    });
    if (!forgotten) {
        return forgotten;
    }
    const std::lock_guard alone{writing};
    return guarded("forget names", *writer, [&]() -> Result<void> {
        writer->exec("PRAGMA secure_delete = OFF");
        // The log still holds the page with the name until it is folded in and cut off.
        SQLite::Statement fold{*writer, "PRAGMA wal_checkpoint(TRUNCATE)"};
        if (!fold.executeStep() || fold.getColumn(0).getInt() != 0) {
            return tl::unexpected(Failure{FailureCode::busy, "the name is gone, but the log that held it is in use"});
        }
        return {};
    });
}

} // namespace holdfast::kiosk::ledger
