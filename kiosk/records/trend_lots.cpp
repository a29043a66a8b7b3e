#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/trend_rows.hpp"

#include <algorithm>

/// Lots of a stretch of time with their runs, ink and pieces.
namespace holdfast::kiosk::records::trending {
namespace {

constexpr const char* kRuns =
    "SELECT runs.id, runs.number, runs.title, runs.customer, runs.fabric, runs.childrens_wear, runs.body FROM runs "
    "WHERE EXISTS (SELECT 1 FROM lots WHERE lots.run = runs.id AND lots.opened_ms >= ?1 AND lots.opened_ms < ?2) "
    "ORDER BY runs.planned_ms, runs.number";
constexpr const char* kLots = "SELECT id, run, number, dryer, opened_ms, closed, state, first_piece, last_piece FROM "
                              "lots WHERE opened_ms >= ?1 AND opened_ms < ?2 ORDER BY opened_ms, rowid";

void gatherRuns(Gathering& all) {
    auto query = prepared(all.database, kRuns, all.range.from, all.range.to);
    while (query.executeStep()) {
        TrendRun run;
        run.id = query.getColumn(0).getString();
        run.number = query.getColumn(1).getInt64();
        run.title = query.getColumn(2).getString();
        run.customer = query.getColumn(3).getString();
        run.fabric = query.getColumn(4).getString();
        run.childrensWear = query.getColumn(5).getInt() != 0;
        const auto plan = storedBody<RunPlanned>(query.getColumn(6).getString());
        run.clothLot = plan.clothLot;
        run.finish = plan.finish;
        run.pieces = plan.pieces;
        for (const auto& layer : plan.layers) {
            for (const auto& part : layer.parts) {
                if (part.mass > 0.0) {
                    run.families.push_back(part.family);
                }
            }
        }
        std::sort(run.families.begin(), run.families.end());
        run.families.erase(std::unique(run.families.begin(), run.families.end()), run.families.end());
        all.runs.emplace(run.id, static_cast<FactIndex>(all.facts.runs.size()));
        all.facts.runs.push_back(std::move(run));
    }
}

/// As far as the lot's own ends tell.
std::optional<int> span(SQLite::Statement& query, int first, int last) {
    if (query.getColumn(last).isNull()) {
        return std::nullopt;
    }
    const int from = query.getColumn(first).isNull() ? 1 : query.getColumn(first).getInt();
    const int pieces = query.getColumn(last).getInt() - from + 1;
    return pieces > 0 ? std::optional{pieces} : std::nullopt;
}

void gatherLotRows(Gathering& all) {
    std::vector<int> lotsOfRun(all.facts.runs.size(), 0);
    auto query = prepared(all.database, kLots, all.range.from, all.range.to);
    while (query.executeStep()) {
        TrendLot lot;
        lot.id = query.getColumn(0).getString();
        lot.run = placeOf(all.runs, query.getColumn(1).getString());
        lot.number = query.getColumn(2).getInt();
        lot.dryer = placeOf(all.dryers, query.getColumn(3).getString());
        lot.openedAt = query.getColumn(4).getInt64();
        lot.closed = query.getColumn(5).getInt() != 0;
        lot.state = fromWord<LotState>(query.getColumn(6).getString()).value_or(LotState::open);
        lot.made = span(query, 7, 8);
        if (lot.run != kNoFact) {
            ++lotsOfRun[static_cast<std::size_t>(lot.run)];
        }
        all.lots.emplace(lot.id, static_cast<FactIndex>(all.facts.lots.size()));
        all.facts.lots.push_back(std::move(lot));
    }
    for (auto& lot : all.facts.lots) {
        const auto run = static_cast<std::size_t>(lot.run);
        if (!lot.made && lot.run != kNoFact && lotsOfRun[run] == 1) {
            lot.made = all.facts.runs[run].pieces;
        }
    }
    auto again =
        prepared(all.database, "SELECT re_run_lot FROM decisions WHERE re_run_lot IS NOT NULL AND corrected = 0");
    while (again.executeStep()) {
        if (const auto lot = placeOf(all.lots, again.getColumn(0).getString()); lot != kNoFact) {
            all.facts.lots[static_cast<std::size_t>(lot)].isReRun = true;
        }
    }
}

void gatherInk(Gathering& all) {
    auto query = prepared(all.database, "SELECT lot, bucket FROM lot_buckets");
    while (query.executeStep()) {
        const auto lot = placeOf(all.lots, query.getColumn(0).getString());
        const auto bucket = all.bucketNumbers.find(query.getColumn(1).getInt64());
        if (lot == kNoFact || bucket == all.bucketNumbers.end()) {
            continue;
        }
        auto& into = all.facts.lots[static_cast<std::size_t>(lot)].buckets;
        const auto& within = all.facts.buckets[static_cast<std::size_t>(bucket->second)].within;
        into.insert(into.end(), within.begin(), within.end());
    }
    for (auto& lot : all.facts.lots) {
        std::sort(lot.buckets.begin(), lot.buckets.end());
        lot.buckets.erase(std::unique(lot.buckets.begin(), lot.buckets.end()), lot.buckets.end());
    }
}

void gatherPieces(Gathering& all) {
    auto counted = prepared(all.database, "SELECT lot, made FROM counts WHERE made IS NOT NULL ORDER BY sequence");
    while (counted.executeStep()) {
        if (const auto lot = placeOf(all.lots, counted.getColumn(0).getString()); lot != kNoFact) {
            all.facts.lots[static_cast<std::size_t>(lot)].made = counted.getColumn(1).getInt();
        }
    }
    auto moved = prepared(all.database, "SELECT lot, count, moved_ms, body FROM moves WHERE place = 'shipped' AND "
                                        "corrected = 0 AND count > 0 ORDER BY moved_ms, sequence");
    while (moved.executeStep()) {
        const auto lot = placeOf(all.lots, moved.getColumn(0).getString());
        if (lot == kNoFact) {
            continue;
        }
        auto body = storedBody<PiecesMoved>(moved.getColumn(3).getString());
        TrendShipment shipment;
        shipment.lot = lot;
        shipment.pieces = moved.getColumn(1).getInt();
        shipment.at = body.day ? wallOf(*body.day, all.facts.utcOffsetMinutes) : moved.getColumn(2).getInt64();
        shipment.customer = std::move(body.customer);
        shipment.cartons = std::move(body.cartons);
        all.facts.lots[static_cast<std::size_t>(lot)].shipped += shipment.pieces;
        all.facts.shipments.push_back(std::move(shipment));
    }
}

} // namespace

void gatherLots(Gathering& all) {
    gatherRuns(all);
    gatherLotRows(all);
    gatherInk(all);
    gatherPieces(all);
}

} // namespace holdfast::kiosk::records::trending
