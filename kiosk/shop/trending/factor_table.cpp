#include "kiosk/shop/trending/factor_table.hpp"

#include "kiosk/shop/trending/episodes.hpp"

#include <algorithm>
#include <cassert>
#include <set>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;

FactorLevel named(FactorKind kind, const std::string& name) {
    FactorLevel level;
    level.kind = kind;
    level.key = name;
    level.name = name;
    return level;
}

/// Early 6 to 14, late 14 to 22, night: common practice.
FactorLevel shiftLevel(std::int64_t at, int utcOffsetMinutes) {
    constexpr std::int64_t kHour = 3'600'000;
    auto ofDay = (at + static_cast<std::int64_t>(utcOffsetMinutes) * 60'000) % kDayMs;
    ofDay = (ofDay < 0 ? ofDay + kDayMs : ofDay) / kHour;
    FactorLevel level;
    level.kind = FactorKind::shift;
    level.shift = ofDay >= 6 && ofDay < 14 ? 0 : ofDay >= 14 && ofDay < 22 ? 1 : 2;
    level.key = std::to_string(level.shift);
    return level;
}

constexpr std::int32_t kKinds = 16; ///< more than there are kinds of instruments

using Seen = std::map<FactIndex, bool>; ///< what a lot met, and whether it failed there

void addReadings(const TrendFacts& facts, const std::vector<LotOutcome>& outcomes,
                 const std::vector<std::int32_t>& episodes, std::vector<FactorTable>& tables) {
    std::vector<Seen> instruments(facts.lots.size());
    std::vector<Seen> positions(facts.lots.size());
    std::set<FactIndex> bad;
    for (const auto& outcome : outcomes) {
        bad.insert(outcome.badReadings.begin(), outcome.badReadings.end());
    }
    for (std::size_t i = 0; i < facts.readings.size(); ++i) {
        const auto& reading = facts.readings[i];
        if (reading.lot == kNoFact || !isDrawn(reading.reason)) {
            continue;
        }
        const bool failed = bad.count(static_cast<FactIndex>(i)) != 0;
        auto& position = positions[static_cast<std::size_t>(reading.lot)][static_cast<FactIndex>(reading.position)];
        position = position || failed;
        if (reading.instrument != kNoFact) {
            auto& instrument = instruments[static_cast<std::size_t>(reading.lot)][reading.instrument];
            instrument = instrument || failed;
        }
    }
    FactorTable byInstrument;
    FactorTable byPosition;
    for (const auto& outcome : outcomes) {
        const auto lot = static_cast<std::size_t>(outcome.lot);
        const auto stratum = static_cast<std::int32_t>(facts.lots[lot].dryer);
        for (const auto& [instrument, failed] : instruments[lot]) {
            // Only with its like: a strip shows an under-cured film less often than a probe, whichever strip it is.
            const auto kind = static_cast<std::int32_t>(facts.instruments[static_cast<std::size_t>(instrument)].kind);
            byInstrument.add(failed, episodes[lot], {instrumentLevel(facts, instrument)}, stratum * kKinds + kind);
        }
        for (const auto& [position, failed] : positions[lot]) {
            byPosition.add(failed, episodes[lot], {positionLevel(static_cast<records::BeltPosition>(position))},
                           stratum);
        }
    }
    tables.push_back(std::move(byInstrument));
    tables.push_back(std::move(byPosition));
}

void addLoads(const TrendFacts& facts, const std::vector<LotOutcome>& outcomes,
              const std::vector<std::int32_t>& episodes, std::vector<FactorTable>& tables) {
    std::vector<Seen> loads(facts.lots.size());
    std::set<FactIndex> failed;
    for (const auto& outcome : outcomes) {
        failed.insert(outcome.failedTests.begin(), outcome.failedTests.end());
    }
    for (std::size_t i = 0; i < facts.tests.size(); ++i) {
        const auto& test = facts.tests[i];
        if (test.load != kNoFact && test.counts != records::TestOutcome::inAVoidLoad) {
            auto& load = loads[static_cast<std::size_t>(test.lot)][test.load];
            load = load || failed.count(static_cast<FactIndex>(i)) != 0;
        }
    }
    FactorTable byLoad;
    for (const auto& outcome : outcomes) {
        const auto lot = static_cast<std::size_t>(outcome.lot);
        for (const auto& [load, bad] : loads[lot]) {
            byLoad.add(bad, episodes[lot], {loadLevel(facts, load)});
        }
    }
    tables.push_back(std::move(byLoad));
}

} // namespace

st::LevelId FactorTable::of(const FactorLevel& level) {
    const auto [at, isNew] =
        m_ids.try_emplace(std::pair{level.kind, level.key}, static_cast<st::LevelId>(m_levels.size()));
    if (isNew) {
        m_levels.push_back(level);
    }
    return at->second;
}

void FactorTable::add(bool failed, std::int32_t episode, const std::vector<FactorLevel>& levels, std::int32_t stratum) {
    Unit unit{failed, episode, stratum, {}};
    for (const auto& level : levels) {
        unit.levels.push_back(of(level));
    }
    m_units.push_back(std::move(unit));
}

st::LotTable FactorTable::table() const {
    std::vector<st::FactorId> factors;
    for (const auto& level : m_levels) {
        factors.push_back(static_cast<st::FactorId>(level.kind));
    }
    st::LotTable table{std::move(factors)};
    for (const auto& unit : m_units) {
        [[maybe_unused]] const auto added = table.add(unit.failed, unit.episode, unit.levels, unit.stratum);
        assert(added);
    }
    return table;
}

FactorLevel dryerLevel(const TrendFacts& facts, FactIndex dryer) {
    const auto& of = facts.dryers[static_cast<std::size_t>(dryer)];
    auto level = named(FactorKind::dryer, of.name);
    level.key = of.id;
    return level;
}

FactorLevel instrumentLevel(const TrendFacts& facts, FactIndex instrument) {
    const auto& of = facts.instruments[static_cast<std::size_t>(instrument)];
    auto level = named(FactorKind::instrument, of.name);
    level.key = of.id;
    return level;
}

FactorLevel bucketLevel(const TrendFacts& facts, FactIndex bucket) {
    const auto& of = facts.buckets[static_cast<std::size_t>(bucket)];
    auto level = named(FactorKind::bucket, of.name);
    level.key = std::to_string(of.number);
    level.number = of.number;
    level.isMix = of.isMix;
    return level;
}

FactorLevel loadLevel(const TrendFacts& facts, FactIndex load) {
    FactorLevel level;
    level.kind = FactorKind::washLoad;
    level.number = facts.loads[static_cast<std::size_t>(load)].number;
    level.key = std::to_string(level.number);
    level.name = level.key;
    return level;
}

FactorLevel positionLevel(records::BeltPosition position) {
    FactorLevel level;
    level.kind = FactorKind::position;
    level.position = position;
    level.key = std::to_string(static_cast<int>(position));
    return level;
}

std::vector<FactorLevel> printedWith(const TrendFacts& facts, FactIndex index) {
    const auto& lot = facts.lots[static_cast<std::size_t>(index)];
    std::vector<FactorLevel> levels;
    if (lot.dryer != kNoFact) {
        levels.push_back(dryerLevel(facts, lot.dryer));
    }
    // A mix before what is in it: of two that cannot be told apart the one that was printed from is named first.
    auto buckets = lot.buckets;
    std::stable_sort(buckets.begin(), buckets.end(), [&](FactIndex a, FactIndex b) {
        return facts.buckets[static_cast<std::size_t>(a)].isMix > facts.buckets[static_cast<std::size_t>(b)].isMix;
    });
    for (const auto bucket : buckets) {
        levels.push_back(bucketLevel(facts, bucket));
    }
    if (lot.run == kNoFact) {
        return levels;
    }
    const auto& run = facts.runs[static_cast<std::size_t>(lot.run)];
    for (const auto& family : run.families) {
        levels.push_back(named(FactorKind::family, family));
    }
    const auto addIf = [&](FactorKind kind, const std::string& name) {
        if (!name.empty()) {
            levels.push_back(named(kind, name));
        }
    };
    addIf(FactorKind::fabric, run.fabric);
    addIf(FactorKind::clothLot, run.clothLot);
    addIf(FactorKind::finish, run.finish);
    return levels;
}

std::vector<FactorTable> factorTables(const TrendFacts& facts, const std::vector<LotOutcome>& outcomes, bool shift) {
    const auto episodes = episodeOfLots(facts);
    std::vector<FactorTable> tables(1);
    FactorTable byShift;
    for (const auto& outcome : outcomes) {
        const auto lot = static_cast<std::size_t>(outcome.lot);
        tables.front().add(outcome.inRates, episodes[lot], printedWith(facts, outcome.lot));
        if (shift) {
            byShift.add(outcome.inRates, episodes[lot], {shiftLevel(facts.lots[lot].openedAt, facts.utcOffsetMinutes)},
                        static_cast<std::int32_t>(facts.lots[lot].dryer));
        }
    }
    addReadings(facts, outcomes, episodes, tables);
    addLoads(facts, outcomes, episodes, tables);
    tables.push_back(std::move(byShift));
    return tables;
}

} // namespace holdfast::kiosk::shop::trending
