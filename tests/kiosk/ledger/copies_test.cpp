#include "tests/kiosk/ledger/fixture.hpp"

#include <fstream>

using namespace holdfast::kiosk::ledger;
using namespace holdfast::kiosk::ledger::test;

namespace {

std::vector<std::string> namesIn(const std::filesystem::path& folder) {
    std::vector<std::string> names;
    for (const auto& at : std::filesystem::directory_iterator{folder}) {
        names.push_back(at.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

} // namespace

TEST_CASE("a copy of a running book is one file and restores to the same book", "[ledger][backup]") {
    const TemporaryFolder folder;
    const TemporaryFolder elsewhere;
    const TemporaryFolder other;
    const auto book = openBook(folder.path());
    fill(*book, 40);
    CommitRequest with = request(41);
    with.blobs = {{"trace", Bytes(5000, 1)}};
    with.persons = {{1, "A"}};
    must(book->commit(with));
    const auto copy = elsewhere.path() / "monday.book";
    must(book->backupTo(copy));
    CHECK(namesIn(elsewhere.path()) == std::vector<std::string>{"monday.book"});
    must(book->commit(request(42)));

    must(Book::restore(copy, other.path() / "new"));
    const auto restored = openBook(other.path() / "new");
    CHECK(must(restored->entries(1, 100)) == must(book->entries(1, 41)));
    CHECK(must(restored->blob(sha256(Bytes(5000, 1)))) == Bytes(5000, 1));
    CHECK(must(restored->personNames()) == std::vector<PersonName>{{1, "A"}});
    CHECK(must(restored->check()).sound());
    must(restored->commit(request(42)));
    CHECK(must(restored->tablesDigest()) == must(book->tablesDigest()));
}

TEST_CASE("a copy replaces an earlier copy and nothing else", "[ledger][backup]") {
    const TemporaryFolder folder;
    const TemporaryFolder elsewhere;
    const auto book = openBook(folder.path());
    const auto copy = elsewhere.path() / "copy.book";
    must(book->backupTo(copy));
    fill(*book, 5);
    must(book->backupTo(copy));
    write(elsewhere.path() / "letter.txt", "Dear all");
    CHECK(outcome(book->backupTo(elsewhere.path() / "letter.txt")) == "refused");
    CHECK(std::filesystem::file_size(elsewhere.path() / "letter.txt") == 8);
    CHECK(outcome(book->backupTo(folder.path() / Book::fileName)) == "refused");
    CHECK(outcome(book->backupTo(elsewhere.path() / "none" / "copy.book")) == "folderMissing");
    const TemporaryFolder neighbour;
    fill(*openBook(neighbour.path()), 1);
    CHECK(outcome(book->backupTo(neighbour.path() / Book::fileName)) == "refused");
    must(Book::restore(copy, elsewhere.path() / "restored"));
    CHECK(must(openBook(elsewhere.path() / "restored")->head()).sequence == 5);
}

TEST_CASE("a damaged book does not replace a good copy", "[ledger][backup]") {
    const TemporaryFolder folder;
    const TemporaryFolder elsewhere;
    const auto book = openBook(folder.path());
    fill(*book, 5);
    const auto copy = elsewhere.path() / "copy.book";
    must(book->backupTo(copy));
    rawDatabase(folder.path()).exec("DROP TRIGGER entries_never_change; UPDATE entries SET person = 9");
    CHECK(outcome(book->backupTo(copy)) == "damaged");
    CHECK(namesIn(elsewhere.path()) == std::vector<std::string>{"copy.book"});
    must(Book::restore(copy, elsewhere.path() / "restored"));
    CHECK(must(openBook(elsewhere.path() / "restored")->check()).sound());
}

TEST_CASE("restoring sets the old book aside with what its log holds", "[ledger][restore]") {
    const TemporaryFolder folder;
    const TemporaryFolder elsewhere;
    const auto copy = elsewhere.path() / "copy.book";
    {
        const auto book = openBook(folder.path());
        fill(*book, 5);
        must(book->backupTo(copy));
        must(book->commit(request(6)));
        CHECK(outcome(Book::restore(copy, folder.path())) == "lockedByAnotherKiosk");
    }
    must(Book::restore(copy, folder.path()));
    CHECK(must(openBook(folder.path())->head()).sequence == 5);
    must(Book::restore(copy, folder.path()));
    const auto names = namesIn(folder.path());
    CHECK(std::count(names.begin(), names.end(), "book.sqlite.set-aside-1") == 1);
    CHECK(std::count(names.begin(), names.end(), "book.sqlite.set-aside-2") == 1);
    std::filesystem::create_directory(elsewhere.path() / "old");
    std::filesystem::copy(folder.path() / "book.sqlite.set-aside-1", elsewhere.path() / "old" / Book::fileName);
    CHECK(must(openBook(elsewhere.path() / "old")->head()).sequence == 6);
}

TEST_CASE("a damaged book can be set aside and restored", "[ledger][restore]") {
    const TemporaryFolder folder;
    const TemporaryFolder elsewhere;
    const auto copy = elsewhere.path() / "copy.book";
    {
        const auto book = openBook(folder.path());
        fill(*book, 5);
        must(book->backupTo(copy));
    }
    write(folder.path() / Book::fileName, "lost");
    must(Book::restore(copy, folder.path()));
    CHECK(must(openBook(folder.path())->head()).sequence == 5);
    CHECK(std::filesystem::file_size(folder.path() / "book.sqlite.set-aside-1") == 4);
}

TEST_CASE("a restore that was cut off is finished by doing it again", "[ledger][restore]") {
    const TemporaryFolder folder;
    const TemporaryFolder elsewhere;
    const auto copy = elsewhere.path() / "copy.book";
    {
        const auto book = openBook(folder.path());
        fill(*book, 5);
        must(book->backupTo(copy));
    }
    // The power goes between setting the book aside and its log, or before the new one has its name.
    std::filesystem::rename(folder.path() / Book::fileName, folder.path() / "book.sqlite.set-aside-1");
    write(folder.path() / "book.sqlite-wal", "the log");
    write(folder.path() / "book.sqlite.restoring", "half");
    CHECK(outcome(Book::open(folder.path(), tally(), OpenMode::readWrite)) == "damaged");
    must(Book::restore(copy, folder.path()));
    CHECK(must(openBook(folder.path())->head()).sequence == 5);
    CHECK(std::filesystem::file_size(folder.path() / "book.sqlite.set-aside-1-wal") == 7);
    CHECK_FALSE(std::filesystem::exists(folder.path() / "book.sqlite.restoring"));
}

TEST_CASE("what is no sound copy is not restored, and the book stays", "[ledger][restore]") {
    const TemporaryFolder folder;
    const TemporaryFolder elsewhere;
    const auto copy = elsewhere.path() / "copy.book";
    {
        const auto book = openBook(folder.path());
        fill(*book, 5);
        must(book->backupTo(copy));
    }
    CHECK(outcome(Book::restore(elsewhere.path() / "none.book", folder.path())) == "notFound");
    CHECK(outcome(Book::restore(folder.path() / Book::fileName, folder.path())) == "refused");
    write(elsewhere.path() / "letter.txt", "Dear all");
    CHECK(outcome(Book::restore(elsewhere.path() / "letter.txt", folder.path())) == "damaged");
    SQLite::Database{copy.string(), SQLite::OPEN_READWRITE}.exec(
        "DROP TRIGGER entries_never_change; UPDATE entries SET person = 9 WHERE sequence = 2");
    CHECK(outcome(Book::restore(copy, folder.path())) == "damaged");
    SQLite::Database{copy.string(), SQLite::OPEN_READWRITE}.exec("PRAGMA user_version = 99");
    CHECK(outcome(Book::restore(copy, folder.path())) == "newerBook");
    const auto names = namesIn(folder.path());
    CHECK(std::none_of(names.begin(), names.end(), [](const std::string& name) {
        return name.find("set-aside") != std::string::npos || name.find("restoring") != std::string::npos;
    }));
    CHECK(must(openBook(folder.path())->check()).entries == 5);
}
