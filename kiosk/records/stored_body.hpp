#pragma once

#include "kiosk/records/json_object.hpp"
#include "kiosk/records/record_json.hpp"
#include "kiosk/records/statement.hpp"

#include <optional>
#include <stdexcept>
#include <string>
#include <vector>

namespace holdfast::kiosk::records {

/// A body from a read table. It was read once when it was applied, so a fault here is a damaged file: throws.
template <class R>
[[nodiscard]] R storedBody(const std::string& body) {
    Faults faults;
    R record;
    if (const auto json = parseJson(body, faults)) {
        ObjectReader reader{*json, "", faults};
        read(reader, record);
        reader.finish();
    }
    if (!faults.empty()) {
        throw std::runtime_error("a stored body cannot be read: " + failureFrom(faults).what);
    }
    return record;
}

/// Of each row's first column.
template <class R, class... Values>
[[nodiscard]] std::vector<R> bodies(const SQLite::Database& database, const char* sql, const Values&... values) {
    std::vector<R> all;
    auto query = prepared(database, sql, values...);
    while (query.executeStep()) {
        all.push_back(storedBody<R>(query.getColumn(0).getString()));
    }
    return all;
}

/// Of the first row, if there is one.
template <class R, class... Values>
[[nodiscard]] std::optional<R> body(const SQLite::Database& database, const char* sql, const Values&... values) {
    auto all = bodies<R>(database, sql, values...);
    return all.empty() ? std::nullopt : std::optional{std::move(all.front())};
}

/// Runs a query; what SQLite or a damaged body throws becomes a Failure.
template <class Ask>
[[nodiscard]] auto asked(const char* doing, Ask ask) -> ledger::Result<decltype(ask())> {
    try {
        return ask();
    } catch (const std::exception& thrown) {
        return tl::unexpected(ledger::failureFrom(thrown, doing));
    }
}

} // namespace holdfast::kiosk::records
