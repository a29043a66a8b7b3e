#pragma once

#include "analytics/cure/ink.hpp"
#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/bucket_records.hpp"
#include "kiosk/records/ink_records.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Questions about ink as it stands in the shop.
namespace holdfast::kiosk::records {

struct BucketOnFile final {
    std::string id{};
    std::int64_t number = 0;
    std::string name{}; ///< the family's or the mix's
    std::string colour{};
    std::string batch{};
    bool isMix = false;
    std::optional<analytics::Date> expiry{};       ///< its own, or the earliest of its parts
    std::optional<double> additivePercent{};       ///< its own, as told
    std::optional<std::int64_t> potLifeStartsAt{}; ///< its own, as told
    std::int64_t openedAt = 0;                     ///< wall milliseconds
    std::optional<BucketEnd> closed{};
    std::vector<BucketPart> parts{}; ///< empty for a pail of one family
};

/// A bucket with what it is made of, down to the pails.
struct BucketTree final {
    BucketOnFile bucket{};
    double share = 1.0;              ///< of the whole, by mass
    std::vector<BucketTree> parts{}; ///< in the order of the bucket's own, those without mass too
};

/// By number; closed ones only if asked for.
[[nodiscard]] ledger::Result<std::vector<BucketOnFile>> buckets(const SQLite::Database& database, bool closedToo);
[[nodiscard]] ledger::Result<std::optional<BucketOnFile>> bucketByNumber(const SQLite::Database& database,
                                                                         std::int64_t number);
[[nodiscard]] ledger::Result<std::optional<BucketTree>> ancestry(const SQLite::Database& database, std::int64_t number);
/// The families in it with their newest revisions as of entry `asOf`, flattened. Nothing if the bucket is unknown or
/// one of its families is not in the book, or if they are of more than one chemistry.
[[nodiscard]] ledger::Result<std::optional<analytics::Ink>>
inkOfBucket(const SQLite::Database& database, std::int64_t number, std::int64_t asOf = INT64_MAX);

/// What is wrong with the bucket at that moment: the first of pot life (its family's, from when it was catalysed; of a
/// mix the shortest of its parts, from the earliest), expiry (the day itself still counts), additive band. The additive
/// of a mix is what was told of it, else what its parts bring by mass; nothing told is nothing wrong, unless no
/// additive at all suits every part. Names the bucket as BucketOnFile::name has it. Parts without mass count nowhere.
[[nodiscard]] std::optional<analytics::BucketTrouble> troubleOf(const BucketTree& tree, const analytics::Ink& ink,
                                                                std::int64_t wallMilliseconds, analytics::Date today);

/// Every revision of a family or cloth, oldest first.
[[nodiscard]] ledger::Result<std::vector<FamilyRecord>> revisionsOfFamily(const SQLite::Database& database,
                                                                          const std::string& name);
[[nodiscard]] ledger::Result<std::vector<FabricRecord>> revisionsOfFabric(const SQLite::Database& database,
                                                                          const std::string& name);

} // namespace holdfast::kiosk::records
