#include "kiosk/ledger/log_keeper.hpp"

#include <algorithm>
#include <sqlite3.h>
#include <vector>

namespace holdfast::kiosk::ledger {

namespace {

/// A reading takes about a dozen pages. A page takes 4,120 bytes of the log, so that the room is reached by no commit
/// before the log is folded and begun anew, save by one of many entries.
constexpr int pagesToFold = 400;
constexpr sqlite3_int64 room = 2 << 20;
/// Where the writer never rests, the commit folds.
constexpr int mostPages = 4000;

} // namespace

LogKeeper::LogKeeper(SQLite::Database& database) : m_database(database) {
    sqlite3_wal_hook(m_database.getHandle(), &LogKeeper::afterCommit, this); // replaces SQLite's own folding
}

LogKeeper::~LogKeeper() {
    sqlite3_wal_hook(m_database.getHandle(), nullptr, nullptr);
}

int LogKeeper::afterCommit(void* self, sqlite3* database, const char* name, int pages) {
    auto& keeper = *static_cast<LogKeeper*>(self);
    keeper.m_pages = pages;
    if (pages >= mostPages) {
        sqlite3_wal_checkpoint_v2(database, name, SQLITE_CHECKPOINT_PASSIVE, nullptr, nullptr);
    }
    return SQLITE_OK; // the commit is on the disk, whatever became of the folding
}

void LogKeeper::rest() {
    if (m_pages >= pagesToFold) {
        m_pages = 0; // if a reader is in the way, the next commit counts from where the log ends
        sqlite3_wal_checkpoint_v2(m_database.getHandle(), "main", SQLITE_CHECKPOINT_PASSIVE, nullptr, nullptr);
    }
    makeRoom();
}

/// With noughts rather than a hole or blocks set aside: those would be made over at the first write, which is what a
/// sync waits for. SQLite reads a log up to the first page whose check is not right.
void LogKeeper::makeRoom() {
    sqlite3_file* log = nullptr;
    if (sqlite3_file_control(m_database.getHandle(), "main", SQLITE_FCNTL_JOURNAL_POINTER, &log) != SQLITE_OK ||
        log == nullptr || log->pMethods == nullptr) {
        return;
    }
    sqlite3_int64 size = 0;
    if (log->pMethods->xFileSize(log, &size) != SQLITE_OK || size >= room) {
        return;
    }
    const std::vector<unsigned char> noughts(1 << 16);
    int code = SQLITE_OK;
    while (code == SQLITE_OK && size < room) {
        const auto part = std::min(static_cast<sqlite3_int64>(noughts.size()), room - size);
        code = log->pMethods->xWrite(log, noughts.data(), static_cast<int>(part), size);
        size += part;
    }
    log->pMethods->xSync(log, SQLITE_SYNC_NORMAL);
}

} // namespace holdfast::kiosk::ledger
