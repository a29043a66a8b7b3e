// The invented eighteen months: each planted failure is found, and the false alarm is blamed on nobody.
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

struct Eighteen final {
    demo::HistoryFacts history = demo::historyOf(demo::HistoryPlan{});
    records::TrendFacts facts = factsOf(history);

    [[nodiscard]] TrendFilter between(int from, int until, const char* dryer = nullptr) const {
        TrendFilter filter;
        filter.from = daysBefore(history, from);
        filter.to = daysBefore(history, until);
        if (dryer != nullptr) {
            filter.dryer = dryer;
        }
        return filter;
    }
    [[nodiscard]] MarginTrend margins(int from, int until, const char* dryer) const {
        MarginQuestion question;
        question.filter = between(from, until, dryer);
        return marginTrend(facts, question);
    }
};

const Eighteen& eighteen() {
    static const Eighteen made;
    return made;
}

bool drifts(const MarginTrend& trend) {
    return trend.drift && trend.drift->standing != st::DriftStanding::NotShown;
}

} // namespace

TEST_CASE("the dryer that loses heat is found, sinking, and no other is", "[trending][planted]") {
    const auto& days = demo::kHeatLoss.days;
    const auto north = eighteen().margins(days.from, days.until, "North");
    REQUIRE(north.drift);
    CHECK(north.drift->standing == st::DriftStanding::Crosses);
    // planted: 4 °C over 98 days is 0.286 °C a week
    const double planted = demo::kHeatLoss.inAll.celsius() / (days.from - days.until) * 7.0;
    CHECK(north.drift->leastAWeek.celsius() < planted);
    CHECK(north.drift->mostAWeek.celsius() > planted);
    CHECK(north.drift->weeksLatest > north.drift->weeksEarliest);
    CHECK_FALSE(north.alarms.empty());
    CHECK_FALSE(drifts(eighteen().margins(days.from, days.until, "South")));
    CHECK_FALSE(drifts(eighteen().margins(days.from, days.until, "West")));
}

TEST_CASE("the mislabelled bucket is the first suspect, with the mix it went into", "[trending][planted]") {
    const auto& planted = eighteen().history.planted;
    REQUIRE(planted.mix != 0);
    for (const auto& filter : {TrendFilter{}, eighteen().between(230, 170)}) {
        SuspectQuestion question;
        question.filter = filter;
        const auto found = suspects(eighteen().facts, question);
        REQUIRE(found);
        const auto& first = found->ranked.front();
        CHECK(first.level.kind == FactorKind::bucket);
        CHECK(first.level.number == planted.mix);
        CHECK(first.strength == Strength::strong);
        REQUIRE(first.sameAs.size() == 1);
        CHECK(first.sameAs.front().number == planted.pail);
        CHECK(first.with == static_cast<std::int64_t>(planted.poured.size()));
    }
}

TEST_CASE("the turned belt is dated within days, with the turn itself among what was known", "[trending][planted]") {
    const auto& days = demo::kBeltChange.days;
    const auto west = eighteen().margins(200, days.until, "West");
    REQUIRE(west.since);
    const auto& facts = eighteen().facts;
    CHECK(west.since->earliest() <= daysBefore(eighteen().history, days.from - 4));
    CHECK(west.since->latest() >= daysBefore(eighteen().history, days.from));
    CHECK(west.since->latest() - west.since->earliest() <= 14 * kDayMs);
    CHECK(west.since->after - west.since->before == Approx(demo::kBeltChange.shift.celsius()).margin(0.7));
    REQUIRE_FALSE(west.since->events.empty());
    const auto& turn = facts.events[static_cast<std::size_t>(west.since->events.front())];
    CHECK(turn.kind == records::TrendEventKind::beltSpeed);
    CHECK(turn.beltMetresPerMinute == demo::kBeltChange.fastMetresPerMinute);
    CHECK_FALSE(eighteen().margins(200, days.until, "North").since);
    CHECK_FALSE(eighteen().margins(200, days.until, "South").since);
}

TEST_CASE("the probe that reads hotter and hotter is the first among instruments", "[trending][planted]") {
    const auto& days = demo::kInstrumentDrift.days;
    const auto found = compareInstruments(eighteen().facts, eighteen().between(days.from, days.until));
    REQUIRE(found);
    const auto& first = found->front();
    CHECK(eighteen().facts.instruments[static_cast<std::size_t>(first.instrument)].name ==
          demo::kInstrumentDrift.instrument);
    CHECK(first.strength == Strength::strong);
    CHECK(first.hotter.celsius() > 0.0);
    REQUIRE(first.aWeek);
    CHECK(first.aWeek->celsius() == Approx(7.0 * demo::kInstrumentDrift.aDay.celsius()).margin(0.25));
}

TEST_CASE("the false alarm is blamed on nobody", "[trending][planted]") {
    const auto& planted = eighteen().history.planted;
    REQUIRE(planted.alarmLoad != 0);
    const auto outcomes = lotOutcomes(eighteen().facts, {});
    const auto alarm = std::find_if(outcomes.begin(), outcomes.end(), [&](const auto& one) {
        return one.lot == static_cast<FactIndex>(planted.alarmRun);
    });
    REQUIRE(alarm != outcomes.end());
    CHECK_FALSE(alarm->failed);
    CHECK(alarm->overruledTests.size() == 1);
    const auto found =
        suspects(eighteen().facts, {eighteen().between(demo::kFalseAlarm.days.from + 20, 40), false, 1, 12});
    REQUIRE(found);
    CHECK_FALSE(found->names());
}
