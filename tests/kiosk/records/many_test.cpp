#include "kiosk/records/open_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_projection.hpp"
#include "tests/kiosk/records/support/lot_book.hpp"

#include <functional>
#include <set>
#include <sqlite3.h>
#include <sstream>

using namespace holdfast::kiosk::records;
using namespace holdfast::kiosk::records::testing;
namespace ledger = holdfast::kiosk::ledger;
namespace a = holdfast::analytics;

namespace {

/// The read tables of a shop after some years, without their entries: 4,000 runs with a lot each, 30,000 readings,
/// 6,000 tests of 4,000 prints, 2,000 loads, 400 holds, 8,000 moves, 1,000 buckets.
class ManyThings final {
public:
    ManyThings() : m_database{":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE} {
        m_database.exec(std::string{m_projection.schema()});
        for (const auto& family : a::starterFamilies()) {
            tell(recordOf(family, a::TemperatureUnit::fahrenheit));
        }
        for (const auto& fabric : a::starterFabrics()) {
            tell(recordOf(fabric, a::TemperatureUnit::fahrenheit));
        }
        BucketOpened pail;
        pail.bucket = "b1";
        pail.number = 1;
        pail.family = "low-cure";
        pail.batch = "B-1";
        tell(pail);
        for (const auto& sample : sampleOfEveryKind()) {
            if (const auto* planned = std::get_if<RunPlanned>(&sample)) {
                auto plan = *planned;
                plan.layers.at(0).buckets = {1};
                tell(plan);
            }
        }
        LotOpened lot;
        lot.lot = kLot;
        lot.run = kRun;
        lot.dryer = "d";
        tell(lot);
        tell(sampleReading());
        tell(PrintNamed{kPrint, 1, kRun, kLot});
        LoadWashed load{"l1", 1, "machine", "wash-house"};
        load.prints = {kPrint};
        tell(load);
        TestDone test;
        test.print = kPrint;
        test.method = "wash-house";
        test.cycle = 1;
        test.load = "l1";
        tell(test);
        tell(HoldPlaced{"h1", kLot, HoldCause::beltStopped});
        tell(PiecesMoved{kLot, PiecePlace::shipped, 96, {}, "school", {"C1"}});
        tell(ComplaintTaken{"c1", 1, "school"});
        multiply();
    }

    void tell(const Record& record) {
        ledger::Entry entry;
        entry.id = "e" + std::to_string(++m_told);
        entry.sequence = m_told;
        entry.wallMilliseconds = 1'772'000'000'000 + m_told;
        entry.kind = rowOf(record).kind;
        entry.version = rowOf(record).version;
        entry.body = bodyOf(record);
        m_projection.apply(m_database, entry);
    }

    /// How SQLite goes about every statement that `ask` runs: the steps that read a table from end to end.
    std::set<std::string> scansOf(const std::function<void()>& ask) {
        std::set<std::string> statements;
        const auto note = [](unsigned, void* into, void* statement, void*) {
            static_cast<std::set<std::string>*>(into)->insert(sqlite3_sql(static_cast<sqlite3_stmt*>(statement)));
            return 0;
        };
        sqlite3_trace_v2(m_database.getHandle(), SQLITE_TRACE_STMT, note, &statements);
        ask();
        sqlite3_trace_v2(m_database.getHandle(), 0, nullptr, nullptr);
        CHECK_FALSE(statements.empty());
        std::set<std::string> scans;
        for (const auto& sql : statements) {
            SQLite::Statement plan{m_database, "EXPLAIN QUERY PLAN " + sql};
            while (plan.executeStep()) {
                const auto step = plan.getColumn(3).getString();
                if (isScan(step)) {
                    scans.insert(step);
                }
            }
        }
        return scans;
    }
    [[nodiscard]] SQLite::Database& db() { return m_database; }

private:
    /// Of what a query has just made itself, and of an index that holds only the rows that are asked for, is no harm.
    static bool isScan(const std::string& step) {
        static const std::set<std::string> kSmall{"halves", "up", "reached", "CONSTANT"};
        static const std::set<std::string> kPartial{"prints_open", "prints_retained", "holds_open", "complaints_open"};
        std::istringstream words{step};
        std::string word;
        words >> word;
        if (word != "SCAN") {
            return false;
        }
        words >> word;
        if (kSmall.contains(word) || word.front() == '(') {
            return false;
        }
        std::string last = word;
        while (words >> word) {
            last = word;
        }
        return !kPartial.contains(last);
    }

    void multiply() {
        const auto numbers = [](int most) {
            return "WITH RECURSIVE n (i) AS (SELECT 2 UNION ALL SELECT i + 1 FROM n WHERE i < " + std::to_string(most) +
                   ") ";
        };
        const auto exec = [&](const std::string& sql) { m_database.exec(sql); };
        exec("PRAGMA foreign_keys = OFF");
        exec(numbers(1000) +
             "INSERT INTO buckets SELECT 'b' || i, i, 100000 + i, opened_ms, 0, 1, 'B-' || i, NULL, body "
             "FROM n, buckets WHERE id = 'b1'");
        exec(numbers(4000) + "INSERT INTO runs SELECT 'run' || i, kind, 30000 + i, title || i, fabric, customer, "
                             "'PO ' || i, 0, planned_ms + i, body FROM n, runs WHERE number = 20418");
        exec(numbers(4000) +
             "INSERT INTO lots SELECT 'lot' || i, 'run' || i, 1, dryer, opened_ms + i, 1, 1, 144, 'cleared', NULL, 0, "
             "body FROM n, lots WHERE lots.id = '" +
             kLot + "'");
        exec(numbers(4000) + "INSERT INTO lot_buckets SELECT 'lot' || i, 1 + i % 1000 FROM n");
        exec(numbers(30000) +
             "INSERT INTO readings SELECT 100000 + i, 'r' || i, 100000 + i, 'run' || (2 + i % 3999), "
             "'lot' || (2 + i % 3999), dryer, instrument, taken_ms + i, 0, 0, 0, position, reason, 'cured', 1, NULL, "
             "NULL, NULL, trace, NULL, NULL FROM n, readings");
        exec(numbers(4000) +
             "INSERT INTO prints SELECT 'p' || i, i, 100000 + i, 'run' || i, 'lot' || i, named_ms, NULL, "
             "iif(i % 9, NULL, 'shelf'), iif(i % 3, 'used-up', NULL), body FROM n, prints WHERE id = 'p1'");
        exec(numbers(2000) + "INSERT INTO loads SELECT 100000 + i, 'l' || i, i, washed_ms + i, machine, programme, "
                             "'valid', 'j' || i, NULL, body FROM n, loads WHERE id = 'l1'");
        exec(numbers(4000) + "INSERT INTO load_prints SELECT 'p' || i, 'l' || (1 + i % 2000) FROM n");
        exec(numbers(6000) + "INSERT INTO tests SELECT 100000 + i, 't' || i, 100000 + i, done_ms + i, 0, "
                             "'p' || (2 + i % 3999), 'lot' || (2 + i % 3999), method, i, 'l' || (2 + i % 1999), "
                             "'passed', 1, body FROM n, tests WHERE first < 100000");
        exec(numbers(6000) + "INSERT INTO test_versions SELECT 100000 + i, 'e' || (100000 + i), 't' || i, method, "
                             "done_ms, 0, body FROM n, test_versions WHERE sequence < 100000");
        exec(numbers(400) + "INSERT INTO decisions SELECT 'd' || i, 'f' || i, 100000 + i, 100000 + i, 'lot' || i, "
                            "'released', 1, 1, NULL, 0, 0, '{}' FROM n");
        exec(numbers(400) + "INSERT INTO holds SELECT 'h' || i, 100000 + i, 'lot' || i, placed_ms, cause, because, i, "
                            "'d' || i, 0, body FROM n, holds WHERE id = 'h1'");
        exec(numbers(8000) + "INSERT INTO moves SELECT 100000 + i, 'g' || i, 'lot' || (2 + i % 3999), place, count, "
                             "moved_ms, 0, body FROM n, moves WHERE sequence < 100000");
        exec(numbers(8000) + "INSERT INTO move_cartons SELECT 'C' || i, 100000 + i FROM n");
    }

    ShopProjection m_projection;
    SQLite::Database m_database;
    int m_told = 0;
};

} // namespace

TEST_CASE("after years no question about prints, lots and batches reads a table from end to end", "[records][many]") {
    ManyThings many;
    auto& db = many.db();
    const std::vector<std::pair<const char*, std::function<bool()>>> questions{
        {"printByNumber", [&] { return printByNumber(db, 1).value().has_value(); }},
        {"printsOfRun", [&] { return printsOfRun(db, kRun)->size() == 1; }},
        {"openPrints", [&] { return openPrints(db, 50)->size() == 50; }},
        {"retainedPrints", [&] { return !retainedPrints(db)->empty(); }},
        {"printsUnderTest", [&] { return printsUnderTest(db, 50)->size() == 50; }},
        {"testsUnderWay", [&] { return !testsUnderWay(db, 50)->empty(); }},
        {"loadsUnderWay", [&] { return !loadsUnderWay(db, 50, 50)->empty(); }},
        {"nextPrint", [&] { return *nextPrint(db) == 4001; }},
        {"isMethodUsed", [&] { return *isMethodUsed(db, "wash-house"); }},
        {"testsOfPrint", [&] { return testsOfPrint(db, "p2")->size() >= 1; }},
        {"testsOfLot", [&] { return testsOfLot(db, "lot2")->size() >= 1; }},
        {"versionsOfTest", [&] { return versionsOfTest(db, "t2")->size() == 1; }},
        {"testsSince", [&] { return testsSince(db, INT64_MAX)->empty(); }},
        {"loadById", [&] { return loadById(db, "l2").value().has_value(); }},
        {"loadsOfPrint", [&] { return loadsOfPrint(db, "p2")->size() == 1; }},
        {"judgedLoads", [&] { return judgedLoads(db, "another", "wash-house")->empty(); }},
        {"nextLoad", [&] { return *nextLoad(db) == 2001; }},
        {"openHolds", [&] { return openHolds(db)->size() == 1; }},
        {"holdsOfLot", [&] { return holdsOfLot(db, kLot)->size() == 1; }},
        {"holdByBin", [&] { return holdByBin(db, 7).value().has_value(); }},
        {"decisionsOfLot", [&] { return decisionsOfLot(db, kLot)->empty(); }},
        {"movesOfLot", [&] { return movesOfLot(db, kLot)->size() == 1; }},
        {"piecesOfLot", [&] { return piecesOfLot(db, kLot)->shipped == 96; }},
        {"lotsOfRun", [&] { return lotsOfRun(db, kRun)->size() == 1; }},
        {"lotById", [&] { return lotById(db, kLot).value().has_value(); }},
        {"pastLots", [&] { return pastLots(db, "d", 5)->size() == 5; }},
        {"missedOfLot", [&] { return missedOfLot(db, kLot)->empty(); }},
        {"complaints", [&] { return complaints(db, false)->size() == 1; }},
        {"complaintsOfRun", [&] { return complaintsOfRun(db, kRun)->empty(); }},
        {"findingsOfLot", [&] { return findingsOfLot(db, kLot)->empty(); }},
        {"nextBin", [&] { return *nextBin(db) == 401; }},
        {"reachedByBatch", [&] { return reachedByBatch(db, "B-7")->size() >= 4; }},
        {"reachedByBucket", [&] { return reachedByBucket(db, 7)->size() >= 4; }},
        {"holds", [&] { return holds(db)->size() == 1; }},
        {"runById", [&] { return runById(db, kRun).value().has_value(); }},
        {"readingsOfLot", [&] { return readingsOfLot(db, "lot2")->size() >= 7; }},
        {"readingsByInstrument",
         [&] { return readingsByInstrument(db, sampleReading().instrument, INT64_MAX)->empty(); }},
    };
    for (const auto& [name, question] : questions) {
        INFO(name);
        bool answered = false;
        const auto scans = many.scansOf([&] { answered = question(); });
        CHECK(answered);
        CHECK(scans == std::set<std::string>{});
    }
}

TEST_CASE("after years an entry still finds its lot without reading a table from end to end", "[records][many]") {
    ManyThings many;
    const auto scans = many.scansOf([&] {
        many.tell(sampleReading());
        TestDone test;
        test.print = kPrint;
        test.method = "wash-house";
        test.cycle = 2;
        test.load = "l1";
        test.outcome = TestOutcome::failed;
        many.tell(test);
        LoadJudged judged{"l1", 4.5, 2.0};
        judged.word = LoadWord::tooHarsh;
        many.tell(judged);
        DecisionSigned decision{"d-new", kLot, {"h1"}, DecisionWord::reRun};
        decision.reason = "again";
        decision.signers = {12};
        many.tell(decision);
        many.tell(PiecesMoved{kLot, PiecePlace::tested, 1});
    });
    CHECK(scans == std::set<std::string>{});
    CHECK((*lotById(many.db(), kLot))->state == LotState::reRun);
}

TEST_CASE("a clue is looked for in a narrow index, not in the plans themselves", "[records][many]") {
    ManyThings many;
    bool answered = false;
    const auto scans = many.scansOf([&] { answered = runsByClue(many.db(), "PO 399", 20)->size() == 11; });
    CHECK(answered); // PO 399 and PO 3990 to 3999
    for (const auto& scan : scans) {
        INFO(scan);
        CHECK(scan.find("runs_as_called") != std::string::npos);
    }
}
