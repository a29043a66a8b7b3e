#include "tests/kiosk/ledger/fixture.hpp"

#include <random>

using namespace holdfast::kiosk::ledger;
using namespace holdfast::kiosk::ledger::test;

namespace {

std::int64_t rowsOf(Book& book, const std::string& table) {
    SQLite::Statement query{book.reader(), "SELECT count(*) FROM " + table};
    query.executeStep();
    return query.getColumn(0).getInt64();
}

void fillAtRandom(Book& book, std::uint64_t count) {
    std::mt19937_64 chance{12};
    for (std::uint64_t n = 1; n <= count;) {
        CommitRequest made;
        for (auto left = 1 + chance() % 4; left > 0 && n <= count; --left, ++n) {
            made.entries.push_back(draft(n, "kind." + std::to_string(chance() % 5)));
            made.entries.back().body.append(chance() % 30, ' ');
        }
        must(book.commit(made));
    }
}

} // namespace

TEST_CASE("a rebuilt book equals the live one", "[ledger][rebuild]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    fillAtRandom(*book, 200);
    const auto live = must(book->tablesDigest());
    REQUIRE(live.tables.size() == 3);
    CHECK(live.tables[0].rows == 5);
    CHECK(live.tables[1].rows == 200);
    CHECK(live.tables[0].digest != live.tables[1].digest);
    must(book->rebuild());
    CHECK(must(book->tablesDigest()) == live);
    must(book->commit(request(201)));
    CHECK_FALSE(must(book->tablesDigest()) == live);
    CHECK(must(book->check()).sound());
}

TEST_CASE("a rebuild makes good what was altered in the read tables", "[ledger][rebuild]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    fill(*book, 20);
    const auto live = must(book->tablesDigest());
    rawDatabase(folder.path()).exec("UPDATE lengths SET length = length + 1 WHERE sequence = 7");
    const auto report = must(book->check());
    CHECK_FALSE(report.sound());
    CHECK(report.differingTables == std::vector<std::string>{"lengths", "totals"});
    CHECK_FALSE(report.firstBadSequence);
    rawDatabase(folder.path()).exec("DROP TABLE lengths");
    CHECK_FALSE(must(book->check()).sound());
    must(book->rebuild());
    CHECK(must(book->tablesDigest()) == live);
    CHECK(must(book->check()).sound());
}

TEST_CASE("the digest of a table does not depend on the order of its rows but on every value", "[ledger][rebuild]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    fill(*book, 2);
    const auto before = must(book->tablesDigest());
    auto raw = rawDatabase(folder.path());
    raw.exec("INSERT INTO tally VALUES ('a', 1), ('b', 2)");
    const auto one = must(book->tablesDigest());
    raw.exec("DELETE FROM tally WHERE kind IN ('a', 'b'); INSERT INTO tally VALUES ('b', 2), ('a', 1)");
    CHECK(must(book->tablesDigest()) == one);
    raw.exec("UPDATE tally SET entries = 3 - entries WHERE kind IN ('a', 'b')");
    CHECK_FALSE(must(book->tablesDigest()) == one);
    raw.exec("DELETE FROM tally WHERE kind IN ('a', 'b')");
    CHECK(must(book->tablesDigest()) == before);
}

TEST_CASE("a book whose read tables are of an older projection is rebuilt when it is opened", "[ledger][rebuild]") {
    const TemporaryFolder folder;
    {
        const auto plain = must(Book::open(folder.path(), std::make_shared<NoProjection>(), OpenMode::readWrite));
        fill(*plain, 5);
    }
    {
        const auto looking = must(Book::open(folder.path(), tally(1), OpenMode::readOnly));
        const auto report = must(looking->check());
        CHECK(report.sound());
        CHECK_FALSE(report.readTablesCompared);
    }
    const auto book = openBook(folder.path());
    CHECK(rowsOf(*book, "lengths") == 5);
    CHECK(must(book->check()).readTablesCompared);
    CHECK(must(book->check()).sound());
}

TEST_CASE("a rebuild that the projection refuses leaves the tables as they were", "[ledger][rebuild]") {
    const TemporaryFolder folder;
    {
        const auto plain = must(Book::open(folder.path(), std::make_shared<NoProjection>(), OpenMode::readWrite));
        must(plain->commit(request(1)));
        must(plain->commit(request(2, "poison")));
    }
    CHECK(outcome(Book::open(folder.path(), tally(), OpenMode::readWrite)) == "refused");
    const auto plain = must(Book::open(folder.path(), std::make_shared<NoProjection>(), OpenMode::readWrite));
    CHECK(must(plain->check()).sound());
    CHECK(must(plain->head()).sequence == 2);
}
