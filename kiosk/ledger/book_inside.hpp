#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/connection.hpp"
#include "kiosk/ledger/files.hpp"
#include "kiosk/ledger/kept_statements.hpp"
#include "kiosk/ledger/log_keeper.hpp"
#include "kiosk/ledger/stored.hpp"

#include <SQLiteCpp/Transaction.h>
#include <mutex>
#include <string_view>

namespace holdfast::kiosk::ledger {

/// What a book holds; only the book's own source files include this.
struct Book::Inside {
    std::filesystem::path folder;
    std::shared_ptr<const Projection> projection;
    LockFile lock;
    mutable std::mutex writing; ///< guards the five below
    std::optional<Failure> reason;
    Connection writer;                    ///< none in a book that is read-only
    std::unique_ptr<LogKeeper> log;       ///< of the writer
    std::unique_ptr<KeptStatements> kept; ///< of the writer, for the projection
    std::unique_ptr<Store> store;
    Connection reader; ///< closed first, so that the last one to close can fold the log into the file

    [[nodiscard]] std::filesystem::path file() const { return folder / fileName; }
    [[nodiscard]] Result<void> openToWrite(OpenMode mode);
    Result<void> prepare();
    Result<void> requireSound();
    Result<void> makeBook() const;
    void removeRedundantSpools();
    void noteNewer();
    Result<void> forget(std::optional<std::int64_t> number);
    /// Runs what may throw on the writing connection, alone, inside one IMMEDIATE transaction.
    template <class Work>
    auto inTransaction(std::string_view doing, Work&& work) -> decltype(work());
};

template <class Work>
auto Book::Inside::inTransaction(std::string_view doing, Work&& work) -> decltype(work()) {
    const std::lock_guard alone{writing};
    if (reason) {
        return tl::unexpected(*reason);
    }
    return guarded(doing, *writer, [&]() -> decltype(work()) {
        const KeptStatements::Use keeping{*kept};
        SQLite::Transaction transaction{*writer, SQLite::TransactionBehavior::IMMEDIATE};
        auto result = work();
        if (result) {
            transaction.commit();
        }
        return result;
    });
}

} // namespace holdfast::kiosk::ledger
