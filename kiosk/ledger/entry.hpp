#pragma once

#include "kiosk/ledger/digest.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::ledger {

/// What the rooms above want written. The ledger reads no clock and makes no ids.
struct EntryDraft {
    std::string id;                    ///< UUID version 7, lower case; refused if any other entry has it
    std::string kiosk;                 ///< id of the kiosk that writes
    std::int64_t wallMilliseconds = 0; ///< Unix time; a label, never used for order
    int utcOffsetMinutes = 0;          ///< of the shop at that time
    std::int64_t person = 0;           ///< number in the table of persons; 0 nobody
    std::string kind;                  ///< e.g. "reading.taken"; not empty
    int version = 1;                   ///< of the kind; at least 1
    std::string body;                  ///< JSON bytes, stored as they are

    bool operator==(const EntryDraft&) const = default;
};

struct Entry : EntryDraft {
    std::int64_t sequence = 0; ///< from 1, without holes
    Digest hash{};             ///< over the previous hash and every column before this one

    bool operator==(const Entry&) const = default;
};

/// Stored once under its SHA-256, however often it is handed in.
struct BlobDraft {
    std::string kind; ///< e.g. "trace"; how long blobs of a kind are kept is the owner's choice
    Bytes bytes;
};

/// A name stands outside the chain, so that it can be forgotten.
struct PersonName {
    std::int64_t number = 0;
    std::string name;

    bool operator==(const PersonName&) const = default;
};

/// Stored whole or not at all. At least one entry.
struct CommitRequest {
    std::vector<EntryDraft> entries;
    std::vector<BlobDraft> blobs;
    std::vector<PersonName> persons{};               ///< added, or renamed
    std::optional<std::string> spoolMadeRedundant{}; ///< Spool::fileName() of the ride that is now in the book
};

struct CommitReceipt {
    std::vector<std::int64_t> sequences; ///< one for each draft, in order
    Digest head{};                       ///< hash of the last
};

/// The newest entry.
struct Head {
    std::int64_t sequence = 0; ///< 0: no entry yet
    Digest hash{};             ///< all zero: no entry yet
};

/// Hash of `entry` (its own `hash` is not read) after an entry with the hash `previous`; all zero before the first.
/// SHA-256(previous ‖ for each column in order sequence, id, kiosk, wall, offset, person, kind, version, body: length
/// as eight bytes, the column), integers as eight bytes; everything little-endian.
[[nodiscard]] Digest chainHash(const Digest& previous, const Entry& entry);

} // namespace holdfast::kiosk::ledger
