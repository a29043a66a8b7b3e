// A shop in which nothing is wrong but chance: correlated warm-ups (intraclass 0.5), optimistic strip readers, retakes
// and skipped readings. Alarms come no more often than their stated rates.
#include "kiosk/demo/history/history_model.hpp"
#include "kiosk/demo/history/history_plan.hpp"
#include "kiosk/shop/trending/instruments_compared.hpp"
#include "kiosk/shop/trending/margin_trend.hpp"
#include "tests/kiosk/trending/support/history_as_facts.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::trending;
using namespace holdfast::kiosk::shop::trending::testing;
namespace st = holdfast::analytics::statistics;

namespace {

struct Alarms final {
    int histories = 0;
    int charts = 0;
    std::size_t episodes = 0;
    std::size_t signals = 0;
    int drifts = 0;
    int changes = 0;
    int strong = 0;
    int named = 0;
    int instrumentsStrong = 0;
    int instrumentsNamed = 0;
};

void listen(std::uint64_t seed, Alarms& alarms) {
    const auto facts = factsOf(demo::historyOf(demo::HistoryPlan::quiet(seed)));
    ++alarms.histories;
    for (const char* dryer : {"North", "South", "West"}) {
        MarginQuestion question;
        question.filter.dryer = dryer;
        question.seed = seed;
        const auto trend = marginTrend(facts, question);
        ++alarms.charts;
        alarms.episodes += trend.points.size();
        alarms.signals += trend.alarms.size();
        alarms.drifts += trend.drift && trend.drift->standing != st::DriftStanding::NotShown ? 1 : 0;
        alarms.changes += trend.since ? 1 : 0;
    }
    SuspectQuestion question;
    question.seed = seed;
    if (const auto found = suspects(facts, question)) {
        alarms.named += found->names() ? 1 : 0;
        alarms.strong += found->ranked.front().strength == Strength::strong ? 1 : 0;
    }
    if (const auto found = compareInstruments(facts, {}, seed)) {
        alarms.instrumentsNamed += found->front().strength != Strength::byChance ? 1 : 0;
        alarms.instrumentsStrong += found->front().strength == Strength::strong ? 1 : 0;
    }
}

Alarms listenTo(std::uint64_t from, std::uint64_t to) {
    Alarms alarms;
    for (auto seed = from; seed < to; ++seed) {
        listen(seed, alarms);
    }
    return alarms;
}

} // namespace

// Beside each the stated rate and the most that so many histories would give but once in a hundred such tests (binomial
// law, by hand).
TEST_CASE("twenty quiet histories alarm no more often than stated", "[trending][quiet]") {
    const auto alarms = listenTo(1, 21);
    CHECK(alarms.strong <= 1);            // 1 % of histories, kStrongQ
    CHECK(alarms.named <= 5);             // 10 %, kWeakQ
    CHECK(alarms.instrumentsStrong <= 1); // 1 %
    CHECK(alarms.instrumentsNamed <= 5);  // 10 %
    CHECK(alarms.charts == 60);
    CHECK(alarms.drifts <= 8);  // 5 % of charts: Kendall's limits
    CHECK(alarms.changes <= 3); // 1 % of charts, kChangeRisk
    CHECK(static_cast<double>(alarms.signals) * kEpisodesAFalseSignal <= static_cast<double>(alarms.episodes));
}

TEST_CASE("two hundred quiet histories alarm no more often than stated", "[.bench][trending][quiet]") {
    const auto alarms = listenTo(1, 201);
    CHECK(alarms.strong <= 6);
    CHECK(alarms.named <= 30);
    CHECK(alarms.instrumentsStrong <= 6);
    CHECK(alarms.instrumentsNamed <= 30);
    CHECK(alarms.drifts <= 43);
    CHECK(alarms.changes <= 12);
    CHECK(static_cast<double>(alarms.signals) * kEpisodesAFalseSignal <= static_cast<double>(alarms.episodes));
}
