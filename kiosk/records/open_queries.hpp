#pragma once

#include "kiosk/records/test_queries.hpp"

/// Questions about all that is under test at once, each one question.
namespace holdfast::kiosk::records {

struct TestOfLot final {
    std::string lot{}; ///< id
    TestRow test{};
};
/// Every test of the lots of openPrints(limit), also of prints of theirs that have ended; of each lot oldest first.
[[nodiscard]] ledger::Result<std::vector<TestOfLot>> testsOfOpenPrints(const SQLite::Database& database, int limit);
/// Of the newest `loads` loads those that nobody has judged, and those with one of openPrints(prints). Oldest first.
[[nodiscard]] ledger::Result<std::vector<LoadRow>> loadsUnderWay(const SQLite::Database& database, int prints,
                                                                 int loads);

} // namespace holdfast::kiosk::records
