#include "kiosk/ledger/log_files.hpp"

#include <algorithm>
#include <cstddef>
#include <exception>
#include <memory>
#include <new>
#include <sqlite3.h>
#include <vector>

namespace holdfast::kiosk::ledger {

namespace {

/// SQLite itself writes at most 128 KiB less one byte at once.
constexpr std::size_t mostWaiting = 120U << 10U;

/// SQLite gives the room, in steps of eight bytes; the file of the system stands right behind.
struct LogFile {
    sqlite3_file asGiven{}; ///< first: SQLite knows only this
    sqlite3_int64 at = 0;   ///< where `waiting` belongs
    std::vector<unsigned char> waiting{};
};
static_assert(alignof(LogFile) <= 8 && sizeof(LogFile) % 8 == 0);

LogFile& logOf(sqlite3_file* file) {
    return *reinterpret_cast<LogFile*>(file);
}
sqlite3_file* systemsOf(sqlite3_file* file) {
    return reinterpret_cast<sqlite3_file*>(reinterpret_cast<LogFile*>(file) + 1);
}
sqlite3_vfs* systemsOf(sqlite3_vfs* files) {
    return static_cast<sqlite3_vfs*>(files->pAppData);
}

int writeOut(sqlite3_file* file) {
    LogFile& log = logOf(file);
    if (log.waiting.empty()) {
        return SQLITE_OK;
    }
    sqlite3_file* system = systemsOf(file);
    const int code = system->pMethods->xWrite(system, log.waiting.data(), static_cast<int>(log.waiting.size()), log.at);
    log.waiting.clear(); // after a failure too: SQLite gives up the commit and begins again at its start
    return code;
}

int write(sqlite3_file* file, const void* bytes, int count, sqlite3_int64 at) {
    LogFile& log = logOf(file);
    const auto* first = static_cast<const unsigned char*>(bytes);
    const bool follows = at == log.at + static_cast<sqlite3_int64>(log.waiting.size());
    if (!follows || log.waiting.size() + static_cast<std::size_t>(count) > mostWaiting) {
        if (const int code = writeOut(file); code != SQLITE_OK) {
            return code;
        }
    }
    if (log.waiting.empty()) {
        log.at = at;
    }
    try {
        log.waiting.insert(log.waiting.end(), first, first + count);
    } catch (const std::exception&) {
        log.waiting.clear();
        return SQLITE_NOMEM;
    }
    return SQLITE_OK;
}

/// The system's own function, after what waits was written.
template <auto Function>
struct Passed;
template <class... Values, int (*sqlite3_io_methods::*Function)(sqlite3_file*, Values...)>
struct Passed<Function> {
    static int call(sqlite3_file* file, Values... values) {
        const int code = writeOut(file);
        sqlite3_file* system = systemsOf(file);
        return code != SQLITE_OK ? code : (system->pMethods->*Function)(system, values...);
    }
};
template <class Given, class... Values, Given (*sqlite3_vfs::*Function)(sqlite3_vfs*, Values...)>
struct Passed<Function> {
    static Given call(sqlite3_vfs* files, Values... values) {
        sqlite3_vfs* system = systemsOf(files);
        return (system->*Function)(system, values...);
    }
};

int close(sqlite3_file* file) {
    const int written = writeOut(file);
    sqlite3_file* system = systemsOf(file);
    const int closed = system->pMethods->xClose(system);
    std::destroy_at(&logOf(file));
    return written != SQLITE_OK ? written : closed;
}

int sectorSize(sqlite3_file* file) {
    sqlite3_file* system = systemsOf(file);
    return system->pMethods->xSectorSize(system);
}
int deviceCharacteristics(sqlite3_file* file) {
    sqlite3_file* system = systemsOf(file);
    return system->pMethods->xDeviceCharacteristics(system);
}

using Io = sqlite3_io_methods;

const Io* methods() {
    static const Io made = [] {
        Io one{};
        one.iVersion = 1;
        one.xClose = close;
        one.xRead = Passed<&Io::xRead>::call;
        one.xWrite = write;
        one.xTruncate = Passed<&Io::xTruncate>::call;
        one.xSync = Passed<&Io::xSync>::call;
        one.xFileSize = Passed<&Io::xFileSize>::call;
        one.xLock = Passed<&Io::xLock>::call;
        one.xUnlock = Passed<&Io::xUnlock>::call;
        one.xCheckReservedLock = Passed<&Io::xCheckReservedLock>::call;
        one.xFileControl = Passed<&Io::xFileControl>::call;
        one.xSectorSize = sectorSize;
        one.xDeviceCharacteristics = deviceCharacteristics;
        return one;
    }();
    return &made;
}

int open(sqlite3_vfs* files, const char* name, sqlite3_file* file, int flags, int* given) {
    sqlite3_vfs* system = systemsOf(files);
    if ((flags & SQLITE_OPEN_WAL) == 0) {
        return system->xOpen(system, name, file, flags, given);
    }
    new (file) LogFile{};
    sqlite3_file* inner = systemsOf(file);
    inner->pMethods = nullptr;
    const int code = system->xOpen(system, name, inner, flags, given);
    if (code != SQLITE_OK) {
        if (inner->pMethods != nullptr) {
            inner->pMethods->xClose(inner);
        }
        std::destroy_at(&logOf(file)); // without methods SQLite does not close it
        file->pMethods = nullptr;
        return code;
    }
    file->pMethods = methods();
    return SQLITE_OK;
}

using Vfs = sqlite3_vfs;

const char* registered() {
    static Vfs ours{};
    Vfs* system = sqlite3_vfs_find(nullptr);
    if (system == nullptr) {
        return nullptr;
    }
    ours.iVersion = std::min(system->iVersion, 2);
    ours.szOsFile = static_cast<int>(sizeof(LogFile)) + system->szOsFile;
    ours.mxPathname = system->mxPathname;
    ours.zName = "holdfast-log";
    ours.pAppData = system;
    ours.xOpen = open;
    ours.xDelete = Passed<&Vfs::xDelete>::call;
    ours.xAccess = Passed<&Vfs::xAccess>::call;
    ours.xFullPathname = Passed<&Vfs::xFullPathname>::call;
    ours.xDlOpen = Passed<&Vfs::xDlOpen>::call;
    ours.xDlError = Passed<&Vfs::xDlError>::call;
    ours.xDlSym = system->xDlSym; // gives a function, which no template can name here; it looks at no file system
    ours.xDlClose = Passed<&Vfs::xDlClose>::call;
    ours.xRandomness = Passed<&Vfs::xRandomness>::call;
    ours.xSleep = Passed<&Vfs::xSleep>::call;
    ours.xCurrentTime = Passed<&Vfs::xCurrentTime>::call;
    ours.xGetLastError = Passed<&Vfs::xGetLastError>::call;
    ours.xCurrentTimeInt64 = Passed<&Vfs::xCurrentTimeInt64>::call;
    return sqlite3_vfs_register(&ours, 0) == SQLITE_OK ? ours.zName : nullptr;
}

} // namespace

const char* gatheringFiles() {
    static const char* const name = registered();
    return name;
}

} // namespace holdfast::kiosk::ledger
