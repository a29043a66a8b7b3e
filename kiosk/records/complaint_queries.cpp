#include "kiosk/records/complaint_versions.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/stored_body.hpp"

namespace holdfast::kiosk::records {
namespace {

using ledger::Result;
using SQLite::Database;

template <class... Values>
std::vector<ComplaintRow> complaintRows(const Database& database, const char* where, const Values&... values) {
    std::vector<ComplaintRow> rows;
    auto query = prepared(
        database, joined({"SELECT taken_ms, body, versions, finding FROM complaints ", where}).c_str(), values...);
    while (query.executeStep()) {
        ComplaintRow row;
        row.takenAt = query.getColumn(0).getInt64();
        row.taken = storedBody<ComplaintTaken>(query.getColumn(1).getString());
        row.versions = query.getColumn(2).getInt();
        if (const auto finding = textAt(query, 3)) {
            row.finding = storedBody<FindingSigned>(*finding);
        }
        rows.push_back(std::move(row));
    }
    return rows;
}

} // namespace

Result<std::vector<ComplaintRow>> complaints(const Database& database, bool closedToo) {
    return asked("read the complaints", [&] {
        return complaintRows(database,
                             closedToo ? "ORDER BY sequence DESC" : "WHERE finding IS NULL ORDER BY sequence DESC");
    });
}

Result<std::optional<ComplaintRow>> complaintById(const Database& database, const std::string& complaint) {
    return asked("look up a complaint", [&]() -> std::optional<ComplaintRow> {
        auto rows = complaintRows(database, "WHERE id = ?", complaint);
        return rows.empty() ? std::nullopt : std::optional{std::move(rows.front())};
    });
}

Result<std::vector<ComplaintRow>> complaintsOfRun(const Database& database, const std::string& run) {
    return asked("read the complaints of a run",
                 [&] { return complaintRows(database, "WHERE run = ? ORDER BY sequence DESC", run); });
}

Result<std::vector<FindingSigned>> findingsOfLot(const Database& database, const std::string& lot) {
    return asked("read the findings of a lot", [&] {
        return bodies<FindingSigned>(database,
                                     "SELECT body FROM findings WHERE lot = ?1 OR complaint IN "
                                     "(SELECT id FROM complaints WHERE lot = ?1) ORDER BY sequence",
                                     lot);
    });
}

Result<std::vector<ComplaintVersion>> versionsOfComplaint(const Database& database, const std::string& complaint) {
    return asked("read the versions of a complaint", [&] {
        std::vector<ComplaintVersion> all;
        // From its first entry on, and no further than to its last: entries have no index by kind.
        auto query = prepared(database,
                              "SELECT e.wall_ms, e.utc_offset_min, e.person, e.body FROM complaints c JOIN entries e "
                              "ON e.sequence >= c.sequence WHERE c.id = ?1 AND e.kind = ?2 "
                              "AND json_extract(e.body, '$.complaint') = ?1 ORDER BY e.sequence "
                              "LIMIT (SELECT versions FROM complaints WHERE id = ?1)",
                              complaint, std::string{rowOf(Record{ComplaintTaken{}}).kind});
        while (query.executeStep()) {
            all.push_back({query.getColumn(0).getInt64(), query.getColumn(1).getInt(), query.getColumn(2).getInt64(),
                           storedBody<ComplaintTaken>(query.getColumn(3).getString())});
        }
        return all;
    });
}

Result<std::int64_t> nextComplaint(const Database& database) {
    return asked("look for the next number", [&] {
        auto query = prepared(database, "SELECT coalesce(max(number), 0) + 1 FROM complaints");
        return query.executeStep() ? query.getColumn(0).getInt64() : 1;
    });
}

} // namespace holdfast::kiosk::records
