#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/floor_records.hpp"
#include "kiosk/records/run_on_file.hpp"
#include "kiosk/records/shop_records.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Questions about runs, dryers and people as they stand.
namespace holdfast::kiosk::records {

struct RunRow final {
    std::string id{};
    PlanKind kind = PlanKind::run;
    std::int64_t number = 0;
    std::string title{};
    std::string customer{};
    std::string reference{};
    std::string fabric{};
    std::string dryer{}; ///< id; empty: any
    std::optional<int> pieces{};
    std::int64_t plannedAt = 0; ///< wall milliseconds
    bool finished = false;
    int readings = 0; ///< that count: neither refused nor struck
    std::optional<LotState>
        worst{}; ///< of its lots: on hold, unproven, open, setting up, scrapped, re-run, released, cleared
};
/// The finished ones or the others, newest plan first.
[[nodiscard]] ledger::Result<std::vector<RunRow>> runsOnFile(const SQLite::Database& database, PlanKind kind,
                                                             bool finished, int limit);

enum class Numbered { run, windowCard, bucket, instrument, person };
/// One more than the highest in use; a strip pack's last number counts.
[[nodiscard]] ledger::Result<std::int64_t> nextNumber(const SQLite::Database& database, Numbered what);

/// A dryer as described and as last turned. Belt or set point is absent if it was turned and nobody said to what.
struct DryerNow final {
    DryerDescribed described{};
    std::optional<double> beltMetresPerMinute{};
    std::optional<analytics::AuthoredTemperature> setPoint{};
    bool stopped = false;
    std::int64_t since = 0;   ///< wall milliseconds of its last change: the episode's beginning
    std::string runningRun{}; ///< id of the run of its newest open lot; may be empty
};
/// By name, without withdrawn ones.
[[nodiscard]] ledger::Result<std::vector<DryerNow>> dryersNow(const SQLite::Database& database);

struct ActionRow final {
    std::int64_t at = 0; ///< wall milliseconds
    ActionTaken action{};
};
/// Newest first.
[[nodiscard]] ledger::Result<std::vector<ActionRow>> actionsAt(const SQLite::Database& database,
                                                               const std::string& dryer, int limit);
/// Under-cured and overheated readings that hold a lot and to which nobody has said what was done; oldest first.
[[nodiscard]] ledger::Result<std::vector<ReadingRow>> unanswered(const SQLite::Database& database);
/// Readings without a run: "whose was this?"; newest first.
[[nodiscard]] ledger::Result<std::vector<ReadingRow>> unclaimed(const SQLite::Database& database, int limit);
/// Id of the first reading, refused or not, that used the single strip of this number.
[[nodiscard]] ledger::Result<std::optional<std::string>> readingOfStrip(const SQLite::Database& database,
                                                                        std::int64_t number);

struct PersonOnFile final {
    std::int64_t number = 0;
    std::string badge{};
    std::vector<Role> roles{};
    bool left = false;
    std::string pinHash{}; ///< empty: no PIN
};
/// By number.
[[nodiscard]] ledger::Result<std::vector<PersonOnFile>> peopleOnFile(const SQLite::Database& database);

/// Newest first. Withdrawn instruments too: records::instruments(database, true).
[[nodiscard]] ledger::Result<std::vector<CheckDone>> checksOf(const SQLite::Database& database,
                                                              const std::string& instrument);
/// Newest first.
[[nodiscard]] ledger::Result<std::vector<CertificateAdded>> certificatesOf(const SQLite::Database& database,
                                                                           const std::string& instrument);

struct FlashRow final {
    std::int64_t at = 0; ///< wall milliseconds
    FlashNoted flash{};
};
/// Oldest first.
[[nodiscard]] ledger::Result<std::vector<FlashRow>> flashesOf(const SQLite::Database& database, const std::string& run);

} // namespace holdfast::kiosk::records
