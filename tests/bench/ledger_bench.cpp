// Storing one reading durably, beside the least that a durable write costs on the same disk: a 4 KiB append and
// fdatasync. Only the ratio of the two, from one run, says anything.

#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/uuid.hpp"

#include <SQLiteCpp/Statement.h>
#include <array>
#include <benchmark/benchmark.h>
#include <cstdlib>
#include <fcntl.h>
#include <filesystem>
#include <random>
#include <string>
#include <unistd.h>

using namespace holdfast::kiosk::ledger;

namespace {

/// An empty folder on the disk of the working directory, which is rarely one in memory.
class Folder {
public:
    Folder() {
        std::string pattern = (std::filesystem::current_path() / "ledger-bench-XXXXXX").string();
        m_path = ::mkdtemp(pattern.data()) == nullptr ? std::filesystem::path{} : std::filesystem::path{pattern};
    }
    ~Folder() {
        std::error_code ignored;
        std::filesystem::remove_all(m_path, ignored);
    }
    Folder(const Folder&) = delete;
    Folder& operator=(const Folder&) = delete;
    [[nodiscard]] const std::filesystem::path& path() const { return m_path; }

private:
    std::filesystem::path m_path;
};

/// Three small tables, as a reading, its lot and its dryer would have.
class ThreeTables final : public Projection {
public:
    [[nodiscard]] int version() const override { return 1; }
    [[nodiscard]] std::string_view schema() const override {
        return "CREATE TABLE readings (sequence INTEGER PRIMARY KEY, lot INTEGER NOT NULL, margin REAL) STRICT;"
               "CREATE INDEX readings_by_lot ON readings (lot);"
               "CREATE TABLE lots (number INTEGER PRIMARY KEY, readings INTEGER NOT NULL) STRICT;"
               "CREATE TABLE dryers (number INTEGER PRIMARY KEY, last INTEGER NOT NULL) STRICT;";
    }
    void apply(SQLite::Database& database, const Entry& entry) const override {
        SQLite::Statement reading{database, "INSERT INTO readings VALUES (?1, ?1 / 20, 3.25)"};
        reading.bind(1, entry.sequence);
        reading.exec();
        SQLite::Statement lot{database, "INSERT INTO lots VALUES (?1 / 20, 1) "
                                        "ON CONFLICT (number) DO UPDATE SET readings = readings + 1"};
        lot.bind(1, entry.sequence);
        lot.exec();
        SQLite::Statement dryer{database, "INSERT INTO dryers VALUES (?1 % 3, ?1) "
                                          "ON CONFLICT (number) DO UPDATE SET last = excluded.last"};
        dryer.bind(1, entry.sequence);
        dryer.exec();
    }
    [[nodiscard]] std::vector<std::string> tables() const override { return {"readings", "lots", "dryers"}; }
};

CommitRequest reading(std::uint64_t n, std::mt19937_64& chance) {
    CommitRequest made;
    EntryDraft draft;
    draft.id = uuid7(1'700'000'000'000 + n, UuidRandom{});
    draft.kiosk = uuid7(1, UuidRandom{});
    draft.wallMilliseconds = static_cast<std::int64_t>(1'700'000'000'000 + n);
    draft.kind = "reading.taken";
    draft.body.assign(1500, 'x');
    made.entries.push_back(std::move(draft));
    Bytes trace(8192);
    for (auto& byte : trace) {
        byte = static_cast<std::uint8_t>(chance());
    }
    made.blobs.push_back({"trace", std::move(trace)});
    return made;
}

void bareAppend(benchmark::State& state) {
    const Folder folder;
    const int file = ::open((folder.path() / "bare").c_str(), O_CREAT | O_WRONLY | O_APPEND | O_CLOEXEC, 0640);
    std::array<char, 4096> page{};
    for (auto _ : state) {
        if (::write(file, page.data(), page.size()) != static_cast<ssize_t>(page.size()) || ::fdatasync(file) != 0) {
            state.SkipWithError("the disk refuses");
            break;
        }
    }
    ::close(file);
}

void storeReading(benchmark::State& state) {
    const Folder folder;
    auto book = Book::open(folder.path(), std::make_shared<ThreeTables>(), OpenMode::readWrite);
    if (!book) {
        state.SkipWithError(book.error().what.c_str());
        return;
    }
    std::mt19937_64 chance{1};
    std::uint64_t n = 0;
    for (auto _ : state) {
        state.PauseTiming();
        const auto request = reading(++n, chance);
        state.ResumeTiming();
        if (const auto receipt = (*book)->commit(request); !receipt) {
            state.SkipWithError(receipt.error().what.c_str());
            break;
        }
    }
}

} // namespace

BENCHMARK(bareAppend)->UseRealTime()->Repetitions(5)->ReportAggregatesOnly(true);
BENCHMARK(storeReading)->UseRealTime()->Repetitions(5)->ReportAggregatesOnly(true);
