#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/load_records.hpp"
#include "kiosk/records/print_records.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/records/test_records.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Questions about prints under test, methods, loads and tests.
namespace holdfast::kiosk::records {

/// A print as last changed.
struct PrintRow final {
    PrintNamed named{}; ///< with the newest place
    std::int64_t namedAt = 0;
    std::optional<PrintEnd> ended{};
    std::int64_t runNumber = 0;
    std::string runTitle{};
    std::string fabric{};
    std::string garmentColour{};
    int lotNumber = 0;
    LotState lotState = LotState::open;
    std::vector<PlannedLayer> layers{};              ///< bottom first
    std::vector<analytics::Chemistry> chemistries{}; ///< of its layers, each once
    double restHours = 0.0; ///< the longest that a family or mix of its layers asks before a test
};
[[nodiscard]] ledger::Result<std::optional<PrintRow>> printByNumber(const SQLite::Database& database,
                                                                    std::int64_t number);
[[nodiscard]] ledger::Result<std::optional<PrintRow>> printById(const SQLite::Database& database,
                                                                const std::string& print);
/// By number.
[[nodiscard]] ledger::Result<std::vector<PrintRow>> printsOfRun(const SQLite::Database& database,
                                                                const std::string& run);
/// Newest first, those that have not ended.
[[nodiscard]] ledger::Result<std::vector<PrintRow>> openPrints(const SQLite::Database& database, int limit);
/// Retained ones by shelf, then number; those past their time too.
[[nodiscard]] ledger::Result<std::vector<PrintRow>> retainedPrints(const SQLite::Database& database);
[[nodiscard]] ledger::Result<std::int64_t> nextPrint(const SQLite::Database& database);

/// Newest revision of each key, by kind and key; withdrawn ones if asked for.
[[nodiscard]] ledger::Result<std::vector<MethodDescribed>> methods(const SQLite::Database& database,
                                                                   bool withdrawnToo = false);
[[nodiscard]] ledger::Result<std::optional<MethodDescribed>> methodAt(const SQLite::Database& database,
                                                                      const std::string& key, int revision);
/// A test was ever done by it.
[[nodiscard]] ledger::Result<bool> isMethodUsed(const SQLite::Database& database, const std::string& key);

/// A test as last put right.
struct TestRow final {
    std::string id{};    ///< of its first entry
    std::int64_t at = 0; ///< wall milliseconds of its first entry
    std::int64_t person = 0;
    TestDone done{};
    int versions = 1; ///< entries about it
    /// What it counts for today: `done.outcome`, or inAVoidLoad once its load was found void.
    TestOutcome counts = TestOutcome::noted;
};
/// Of a print, oldest first; of all its halves too.
[[nodiscard]] ledger::Result<std::vector<TestRow>> testsOfPrint(const SQLite::Database& database,
                                                                const std::string& print);
[[nodiscard]] ledger::Result<std::vector<TestRow>> testsOfLot(const SQLite::Database& database, const std::string& lot);
/// Every version of one test, oldest first, each with its own time and person and its place among them in `versions`.
[[nodiscard]] ledger::Result<std::vector<TestRow>> versionsOfTest(const SQLite::Database& database,
                                                                  const std::string& id);
/// Newest first, since that time.
[[nodiscard]] ledger::Result<std::vector<TestRow>> testsSince(const SQLite::Database& database,
                                                              std::int64_t wallMilliseconds);

struct LoadRow final {
    LoadWashed washed{};
    std::int64_t at = 0;
    std::optional<LoadJudged> judged{}; ///< as last put right
    std::string judgedBy{};             ///< id of the entry that says so; empty: nobody has judged it
};
[[nodiscard]] ledger::Result<std::optional<LoadRow>> loadById(const SQLite::Database& database,
                                                              const std::string& load);
/// Newest first.
[[nodiscard]] ledger::Result<std::vector<LoadRow>> loads(const SQLite::Database& database, int limit);
/// Of one machine and programme, oldest first, judged ones only: what the witness charts are made of.
[[nodiscard]] ledger::Result<std::vector<LoadRow>>
judgedLoads(const SQLite::Database& database, const std::string& machine, const std::string& programme);
/// Every load that a print was in, oldest first: its cycles.
[[nodiscard]] ledger::Result<std::vector<LoadRow>> loadsOfPrint(const SQLite::Database& database,
                                                                const std::string& print);
[[nodiscard]] ledger::Result<std::int64_t> nextLoad(const SQLite::Database& database);

} // namespace holdfast::kiosk::records
