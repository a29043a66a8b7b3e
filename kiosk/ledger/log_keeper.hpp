#pragma once

#include <SQLiteCpp/Database.h>

namespace holdfast::kiosk::ledger {

/// Keeps the write-ahead log of the writing connection in shape while nobody waits, so that no commit has to fold it
/// into the file, nor to ask the file system for blocks: to sync what lies in blocks that are there takes half as long.
/// Gone before its connection.
class LogKeeper {
public:
    explicit LogKeeper(SQLite::Database& database);
    ~LogKeeper();
    LogKeeper(const LogKeeper&) = delete;
    LogKeeper& operator=(const LogKeeper&) = delete;

    /// Folds a log of some hundred pages into the file, and makes room at its end. On a full disk it does neither, and
    /// commits do as they can. Not inside a transaction.
    void rest();

private:
    static int afterCommit(void* self, sqlite3* database, const char* name, int pages);
    void makeRoom();

    SQLite::Database& m_database;
    int m_pages = 0; ///< in the log since it was last folded
};

} // namespace holdfast::kiosk::ledger
