#pragma once

#include "analytics/quantity/temperature.hpp"
#include "kiosk/ledger/kept_statements.hpp"

#include <SQLiteCpp/Database.h>
#include <SQLiteCpp/Statement.h>
#include <cstdint>
#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

/// Small words for statements: binding in order, and columns that may be null.
namespace holdfast::kiosk::records {

/// One after the other. Out of line: where GCC 12 inlines the plus signs of strings, it warns of writes that are none.
[[nodiscard]] std::string joined(std::initializer_list<std::string_view> parts);

inline void bindOne(SQLite::Statement& statement, int at, std::int64_t value) {
    statement.bind(at, value);
}
inline void bindOne(SQLite::Statement& statement, int at, int value) {
    statement.bind(at, value);
}
inline void bindOne(SQLite::Statement& statement, int at, bool value) {
    statement.bind(at, value ? 1 : 0);
}
inline void bindOne(SQLite::Statement& statement, int at, double value) {
    statement.bind(at, value);
}
inline void bindOne(SQLite::Statement& statement, int at, const std::string& value) {
    statement.bind(at, value);
}
inline void bindOne(SQLite::Statement& statement, int at, std::string_view value) {
    statement.bind(at, std::string{value});
}
inline void bindOne(SQLite::Statement& statement, int at, const char* value) {
    statement.bind(at, value);
}
template <class T>
void bindOne(SQLite::Statement& statement, int at, const std::optional<T>& value) {
    if (value) {
        bindOne(statement, at, *value);
    } else {
        statement.bind(at);
    }
}

template <class... Values>
[[nodiscard]] ledger::KeptStatement prepared(const SQLite::Database& database, const char* sql,
                                             const Values&... values) {
    ledger::KeptStatement statement{database, sql};
    int at = 0;
    (bindOne(statement, ++at, values), ...);
    return statement;
}

template <class... Values>
void execute(SQLite::Database& database, const char* sql, const Values&... values) {
    prepared(database, sql, values...).exec();
}

[[nodiscard]] inline std::optional<std::string> textAt(SQLite::Statement& statement, int column) {
    const auto value = statement.getColumn(column);
    return value.isNull() ? std::nullopt : std::optional{value.getString()};
}
[[nodiscard]] inline std::optional<double> numberAt(SQLite::Statement& statement, int column) {
    const auto value = statement.getColumn(column);
    return value.isNull() ? std::nullopt : std::optional{value.getDouble()};
}

/// Of a column that holds kelvins.
[[nodiscard]] inline std::optional<analytics::TemperatureDifference> kelvinsAt(SQLite::Statement& statement,
                                                                               int column) {
    const auto value = numberAt(statement, column);
    return value ? std::optional{analytics::TemperatureDifference::fromCelsius(*value)} : std::nullopt;
}

} // namespace holdfast::kiosk::records
