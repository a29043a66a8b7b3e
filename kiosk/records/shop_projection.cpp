#include "kiosk/records/shop_projection.hpp"

#include "kiosk/records/apply_record.hpp"
#include "kiosk/records/floor_projection.hpp"
#include "kiosk/records/json_object.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/statement.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/words.hpp"

#include <algorithm>
#include <utility>
#include <variant>
#include <vector>

namespace holdfast::kiosk::records {
namespace {

using ledger::Entry;
using projecting::apply;
using projecting::recomputeLot;
using projecting::refuse;

void apply(SQLite::Database& db, const Entry& entry, const BookOpened&) {
    execute(db, "INSERT INTO shop VALUES (1, ?) ON CONFLICT (id) DO UPDATE SET body = excluded.body", entry.body);
}

void apply(SQLite::Database& db, const Entry& entry, const PersonAdded& person) {
    execute(db, "INSERT INTO crew_people (number, body) VALUES (?, ?)", person.number, entry.body);
}

void apply(SQLite::Database& db, const Entry& entry, const CrewChanged&) {
    execute(db, "INSERT INTO crew VALUES (?, ?, ?)", entry.sequence, entry.wallMilliseconds, entry.body);
}

void apply(SQLite::Database& db, const Entry& entry, const DryerDescribed& dryer) {
    execute(db,
            "INSERT INTO dryers VALUES (?, ?, ?, ?) ON CONFLICT (id) DO UPDATE SET name = excluded.name, "
            "withdrawn = excluded.withdrawn, body = excluded.body",
            dryer.dryer, dryer.name, dryer.withdrawn, entry.body);
}

void apply(SQLite::Database& db, const Entry& entry, const SettingChanged& setting) {
    execute(db, "INSERT INTO settings VALUES (?, ?) ON CONFLICT (key) DO UPDATE SET body = excluded.body", setting.key,
            entry.body);
}

void apply(SQLite::Database& db, const Entry& entry, const FamilyRecord& family) {
    execute(db, "INSERT INTO families VALUES (?, ?, ?, ?)", family.name, family.revision, entry.sequence, entry.body);
}

void apply(SQLite::Database& db, const Entry& entry, const FabricRecord& fabric) {
    execute(db, "INSERT INTO fabrics VALUES (?, ?, ?, ?)", fabric.name, fabric.revision, entry.sequence, entry.body);
}

void apply(SQLite::Database& db, const Entry& entry, const InstrumentDescribed& one) {
    execute(db,
            "INSERT INTO instruments VALUES (?, ?, ?, ?, ?, ?) ON CONFLICT (id) DO UPDATE SET name = excluded.name, "
            "number = excluded.number, kind = excluded.kind, withdrawn = excluded.withdrawn, body = excluded.body",
            one.instrument, one.spec.name, one.number, toWord(one.spec.kind), one.withdrawn, entry.body);
}

void apply(SQLite::Database& db, const Entry& entry, const CertificateAdded& added) {
    execute(db, "INSERT INTO certificates VALUES (?, ?, ?, ?)", entry.sequence, added.instrument,
            toText(added.certificate.due), entry.body);
}

void apply(SQLite::Database& db, const Entry& entry, const CheckDone& done) {
    execute(db, "INSERT INTO checks VALUES (?, ?, ?, ?, ?)", entry.sequence, done.instrument, toText(done.check.due),
            done.check.passed, entry.body);
}

void writeLayers(SQLite::Database& db, const RunPlanned& plan) {
    execute(db, "DELETE FROM layers WHERE run = ?", plan.run);
    int position = 0;
    for (const auto& layer : plan.layers) {
        execute(db, "INSERT INTO layers VALUES (?, ?, ?, ?)", plan.run, ++position, layer.colour, layer.ink);
    }
}

/// The lot's layers are printed from the plan's buckets, and from those of every plan made while it is open.
void pour(SQLite::Database& db, const std::string& lot, const RunPlanned& plan) {
    for (const auto& layer : plan.layers) {
        for (const auto bucket : layer.buckets) {
            execute(db, "INSERT OR IGNORE INTO lot_buckets VALUES (?, ?)", lot, bucket);
        }
    }
}

void apply(SQLite::Database& db, const Entry& entry, const RunPlanned& plan) {
    execute(db, "INSERT INTO runs VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?)", plan.run, toWord(plan.kind), plan.number,
            plan.title, plan.fabric, plan.customer, plan.reference, plan.childrensWear, entry.wallMilliseconds,
            entry.body);
    writeLayers(db, plan);
}

void apply(SQLite::Database& db, const Entry& entry, const RunReplanned& again) {
    projecting::requireUnfinished(db, entry, again.plan.run);
    auto update =
        prepared(db,
                 "UPDATE runs SET kind = ?, number = ?, title = ?, fabric = ?, customer = ?, reference = ?, "
                 "childrens_wear = ?, planned_ms = ?, body = ? WHERE id = ?",
                 toWord(again.plan.kind), again.plan.number, again.plan.title, again.plan.fabric, again.plan.customer,
                 again.plan.reference, again.plan.childrensWear, entry.wallMilliseconds, entry.body, again.plan.run);
    if (update.exec() != 1) {
        refuse(entry, "no such run");
    }
    writeLayers(db, again.plan);
    std::vector<std::pair<std::string, bool>> lots;
    auto query = prepared(db, "SELECT id, closed FROM lots WHERE run = ? ORDER BY number", again.plan.run);
    while (query.executeStep()) {
        lots.emplace_back(query.getColumn(0).getString(), query.getColumn(1).getInt() != 0);
    }
    for (const auto& [lot, closed] : lots) {
        if (!closed) {
            pour(db, lot, again.plan);
        }
        recomputeLot(db, entry, lot); // children's wear is judged more strictly
    }
}

/// A finished run takes a new lot only for pieces of one that is to be decided: they go through the dryer again.
void requireOpenFor(SQLite::Database& db, const Entry& entry, const LotOpened& lot) {
    if (!projecting::found(db, "SELECT 1 FROM lots WHERE run = ? AND state IN ('on-hold', 'unproven')", lot.run)) {
        projecting::requireUnfinished(db, entry, lot.run);
    }
}

void apply(SQLite::Database& db, const Entry& entry, const LotOpened& lot) {
    requireOpenFor(db, entry, lot);
    execute(db,
            "INSERT INTO lots (id, run, number, dryer, opened_ms, closed, first_piece, state, ever_held, body) "
            "VALUES (?, ?, ?, ?, ?, 0, ?, ?, 0, ?)",
            lot.lot, lot.run, lot.number, lot.dryer, entry.wallMilliseconds, lot.firstPiece,
            toWord(LotState::settingUp), entry.body);
    auto plan = prepared(db, "SELECT body FROM runs WHERE id = ?", lot.run);
    if (plan.executeStep()) {
        pour(db, lot.lot, storedBody<RunPlanned>(plan.getColumn(0).getString()));
    }
}

void apply(SQLite::Database& db, const Entry& entry, const LotClosed& lot) {
    auto update =
        prepared(db, "UPDATE lots SET closed = 1, last_piece = ? WHERE id = ? AND closed = 0", lot.lastPiece, lot.lot);
    if (update.exec() != 1) {
        refuse(entry, "no such lot that is open");
    }
    recomputeLot(db, entry, lot.lot);
}

std::string traceOf(const Evidence& evidence) {
    const auto* trace = std::get_if<TraceSeen>(&evidence);
    return trace != nullptr ? trace->sha256 : std::string{};
}

std::optional<double> celsius(const std::optional<analytics::TemperatureDifference>& d) {
    return d ? std::optional{d->celsius()} : std::nullopt;
}

/// Columns that a correction may change; ?1 to ?14 in this order.
ledger::KeptStatement readingColumns(SQLite::Database& db, const char* sql, const Entry& entry, const ReadingTaken& r) {
    const auto margin = r.verdict && r.verdict->margin ? *r.verdict->margin : analytics::MarginRange{};
    const auto word = r.verdict ? std::optional{std::string{toWord(r.verdict->word)}} : std::nullopt;
    return prepared(db, sql, entry.sequence, r.run, r.lot, r.dryer, r.instrument, toWord(r.position), toWord(r.reason),
                    word, !r.verdict || r.verdict->couldProve, celsius(margin.low), celsius(margin.high), r.retakeOf,
                    traceOf(r.evidence), r.piece);
}

void apply(SQLite::Database& db, const Entry& entry, const ReadingTaken& reading) {
    auto insert = readingColumns(
        db,
        "INSERT INTO readings (id, first, sequence, run, lot, dryer, instrument, taken_ms, utc_offset, refused, "
        "corrected, position, reason, word, could_prove, margin_low_c, margin_high_c, retake_of, trace, piece) "
        "VALUES (?15, ?1, ?1, ?2, ?3, ?4, ?5, ?16, ?17, 0, 0, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14)",
        entry, reading);
    insert.bind(15, entry.id);
    insert.bind(16, entry.wallMilliseconds);
    insert.bind(17, entry.utcOffsetMinutes);
    insert.exec();
    if (reading.lot) {
        recomputeLot(db, entry, *reading.lot);
    }
}

void apply(SQLite::Database& db, const Entry& entry, const ReadingRefused& refused) {
    execute(db,
            "INSERT INTO readings (id, first, sequence, run, lot, dryer, instrument, taken_ms, utc_offset, refused, "
            "corrected, position, reason, word, could_prove, trace) "
            "VALUES (?1, ?2, ?2, ?3, ?4, ?5, ?6, ?7, ?8, 1, 0, ?9, ?10, ?11, 0, ?12)",
            entry.id, entry.sequence, refused.run, refused.lot, refused.dryer, refused.instrument,
            entry.wallMilliseconds, entry.utcOffsetMinutes, toWord(refused.position), toWord(ReadingReason::drawn),
            toWord(analytics::Word::refused), traceOf(refused.evidence));
}

void apply(SQLite::Database& db, const Entry& entry, const CorrectionMade& correction) {
    auto before = prepared(db, "SELECT lot FROM readings WHERE id = ?", correction.corrects);
    if (!before.executeStep()) {
        refuse(entry, "no such reading");
    }
    const auto lotBefore = textAt(before, 0);
    auto update = readingColumns(
        db,
        "UPDATE readings SET sequence = ?1, run = ?2, lot = ?3, dryer = ?4, instrument = ?5, corrected = 1, "
        "refused = (?8 IS 'refused'), position = ?6, reason = ?7, word = ?8, could_prove = ?9, margin_low_c = ?10, "
        "margin_high_c = ?11, retake_of = ?12, trace = ?13, piece = ?14, by_check = ?16 WHERE id = ?15",
        entry, correction.reading);
    update.bind(15, correction.corrects);
    if (!correction.check.empty()) {
        update.bind(16, correction.check);
    }
    update.exec();
    execute(db, "INSERT INTO reading_versions VALUES (?, ?)", entry.sequence, correction.corrects);
    if (lotBefore) {
        recomputeLot(db, entry, *lotBefore);
    }
    if (correction.reading.lot && correction.reading.lot != lotBefore) {
        recomputeLot(db, entry, *correction.reading.lot);
    }
    projecting::recomputeHeldBy(db, entry, correction.corrects);
}

void apply(SQLite::Database& db, const Entry& entry, const ReadingStruck& struck) {
    projecting::strike(db, entry, struck);
    auto reading = prepared(db, "SELECT lot FROM readings WHERE id = ?", struck.reading);
    if (const auto lot = reading.executeStep() ? textAt(reading, 0) : std::nullopt) {
        recomputeLot(db, entry, *lot);
    }
    projecting::recomputeHeldBy(db, entry, struck.reading);
}

} // namespace

void noteKind(SQLite::Database& database, const Entry& entry) {
    execute(database, "INSERT OR IGNORE INTO kinds_seen VALUES (?, ?)", entry.kind, entry.version);
}

void applyRecord(SQLite::Database& database, const Entry& entry, const Record& record) {
    std::visit([&](const auto& one) { records::apply(database, entry, one); }, record);
    projecting::applyBeside(database, entry, record);
}

void ShopProjection::apply(SQLite::Database& database, const ledger::Entry& entry) const {
    noteKind(database, entry);
    const auto rows = kinds();
    const auto row = std::find_if(rows.begin(), rows.end(), [&](const KindRow& one) { return one.kind == entry.kind; });
    if (row == rows.end() || entry.version > row->version) {
        return; // of a later program: unknownKinds() makes the book read-only
    }
    const auto record = readRecord(entry.kind, entry.version, entry.body);
    if (!record) {
        refuse(entry, failureFrom(record.error()).what);
    }
    if (entry.version == row->version) {
        applyRecord(database, entry, *record);
        return;
    }
    Entry lifted = entry; // read tables hold bodies of the newest version only
    lifted.body = bodyOf(*record);
    applyRecord(database, lifted, *record);
}

} // namespace holdfast::kiosk::records
