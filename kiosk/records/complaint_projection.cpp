#include "kiosk/records/floor_projection.hpp"
#include "kiosk/records/statement.hpp"

namespace holdfast::kiosk::records::projecting {
namespace {

using ledger::Entry;
using SQLite::Database;

void requireTied(Database& db, const Entry& entry, const ComplaintTaken& taken) {
    if (taken.run && !found(db, "SELECT 1 FROM runs WHERE id = ?", *taken.run)) {
        refuse(entry, "no such run");
    }
    auto lot = prepared(db, "SELECT 1 FROM lots WHERE id = ? AND run = ?", taken.lot, taken.run);
    if (taken.lot && !lot.executeStep()) {
        refuse(entry, "no such lot of the run");
    }
}

std::optional<std::string> orNothing(const std::string& id) {
    return id.empty() ? std::nullopt : std::optional{id};
}

} // namespace

void apply(Database& db, const Entry& entry, const ComplaintTaken& taken) {
    requireTied(db, entry, taken);
    auto sameNumber =
        prepared(db, "SELECT 1 FROM complaints WHERE number = ? AND id <> ?", taken.number, taken.complaint);
    if (sameNumber.executeStep()) {
        refuse(entry, "another complaint has the number");
    }
    auto before = prepared(db, "SELECT 1 FROM complaints WHERE id = ? AND number <> ?", taken.complaint, taken.number);
    if (before.executeStep()) {
        refuse(entry, "the complaint has another number");
    }
    execute(db,
            "INSERT INTO complaints VALUES (?, ?, ?, ?, ?, ?, 1, NULL, ?) ON CONFLICT (id) DO UPDATE SET "
            "run = excluded.run, lot = excluded.lot, versions = versions + 1, body = excluded.body",
            taken.complaint, taken.number, entry.sequence, entry.wallMilliseconds, taken.run, taken.lot, entry.body);
}

void apply(Database& db, const Entry& entry, const FindingSigned& finding) {
    if (!finding.lot.empty()) {
        requireLot(db, entry, finding.lot);
    }
    if (!finding.complaint.empty()) {
        auto update = prepared(db, "UPDATE complaints SET finding = ?2 WHERE id = ?1", finding.complaint, entry.body);
        if (update.exec() != 1) {
            refuse(entry, "no such complaint");
        }
    }
    execute(db, "INSERT INTO findings VALUES (?, ?, ?, ?)", entry.sequence, orNothing(finding.complaint),
            orNothing(finding.lot), entry.body);
}

} // namespace holdfast::kiosk::records::projecting
