#include "kiosk/ledger/kept_statements.hpp"

#include <SQLiteCpp/Exception.h>
#include <catch2/catch.hpp>
#include <sqlite3.h>

namespace holdfast::kiosk::ledger {
namespace {

int statementsOf(SQLite::Database& database) {
    int count = 0;
    for (sqlite3_stmt* at = nullptr; (at = sqlite3_next_stmt(database.getHandle(), at)) != nullptr;) {
        ++count;
    }
    return count;
}

struct Shelf {
    SQLite::Database database{":memory:", SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE};
    KeptStatements kept{database};

    Shelf() { database.exec("CREATE TABLE t (a INTEGER UNIQUE, b TEXT) STRICT"); }
    void insert(int a) {
        KeptStatement statement{database, "INSERT INTO t VALUES (?, ?)"};
        statement.bind(1, a);
        statement.exec();
    }
    int rows() { return database.execAndGet("SELECT count(*) FROM t").getInt(); }
};

} // namespace

TEST_CASE("a kept statement is prepared once and comes back with nothing bound", "[ledger][kept]") {
    Shelf shelf;
    const KeptStatements::Use keeping{shelf.kept};
    {
        KeptStatement statement{shelf.database, "INSERT INTO t VALUES (?, ?)"};
        statement.bind(1, 1);
        statement.bind(2, "left over");
        statement.exec();
    }
    shelf.insert(2);
    shelf.insert(3);
    CHECK(statementsOf(shelf.database) == 1);
    CHECK(shelf.database.execAndGet("SELECT b IS NULL FROM t WHERE a = 2").getInt() == 1);
}

TEST_CASE("the same text in use twice is two statements", "[ledger][kept]") {
    Shelf shelf;
    const KeptStatements::Use keeping{shelf.kept};
    shelf.insert(1);
    shelf.insert(2);
    KeptStatement outer{shelf.database, "SELECT a FROM t ORDER BY a"};
    REQUIRE(outer.executeStep());
    {
        KeptStatement inner{shelf.database, "SELECT a FROM t ORDER BY a"};
        REQUIRE(inner.executeStep());
        CHECK(inner.getColumn(0).getInt() == 1);
    }
    REQUIRE(outer.executeStep());
    CHECK(outer.getColumn(0).getInt() == 2);
}

TEST_CASE("a kept statement that failed works the next time", "[ledger][kept]") {
    Shelf shelf;
    const KeptStatements::Use keeping{shelf.kept};
    shelf.insert(1);
    CHECK_THROWS_AS(shelf.insert(1), SQLite::Exception);
    shelf.insert(2);
    CHECK(shelf.rows() == 2);
}

TEST_CASE("a kept statement holds for a table that was dropped and made again", "[ledger][kept]") {
    Shelf shelf;
    const KeptStatements::Use keeping{shelf.kept};
    shelf.insert(1);
    shelf.database.exec("DROP TABLE t; CREATE TABLE t (a INTEGER, b TEXT, CHECK (a <> 7)) STRICT");
    shelf.insert(1);
    CHECK(shelf.rows() == 1);
    CHECK_THROWS_AS(shelf.insert(7), SQLite::Exception);
}

TEST_CASE("nothing is kept outside a use, nor for another connection", "[ledger][kept]") {
    Shelf shelf;
    shelf.insert(1);
    CHECK(statementsOf(shelf.database) == 0);
    Shelf other;
    const KeptStatements::Use keeping{other.kept};
    shelf.insert(2);
    CHECK(statementsOf(shelf.database) == 0);
}

TEST_CASE("a kept statement that is moved is put back once", "[ledger][kept]") {
    Shelf shelf;
    const KeptStatements::Use keeping{shelf.kept};
    {
        KeptStatement first{shelf.database, "SELECT a FROM t"};
        KeptStatement second{std::move(first)};
        CHECK_FALSE(second.executeStep());
    }
    CHECK(statementsOf(shelf.database) == 1);
    KeptStatement again{shelf.database, "SELECT a FROM t"};
    CHECK_FALSE(again.executeStep());
    CHECK(statementsOf(shelf.database) == 1);
}

} // namespace holdfast::kiosk::ledger
