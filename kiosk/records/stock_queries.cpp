#include "kiosk/records/stock_queries.hpp"

#include "kiosk/records/bucket_tree.hpp"
#include "kiosk/records/stored_body.hpp"

#include <algorithm>
#include <map>
#include <stdexcept>
#include <string_view>

namespace holdfast::kiosk::records {
namespace {

using ledger::Result;
using SQLite::Database;
using SQLite::Statement;

std::string selectBuckets(std::string_view where) {
    std::string sql = "SELECT id, number, opened_ms, is_mix, closed, body FROM buckets ";
    sql.append(where);
    return sql;
}

void fillFromBody(BucketOnFile& bucket, const std::string& body) {
    if (bucket.isMix) {
        auto mix = storedBody<MixMade>(body);
        bucket.name = std::move(mix.name);
        bucket.colour = std::move(mix.colour);
        bucket.additivePercent = mix.additivePercent;
        bucket.potLifeStartsAt = mix.potLifeStartsAt;
        bucket.parts = std::move(mix.parts);
    } else {
        auto pail = storedBody<BucketOpened>(body);
        bucket.name = std::move(pail.family);
        bucket.colour = std::move(pail.colour);
        bucket.batch = std::move(pail.batch);
        bucket.expiry = pail.expiry;
        bucket.additivePercent = pail.additivePercent;
        bucket.potLifeStartsAt = pail.potLifeStartsAt;
    }
}

/// Buckets read once each. A mix's parts stand before it, so asking for them ends.
class Stock final {
public:
    explicit Stock(const Database& database) : m_database{database} {}

    const BucketOnFile& at(Statement& row) {
        const std::string id = row.getColumn(0).getString();
        if (const auto known = m_known.find(id); known != m_known.end()) {
            return known->second;
        }
        BucketOnFile bucket;
        bucket.id = id;
        bucket.number = row.getColumn(1).getInt64();
        bucket.openedAt = row.getColumn(2).getInt64();
        bucket.isMix = row.getColumn(3).getInt() != 0;
        bucket.closed = fromWord<BucketEnd>(textAt(row, 4).value_or(""));
        fillFromBody(bucket, row.getColumn(5).getString());
        for (const auto& part : bucket.parts) {
            const auto expiry = part.mass > 0.0 ? byId(part.bucket).expiry : std::nullopt;
            if (expiry && (!bucket.expiry || *expiry < *bucket.expiry)) {
                bucket.expiry = expiry;
            }
        }
        return m_known.emplace(id, std::move(bucket)).first->second;
    }

    const BucketOnFile* byNumber(std::int64_t number) {
        auto query = prepared(m_database, selectBuckets("WHERE number = ?").c_str(), number);
        return query.executeStep() ? &at(query) : nullptr;
    }

    BucketTree tree(const BucketOnFile& bucket, double share) {
        BucketTree tree{bucket, share, {}};
        double most = 0.0;
        double sum = 0.0;
        for (const auto& part : bucket.parts) {
            most = std::max(most, part.mass);
        }
        for (const auto& part : bucket.parts) { // by the largest, so that the sum stays finite
            sum += part.mass / most;
        }
        for (const auto& part : bucket.parts) {
            tree.parts.push_back(this->tree(byId(part.bucket), share * (part.mass / most) / sum));
        }
        return tree;
    }

private:
    const BucketOnFile& byId(const std::string& id) {
        if (const auto known = m_known.find(id); known != m_known.end()) {
            return known->second;
        }
        auto query = prepared(m_database, selectBuckets("WHERE id = ?").c_str(), id);
        if (!query.executeStep()) {
            throw std::runtime_error("a bucket is mixed from one that is not there");
        }
        return at(query);
    }

    const Database& m_database;
    std::map<std::string, BucketOnFile> m_known;
};

} // namespace

std::optional<BucketTree> treeOf(const Database& database, std::int64_t number) {
    Stock stock{database};
    const auto* bucket = stock.byNumber(number);
    return bucket != nullptr ? std::optional{stock.tree(*bucket, 1.0)} : std::nullopt;
}

Result<std::vector<BucketOnFile>> buckets(const Database& database, bool closedToo) {
    return asked("read buckets", [&] {
        Stock stock{database};
        std::vector<BucketOnFile> all;
        auto query = prepared(database, selectBuckets("WHERE closed IS NULL OR ? ORDER BY number").c_str(), closedToo);
        while (query.executeStep()) {
            all.push_back(stock.at(query));
        }
        return all;
    });
}

Result<std::optional<BucketOnFile>> bucketByNumber(const Database& database, std::int64_t number) {
    return asked("look up a bucket", [&] {
        Stock stock{database};
        const auto* bucket = stock.byNumber(number);
        return bucket != nullptr ? std::optional{*bucket} : std::nullopt;
    });
}

Result<std::optional<BucketTree>> ancestry(const Database& database, std::int64_t number) {
    return asked("look up what a bucket is mixed from", [&] { return treeOf(database, number); });
}

Result<std::optional<analytics::Ink>> inkOfBucket(const Database& database, std::int64_t number, std::int64_t asOf) {
    return asked("look up a bucket's ink", [&]() -> std::optional<analytics::Ink> {
        const auto tree = treeOf(database, number);
        if (!tree) {
            return std::nullopt;
        }
        return inkOfTree(*tree, [&](const std::string& name) -> std::optional<analytics::InkFamily> {
            const auto family = body<FamilyRecord>(
                database, "SELECT body FROM families WHERE name = ? AND sequence <= ? ORDER BY revision DESC LIMIT 1",
                name, asOf);
            return family ? std::optional{toFamily(*family)} : std::nullopt;
        });
    });
}

Result<std::vector<FamilyRecord>> revisionsOfFamily(const Database& database, const std::string& name) {
    return asked("read a family's revisions", [&] {
        return bodies<FamilyRecord>(database, "SELECT body FROM families WHERE name = ? ORDER BY revision", name);
    });
}

Result<std::vector<FabricRecord>> revisionsOfFabric(const Database& database, const std::string& name) {
    return asked("read a cloth's revisions", [&] {
        return bodies<FabricRecord>(database, "SELECT body FROM fabrics WHERE name = ? ORDER BY revision", name);
    });
}

} // namespace holdfast::kiosk::records
