#include "tests/kiosk/ledger/fixture.hpp"

#include <fstream>

using namespace holdfast::kiosk::ledger;
using namespace holdfast::kiosk::ledger::test;

namespace {

std::string opening(const std::filesystem::path& folder, OpenMode mode = OpenMode::readWrite) {
    return outcome(Book::open(folder, tally(), mode));
}

std::string contentOf(const std::filesystem::path& file) {
    std::ifstream in{file, std::ios::binary};
    return std::string(std::istreambuf_iterator<char>{in}, {});
}

/// Lets the database grow no further from the n-th entry on, as a disk without room does.
class NoRoomFrom : public TallyProjection {
public:
    explicit NoRoomFrom(std::int64_t sequence) : m_sequence(sequence) {}
    void apply(SQLite::Database& database, const Entry& entry) const override {
        database.exec(entry.sequence >= m_sequence ? "PRAGMA max_page_count = 1" : "PRAGMA max_page_count = 1000000");
        TallyProjection::apply(database, entry);
    }

private:
    std::int64_t m_sequence;
};

CommitRequest large(std::uint64_t n) {
    CommitRequest made = request(n);
    made.blobs = {{"trace", Bytes(100'000, static_cast<std::uint8_t>(n))}};
    made.entries.front().body.append(20'000, ' ');
    return made;
}

} // namespace

TEST_CASE("a missing folder is reported and not made, except at the first start", "[ledger][open]") {
    const TemporaryFolder folder;
    const auto missing = folder.path() / "shop" / "book";
    CHECK(opening(missing) == "folderMissing");
    CHECK(opening(missing, OpenMode::readOnly) == "folderMissing");
    CHECK_FALSE(std::filesystem::exists(missing));
    CHECK(opening(missing, OpenMode::firstStart) == "done");
    CHECK(opening(missing) == "done");
    CHECK(opening(missing, OpenMode::readOnly) == "done");
}

TEST_CASE("a file in place of the folder is reported", "[ledger][open]") {
    const TemporaryFolder folder;
    write(folder.path() / "file", "x");
    CHECK(opening(folder.path() / "file") == "folderMissing");
    CHECK(opening(folder.path() / "file", OpenMode::firstStart) == "folderMissing");
    CHECK(opening(folder.path() / "file" / "book") == "folderMissing");
    CHECK(contentOf(folder.path() / "file") == "x");
}

TEST_CASE("a folder without a book is not read", "[ledger][open]") {
    const TemporaryFolder folder;
    CHECK(opening(folder.path(), OpenMode::readOnly) == "notFound");
    CHECK(std::filesystem::is_empty(folder.path()));
}

TEST_CASE("a folder that may not be written is reported, and its book can still be read", "[ledger][open]") {
    const TemporaryFolder folder;
    const TemporaryFolder empty;
    makeBook(folder.path(), 3);
    for (const auto& file : std::filesystem::directory_iterator{folder.path()}) {
        std::filesystem::permissions(file.path(), std::filesystem::perms{0444});
    }
    std::filesystem::permissions(folder.path(), std::filesystem::perms{0555});
    std::filesystem::permissions(empty.path(), std::filesystem::perms{0555});
    const auto codeIs = [](const auto& result, FailureCode code) { return !result && result.error().code == code; };
    CHECK(asNobody([&] {
              const auto book = Book::open(folder.path(), tally(), OpenMode::readWrite);
              return codeIs(book, FailureCode::folderReadOnly) ? 1 : 2;
          }) == 1);
    CHECK(asNobody([&] {
              const auto book = Book::open(empty.path(), tally(), OpenMode::readWrite);
              return codeIs(book, FailureCode::folderReadOnly) ? 1 : 2;
          }) == 1);
    CHECK(asNobody([&] {
              const auto book = Book::open(empty.path() / "new", tally(), OpenMode::firstStart);
              return codeIs(book, FailureCode::folderReadOnly) ? 1 : 2;
          }) == 1);
    CHECK(asNobody([&] {
              const auto book = Book::open(folder.path(), tally(), OpenMode::readOnly);
              if (!book) {
                  return 2;
              }
              const auto report = (*book)->check();
              return report && report->sound() && report->entries == 3 ? 1 : 3;
          }) == 1);
}

TEST_CASE("a book file that may not be written in a folder that may is reported", "[ledger][open]") {
    const TemporaryFolder folder;
    makeBook(folder.path(), 1);
    std::filesystem::permissions(folder.path() / Book::fileName, std::filesystem::perms{0444});
    std::filesystem::permissions(folder.path() / Book::lockName, std::filesystem::perms{0666});
    std::filesystem::permissions(folder.path(), std::filesystem::perms{0777});
    CHECK(asNobody([&] {
              const auto book = Book::open(folder.path(), tally(), OpenMode::readWrite);
              return !book && book.error().code == FailureCode::folderReadOnly ? 1 : 2;
          }) == 1);
}

TEST_CASE("a second kiosk on the same book is refused, and may look", "[ledger][open][lock]") {
    const TemporaryFolder folder;
    auto book = openBook(folder.path());
    fill(*book, 2);
    CHECK(opening(folder.path()) == "lockedByAnotherKiosk");
    CHECK(asNobody([&] {
              const auto looking = Book::open(folder.path(), tally(), OpenMode::readOnly);
              return looking ? 1 : 2;
          }) != 255);
    const auto looking = openBook(folder.path(), OpenMode::readOnly);
    CHECK(must(looking->head()).sequence == 2);
    must(book->commit(request(3)));
    CHECK(must(looking->head()).sequence == 3);
    CHECK(outcome(looking->commit(request(4))) == "readOnlyBook");
    CHECK(outcome(looking->rebuild()) == "readOnlyBook");
    CHECK(must(looking->check()).sound());
    book.reset();
    CHECK(opening(folder.path()) == "done");
}

TEST_CASE("a book of a newer schema opens read-only and says why", "[ledger][open][newer]") {
    const TemporaryFolder folder;
    makeBook(folder.path(), 3);
    rawDatabase(folder.path()).exec("PRAGMA user_version = 2");
    const auto book = openBook(folder.path());
    CHECK(book->readOnly());
    REQUIRE(book->readOnlyReason());
    CHECK(book->readOnlyReason()->code == FailureCode::newerBook);
    CHECK(outcome(book->commit(request(4))) == "newerBook");
    CHECK(outcome(book->rebuild()) == "newerBook");
    CHECK(outcome(book->forgetAllPersons()) == "newerBook");
    CHECK(outcome(book->dropBlobs("trace", 0, 0)) == "newerBook");
    CHECK(must(book->entries(1, 10)).size() == 3);
    CHECK(openBook(folder.path(), OpenMode::readOnly)->readOnlyReason()->code == FailureCode::newerBook);
}

TEST_CASE("a book whose read tables are of a newer projection opens read-only", "[ledger][open][newer]") {
    const TemporaryFolder folder;
    {
        const auto newer = must(Book::open(folder.path(), tally(2), OpenMode::readWrite));
        fill(*newer, 2);
    }
    const auto book = openBook(folder.path());
    REQUIRE(book->readOnlyReason());
    CHECK(book->readOnlyReason()->code == FailureCode::newerBook);
}

TEST_CASE("the room above can make a book read-only", "[ledger][open][newer]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    book->makeReadOnly({FailureCode::newerBook, "a kind that is not known"});
    CHECK(outcome(book->commit(request(1))) == "newerBook");
    CHECK(book->readOnly());
}

TEST_CASE("a damaged file is reported and left as it is", "[ledger][open][damaged]") {
    const TemporaryFolder folder;
    const auto file = folder.path() / Book::fileName;
    makeBook(folder.path(), 30);
    const std::string whole = contentOf(file);
    const std::vector<std::pair<std::string, std::string>> contents{
        {"empty", ""},
        {"text", std::string(5000, 'x')},
        {"cut", whole.substr(0, whole.size() / 2)},
        {"header only", whole.substr(0, 100)},
        {"page of zeros", std::string{whole}.replace(4096, 4096, 4096, '\0')},
    };
    for (const auto& [name, content] : contents) {
        INFO(name);
        write(file, content);
        const auto code = opening(folder.path());
        CHECK((code == "damaged" || code == "notABook"));
        CHECK(contentOf(file) == content);
    }
    write(file, whole);
    CHECK(opening(folder.path()) == "done");
}

TEST_CASE("a database of another program is no book", "[ledger][open][damaged]") {
    const TemporaryFolder folder;
    SQLite::Database{(folder.path() / Book::fileName).string(), SQLite::OPEN_READWRITE | SQLite::OPEN_CREATE}.exec(
        "CREATE TABLE t (x)");
    CHECK(opening(folder.path()) == "notABook");
    CHECK(opening(folder.path(), OpenMode::readOnly) == "notABook");
}

TEST_CASE("a book that went away is missed, not begun anew", "[ledger][open][damaged]") {
    const TemporaryFolder folder;
    makeBook(folder.path(), 1);
    std::filesystem::remove(folder.path() / Book::fileName);
    CHECK(opening(folder.path()) == "done"); // nothing tells it from a new folder
    for (const char* left : {"book.sqlite-wal", "book.sqlite.restoring", "book.sqlite.set-aside-1", "ride.spool"}) {
        INFO(left);
        const TemporaryFolder other;
        write(other.path() / left, "x");
        CHECK(opening(other.path()) == "damaged");
        CHECK_FALSE(std::filesystem::exists(other.path() / Book::fileName));
    }
}

TEST_CASE("a half-made new book is made again", "[ledger][open]") {
    const TemporaryFolder folder;
    write(folder.path() / "book.sqlite.new", "torn");
    const auto book = openBook(folder.path());
    CHECK(must(book->check()).sound());
    CHECK_FALSE(std::filesystem::exists(folder.path() / "book.sqlite.new"));
}

TEST_CASE("a database without room refuses the whole request and takes the next", "[ledger][full]") {
    const TemporaryFolder folder;
    auto book = must(Book::open(folder.path(), std::make_shared<NoRoomFrom>(3), OpenMode::readWrite));
    fill(*book, 3);
    CommitRequest four = large(4);
    four.entries.push_back(large(5).entries.front());
    four.entries.push_back(large(6).entries.front());
    CHECK(outcome(book->commit(four)) == "diskFull");
    CHECK(must(book->head()).sequence == 3);
    book.reset();
    const auto again = openBook(folder.path());
    CHECK(must(again->commit(large(4))).sequences == std::vector<std::int64_t>{4});
    CHECK(must(again->check()).sound());
}

TEST_CASE("a full disk is reported as full, and the book goes on when there is room", "[ledger][full]") {
    const TemporaryFolder folder;
    const auto code = withOwnMounts([&] {
        if (::mount("tmpfs", folder.path().c_str(), "tmpfs", 0, "size=1m") != 0) {
            return 253;
        }
        const auto book = Book::open(folder.path(), tally(), OpenMode::readWrite);
        std::uint64_t stored = 0;
        auto receipt = (*book)->commit(large(1));
        while (receipt && stored < 100) {
            receipt = (*book)->commit(large(++stored + 1));
        }
        if (receipt || receipt.error().code != FailureCode::diskFull || stored == 0) {
            return 2;
        }
        if ((*book)->head()->sequence != static_cast<std::int64_t>(stored)) {
            return 3;
        }
        const auto copy = (*book)->backupTo(folder.path() / "copy.book");
        if (copy || copy.error().code != FailureCode::diskFull ||
            std::filesystem::exists(folder.path() / "copy.book.part")) {
            return 4;
        }
        ::mount("tmpfs", folder.path().c_str(), "tmpfs", MS_REMOUNT, "size=9m");
        const bool goesOn = (*book)->commit(large(stored + 1)).has_value();
        return goesOn && (*book)->check()->sound() ? 1 : 5;
    });
    if (!code) {
        WARN("SKIPPED: may not mount");
        return;
    }
    CHECK(*code == 1);
}

TEST_CASE("a new book on a full disk is not begun by half", "[ledger][full]") {
    const TemporaryFolder folder;
    const auto code = withOwnMounts([&] {
        if (::mount("tmpfs", folder.path().c_str(), "tmpfs", 0, "size=16k") != 0) {
            return 253;
        }
        const auto book = Book::open(folder.path(), tally(), OpenMode::readWrite);
        const bool full = !book && book.error().code == FailureCode::diskFull;
        return full && !std::filesystem::exists(folder.path() / Book::fileName) ? 1 : 2;
    });
    if (!code) {
        WARN("SKIPPED: may not mount");
        return;
    }
    CHECK(*code == 1);
}

TEST_CASE("a read-only file system is reported, and its book can still be read", "[ledger][open]") {
    const TemporaryFolder folder;
    makeBook(folder.path(), 3);
    const auto code = withOwnMounts([&] {
        const char* path = folder.path().c_str();
        if (::mount(path, path, nullptr, MS_BIND, nullptr) != 0 ||
            ::mount(nullptr, path, nullptr, MS_REMOUNT | MS_BIND | MS_RDONLY, nullptr) != 0) {
            return 253;
        }
        const auto writing = Book::open(folder.path(), tally(), OpenMode::readWrite);
        if (writing || writing.error().code != FailureCode::folderReadOnly) {
            return 2;
        }
        const auto reading = Book::open(folder.path(), tally(), OpenMode::readOnly);
        return reading && (*reading)->check()->sound() && (*reading)->head()->sequence == 3 ? 1 : 3;
    });
    if (!code) {
        WARN("SKIPPED: may not mount");
        return;
    }
    CHECK(*code == 1);
}
