#include "kiosk/records/open_queries.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/under_test.hpp"

namespace holdfast::kiosk::records {
namespace {

using ledger::Result;
using SQLite::Database;

template <class... Values>
std::vector<LoadRow> loadRows(const Database& database, const char* where, const Values&... values) {
    std::vector<LoadRow> rows;
    auto query =
        prepared(database, joined({"SELECT l.body, l.washed_ms, l.judged, l.judged_by FROM loads l ", where}).c_str(),
                 values...);
    while (query.executeStep()) {
        LoadRow row;
        row.washed = storedBody<LoadWashed>(query.getColumn(0).getString());
        row.at = query.getColumn(1).getInt64();
        if (const auto judged = textAt(query, 2)) {
            row.judged = storedBody<LoadJudged>(*judged);
            row.judgedBy = textAt(query, 3).value_or("");
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

} // namespace

Result<std::optional<LoadRow>> loadById(const Database& database, const std::string& load) {
    return asked("look up a load", [&]() -> std::optional<LoadRow> {
        auto rows = loadRows(database, "WHERE l.id = ?", load);
        return rows.empty() ? std::nullopt : std::optional{std::move(rows.front())};
    });
}

Result<std::vector<LoadRow>> loads(const Database& database, int limit) {
    return asked("read the loads", [&] { return loadRows(database, "ORDER BY l.sequence DESC LIMIT ?", limit); });
}

Result<std::vector<LoadRow>> loadsUnderWay(const Database& database, int prints, int loads) {
    return asked("read the loads under way", [&] {
        return loadRows(database,
                        joined({"WHERE l.number > (SELECT max(number) FROM loads) - ?2 AND (l.judged IS NULL OR l.id "
                                "IN (SELECT load FROM load_prints WHERE print IN (SELECT p.id FROM prints p WHERE ",
                                kUnderTest, "))) ORDER BY l.number"})
                            .c_str(),
                        prints, loads);
    });
}

Result<std::vector<LoadRow>> judgedLoads(const Database& database, const std::string& machine,
                                         const std::string& programme) {
    return asked("read the judged loads", [&] {
        return loadRows(database,
                        "WHERE l.machine = ? AND l.programme = ? AND l.judged IS NOT NULL ORDER BY l.sequence", machine,
                        programme);
    });
}

Result<std::vector<LoadRow>> loadsOfPrint(const Database& database, const std::string& print) {
    return asked("read the loads of a print", [&] {
        return loadRows(database, "JOIN load_prints p ON p.load = l.id WHERE p.print = ? ORDER BY l.sequence", print);
    });
}

Result<std::int64_t> nextLoad(const Database& database) {
    return asked("look for the next number", [&] {
        auto query = prepared(database, "SELECT coalesce(max(number), 0) + 1 FROM loads");
        return query.executeStep() ? query.getColumn(0).getInt64() : 1;
    });
}

} // namespace holdfast::kiosk::records
