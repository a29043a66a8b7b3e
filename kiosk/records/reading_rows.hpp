#pragma once

#include "kiosk/records/run_on_file.hpp"
#include "kiosk/records/statement.hpp"

#include <string>
#include <vector>

/// Readings as lists show them; shared by the queries.
namespace holdfast::kiosk::records {

/// Up to the WHERE: `r` is the reading, beside it runs, lots, instruments and struck, each null if there is none.
extern const char* const kReadingSelect;

/// Of a statement that begins with kReadingSelect and stands on a row.
[[nodiscard]] ReadingRow readingRow(SQLite::Statement& query);

template <class... Values>
[[nodiscard]] std::vector<ReadingRow> readingRows(const SQLite::Database& database, const char* where,
                                                  const Values&... values) {
    std::vector<ReadingRow> rows;
    auto query = prepared(database, joined({kReadingSelect, where}).c_str(), values...);
    while (query.executeStep()) {
        rows.push_back(readingRow(query));
    }
    return rows;
}

} // namespace holdfast::kiosk::records
