#include "kiosk/records/floor_projection.hpp"
#include "kiosk/records/lot_state.hpp"
#include "kiosk/records/statement.hpp"
#include "kiosk/records/words.hpp"

#include <set>

// A lot's state from everything known of it.
namespace holdfast::kiosk::records::projecting {
namespace {

using ledger::Entry;
using SQLite::Database;

/// A hold is lifted while what caused it no longer says so: its reading was struck or judged again, its test put right
/// or its wash load found void. What was no cause when the hold was placed lifts nothing.
void liftHolds(Database& db, const std::string& lot) {
    execute(db,
            "UPDATE holds SET lifted = NOT lifted WHERE lot = ?1 AND decision IS NULL AND lifted <> CASE cause "
            "WHEN 'reading' THEN EXISTS (SELECT 1 FROM readings r WHERE r.id = holds.because AND "
            "(EXISTS (SELECT 1 FROM struck WHERE reading = r.id) "
            "OR (r.corrected AND coalesce(r.word, '') NOT IN ('under-cured', 'overheated')))) "
            "WHEN 'test' THEN EXISTS (SELECT 1 FROM test_versions v JOIN tests t ON t.id = v.test "
            "LEFT JOIN loads l ON l.id = t.load WHERE v.entry = holds.because AND "
            "((t.versions > 1 AND t.outcome <> 'failed') OR l.word <> 'valid')) ELSE 0 END",
            lot);
}

/// A bad one is answered: a hold of its lot stands or stood for it, or a decision came after it that left no hold open.
constexpr const char* kReadings =
    "SELECT r.id, r.word, r.refused, r.could_prove, r.reason, r.retake_of, "
    "EXISTS (SELECT 1 FROM struck WHERE reading = r.id), "
    "r.word IN ('under-cured', 'overheated') AND ("
    "EXISTS (SELECT 1 FROM holds h WHERE h.because = r.id AND h.lot = r.lot) "
    "OR EXISTS (SELECT 1 FROM holds h WHERE h.because = r.by_check AND h.lot = r.lot) "
    "OR EXISTS (SELECT 1 FROM decisions d WHERE d.lot = r.lot AND d.corrected = 0 AND d.settles "
    "AND d.since > r.sequence)) FROM readings r WHERE r.lot = ? ORDER BY r.first";

std::vector<ReadingOfLot> readingsOf(Database& db, const std::string& lot) {
    std::vector<ReadingOfLot> readings;
    auto query = prepared(db, kReadings, lot);
    while (query.executeStep()) {
        ReadingOfLot reading;
        reading.id = query.getColumn(0).getString();
        reading.word = fromWord<analytics::Word>(textAt(query, 1).value_or("refused")).value_or(reading.word);
        reading.refused = query.getColumn(2).getInt() != 0;
        reading.couldProve = query.getColumn(3).getInt() != 0;
        const auto reason = query.getColumn(4).getString();
        reading.setUp = reason == toWord(ReadingReason::setUp);
        reading.study = reason == toWord(ReadingReason::study);
        reading.retakeOf = textAt(query, 5).value_or("");
        reading.struck = query.getColumn(6).getInt() != 0;
        reading.isAnswered = query.getColumn(7).getInt() != 0;
        readings.push_back(std::move(reading));
    }
    return readings;
}

/// A failed test without a hold of its own. In a load that nobody judged yet it holds as well: until its witnesses are
/// seen, nobody can say that the wash was at fault.
constexpr const char* kFailedTests =
    "SELECT count(*) FROM tests t LEFT JOIN loads l ON l.id = t.load WHERE t.lot = ?1 AND t.outcome = 'failed' "
    "AND coalesce(l.word, 'valid') = 'valid' AND NOT EXISTS (SELECT 1 FROM test_versions v JOIN holds h "
    "ON h.because = v.entry WHERE v.test = t.id AND h.lot = ?1) AND NOT EXISTS (SELECT 1 FROM decisions d "
    "WHERE d.lot = ?1 AND d.corrected = 0 AND d.settles AND d.since > t.sequence)";

/// Decisions about a part of the lot say nothing of the rest when that part was scrapped.
constexpr const char* kDecision =
    "SELECT word FROM decisions WHERE lot = ?1 AND corrected = 0 AND word <> 'recalled' "
    "AND (word <> 'scrapped' OR whole) ORDER BY word = 'scrapped' DESC, since DESC LIMIT 1";

/// All that a lot's state follows from but its readings, and the state as it was, in one question: it is asked after
/// every entry about a lot.
const std::string& lotSql() {
    static const std::string sql =
        joined({"SELECT lots.closed, runs.childrens_wear, lots.state, (SELECT count(*) FROM missed WHERE lot = ?1), "
                "(SELECT count(*) FROM holds WHERE lot = ?1 AND decision IS NULL AND lifted = 0), (",
                kFailedTests, "), (", kDecision, ") FROM lots JOIN runs ON runs.id = lots.run WHERE lots.id = ?1"});
    return sql;
}

std::optional<analytics::LotDecision> decisionOf(const std::optional<std::string>& decided) {
    const auto word = decided ? fromWord<DecisionWord>(*decided) : std::nullopt;
    if (!word || *word == DecisionWord::recalled) {
        return std::nullopt;
    }
    return *word == DecisionWord::released ? analytics::LotDecision::released
           : *word == DecisionWord::reRun  ? analytics::LotDecision::reRun
                                           : analytics::LotDecision::scrapped;
}

} // namespace

void recomputeLot(Database& db, const Entry& entry, const std::string& lot) {
    liftHolds(db, lot);
    LotOnFile all;
    all.readings = readingsOf(db, lot);
    auto query = prepared(db, lotSql().c_str(), lot);
    if (!query.executeStep()) {
        return;
    }
    all.closed = query.getColumn(0).getInt() != 0;
    all.childrensWear = query.getColumn(1).getInt() != 0;
    const auto before = query.getColumn(2).getString();
    all.missed = query.getColumn(3).getInt();
    all.undecidedCauses = query.getColumn(4).getInt() + query.getColumn(5).getInt();
    all.decision = decisionOf(textAt(query, 6));
    const auto state = toWord(lotState(all));
    if (state == before) {
        return; // writing the same word again would still take two pages into the log
    }
    query.reset(); // the row is about to be changed
    execute(db,
            "UPDATE lots SET state = ?2, held_ms = iif(?2 = 'on-hold', ?3, NULL), "
            "ever_held = ever_held OR ?2 = 'on-hold' WHERE id = ?1",
            lot, state, entry.wallMilliseconds);
}

void recomputeHeldBy(Database& db, const Entry& entry, const std::string& because) {
    std::set<std::string> lots;
    auto query = prepared(db, "SELECT lot FROM holds WHERE because = ?", because);
    while (query.executeStep()) {
        lots.insert(query.getColumn(0).getString());
    }
    for (const auto& lot : lots) {
        recomputeLot(db, entry, lot);
    }
}

void requireLot(Database& db, const Entry& entry, const std::string& lot) {
    if (!found(db, "SELECT 1 FROM lots WHERE id = ?", lot)) {
        refuse(entry, "no such lot");
    }
}

bool isScrapped(Database& db, const std::string& lot) {
    return found(db, "SELECT 1 FROM lots WHERE id = ? AND state = 'scrapped'", lot);
}

} // namespace holdfast::kiosk::records::projecting
