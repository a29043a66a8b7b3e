#include "kiosk/shop/trending/briefing.hpp"

#include "analytics/statistics/counts/fisher.hpp"
#include "analytics/statistics/summary/mean_difference.hpp"

#include <algorithm>
#include <cmath>
#include <set>
#include <tuple>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;
using analytics::TemperatureDifference;

struct Mean final {
    double sum = 0.0;
    double squares = 0.0;
    int count = 0;
    void add(double value) noexcept {
        sum += value;
        squares += value * value;
        ++count;
    }
    [[nodiscard]] double mean() const noexcept { return sum / count; }
    [[nodiscard]] st::SampleMean sample() const noexcept {
        const double variance = count < 2 ? 0.0 : std::max(0.0, squares - sum * sum / count) / (count - 1.0);
        return {static_cast<std::size_t>(count), count < 1 ? 0.0 : mean(), variance};
    }
};

/// Worse when more is worse and there is more; by an exact comparison of rates over a week and over the weeks before.
Standing standingOfCounts(std::int64_t week, std::int64_t before, double weeksBefore, bool moreIsWorse) {
    if (!(weeksBefore > 0.0)) {
        return Standing::notEnough;
    }
    const auto ratio = st::compareRates({week, 1.0}, {before, weeksBefore});
    if (!ratio || ratio->twoSided >= kWeekRisk) {
        return Standing::usual;
    }
    return (ratio->greater < ratio->less) == moreIsWorse ? Standing::worse : Standing::better;
}

Standing standingOfMargins(const Mean& week, const Mean& before) {
    constexpr int kLeast = 3;
    if (week.count < kLeast || before.count < kLeast) {
        return Standing::notEnough;
    }
    const auto compared = st::compareMeans(week.sample(), before.sample());
    if (!compared || compared->p >= kWeekRisk || std::abs(compared->difference) < analytics::kDecisionTolerance) {
        return Standing::usual;
    }
    return compared->difference < 0.0 ? Standing::worse : Standing::better;
}

struct Tally final {
    std::int64_t drawn = 0;
    std::int64_t missed = 0;
    std::int64_t lots = 0;
    std::int64_t failed = 0;
    Mean margin{};
};

class Writing final {
public:
    Writing(const TrendFacts& facts, std::int64_t now)
        : m_facts{facts}, m_week(facts.dryers.size() + 1), m_before(facts.dryers.size() + 1) {
        m_briefing.from = now - kWeekMs;
        m_briefing.to = now;
        m_first = m_briefing.from - kWeeksBefore * kWeekMs;
    }

    Briefing write(std::uint64_t seed) {
        takeLots();
        takeMargins();
        fill();
        takeDryers();
        takeStanding();
        TrendFilter recent;
        recent.from = m_first;
        recent.to = m_briefing.to;
        m_briefing.suspects = suspects(m_facts, {recent, false, seed, 12});
        m_briefing.instruments = compareInstruments(m_facts, recent, seed);
        for (std::size_t i = 0; i < m_facts.dryers.size(); ++i) {
            auto own = recent;
            own.dryer = m_facts.dryers[i].id;
            m_briefing.drifts.emplace_back(static_cast<FactIndex>(i), marginTrend(m_facts, {own, {}, {}}).drift);
        }
        return std::move(m_briefing);
    }

private:
    /// Of the whole shop last.
    template <class Take>
    void both(std::int64_t at, FactIndex dryer, const Take& take) {
        if (at < m_first || at >= m_briefing.to) {
            return;
        }
        auto& of = at >= m_briefing.from ? m_week : m_before;
        take(of.back());
        if (dryer != kNoFact) {
            take(of[static_cast<std::size_t>(dryer)]);
        }
    }

    void takeLots() {
        std::set<std::int64_t> weeks;
        for (const auto& outcome : lotOutcomes(m_facts, {})) {
            const auto& lot = m_facts.lots[static_cast<std::size_t>(outcome.lot)];
            both(lot.openedAt, lot.dryer, [&](Tally& tally) {
                ++tally.lots;
                tally.failed += outcome.inRates ? 1 : 0;
                tally.drawn += outcome.drawn;
                tally.missed += outcome.missed;
            });
            if (lot.openedAt >= m_first && lot.openedAt < m_briefing.from) {
                weeks.insert((lot.openedAt - m_first) / kWeekMs);
            }
            if (outcome.inRates && lot.openedAt >= m_briefing.from && lot.openedAt < m_briefing.to) {
                m_briefing.failedLotsOfWeek.push_back(outcome.lot);
            }
        }
        m_briefing.weeksBefore = static_cast<int>(weeks.size());
    }

    void takeMargins() {
        for (const auto& episode : episodesOf(m_facts, {})) {
            if (episode.mean) {
                both(episode.from, episode.dryer, [&](Tally& tally) { tally.margin.add(episode.mean->celsius()); });
            }
        }
    }

    void fill() {
        const auto& week = m_week.back();
        const auto& before = m_before.back();
        const double weeks = m_briefing.weeksBefore;
        const auto against = [&](std::int64_t now, std::int64_t then, bool moreIsWorse) {
            return AgainstBefore<double>{static_cast<double>(now),
                                         weeks > 0.0 ? static_cast<double>(then) / weeks : 0.0,
                                         standingOfCounts(now, then, weeks, moreIsWorse)};
        };
        m_briefing.readings = against(week.drawn, before.drawn, false);
        m_briefing.missed = against(week.missed, before.missed, true);
        m_briefing.lots = against(week.lots, before.lots, false);
        m_briefing.failedLots = against(week.failed, before.failed, true);
        m_briefing.failedLots.standing = Standing::notEnough;
        if (week.lots > 0 && before.lots > 0) {
            const auto share = [](const Tally& tally) {
                return static_cast<double>(tally.failed) / static_cast<double>(tally.lots);
            };
            m_briefing.failedShare = share(week);
            m_briefing.failedShareBefore = share(before);
            const auto test =
                st::fisherExact({week.failed, week.lots - week.failed, before.failed, before.lots - before.failed});
            m_briefing.failedP = test ? test->twoSided : 1.0;
            m_briefing.failedLots.standing = m_briefing.failedP >= kWeekRisk                         ? Standing::usual
                                             : m_briefing.failedShare > m_briefing.failedShareBefore ? Standing::worse
                                                                                                     : Standing::better;
        }
        if (week.margin.count > 0 && before.margin.count > 0) {
            m_briefing.margin =
                AgainstBefore<TemperatureDifference>{TemperatureDifference::fromCelsius(week.margin.mean()),
                                                     TemperatureDifference::fromCelsius(before.margin.mean()),
                                                     standingOfMargins(week.margin, before.margin)};
        }
    }

    void takeDryers() {
        for (std::size_t i = 0; i < m_facts.dryers.size(); ++i) {
            const auto& week = m_week[i];
            const auto& before = m_before[i];
            if (week.lots == 0 && before.lots == 0) {
                continue;
            }
            DryerWeek dryer;
            dryer.dryer = static_cast<FactIndex>(i);
            dryer.readings = static_cast<int>(week.drawn);
            dryer.episodes = week.margin.count;
            dryer.lots = week.lots;
            dryer.failed = week.failed;
            dryer.missed = static_cast<int>(week.missed);
            if (week.margin.count > 0) {
                dryer.margin = TemperatureDifference::fromCelsius(week.margin.mean());
            }
            if (before.margin.count > 0) {
                dryer.before = TemperatureDifference::fromCelsius(before.margin.mean());
            }
            dryer.standing = standingOfMargins(week.margin, before.margin);
            m_briefing.dryers.push_back(dryer);
        }
        // Those that got worse, then by the share of failed lots, then the lower margin.
        std::stable_sort(m_briefing.dryers.begin(), m_briefing.dryers.end(), [](const auto& a, const auto& b) {
            const auto share = [](const DryerWeek& one) {
                return one.lots > 0 ? -static_cast<double>(one.failed) / static_cast<double>(one.lots) : 1.0;
            };
            const auto margin = [](const DryerWeek& one) { return one.margin ? one.margin->celsius() : 1e9; };
            const auto order = [&](const DryerWeek& one) {
                return std::tuple{one.standing != Standing::worse, share(one), margin(one)};
            };
            return order(a) < order(b);
        });
    }

    void takeStanding() {
        for (std::size_t i = 0; i < m_facts.lots.size(); ++i) {
            if (m_facts.lots[i].state == records::LotState::onHold) {
                m_briefing.onHold.push_back(static_cast<FactIndex>(i));
            }
        }
        for (std::size_t i = 0; i < m_facts.complaints.size(); ++i) {
            if (!m_facts.complaints[i].closed && m_facts.complaints[i].at < m_briefing.to) {
                m_briefing.openComplaints.push_back(static_cast<FactIndex>(i));
            }
        }
        for (std::size_t i = 0; i < m_facts.events.size(); ++i) {
            const auto& event = m_facts.events[i];
            // A set-point is turned for every ink, a pail is opened every week: no news.
            const bool news = event.kind != records::TrendEventKind::bucketOpened &&
                              event.kind != records::TrendEventKind::setPoint &&
                              event.kind != records::TrendEventKind::checkPassed;
            if (news && event.at >= m_briefing.from && event.at < m_briefing.to) {
                m_briefing.changed.push_back(static_cast<FactIndex>(i));
            }
        }
    }

    const TrendFacts& m_facts;
    std::int64_t m_first = 0;
    std::vector<Tally> m_week;
    std::vector<Tally> m_before;
    Briefing m_briefing{};
};

} // namespace

Briefing briefingOf(const TrendFacts& facts, std::int64_t now, std::uint64_t seed) {
    return Writing{facts, now}.write(seed);
}

} // namespace holdfast::kiosk::shop::trending
