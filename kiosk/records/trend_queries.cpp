#include "kiosk/records/trend_queries.hpp"

#include "kiosk/records/stock_queries.hpp"
#include "kiosk/records/stored_body.hpp"
#include "kiosk/records/trend_rows.hpp"

#include <algorithm>
#include <stdexcept>

namespace holdfast::kiosk::records {
namespace trending {
namespace {

void gatherDryers(Gathering& all) {
    auto query = prepared(all.database, "SELECT id, name, body FROM dryers ORDER BY name");
    while (query.executeStep()) {
        TrendDryer dryer;
        dryer.id = query.getColumn(0).getString();
        dryer.name = query.getColumn(1).getString();
        const auto described = storedBody<DryerDescribed>(query.getColumn(2).getString());
        const double belt = described.beltMetresPerMinute.value_or(0.0);
        if (described.heatedLengthMetres && belt > 0.0) {
            dryer.dwell = analytics::Duration{60.0 * *described.heatedLengthMetres / belt};
        }
        all.dryers.emplace(dryer.id, static_cast<FactIndex>(all.facts.dryers.size()));
        all.facts.dryers.push_back(std::move(dryer));
    }
}

void gatherInstruments(Gathering& all) {
    auto query = prepared(all.database, "SELECT id, name, kind FROM instruments ORDER BY name");
    while (query.executeStep()) {
        TrendInstrument instrument;
        instrument.id = query.getColumn(0).getString();
        instrument.name = query.getColumn(1).getString();
        instrument.kind = fromWord<analytics::InstrumentKind>(query.getColumn(2).getString())
                              .value_or(analytics::InstrumentKind::probe);
        all.instruments.emplace(instrument.id, static_cast<FactIndex>(all.facts.instruments.size()));
        all.facts.instruments.push_back(std::move(instrument));
    }
}

/// A mix's parts stand in the book before it, so theirs are known; numbers need not rise with it.
void fillWithin(std::vector<TrendBucket>& buckets, const std::vector<std::vector<FactIndex>>& parts) {
    std::vector<std::size_t> order(buckets.size());
    for (std::size_t i = 0; i < order.size(); ++i) {
        order[i] = i;
    }
    std::stable_sort(order.begin(), order.end(),
                     [&](auto a, auto b) { return buckets[a].openedAt < buckets[b].openedAt; });
    for (int round = 0; round < 2; ++round) { // the second for clocks that went backwards between the two
        for (const auto which : order) {
            std::vector<FactIndex> within{static_cast<FactIndex>(which)};
            for (const auto part : parts[which]) {
                const auto& inner = buckets[static_cast<std::size_t>(part)].within;
                within.push_back(part);
                within.insert(within.end(), inner.begin(), inner.end());
            }
            std::sort(within.begin(), within.end());
            within.erase(std::unique(within.begin(), within.end()), within.end());
            buckets[which].within = std::move(within);
        }
    }
}

void gatherBuckets(Gathering& all) {
    auto onFile = buckets(all.database, true);
    if (!onFile) {
        throw std::runtime_error(onFile.error().what);
    }
    for (const auto& bucket : *onFile) {
        const auto place = static_cast<FactIndex>(all.facts.buckets.size());
        all.buckets.emplace(bucket.id, place);
        all.bucketNumbers.emplace(bucket.number, place);
        all.facts.buckets.push_back({bucket.id,
                                     bucket.number,
                                     bucket.name,
                                     bucket.colour,
                                     bucket.batch,
                                     bucket.isMix,
                                     bucket.openedAt,
                                     bucket.closed,
                                     {}});
    }
    std::vector<std::vector<FactIndex>> parts(all.facts.buckets.size());
    for (std::size_t i = 0; i < onFile->size(); ++i) {
        for (const auto& part : (*onFile)[i].parts) {
            const auto place = part.mass > 0.0 ? placeOf(all.buckets, part.bucket) : kNoFact;
            if (place != kNoFact) {
                parts[i].push_back(place);
            }
        }
    }
    fillWithin(all.facts.buckets, parts);
}

} // namespace

void gatherThings(Gathering& all) {
    gatherDryers(all);
    gatherInstruments(all);
    gatherBuckets(all);
}

std::int64_t wallOf(analytics::Date day, int utcOffsetMinutes) noexcept {
    constexpr std::int64_t kDay = 86'400'000;
    const auto days = static_cast<std::int64_t>(std::chrono::sys_days{day}.time_since_epoch().count());
    return days * kDay - static_cast<std::int64_t>(utcOffsetMinutes) * 60'000;
}

} // namespace trending

ledger::Result<TrendFacts> trendFacts(const SQLite::Database& database, const TrendRange& range) {
    return asked("read what trends are made of", [&] {
        trending::Gathering all{database, range, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}, {}};
        auto offset = prepared(database, "SELECT utc_offset FROM readings ORDER BY first DESC LIMIT 1");
        all.facts.utcOffsetMinutes = offset.executeStep() ? offset.getColumn(0).getInt() : 0;
        auto first = prepared(database, "SELECT coalesce(min(opened_ms), 0) FROM lots");
        all.facts.firstAt = first.executeStep() ? first.getColumn(0).getInt64() : 0;
        trending::gatherThings(all);
        trending::gatherLots(all);
        trending::gatherReadings(all);
        trending::gatherTests(all);
        trending::gatherEvents(all);
        return std::move(all.facts);
    });
}

} // namespace holdfast::kiosk::records
