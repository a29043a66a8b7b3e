#pragma once

#include "kiosk/records/run_on_file.hpp"
#include "kiosk/records/statement.hpp"

#include <string>
#include <vector>

/// Lots as queries show them; shared by them.
namespace holdfast::kiosk::records {

/// What lotRow() reads of the table lots.
extern const char* const kLotColumns;
inline constexpr int kLotColumnCount = 6;

/// Of a statement whose columns from `first` on are kLotColumns and that stands on a row.
[[nodiscard]] LotRow lotRow(SQLite::Statement& query, int first = 0);

template <class... Values>
[[nodiscard]] std::vector<LotRow> lotRows(const SQLite::Database& database, const char* where,
                                          const Values&... values) {
    std::vector<LotRow> rows;
    auto query = prepared(database, joined({"SELECT ", kLotColumns, " FROM lots ", where}).c_str(), values...);
    while (query.executeStep()) {
        rows.push_back(lotRow(query));
    }
    return rows;
}

} // namespace holdfast::kiosk::records
