#include "kiosk/ledger/writer.hpp"
#include "tests/kiosk/ledger/fixture.hpp"

#include <csignal>

using namespace holdfast::kiosk::ledger;
using namespace holdfast::kiosk::ledger::test;

namespace {

std::filesystem::path logOf(const std::filesystem::path& folder) {
    return folder / (std::string{Book::fileName} + "-wal");
}

/// What a kiosk that is killed at this moment leaves: the files as the system has them.
void copyFiles(const std::filesystem::path& from, const std::filesystem::path& to) {
    for (const char* suffix : {"", "-wal"}) {
        const auto name = std::string{Book::fileName} + suffix;
        std::filesystem::copy_file(from / name, to / name, std::filesystem::copy_options::overwrite_existing);
    }
}

CommitRequest withBlob(std::uint64_t n, std::size_t size) {
    auto made = request(n);
    Bytes bytes(size, static_cast<std::uint8_t>(n));
    for (std::size_t i = 0; i < 8 && i < size; ++i) {
        bytes[i] = static_cast<std::uint8_t>(n >> (8 * i));
    }
    made.blobs.push_back({"trace", std::move(bytes)});
    return made;
}

std::int64_t entriesIn(const std::filesystem::path& folder) {
    const auto book = openBook(folder);
    const auto report = must(book->check());
    CHECK(report.sound());
    return report.entries;
}

} // namespace

TEST_CASE("a commit that was answered stands in the files, whatever its size and whether the writer rested",
          "[ledger][log]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    const bool rests = GENERATE(false, true);
    // Around what is written to the log at once (120 KiB), and beyond what SQLite keeps in memory (2 MB).
    std::uint64_t n = 0;
    for (const std::size_t size : {1U, 4000U, 100'000U, 115'000U, 125'000U, 131'072U, 300'000U, 6'000'000U, 10U}) {
        must(book->commit(withBlob(++n, size)));
        if (rests) {
            book->rest();
        }
        const TemporaryFolder killed;
        copyFiles(folder.path(), killed.path());
        CHECK(entriesIn(killed.path()) == static_cast<std::int64_t>(n));
    }
}

TEST_CASE("another connection sees each commit when it is answered", "[ledger][log]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    auto other = rawDatabase(folder.path()); // through SQLite's own file system
    for (std::uint64_t n = 1; n <= 40; ++n) {
        must(book->commit(withBlob(n, 20'000)));
        CHECK(other.execAndGet("SELECT count(*) FROM entries").getInt64() == static_cast<std::int64_t>(n));
        book->rest();
        CHECK(must(book->head()).sequence == static_cast<std::int64_t>(n));
    }
}

TEST_CASE("a refused commit that had already spilled into the log leaves nothing, and the next one is stored",
          "[ledger][log]") {
    const TemporaryFolder folder;
    auto book = openBook(folder.path());
    must(book->commit(request(1)));
    auto poisoned = withBlob(2, 8'000'000);
    poisoned.entries.push_back(draft(3, "poison"));
    CHECK(outcome(book->commit(poisoned)) == "refused");
    must(book->commit(request(4)));
    CHECK(must(book->check()).blobs == 0);
    book.reset();
    CHECK(entriesIn(folder.path()) == 2);
}

TEST_CASE("a writer that rests keeps the log at one size", "[ledger][log]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    must(book->commit(request(1)));
    book->rest();
    const auto room = std::filesystem::file_size(logOf(folder.path()));
    CHECK(room == 2U << 20U);
    // 3,000 commits of at least five pages take 60 MB of a log that is never begun anew.
    for (std::uint64_t n = 2; n <= 3000; ++n) {
        must(book->commit(request(n)));
        book->rest();
    }
    CHECK(std::filesystem::file_size(logOf(folder.path())) == room);
}

TEST_CASE("a writer that never rests folds the log in its commits", "[ledger][log]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    for (std::uint64_t n = 1; n <= 400; ++n) {
        must(book->commit(withBlob(n, 200'000)));
    }
    CHECK(std::filesystem::file_size(logOf(folder.path())) < 40U << 20U); // of 80 MB written
}

TEST_CASE("forgetting a name cuts the log off although there is room in it", "[ledger][log]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    auto named = request(1);
    named.persons.push_back({1, "Somebody"});
    must(book->commit(named));
    book->rest();
    must(book->forgetPerson(1));
    CHECK(std::filesystem::file_size(logOf(folder.path())) == 0);
    book->rest();
    must(book->commit(request(2)));
    CHECK(must(book->check()).sound());
}

TEST_CASE("a kiosk killed while its writer commits and rests has lost nothing it answered", "[ledger][log]") {
    const TemporaryFolder folder;
    int answered[2];
    REQUIRE(::pipe(answered) == 0);
    const pid_t child = ::fork();
    if (child == 0) {
        const auto book = openBook(folder.path());
        for (std::uint64_t n = 1;; ++n) {
            if (!book->commit(withBlob(n, 3000))) {
                ::_exit(1);
            }
            if (::write(answered[1], &n, sizeof n) != sizeof n) {
                ::_exit(1);
            }
            book->rest();
        }
    }
    ::close(answered[1]);
    std::uint64_t last = 0;
    for (std::uint64_t n = 0; last < 150 && ::read(answered[0], &n, sizeof n) == sizeof n;) {
        last = n;
    }
    ::kill(child, SIGKILL);
    ::waitpid(child, nullptr, 0);
    for (std::uint64_t n = 0; ::read(answered[0], &n, sizeof n) == sizeof n;) {
        last = n;
    }
    ::close(answered[0]);
    REQUIRE(last >= 150);
    const auto entries = entriesIn(folder.path());
    CHECK(entries >= static_cast<std::int64_t>(last));
    CHECK(entries <= static_cast<std::int64_t>(last) + 1); // one may have been on the disk and not answered
}

TEST_CASE("a writer with nothing to do makes room in the log", "[ledger][log][writer]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    {
        Writer writer{*book};
        writer.submit(request(1), {});
    }
    CHECK(std::filesystem::file_size(logOf(folder.path())) == 2U << 20U);
}

TEST_CASE("resting does nothing to a book that cannot be written", "[ledger][log]") {
    const TemporaryFolder folder;
    {
        const auto book = openBook(folder.path());
        fill(*book, 1);
    }
    const auto book = openBook(folder.path(), OpenMode::readOnly);
    book->rest();
    CHECK(must(book->head()).sequence == 1);
}
