#include "kiosk/records/floor_projection.hpp"
#include "kiosk/records/statement.hpp"
#include "kiosk/records/words.hpp"

#include <optional>

namespace holdfast::kiosk::records::projecting {
namespace {

using ledger::Entry;
using SQLite::Database;

/// Of a bucket that stands in the book.
struct Standing final {
    std::optional<BucketEnd> closed{};
    std::int64_t treeSize = 1; ///< itself and all buckets below it
};

std::optional<Standing> standing(Database& db, const std::string& bucket) {
    auto query = prepared(db, "SELECT closed, tree_size FROM buckets WHERE id = ?", bucket);
    if (!query.executeStep()) {
        return std::nullopt;
    }
    const auto closed = textAt(query, 0);
    return Standing{closed ? fromWord<BucketEnd>(*closed) : std::nullopt, query.getColumn(1).getInt64()};
}

/// `batch` is empty for a mix.
void insertBucket(Database& db, const Entry& entry, const std::string& id, std::int64_t number,
                  const std::string& batch, bool isMix, std::int64_t treeSize) {
    if (standing(db, id)) {
        refuse(entry, "the bucket stands already");
    }
    auto sameNumber = prepared(db, "SELECT 1 FROM buckets WHERE number = ?", number);
    if (sameNumber.executeStep()) {
        refuse(entry, "another bucket has the number");
    }
    execute(db, "INSERT INTO buckets VALUES (?, ?, ?, ?, ?, ?, ?, NULL, ?)", id, number, entry.sequence,
            entry.wallMilliseconds, isMix, treeSize, batch, entry.body);
}

} // namespace

void apply(Database& db, const Entry& entry, const BucketOpened& bucket) {
    insertBucket(db, entry, bucket.bucket, bucket.number, bucket.batch, false, 1);
}

void apply(Database& db, const Entry& entry, const MixMade& mix) {
    std::int64_t treeSize = 1;
    for (const auto& part : mix.parts) {
        const auto found = standing(db, part.bucket);
        if (!found) {
            refuse(entry, "a part does not stand before it: " + part.bucket);
        }
        if (found->closed && *found->closed != BucketEnd::empty) {
            refuse(entry, "a part was thrown away or mislabelled: " + part.bucket);
        }
        treeSize += found->treeSize;
        if (treeSize > kMostBucketsInTree) {
            refuse(entry, "more than " + std::to_string(kMostBucketsInTree) + " buckets are mixed in it");
        }
    }
    insertBucket(db, entry, mix.bucket, mix.number, {}, true, treeSize);
    int position = 0;
    for (const auto& part : mix.parts) {
        execute(db, "INSERT INTO bucket_parts VALUES (?, ?, ?, ?)", mix.bucket, ++position, part.bucket, part.mass);
    }
}

void apply(Database& db, const Entry& entry, const BucketClosed& closed) {
    auto update = prepared(db, "UPDATE buckets SET closed = ? WHERE id = ? AND closed IS NULL", toWord(closed.why),
                           closed.bucket);
    if (update.exec() != 1) {
        refuse(entry, "no such bucket that is open");
    }
}

} // namespace holdfast::kiosk::records::projecting
