#include "tests/kiosk/ledger/fixture.hpp"

#include "kiosk/ledger/spool.hpp"

#include <fstream>

using namespace holdfast::kiosk::ledger;
using namespace holdfast::kiosk::ledger::test;

namespace {

BlobDraft traceBlob(std::uint8_t fillByte, std::size_t size = 1000) {
    return {"trace", Bytes(size, fillByte)};
}

/// What SQLite says to a statement of someone who goes past the ledger.
std::string attempt(const std::filesystem::path& folder, const std::string& statement) {
    auto database = rawDatabase(folder);
    try {
        database.exec(statement);
        return "done";
    } catch (const SQLite::Exception& thrown) {
        return thrown.what();
    }
}

bool holdsText(const std::filesystem::path& folder, const std::string& text) {
    for (const auto& file : std::filesystem::directory_iterator{folder}) {
        std::ifstream in{file.path(), std::ios::binary};
        const std::string content(std::istreambuf_iterator<char>{in}, {});
        if (content.find(text) != std::string::npos) {
            return true;
        }
    }
    return false;
}

} // namespace

TEST_CASE("a new book is empty and sound", "[ledger][book]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    CHECK_FALSE(book->readOnly());
    CHECK(must(book->head()).sequence == 0);
    CHECK(must(book->entries(1, 10)).empty());
    const auto report = must(book->check());
    CHECK(report.sound());
    CHECK(report.entries == 0);
    CHECK(report.readTablesCompared);
}

TEST_CASE("entries come back as they were handed in, numbered from one and chained", "[ledger][book]") {
    const TemporaryFolder folder;
    CommitReceipt receipt;
    {
        const auto book = openBook(folder.path());
        must(book->commit(request(1)));
        CommitRequest two;
        two.entries = {draft(2), draft(3, "other.done")};
        two.entries[1].body = std::string("{\"t\":\"\xc2\xb0\0\"}", 11); // a sign of two bytes and a zero byte
        receipt = must(book->commit(two));
        CHECK(receipt.sequences == std::vector<std::int64_t>{2, 3});
    }
    const auto book = openBook(folder.path());
    const auto entries = must(book->entries(1, 10));
    REQUIRE(entries.size() == 3);
    CHECK(static_cast<const EntryDraft&>(entries[0]) == draft(1));
    CHECK(entries[2].body == std::string("{\"t\":\"\xc2\xb0\0\"}", 11));
    CHECK(entries[0].hash == chainHash(Digest{}, entries[0]));
    CHECK(entries[1].hash == chainHash(entries[0].hash, entries[1]));
    CHECK(entries[2].hash == chainHash(entries[1].hash, entries[2]));
    CHECK(entries[2].hash == receipt.head);
    CHECK(must(book->head()).hash == receipt.head);
    CHECK(must(book->entry(2)) == entries[1]);
    CHECK(must(book->entryById(draft(3).id)) == entries[2]);
    CHECK(must(book->entries(2, 1)) == std::vector<Entry>{entries[1]});
    CHECK(outcome(book->entry(4)) == "notFound");
    CHECK(outcome(book->entry(0)) == "notFound");
    CHECK(outcome(book->entryById("x")) == "notFound");
}

TEST_CASE("a request that is refused leaves nothing behind", "[ledger][book]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    fill(*book, 2);
    const auto before = must(book->tablesDigest());

    CommitRequest twice;
    twice.entries = {draft(3), draft(1)};
    twice.blobs = {traceBlob(1)};
    twice.persons = {{1, "A"}};
    CHECK(outcome(book->commit(twice)) == "refused");
    CommitRequest poisoned;
    poisoned.entries = {draft(3), draft(4, "poison")};
    CHECK(outcome(book->commit(poisoned)) == "refused");
    CHECK(outcome(book->commit(CommitRequest{})) == "refused");
    CommitRequest badId = request(3);
    badId.entries[0].id = "3";
    CHECK(outcome(book->commit(badId)) == "refused");
    CommitRequest badKind = request(3);
    badKind.entries[0].kind.clear();
    CHECK(outcome(book->commit(badKind)) == "refused");
    CommitRequest badVersion = request(3);
    badVersion.entries[0].version = 0;
    CHECK(outcome(book->commit(badVersion)) == "refused");
    CommitRequest badSpool = request(3);
    badSpool.spoolMadeRedundant = "../book.sqlite";
    CHECK(outcome(book->commit(badSpool)) == "refused");

    CHECK(must(book->head()).sequence == 2);
    CHECK(outcome(book->blob(sha256(traceBlob(1).bytes))) == "notFound");
    CHECK(must(book->personNames()).empty());
    CHECK(must(book->tablesDigest()) == before);
    CHECK(must(book->commit(request(3))).sequences == std::vector<std::int64_t>{3});
    CHECK(must(book->check()).sound());
}

TEST_CASE("nobody changes, deletes, replaces or slips in an entry", "[ledger][guards]") {
    const TemporaryFolder folder;
    {
        const auto book = openBook(folder.path());
        fill(*book, 3);
    }
    const std::string columns = "(sequence, id, kiosk, wall_ms, utc_offset_min, person, kind, version, body, hash)";
    const auto row = [](const std::string& sequence, const std::string& id) {
        return " VALUES (" + sequence + ", '" + id + "', 'k', 0, 0, 0, 'x', 1, '{}', zeroblob(32))";
    };
    const std::string never = "entries are never changed";
    const std::string next = "an entry takes the next number and a new id";
    CHECK(attempt(folder.path(), "UPDATE entries SET body = '{}' WHERE sequence = 2") == never);
    CHECK(attempt(folder.path(), "UPDATE OR REPLACE entries SET sequence = 1 WHERE sequence = 2") == never);
    CHECK(attempt(folder.path(), "DELETE FROM entries WHERE sequence = 3") == "entries are never deleted");
    const std::string newId = draft(9).id;
    CHECK(attempt(folder.path(), "INSERT OR REPLACE INTO entries " + columns + row("2", newId)) == next);
    CHECK(attempt(folder.path(), "INSERT OR REPLACE INTO entries " + columns + row("4", draft(2).id)) == next);
    CHECK(attempt(folder.path(), "INSERT INTO entries " + columns + row("5", newId)) == next);
    CHECK(attempt(folder.path(), "INSERT INTO entries " + columns + row("0", newId)) == next);
    CHECK(attempt(folder.path(), "INSERT INTO entries " + columns + row("NULL", newId)) == next);
    CHECK(attempt(folder.path(), "INSERT INTO entries " + columns + row("2", newId) +
                                     " ON CONFLICT (sequence) DO UPDATE SET body = excluded.body") == next);
    CHECK(must(openBook(folder.path())->check()).sound());
}

TEST_CASE("the reading connection cannot write", "[ledger][guards]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    CHECK_THROWS_AS(book->reader().exec("DELETE FROM persons"), SQLite::Exception);
    CHECK_THROWS_AS(must(book->openReader())->exec("DELETE FROM persons"), SQLite::Exception);
}

TEST_CASE("a blob is stored once under its hash", "[ledger][blob]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    CommitRequest with = request(1);
    with.blobs = {traceBlob(1), traceBlob(2), traceBlob(1), {"picture", Bytes{}}};
    must(book->commit(with));
    CommitRequest again = request(2);
    again.blobs = {traceBlob(2)};
    must(book->commit(again));
    CHECK(must(book->blob(sha256(traceBlob(1).bytes))) == traceBlob(1).bytes);
    CHECK(must(book->blob(sha256(Bytes{}))).empty());
    CHECK(outcome(book->blob(Digest{})) == "notFound");
    CHECK(must(book->check()).blobs == 3);
}

TEST_CASE("a dropped blob leaves its hash, and may be brought back", "[ledger][blob]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    for (std::uint8_t n = 1; n <= 3; ++n) {
        CommitRequest with = request(n);
        with.blobs = {traceBlob(n), {"picture", Bytes(10, n)}};
        must(book->commit(with));
    }
    CHECK(must(book->dropBlobs("trace", firstWall + 3, firstWall + 100)) == 2);
    CHECK(must(book->dropBlobs("trace", firstWall + 3, firstWall + 100)) == 0);
    CHECK(outcome(book->blob(sha256(traceBlob(1).bytes))) == "dropped");
    CHECK(outcome(book->blob(sha256(traceBlob(3).bytes))) == "done");
    CHECK(outcome(book->blob(sha256(Bytes(10, 1)))) == "done");
    const auto report = must(book->check());
    CHECK(report.sound());
    CHECK(report.droppedBlobs == 2);
    CHECK(report.blobs == 4);

    CommitRequest back = request(4);
    back.blobs = {traceBlob(1)};
    must(book->commit(back));
    CHECK(must(book->blob(sha256(traceBlob(1).bytes))) == traceBlob(1).bytes);
    CHECK(must(book->check()).droppedBlobs == 1);

    CHECK(attempt(folder.path(), "DELETE FROM blobs") == "of a dropped blob the hash stays");
    CHECK(attempt(folder.path(), "UPDATE blobs SET bytes = zeroblob(size)") ==
          "a blob may only be dropped or brought back");
    CHECK(attempt(folder.path(), "INSERT OR REPLACE INTO blobs SELECT * FROM blobs") == "a blob is stored once");
}

TEST_CASE("names stand outside the chain and can be forgotten", "[ledger][persons]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    CommitRequest with = request(1, "person.added");
    with.persons = {{1, "Nameless Example One"}, {2, "Nameless Example Two"}};
    must(book->commit(with));
    CommitRequest renamed = request(2, "person.added");
    renamed.persons = {{2, "Nameless Example Three"}};
    must(book->commit(renamed));
    CHECK(must(book->personNames()) ==
          std::vector<PersonName>{{1, "Nameless Example One"}, {2, "Nameless Example Three"}});
    CHECK(holdsText(folder.path(), "Nameless Example One"));

    must(book->forgetPerson(1));
    CHECK_FALSE(holdsText(folder.path(), "Nameless Example One"));
    CHECK(must(book->personNames()) == std::vector<PersonName>{{2, "Nameless Example Three"}});
    CHECK(outcome(book->forgetPerson(1)) == "notFound");
    must(book->forgetAllPersons());
    must(book->forgetAllPersons());
    CHECK(must(book->personNames()).empty());
    CHECK_FALSE(holdsText(folder.path(), "Nameless Example"));
    const auto report = must(book->check());
    CHECK(report.sound());
    CHECK(report.entries == 2);
}

TEST_CASE("a commit makes the spool of its ride go", "[ledger][book][spool]") {
    const TemporaryFolder folder;
    {
        const auto book = openBook(folder.path());
        const auto spool = must(Spool::create(folder.path(), "ride-1", Bytes{}, 0));
        must(Spool::create(folder.path(), "ride-2", Bytes{}, 0));
        CommitRequest ended = request(1);
        ended.spoolMadeRedundant = spool.fileName();
        must(book->commit(ended));
        CHECK(must(Spool::findLeftOver(folder.path())) == std::vector<std::string>{"ride-2.spool"});
    }
    // The power goes after the commit and before the removal: the file is back, the book knows better.
    must(Spool::create(folder.path(), "ride-1", Bytes{}, 0));
    std::ofstream{folder.path() / "ride-3.spool.new"} << "no header yet";
    const auto book = openBook(folder.path());
    CHECK(must(Spool::findLeftOver(folder.path())) == std::vector<std::string>{"ride-2.spool"});
    CHECK_FALSE(std::filesystem::exists(folder.path() / "ride-3.spool.new"));
}
