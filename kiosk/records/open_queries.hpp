#pragma once

#include "kiosk/records/test_queries.hpp"

/// Questions about all that is under test at once, each one question.
namespace holdfast::kiosk::records {

/// Newest first, those that have not ended, without the retained ones that nobody has begun to test: of these a shop
/// has hundreds on its shelves, and they owe nothing.
[[nodiscard]] ledger::Result<std::vector<PrintRow>> printsUnderTest(const SQLite::Database& database, int limit);

struct TestOfLot final {
    std::string lot{}; ///< id
    TestRow test{};
};
/// Every test of the lots of printsUnderTest(limit), also of prints of theirs that have ended; of each lot oldest
/// first.
[[nodiscard]] ledger::Result<std::vector<TestOfLot>> testsUnderWay(const SQLite::Database& database, int limit);
/// Of the newest `loads` loads those that nobody has judged, and those with one of printsUnderTest(prints). Oldest
/// first.
[[nodiscard]] ledger::Result<std::vector<LoadRow>> loadsUnderWay(const SQLite::Database& database, int prints,
                                                                 int loads);

} // namespace holdfast::kiosk::records
