#include "kiosk/records/open_queries.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/under_test.hpp"
#include "kiosk/records/words.hpp"

#include <algorithm>
#include <tuple>

namespace holdfast::kiosk::records {
namespace {

using ledger::Result;
using SQLite::Database;

constexpr const char* kTestSelect =
    "SELECT t.id, t.done_ms, t.person, t.body, t.versions, iif(coalesce(l.word, 'valid') = 'valid', t.outcome, "
    "'in-a-void-load'), t.lot FROM tests t LEFT JOIN loads l ON l.id = t.load ";

TestRow testRow(SQLite::Statement& query) {
    TestRow row;
    row.id = query.getColumn(0).getString();
    row.at = query.getColumn(1).getInt64();
    row.person = query.getColumn(2).getInt64();
    row.done = storedBody<TestDone>(query.getColumn(3).getString());
    row.versions = query.getColumn(4).getInt();
    row.counts = fromWord<TestOutcome>(query.getColumn(5).getString()).value_or(row.done.outcome);
    return row;
}

/// `before` stands before the SELECT of tests.
template <class... Values>
std::vector<TestRow> testRows(const Database& database, const char* before, const char* where,
                              const Values&... values) {
    std::vector<TestRow> rows;
    auto query = prepared(database, joined({before, kTestSelect, where}).c_str(), values...);
    while (query.executeStep()) {
        rows.push_back(testRow(query));
    }
    return rows;
}

} // namespace

Result<std::vector<MethodDescribed>> methods(const Database& database, bool withdrawnToo) {
    return asked("read the methods", [&] {
        auto all = bodies<MethodDescribed>(database, "SELECT body, max(revision) FROM methods GROUP BY key");
        std::erase_if(all, [&](const auto& method) { return method.withdrawn && !withdrawnToo; });
        std::sort(all.begin(), all.end(), [](const auto& one, const auto& other) {
            return std::tie(one.kind, one.key) < std::tie(other.kind, other.key);
        });
        return all;
    });
}

Result<std::optional<MethodDescribed>> methodAt(const Database& database, const std::string& key, int revision) {
    return asked("look up a method", [&] {
        return body<MethodDescribed>(database, "SELECT body FROM methods WHERE key = ? AND revision = ?", key,
                                     revision);
    });
}

Result<bool> isMethodUsed(const Database& database, const std::string& key) {
    return asked("look for tests by a method", [&] {
        auto query = prepared(database, "SELECT 1 FROM test_versions WHERE method = ? LIMIT 1", key);
        return query.executeStep();
    });
}

Result<std::vector<TestRow>> testsOfPrint(const Database& database, const std::string& print) {
    return asked("read the tests of a print", [&] {
        return testRows(database,
                        "WITH RECURSIVE halves (id) AS (VALUES (?) UNION SELECT p.id FROM halves "
                        "JOIN prints p ON p.half_of = halves.id) ",
                        "WHERE t.print IN (SELECT id FROM halves) ORDER BY t.first", print);
    });
}

Result<std::vector<TestRow>> testsOfLot(const Database& database, const std::string& lot) {
    return asked("read the tests of a lot",
                 [&] { return testRows(database, "", "WHERE t.lot = ? ORDER BY t.first", lot); });
}

Result<std::vector<TestOfLot>> testsUnderWay(const Database& database, int limit) {
    return asked("read the tests under way", [&] {
        std::vector<TestOfLot> rows;
        auto query = prepared(database,
                              joined({kTestSelect, "WHERE t.lot IN (SELECT p.lot FROM prints p WHERE ", kUnderTest,
                                      ") ORDER BY t.lot, t.first"})
                                  .c_str(),
                              limit);
        while (query.executeStep()) {
            rows.push_back({query.getColumn(6).getString(), testRow(query)});
        }
        return rows;
    });
}

Result<std::vector<TestRow>> versionsOfTest(const Database& database, const std::string& id) {
    return asked("read the versions of a test", [&] {
        std::vector<TestRow> rows;
        auto query =
            prepared(database, "SELECT done_ms, person, body FROM test_versions WHERE test = ? ORDER BY sequence", id);
        while (query.executeStep()) {
            TestRow row;
            row.id = id;
            row.at = query.getColumn(0).getInt64();
            row.person = query.getColumn(1).getInt64();
            row.done = storedBody<TestDone>(query.getColumn(2).getString());
            row.versions = static_cast<int>(rows.size()) + 1;
            row.counts = row.done.outcome;
            rows.push_back(std::move(row));
        }
        return rows;
    });
}

Result<std::vector<TestRow>> testsSince(const Database& database, std::int64_t wallMilliseconds) {
    return asked("read the newest tests", [&] {
        return testRows(database, "", "WHERE t.done_ms >= ? ORDER BY t.done_ms DESC, t.first DESC", wallMilliseconds);
    });
}

} // namespace holdfast::kiosk::records
