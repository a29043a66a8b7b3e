#include "kiosk/records/floor_projection.hpp"

#include "kiosk/records/statement.hpp"
#include "kiosk/records/words.hpp"

#include <optional>
#include <stdexcept>

namespace holdfast::kiosk::records::projecting {
namespace {

using analytics::AuthoredTemperature;
using ledger::Entry;
using SQLite::Database;

std::optional<double> valueOf(const std::optional<AuthoredTemperature>& t) {
    return t ? std::optional{t->value} : std::nullopt;
}
std::optional<std::string> unitOf(const std::optional<AuthoredTemperature>& t) {
    return t ? std::optional{std::string{toWord(t->unit)}} : std::nullopt;
}

/// A new description starts another episode and says belt and set point anew only where it differs from the one
/// before: a new name does not turn a belt.
void noteDryer(Database& db, const Entry& entry, const DryerDescribed& dryer) {
    execute(db,
            "INSERT INTO dryer_states VALUES (?1, ?2, ?3, ?4, ?2, ?3, ?4, 0, ?5) ON CONFLICT (dryer) DO UPDATE SET "
            "belt = iif(excluded.said_belt IS NOT said_belt, excluded.belt, belt), "
            "set_value = iif(excluded.said_value IS NOT said_value OR excluded.said_unit IS NOT said_unit, "
            "excluded.set_value, set_value), "
            "set_unit = iif(excluded.said_value IS NOT said_value OR excluded.said_unit IS NOT said_unit, "
            "excluded.set_unit, set_unit), "
            "since_ms = iif(excluded.said_belt IS NOT said_belt OR excluded.said_value IS NOT said_value "
            "OR excluded.said_unit IS NOT said_unit, excluded.since_ms, since_ms), "
            "said_belt = excluded.said_belt, said_value = excluded.said_value, said_unit = excluded.said_unit",
            dryer.dryer, dryer.beltMetresPerMinute, valueOf(dryer.setPoint), unitOf(dryer.setPoint),
            entry.wallMilliseconds);
}

bool turnsBelt(FloorAction action) {
    return action == FloorAction::beltSlower || action == FloorAction::beltFaster;
}
bool turnsHeat(FloorAction action) {
    return action == FloorAction::hotter || action == FloorAction::cooler;
}

/// What was turned without a figure is unknown from then on. A dryer that was never described has no state.
void turnDryer(Database& db, const Entry& entry, const ActionTaken& action) {
    const bool stops = action.action == FloorAction::feedStopped;
    const bool starts = action.action == FloorAction::started;
    if (action.beltMetresPerMinute || turnsBelt(action.action)) {
        execute(db,
                "UPDATE dryer_states SET belt = ?2, since_ms = iif(belt IS ?2 AND NOT ?4, since_ms, ?3) "
                "WHERE dryer = ?1",
                action.dryer, action.beltMetresPerMinute, entry.wallMilliseconds, turnsBelt(action.action));
    }
    if (action.setPoint || turnsHeat(action.action)) {
        execute(db,
                "UPDATE dryer_states SET set_value = ?2, set_unit = ?3, "
                "since_ms = iif(set_value IS ?2 AND set_unit IS ?3 AND NOT ?5, since_ms, ?4) WHERE dryer = ?1",
                action.dryer, valueOf(action.setPoint), unitOf(action.setPoint), entry.wallMilliseconds,
                turnsHeat(action.action));
    }
    if (stops || starts) {
        execute(db, "UPDATE dryer_states SET stopped = ?2, since_ms = ?3 WHERE dryer = ?1", action.dryer, stops,
                entry.wallMilliseconds);
    }
}

void noteStrip(Database& db, const std::string& reading, const Evidence& evidence) {
    const auto* strip = std::get_if<StripSeen>(&evidence);
    if (strip != nullptr && strip->number) {
        execute(db, "INSERT INTO strips_used VALUES (?, ?)", reading, *strip->number);
    }
}

} // namespace

bool found(Database& db, const char* sql, const std::string& value) {
    return prepared(db, sql, value).executeStep();
}

void refuse(const Entry& entry, const std::string& why) {
    throw std::runtime_error(entry.kind + ": " + why);
}

void requireUnfinished(Database& db, const Entry& entry, const std::string& run) {
    if (found(db, "SELECT 1 FROM finished_runs WHERE run = ?", run)) {
        refuse(entry, "the run is finished");
    }
}

void apply(Database& db, const Entry& entry, const ActionTaken& action) {
    if (action.answers && !found(db, "SELECT 1 FROM readings WHERE id = ?", *action.answers)) {
        refuse(entry, "it answers no reading");
    }
    execute(db, "INSERT INTO actions VALUES (?, ?, ?, ?, ?)", entry.sequence, action.dryer, entry.wallMilliseconds,
            action.answers, entry.body);
    turnDryer(db, entry, action);
}

void strike(Database& db, const Entry& entry, const ReadingStruck& struck) {
    if (!found(db, "SELECT 1 FROM readings WHERE id = ?", struck.reading)) {
        refuse(entry, "no such reading");
    }
    if (found(db, "SELECT 1 FROM struck WHERE reading = ?", struck.reading)) {
        refuse(entry, "the reading is struck already");
    }
    execute(db, "INSERT INTO struck VALUES (?, ?, ?)", struck.reading, toWord(struck.cause), entry.wallMilliseconds);
}

void apply(Database& db, const Entry& entry, const FlashNoted& flash) {
    auto layer = prepared(db, "SELECT 1 FROM layers WHERE run = ? AND position = ?", flash.run, flash.position);
    if (!layer.executeStep()) {
        refuse(entry, "no such run with such a layer");
    }
    execute(db, "INSERT INTO flashes VALUES (?, ?, ?, ?)", entry.sequence, flash.run, entry.wallMilliseconds,
            entry.body);
}

void apply(Database& db, const Entry& entry, const RunFinished& finished) {
    if (!found(db, "SELECT 1 FROM runs WHERE id = ?", finished.run)) {
        refuse(entry, "no such run");
    }
    requireUnfinished(db, entry, finished.run);
    execute(db, "INSERT INTO finished_runs VALUES (?, ?, ?)", finished.run, entry.wallMilliseconds, entry.body);
}

void apply(Database& db, const Entry& entry, const PersonChanged& person) {
    const PersonAdded asAdded{person.number, person.badge, person.roles};
    auto update = prepared(db, "UPDATE crew_people SET gone = ?, body = ? WHERE number = ?", person.left,
                           bodyOf(Record{asAdded}), person.number);
    if (update.exec() != 1) {
        refuse(entry, "no such person");
    }
}

void apply(Database& db, const Entry& entry, const PinSet& pin) {
    auto update = prepared(db, "UPDATE crew_people SET pin = ? WHERE number = ?", pin.hash, pin.number);
    if (update.exec() != 1) {
        refuse(entry, "no such person");
    }
}

void applyBeside(Database& db, const Entry& entry, const Record& record) {
    if (const auto* taken = std::get_if<ReadingTaken>(&record)) {
        noteStrip(db, entry.id, taken->evidence);
    } else if (const auto* refused = std::get_if<ReadingRefused>(&record)) {
        noteStrip(db, entry.id, refused->evidence);
    } else if (const auto* correction = std::get_if<CorrectionMade>(&record)) {
        execute(db, "DELETE FROM strips_used WHERE reading = ?", correction->corrects);
        noteStrip(db, correction->corrects, correction->reading.evidence);
    } else if (const auto* dryer = std::get_if<DryerDescribed>(&record)) {
        noteDryer(db, entry, *dryer);
    }
}

} // namespace holdfast::kiosk::records::projecting
