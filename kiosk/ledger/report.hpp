#pragma once

#include "kiosk/ledger/digest.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::ledger {

/// What Book::check found.
struct IntegrityReport {
    std::int64_t entries = 0;                       ///< looked at
    Digest head{};                                  ///< hash stored with the last entry
    std::optional<std::int64_t> firstBadSequence{}; ///< first entry whose number or hash does not follow
    std::int64_t blobs = 0;                         ///< with bytes
    std::int64_t droppedBlobs = 0;                  ///< of which only the hash is left
    std::vector<Digest> badBlobs{};                 ///< whose bytes do not give their hash
    bool readTablesCompared = false;                ///< not if an older projection made them: the next start rebuilds
    std::vector<std::string> differingTables{};     ///< read tables that differ from a rebuild
    std::vector<std::string> alteredGuards{};       ///< tables and triggers that are missing or not as we make them
    std::vector<std::string> structureFaults{};     ///< lines of SQLite's own check

    [[nodiscard]] bool sound() const {
        return !firstBadSequence && badBlobs.empty() && differingTables.empty() && alteredGuards.empty() &&
               structureFaults.empty();
    }
};

struct TableDigest {
    std::string table;
    std::int64_t rows = 0;
    Digest digest{}; ///< over all rows in the order of all columns; does not depend on the order of insertion

    bool operator==(const TableDigest&) const = default;
};

/// Of the read tables, in the projection's order.
struct TablesDigest {
    std::vector<TableDigest> tables;

    bool operator==(const TablesDigest&) const = default;
};

} // namespace holdfast::kiosk::ledger
