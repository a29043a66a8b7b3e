#include "kiosk/records/floor_projection.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/words.hpp"

#include <algorithm>

namespace holdfast::kiosk::records::projecting {
namespace {

using ledger::Entry;
using SQLite::Database;

struct HoldStanding final {
    HoldPlaced placed{};
    std::optional<std::string> decision{};
};

std::optional<HoldStanding> holdStanding(Database& db, const std::string& hold) {
    auto query = prepared(db, "SELECT body, decision FROM holds WHERE id = ?", hold);
    if (!query.executeStep()) {
        return std::nullopt;
    }
    return HoldStanding{storedBody<HoldPlaced>(query.getColumn(0).getString()), textAt(query, 1)};
}

/// What a corrected decision had ended is undecided again; gives the sequence that the new one counts from.
std::int64_t takeBack(Database& db, const Entry& entry, const DecisionSigned& decision) {
    if (!decision.corrects) {
        return entry.sequence;
    }
    auto before = prepared(db, "SELECT since FROM decisions WHERE id = ? AND lot = ? AND corrected = 0",
                           *decision.corrects, decision.lot);
    if (!before.executeStep()) {
        refuse(entry, "it corrects no decision about the lot that stands");
    }
    const auto since = before.getColumn(0).getInt64();
    before.reset();
    execute(db, "UPDATE decisions SET corrected = 1 WHERE id = ?", *decision.corrects);
    execute(db, "UPDATE holds SET decision = NULL WHERE decision = ?", *decision.corrects);
    return since;
}

void requireDecidable(Database& db, const Entry& entry, const DecisionSigned& decision) {
    if (found(db, "SELECT 1 FROM decisions WHERE id = ?", decision.decision)) {
        refuse(entry, "the decision was signed already");
    }
    if (!isScrapped(db, decision.lot) || decision.word == DecisionWord::recalled) {
        return;
    }
    const bool sameInOtherWords =
        decision.word == DecisionWord::scrapped && decision.corrects &&
        found(db, "SELECT 1 FROM decisions WHERE id = ? AND word = 'scrapped' AND whole", *decision.corrects);
    if (!sameInOtherWords) {
        refuse(entry, "the lot was scrapped");
    }
}

constexpr const char* kOpenHolds = "SELECT 1 FROM holds WHERE lot = ? AND decision IS NULL AND lifted = 0";

/// The holds as they are when the decision names them.
std::vector<HoldPlaced> namedHolds(Database& db, const Entry& entry, const DecisionSigned& decision) {
    std::vector<HoldPlaced> named;
    for (const auto& hold : decision.holds) {
        auto standing = holdStanding(db, hold);
        if (!standing || standing->placed.lot != decision.lot) {
            refuse(entry, "no such hold of the lot: " + hold);
        }
        if (standing->decision) {
            refuse(entry, "the hold is decided: " + hold);
        }
        named.push_back(std::move(standing->placed));
    }
    if (named.empty() && decision.word != DecisionWord::recalled && found(db, kOpenHolds, decision.lot)) {
        refuse(entry, "the lot has holds that it does not name");
    }
    return named;
}

/// The brackets leave no piece of the lot out. Of a lot that goes on only an open end covers the rest.
bool coverTheLot(Database& db, const std::string& lot, std::vector<HoldPlaced> holds) {
    if (holds.empty() || std::any_of(holds.begin(), holds.end(), [](const auto& hold) { return !hold.pieces; })) {
        return true;
    }
    auto query =
        prepared(db, "SELECT coalesce(first_piece, 1), iif(closed, last_piece, NULL) FROM lots WHERE id = ?", lot);
    if (!query.executeStep()) {
        return false;
    }
    int next = query.getColumn(0).getInt();
    const auto last = query.getColumn(1).isNull() ? std::nullopt : std::optional{query.getColumn(1).getInt()};
    std::sort(holds.begin(), holds.end(),
              [](const auto& one, const auto& other) { return one.pieces->first < other.pieces->first; });
    for (const auto& hold : holds) {
        if (hold.pieces->first > next) {
            return false;
        }
        if (!hold.pieces->last || (last && *hold.pieces->last >= *last)) {
            return true;
        }
        next = std::max(next, *hold.pieces->last + 1);
    }
    return last && next > *last;
}

void correctMove(Database& db, const Entry& entry, const PiecesMoved& moved) {
    auto update = prepared(db, "UPDATE moves SET corrected = 1 WHERE entry = ? AND lot = ? AND corrected = 0",
                           *moved.corrects, moved.lot);
    if (update.exec() != 1) {
        refuse(entry, "it corrects no move of the lot that stands");
    }
}

} // namespace

void apply(Database& db, const Entry& entry, const HoldPlaced& hold) {
    requireLot(db, entry, hold.lot);
    if (found(db, "SELECT 1 FROM holds WHERE id = ?", hold.hold)) {
        refuse(entry, "the hold stands already");
    }
    auto sameBin = prepared(db, "SELECT 1 FROM holds WHERE bin = ? AND bin > 0", hold.bin);
    if (sameBin.executeStep()) {
        refuse(entry, "another hold has the bin");
    }
    execute(db, "INSERT INTO holds VALUES (?, ?, ?, ?, ?, ?, ?, NULL, 0, ?)", hold.hold, entry.sequence, hold.lot,
            entry.wallMilliseconds, toWord(hold.cause), hold.because, hold.bin, entry.body);
    recomputeLot(db, entry, hold.lot);
}

void apply(Database& db, const Entry& entry, const HoldChanged& changed) {
    auto standing = holdStanding(db, changed.hold);
    if (!standing) {
        refuse(entry, "no such hold");
    }
    if (standing->decision) {
        refuse(entry, "the hold is decided");
    }
    auto& placed = standing->placed;
    placed.pieces = changed.pieces;
    placed.count = changed.count;
    placed.basis = changed.basis;
    execute(db, "UPDATE holds SET body = ?2 WHERE id = ?1", changed.hold, bodyOf(Record{placed}));
}

void apply(Database& db, const Entry& entry, const DecisionSigned& decision) {
    requireLot(db, entry, decision.lot);
    requireDecidable(db, entry, decision);
    const auto since = takeBack(db, entry, decision);
    const auto named = namedHolds(db, entry, decision);
    const bool ends = decision.word != DecisionWord::recalled;
    const bool whole = coverTheLot(db, decision.lot, named);
    execute(db, "INSERT INTO decisions VALUES (?, ?, ?, ?, ?, ?, ?, 0, ?, ?, 0, ?)", decision.decision, entry.id,
            entry.sequence, since, decision.lot, toWord(decision.word), whole, decision.reRunLot,
            entry.wallMilliseconds, entry.body);
    if (ends) {
        for (const auto& hold : named) {
            execute(db, "UPDATE holds SET decision = ?2 WHERE id = ?1", hold.hold, decision.decision);
        }
        if (!found(db, kOpenHolds, decision.lot)) {
            execute(db, "UPDATE decisions SET settles = 1 WHERE id = ?", decision.decision);
        }
    }
    recomputeLot(db, entry, decision.lot);
}

void apply(Database& db, const Entry& entry, const PiecesMoved& moved) {
    requireLot(db, entry, moved.lot);
    if (moved.corrects) {
        correctMove(db, entry, moved);
    }
    execute(db, "INSERT INTO moves VALUES (?, ?, ?, ?, ?, ?, 0, ?)", entry.sequence, entry.id, moved.lot,
            toWord(moved.to), moved.count, entry.wallMilliseconds, entry.body);
    for (const auto& carton : moved.cartons) {
        execute(db, "INSERT OR IGNORE INTO move_cartons VALUES (?, ?)", carton, entry.sequence);
    }
}

void apply(Database& db, const Entry& entry, const PiecesCounted& counted) {
    requireLot(db, entry, counted.lot);
    if (counted.corrects && !found(db, "SELECT 1 FROM counts WHERE entry = ?", *counted.corrects)) {
        refuse(entry, "it corrects no count");
    }
    execute(db, "INSERT INTO counts VALUES (?, ?, ?, ?, ?, ?, ?)", entry.sequence, entry.id, counted.lot,
            entry.wallMilliseconds, counted.made, counted.here, entry.body);
}

void apply(Database& db, const Entry& entry, const ShelfCounted& counted) {
    for (const auto& bin : counted.bins) {
        if (!found(db, "SELECT 1 FROM holds WHERE id = ?", bin.hold)) {
            refuse(entry, "no such hold: " + bin.hold);
        }
    }
    execute(db, "INSERT INTO shelf_counts VALUES (?, ?, ?, ?)", entry.sequence, entry.wallMilliseconds, entry.person,
            entry.body);
}

void apply(Database& db, const Entry& entry, const ReadingMissed& missed) {
    requireLot(db, entry, missed.lot);
    execute(db, "INSERT INTO missed VALUES (?, ?, ?, ?)", entry.sequence, missed.lot, entry.wallMilliseconds,
            entry.body);
    recomputeLot(db, entry, missed.lot);
}

} // namespace holdfast::kiosk::records::projecting
