#include "tests/kiosk/ledger/fixture.hpp"

#include <fstream>

using namespace holdfast::kiosk::ledger;
using namespace holdfast::kiosk::ledger::test;

namespace {

std::string sqlOf(SQLite::Database& database, const std::string& name) {
    SQLite::Statement query{database, "SELECT sql FROM sqlite_master WHERE name = ?"};
    query.bind(1, name);
    REQUIRE(query.executeStep());
    return query.getColumn(0).getString();
}

/// Takes a guard off, does what it forbids, and puts it back: nothing is left to see but the content.
void behindTheGuard(const std::filesystem::path& folder, const std::string& guard, const std::string& statement) {
    auto database = rawDatabase(folder);
    const std::string sql = sqlOf(database, guard);
    database.exec("DROP TRIGGER " + guard);
    database.exec(statement);
    database.exec(sql);
}

IntegrityReport look(const std::filesystem::path& folder) {
    return must(openBook(folder, OpenMode::readOnly)->check());
}

} // namespace

TEST_CASE("the check finds the first altered entry, whichever column it was", "[ledger][check]") {
    for (const char* change :
         {"body = '{\"n\":8}'", "wall_ms = wall_ms + 1", "person = 99", "kind = 'other'", "version = 2", "kiosk = 'k'",
          "utc_offset_min = 0", "id = replace(id, '-7', '-8')", "hash = zeroblob(32)"}) {
        INFO(change);
        const TemporaryFolder folder;
        makeBook(folder.path(), 12);
        behindTheGuard(folder.path(), "entries_never_change",
                       std::string{"UPDATE entries SET "} + change + " WHERE sequence = 7");
        const auto report = look(folder.path());
        CHECK_FALSE(report.sound());
        CHECK(report.firstBadSequence == 7);
        CHECK(report.alteredGuards.empty());
        CHECK(report.entries == 12);
    }
}

TEST_CASE("the check finds where an entry was taken out", "[ledger][check]") {
    const TemporaryFolder folder;
    makeBook(folder.path(), 20);
    behindTheGuard(folder.path(), "entries_never_go", "DELETE FROM entries WHERE sequence IN (5, 9)");
    CHECK(look(folder.path()).firstBadSequence == 6);
}

TEST_CASE("an entry altered among the last is noticed when the book is opened", "[ledger][check]") {
    const TemporaryFolder folder;
    makeBook(folder.path(), 20);
    behindTheGuard(folder.path(), "entries_never_change", "UPDATE entries SET person = 50 WHERE sequence = 19");
    CHECK(outcome(Book::open(folder.path(), tally(), OpenMode::readWrite)) == "damaged");
    CHECK(look(folder.path()).firstBadSequence == 19);
}

TEST_CASE("the check names guards that are missing, altered or added", "[ledger][check]") {
    const TemporaryFolder folder;
    makeBook(folder.path(), 3);
    {
        auto raw = rawDatabase(folder.path());
        raw.exec("DROP TRIGGER entries_never_go");
        raw.exec("CREATE TRIGGER sly AFTER INSERT ON entries BEGIN DELETE FROM persons; END");
        raw.exec(
            "DROP TRIGGER blobs_never_go; CREATE TRIGGER blobs_never_go BEFORE DELETE ON blobs BEGIN SELECT 1; END");
    }
    const auto report = look(folder.path());
    CHECK(report.alteredGuards == std::vector<std::string>{"blobs_never_go", "entries_never_go", "sly"});
    CHECK_FALSE(report.firstBadSequence);
    CHECK(outcome(Book::open(folder.path(), tally(), OpenMode::readWrite)) == "damaged");
}

TEST_CASE("the check finds an altered blob, and it is not given out", "[ledger][check][blob]") {
    const TemporaryFolder folder;
    const Bytes trace(500, 3);
    {
        const auto book = openBook(folder.path());
        CommitRequest with = request(1);
        with.blobs = {{"trace", trace}, {"trace", Bytes(500, 4)}};
        must(book->commit(with));
    }
    behindTheGuard(folder.path(), "blobs_keep_their_hash", "UPDATE blobs SET bytes = zeroblob(500) WHERE number = 1");
    const auto book = openBook(folder.path());
    CHECK(must(book->check()).badBlobs == std::vector<Digest>{sha256(trace)});
    CHECK(outcome(book->blob(sha256(trace))) == "damaged");
}

TEST_CASE("a page that cannot be read is a finding of the check, not its end", "[ledger][check]") {
    const TemporaryFolder folder;
    makeBook(folder.path(), 300);
    const auto file = folder.path() / Book::fileName;
    const auto size = std::filesystem::file_size(file);
    {
        std::fstream out{file, std::ios::binary | std::ios::in | std::ios::out};
        out.seekp(static_cast<std::streamoff>(size / 8192 * 4096)); // a page in the middle
        out << std::string(4096, '\x7f');
    }
    const auto report = look(folder.path());
    CHECK_FALSE(report.sound());
    CHECK_FALSE(report.structureFaults.empty());
    CHECK(outcome(Book::open(folder.path(), tally(), OpenMode::readWrite)) == "damaged");
}

TEST_CASE("a check can be stopped", "[ledger][check]") {
    const TemporaryFolder folder;
    makeBook(folder.path(), 3);
    std::stop_source source;
    source.request_stop();
    CHECK(outcome(openBook(folder.path())->check(source.get_token())) == "cancelled");
}
