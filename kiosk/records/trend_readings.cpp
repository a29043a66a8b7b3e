#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/trend_rows.hpp"

/// Readings of a stretch of time, those that were missed, and what they put on hold.
namespace holdfast::kiosk::records::trending {
namespace {

constexpr const char* kReadings =
    "SELECT id, taken_ms, dryer, instrument, run, lot, position, reason, word, could_prove, margin_low_c, "
    "margin_high_c, piece, retake_of, by_check FROM readings WHERE refused = 0 AND lot IS NOT NULL AND word IS NOT "
    "NULL "
    "AND id NOT IN (SELECT reading FROM struck) ORDER BY taken_ms, first";
constexpr const char* kHolds =
    "SELECT h.id, h.placed_ms, h.lot, h.cause, h.because, h.lifted, h.body, d.word, d.body FROM holds h "
    "LEFT JOIN decisions d ON d.id = h.decision ORDER BY h.sequence";

bool isStrip(const Gathering& all, FactIndex instrument) {
    return instrument != kNoFact &&
           all.facts.instruments[static_cast<std::size_t>(instrument)].kind == analytics::InstrumentKind::strip;
}

void gatherReadingRows(Gathering& all) {
    auto query = prepared(all.database, kReadings);
    while (query.executeStep()) {
        TrendReading reading;
        reading.lot = placeOf(all.lots, query.getColumn(5).getString());
        if (reading.lot == kNoFact) {
            continue;
        }
        reading.id = query.getColumn(0).getString();
        reading.at = query.getColumn(1).getInt64();
        reading.dryer = placeOf(all.dryers, query.getColumn(2).getString());
        reading.instrument = placeOf(all.instruments, query.getColumn(3).getString());
        reading.run = placeOf(all.runs, textAt(query, 4).value_or(""));
        reading.position = fromWord<BeltPosition>(query.getColumn(6).getString()).value_or(BeltPosition::centre);
        reading.reason = fromWord<ReadingReason>(query.getColumn(7).getString()).value_or(ReadingReason::drawn);
        reading.word = fromWord<analytics::Word>(query.getColumn(8).getString()).value_or(analytics::Word::notProven);
        reading.couldProve = query.getColumn(9).getInt() != 0;
        reading.margin = {kelvinsAt(query, 10), kelvinsAt(query, 11)};
        reading.isStrip = isStrip(all, reading.instrument);
        reading.byCheck = !query.getColumn(14).isNull();
        if (!query.getColumn(12).isNull()) {
            reading.piece = query.getColumn(12).getInt();
        }
        reading.retakeOf = placeOf(all.readings, textAt(query, 13).value_or(""));
        all.readings.emplace(reading.id, static_cast<FactIndex>(all.facts.readings.size()));
        all.facts.readings.push_back(std::move(reading));
    }
}

void gatherMissed(Gathering& all) {
    auto query = prepared(all.database, "SELECT lot, missed_ms, body FROM missed ORDER BY missed_ms, sequence");
    while (query.executeStep()) {
        const auto lot = placeOf(all.lots, query.getColumn(0).getString());
        if (lot != kNoFact) {
            const auto body = storedBody<ReadingMissed>(query.getColumn(2).getString());
            all.facts.missed.push_back({query.getColumn(1).getInt64(), lot, body.due});
        }
    }
}

void gatherHolds(Gathering& all) {
    auto query = prepared(all.database, kHolds);
    while (query.executeStep()) {
        TrendHold hold;
        hold.lot = placeOf(all.lots, query.getColumn(2).getString());
        if (hold.lot == kNoFact) {
            continue;
        }
        hold.id = query.getColumn(0).getString();
        hold.at = query.getColumn(1).getInt64();
        hold.cause = fromWord<HoldCause>(query.getColumn(3).getString()).value_or(HoldCause::reading);
        hold.because = query.getColumn(4).getString();
        hold.lifted = query.getColumn(5).getInt() != 0;
        hold.pieces = storedBody<HoldPlaced>(query.getColumn(6).getString()).count;
        if (const auto word = textAt(query, 7)) {
            hold.decided = fromWord<DecisionWord>(*word);
            hold.belowLimit = storedBody<DecisionSigned>(query.getColumn(8).getString()).belowLimit;
        }
        all.facts.holds.push_back(std::move(hold));
    }
}

} // namespace

void gatherReadings(Gathering& all) {
    gatherReadingRows(all);
    gatherMissed(all);
    gatherHolds(all);
}

} // namespace holdfast::kiosk::records::trending
