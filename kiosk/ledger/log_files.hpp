#pragma once

namespace holdfast::kiosk::ledger {

/// Name of a file system of SQLite's that is the default one, except that what it writes to a write-ahead log one part
/// after the other goes out in one piece: a commit is two dozen parts (each page and its header), and one call to the
/// system for each takes longer than all their bytes.
///
/// Order is kept where it matters. What waits is written before the log is synced, read, measured, cut or closed, and
/// with synchronous=FULL a commit is only told to other connections after its sync. So nobody can miss what waits, and
/// a crash leaves what it could have left before: part of a commit that was never answered. A write that fails is told
/// by the sync.
///
/// Made at the first call. Null if the default file system is not there.
[[nodiscard]] const char* gatheringFiles();

} // namespace holdfast::kiosk::ledger
