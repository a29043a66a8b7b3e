#include "kiosk/ledger/writer.hpp"

#include "tests/kiosk/ledger/fixture.hpp"

#include <csignal>

using namespace holdfast::kiosk::ledger;
using namespace holdfast::kiosk::ledger::test;

TEST_CASE("a writer does what it was given in order, and all of it before it goes", "[ledger][writer]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    std::vector<std::int64_t> told;
    std::vector<std::string> others;
    std::thread::id where;
    {
        Writer writer{*book};
        for (std::uint64_t n = 1; n <= 100; ++n) {
            writer.submit(request(n), [&](Result<CommitReceipt> receipt) {
                told.push_back(receipt ? receipt->sequences.front() : -1);
            });
        }
        writer.post([&] {
            others.push_back("after " + std::to_string(told.size()));
            where = std::this_thread::get_id();
        });
        writer.submit(request(1), [&](const Result<CommitReceipt>& receipt) { others.push_back(outcome(receipt)); });
        writer.submit(request(101), nullptr);
    }
    REQUIRE(told.size() == 100);
    for (std::size_t i = 0; i < told.size(); ++i) {
        REQUIRE(told[i] == static_cast<std::int64_t>(i + 1));
    }
    CHECK(others == std::vector<std::string>{"after 100", "refused"});
    CHECK(where != std::this_thread::get_id());
    CHECK(must(book->head()).sequence == 101);
    CHECK(must(book->check()).sound());
}

TEST_CASE("what is told as stored can be read at once by the reader", "[ledger][writer]") {
    const TemporaryFolder folder;
    const auto book = openBook(folder.path());
    Writer writer{*book};
    for (std::uint64_t n = 1; n <= 50; ++n) {
        std::mutex mutex;
        std::condition_variable told;
        std::int64_t sequence = 0;
        writer.submit(request(n), [&](Result<CommitReceipt> receipt) {
            const std::lock_guard lock{mutex};
            sequence = receipt ? receipt->sequences.front() : -1;
            told.notify_one();
        });
        std::unique_lock lock{mutex};
        told.wait(lock, [&] { return sequence != 0; });
        REQUIRE(static_cast<const EntryDraft&>(must(book->entry(sequence))) == draft(n));
    }
}

TEST_CASE("a kiosk killed while it writes loses nothing that it acknowledged", "[ledger][kill]") {
    const TemporaryFolder folder;
    std::int64_t acknowledged = 0;
    for (int round = 0; round < 5; ++round) {
        std::array<int, 2> pipe{};
        REQUIRE(::pipe(pipe.data()) == 0);
        const pid_t child = ::fork();
        if (child == 0) {
            const auto book = Book::open(folder.path(), tally(), OpenMode::readWrite);
            std::uint64_t n = book ? static_cast<std::uint64_t>((*book)->head()->sequence) : 0;
            while (book) {
                CommitRequest next = request(++n);
                next.blobs = {{"trace", Bytes(8000, static_cast<std::uint8_t>(n))}};
                next.blobs.front().bytes.front() = static_cast<std::uint8_t>(n >> 8);
                const auto receipt = (*book)->commit(next);
                if (!receipt || ::write(pipe[1], receipt->sequences.data(), 8) != 8) {
                    break;
                }
            }
            ::_exit(1);
        }
        ::close(pipe[1]);
        const std::int64_t enough = acknowledged + 60;
        while (acknowledged < enough && ::read(pipe[0], &acknowledged, 8) == 8) {
        }
        ::kill(child, SIGKILL);
        while (::read(pipe[0], &acknowledged, 8) == 8) { // what was on its way
        }
        ::close(pipe[0]);
        int status = 0;
        ::waitpid(child, &status, 0);
        REQUIRE(WIFSIGNALED(status));

        const auto book = openBook(folder.path());
        const auto report = must(book->check());
        REQUIRE(report.sound());
        REQUIRE(report.entries >= acknowledged);
        REQUIRE(report.entries <= acknowledged + 1);
        REQUIRE(must(book->entry(acknowledged)).id == draft(static_cast<std::uint64_t>(acknowledged)).id);
        acknowledged = report.entries;
    }
}
