#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/trend_rows.hpp"

#include <algorithm>

/// What was turned, mended, revised, opened or checked.
namespace holdfast::kiosk::records::trending {
namespace {

constexpr std::int64_t kNewAfterMs = 28LL * 86'400'000; ///< a dryer first used so long after the book began is new

bool inRange(const Gathering& all, std::int64_t at) {
    return at >= all.range.from && at < all.range.to;
}

/// Turns that begin or end an episode, and what dryers had wrong with them.
void gatherTurns(Gathering& all) {
    auto query = prepared(all.database, "SELECT dryer, taken_ms, body FROM actions ORDER BY taken_ms, sequence");
    while (query.executeStep()) {
        const auto at = query.getColumn(1).getInt64();
        const auto dryer = placeOf(all.dryers, query.getColumn(0).getString());
        if (dryer == kNoFact || !inRange(all, at)) {
            continue;
        }
        const auto body = storedBody<ActionTaken>(query.getColumn(2).getString());
        const auto setPoint = body.setPoint ? std::optional{body.setPoint->temperature()} : std::nullopt;
        const bool belt = body.action == FloorAction::beltSlower || body.action == FloorAction::beltFaster;
        const bool heat = body.action == FloorAction::hotter || body.action == FloorAction::cooler;
        if (belt || heat || body.action == FloorAction::started || body.action == FloorAction::feedStopped) {
            all.facts.turns.push_back({at, dryer, body.action, body.beltMetresPerMinute, setPoint});
        }
        if (belt || heat || body.action == FloorAction::problem) {
            TrendEvent event;
            event.at = at;
            event.kind = belt ? TrendEventKind::beltSpeed : heat ? TrendEventKind::setPoint : TrendEventKind::problem;
            event.dryer = dryer;
            event.beltMetresPerMinute = body.beltMetresPerMinute;
            event.setPoint = setPoint;
            all.facts.events.push_back(std::move(event));
        }
    }
}

void gatherRevised(Gathering& all, const char* sql, TrendEventKind kind) {
    auto query = prepared(all.database, sql);
    while (query.executeStep()) {
        TrendEvent event;
        event.at = query.getColumn(0).getInt64();
        event.kind = kind;
        event.name = query.getColumn(1).getString();
        event.revision = query.getColumn(2).getInt();
        if (inRange(all, event.at)) {
            all.facts.events.push_back(std::move(event));
        }
    }
}

void gatherInstrumentEvents(Gathering& all) {
    const auto note = [&](SQLite::Statement& query, TrendEventKind kind) {
        TrendEvent event;
        event.at = query.getColumn(0).getInt64();
        event.kind = kind;
        event.instrument = placeOf(all.instruments, query.getColumn(1).getString());
        if (inRange(all, event.at)) {
            all.facts.events.push_back(std::move(event));
        }
    };
    auto certificates = prepared(
        all.database, "SELECT e.wall_ms, c.instrument FROM certificates c JOIN entries e ON e.sequence = c.sequence");
    while (certificates.executeStep()) {
        note(certificates, TrendEventKind::certificate);
    }
    auto checks =
        prepared(all.database,
                 "SELECT e.wall_ms, c.instrument, c.passed FROM checks c JOIN entries e ON e.sequence = c.sequence");
    while (checks.executeStep()) {
        note(checks, checks.getColumn(2).getInt() != 0 ? TrendEventKind::checkPassed : TrendEventKind::checkFailed);
    }
}

void noteNewThings(Gathering& all) {
    for (std::size_t i = 0; i < all.facts.buckets.size(); ++i) {
        TrendEvent event;
        event.at = all.facts.buckets[i].openedAt;
        event.kind = TrendEventKind::bucketOpened;
        event.bucket = static_cast<FactIndex>(i);
        if (inRange(all, event.at)) {
            all.facts.events.push_back(std::move(event));
        }
    }
    auto query = prepared(all.database, "SELECT dryer, min(opened_ms) FROM lots GROUP BY dryer");
    while (query.executeStep()) {
        TrendEvent event;
        event.dryer = placeOf(all.dryers, query.getColumn(0).getString());
        event.at = query.getColumn(1).getInt64();
        event.kind = TrendEventKind::newDryer;
        if (event.dryer != kNoFact && event.at - all.facts.firstAt > kNewAfterMs && inRange(all, event.at)) {
            all.facts.events.push_back(std::move(event));
        }
    }
}

} // namespace

void gatherEvents(Gathering& all) {
    gatherTurns(all);
    gatherRevised(all,
                  "SELECT e.wall_ms, f.name, f.revision FROM families f JOIN entries e ON e.sequence = f.sequence "
                  "WHERE f.revision > 1",
                  TrendEventKind::familyRevised);
    gatherRevised(all,
                  "SELECT e.wall_ms, f.name, f.revision FROM fabrics f JOIN entries e ON e.sequence = f.sequence "
                  "WHERE f.revision > 1",
                  TrendEventKind::fabricRevised);
    gatherInstrumentEvents(all);
    noteNewThings(all);
    auto& events = all.facts.events;
    std::stable_sort(events.begin(), events.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
}

} // namespace holdfast::kiosk::records::trending
