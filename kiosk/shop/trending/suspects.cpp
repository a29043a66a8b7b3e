#include "kiosk/shop/trending/suspects.hpp"

#include "analytics/statistics/counts/false_discovery.hpp"
#include "kiosk/shop/trending/factor_table.hpp"

#include <algorithm>
#include <map>
#include <tuple>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;

/// So that p can fall far enough for q ≤ kStrongQ among a thousand levels; all but the strongest are let go long
/// before.
constexpr std::int64_t kSuspectOrders = 199'999;
constexpr std::size_t kTrials = 3; ///< of so many suspects the trial is worked out

struct Ranked final {
    Suspect suspect{};
    double fisher = 1.0;
    bool contrast = true;
    bool oneEpisode = false;
    bool first = true; ///< of those that cannot be told apart
};

Ranked rankedOf(const FactorTable& table, const st::SharedFailures& shared, const st::LevelFinding& finding) {
    Ranked one;
    auto& said = one.suspect;
    said.level = table.level(finding.level);
    said.failedWith = finding.with.hits;
    said.with = finding.with.of;
    said.failedWithout = finding.without.hits;
    said.without = finding.without.of;
    said.episodes = finding.episodes;
    said.p = finding.permutationP;
    said.exact = finding.exact;
    said.odds = finding.odds.ratio;
    said.oddsLow = finding.odds.lower;
    said.oddsHigh = finding.odds.upper;
    one.fisher = finding.fisherP;
    one.contrast = finding.caveat != st::LevelCaveat::NoContrast;
    one.oneEpisode = finding.caveat == st::LevelCaveat::OneEpisode;
    if (finding.twins) {
        const auto& twins = shared.classes[*finding.twins];
        one.first = twins.front().level == finding.level;
        for (const auto& twin : twins) {
            if (twin.level != finding.level && !twin.complement) {
                said.sameAs.push_back(table.level(twin.level));
            }
        }
    }
    return one;
}

/// Over everything that was looked at; levels of the same lots count once.
void adjust(std::vector<Ranked>& all) {
    std::vector<double> p;
    std::vector<std::size_t> places;
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (all[i].contrast && all[i].first) {
            p.push_back(all[i].suspect.p);
            places.push_back(i);
        }
    }
    const auto q = st::benjaminiHochberg(p);
    if (!q) {
        return;
    }
    std::map<std::pair<FactorKind, std::string>, double> known;
    for (std::size_t i = 0; i < places.size(); ++i) {
        auto& suspect = all[places[i]].suspect;
        suspect.q = (*q)[i];
        for (const auto& twin : suspect.sameAs) {
            known[{twin.kind, twin.key}] = (*q)[i];
        }
    }
    for (auto& one : all) {
        if (const auto at = known.find({one.suspect.level.kind, one.suspect.level.key});
            !one.first && at != known.end()) {
            one.suspect.q = at->second;
        }
    }
}

Strength strengthOf(const Ranked& one) {
    const auto& said = one.suspect;
    const bool more = said.failedWith * said.without > said.failedWithout * said.with;
    if (!one.contrast || !more) {
        return Strength::byChance;
    }
    if (said.q <= kStrongQ && said.failedWith >= kStrongFailures && said.episodes >= kStrongEpisodes) {
        return Strength::strong;
    }
    const bool weak = said.q <= kWeakQ && said.failedWith >= kWeakFailures && !one.oneEpisode;
    return weak ? Strength::weak : Strength::byChance;
}

/// Shares moved off 0 and 1, where no trial would be large enough to be sure.
std::optional<st::TrialSize> trialFor(const Suspect& suspect) {
    const auto share = [](std::int64_t hits, std::int64_t of) {
        return (static_cast<double>(hits) + 0.5) / (static_cast<double>(of) + 1.0);
    };
    const st::TrialQuestion question{share(suspect.failedWith, suspect.with),
                                     share(suspect.failedWithout, suspect.without), 0.80, 0.05};
    constexpr double kMostPieces = 500.0; // a trial of more is none that a shop prints
    const auto about = st::approximateTrialSize(question);
    if (!about || *about > kMostPieces) {
        return std::nullopt;
    }
    const auto trial = st::smallestTrial(question);
    return trial ? std::optional{*trial} : std::nullopt;
}

std::vector<Ranked> rankAll(const std::vector<FactorTable>& tables, std::uint64_t seed) {
    std::vector<Ranked> all;
    for (const auto& table : tables) {
        if (table.empty()) {
            continue;
        }
        st::SharedFailureSettings settings;
        settings.seed = seed;
        settings.permutations = kSuspectOrders;
        const auto shared = st::rankSharedFailures(table.table(), settings);
        if (!shared) {
            continue;
        }
        for (const auto& finding : shared->ranked) {
            all.push_back(rankedOf(table, *shared, finding));
        }
    }
    adjust(all);
    for (auto& one : all) {
        one.suspect.strength = strengthOf(one);
    }
    std::stable_sort(all.begin(), all.end(), [](const Ranked& a, const Ranked& b) {
        const auto key = [](const Ranked& one) {
            return std::tuple{static_cast<int>(one.suspect.strength), one.suspect.q, one.suspect.p, one.fisher};
        };
        return key(a) < key(b);
    });
    return all;
}

} // namespace

Figure<Suspects> suspects(const TrendFacts& facts, const SuspectQuestion& question) {
    const auto outcomes = lotOutcomes(facts, question.filter);
    Suspects said;
    said.lots = static_cast<std::int64_t>(outcomes.size());
    for (const auto& outcome : outcomes) {
        said.failed += outcome.inRates ? 1 : 0;
    }
    if (outcomes.empty()) {
        return tl::unexpected(Refusal{NoFigure::noLots, 0, 1});
    }
    if (said.failed == 0 || said.failed == said.lots) {
        return tl::unexpected(
            Refusal{said.failed == 0 ? NoFigure::nothingFailed : NoFigure::everythingFailed, said.failed, said.lots});
    }
    const auto tables = factorTables(facts, outcomes, question.shift);
    const auto lots = st::designOf(tables.front().table());
    said.episodes = lots.stratumOf.size();
    if (said.episodes < 2) {
        return tl::unexpected(Refusal{NoFigure::oneEpisode, 1, 2});
    }
    auto all = rankAll(tables, question.seed);
    for (auto& one : all) {
        if (!one.contrast) {
            continue;
        }
        ++said.looked;
        if (said.ranked.size() < question.most) {
            if (said.ranked.size() < kTrials) {
                one.suspect.trial = trialFor(one.suspect);
            }
            said.ranked.push_back(std::move(one.suspect));
        }
    }
    if (said.ranked.empty()) {
        return tl::unexpected(Refusal{NoFigure::nothingToCompare, 0, 1});
    }
    return said;
}

std::vector<FactorLevel> levelsOfLot(const TrendFacts& facts, FactIndex lot) {
    auto levels = printedWith(facts, lot);
    const auto addOnce = [&](FactorLevel level) {
        if (std::find(levels.begin(), levels.end(), level) == levels.end()) {
            levels.push_back(std::move(level));
        }
    };
    for (const auto& reading : facts.readings) {
        if (reading.lot == lot && isDrawn(reading.reason)) {
            addOnce(positionLevel(reading.position));
            if (reading.instrument != kNoFact) {
                addOnce(instrumentLevel(facts, reading.instrument));
            }
        }
    }
    for (const auto& test : facts.tests) {
        if (test.lot == lot && test.load != kNoFact) {
            addOnce(loadLevel(facts, test.load));
        }
    }
    return levels;
}

std::vector<FactIndex> lotsWith(const TrendFacts& facts, const FactorLevel& level) {
    std::vector<char> has(facts.lots.size(), 0);
    const auto mark = [&](FactIndex lot) { has[static_cast<std::size_t>(lot)] = 1; };
    if (level.kind == FactorKind::position || level.kind == FactorKind::instrument) {
        for (const auto& reading : facts.readings) {
            const bool same = level.kind == FactorKind::position
                                  ? reading.position == level.position
                                  : reading.instrument != kNoFact &&
                                        facts.instruments[static_cast<std::size_t>(reading.instrument)].id == level.key;
            if (reading.lot != kNoFact && isDrawn(reading.reason) && same) {
                mark(reading.lot);
            }
        }
    } else if (level.kind == FactorKind::washLoad) {
        for (const auto& test : facts.tests) {
            if (test.load != kNoFact && facts.loads[static_cast<std::size_t>(test.load)].number == level.number) {
                mark(test.lot);
            }
        }
    } else {
        for (std::size_t i = 0; i < facts.lots.size(); ++i) {
            const auto levels = printedWith(facts, static_cast<FactIndex>(i));
            has[i] = std::find(levels.begin(), levels.end(), level) != levels.end() ? 1 : 0;
        }
    }
    std::vector<FactIndex> lots;
    for (std::size_t i = 0; i < has.size(); ++i) {
        if (has[i] != 0 && !facts.lots[i].isReRun) {
            lots.push_back(static_cast<FactIndex>(i));
        }
    }
    return lots;
}

Figure<SinceWhen> sinceWhen(const TrendFacts& facts, const TrendFilter& filter, const FactorLevel& level,
                            std::uint64_t seed) {
    const auto with = lotsWith(facts, level);
    std::map<std::int64_t, st::FailedOfTotal> days;
    for (const auto& outcome : lotOutcomes(facts, filter)) {
        if (std::binary_search(with.begin(), with.end(), outcome.lot)) {
            const auto at = facts.lots[static_cast<std::size_t>(outcome.lot)].openedAt;
            const auto week = weekOf(at, facts.utcOffsetMinutes);
            auto& day = days[week + (at - week) / kDayMs * kDayMs];
            ++day.total;
            day.failed += outcome.inRates ? 1 : 0;
        }
    }
    std::vector<std::int64_t> times;
    std::vector<st::FailedOfTotal> shares;
    for (const auto& [day, share] : days) {
        times.push_back(day);
        shares.push_back(share);
    }
    return changeIn(facts, filter, times, shares, seed);
}

} // namespace holdfast::kiosk::shop::trending
