// Margins by episode, by hand and against what was planted; limits of an individuals chart.
#include "kiosk/shop/trending/margin_trend.hpp"
#include "tests/kiosk/trending/support/invented.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::trending;
using namespace holdfast::kiosk::shop::trending::testing;
namespace st = holdfast::analytics::statistics;

namespace {

/// Scattered about 6 by less than half a kelvin, the same every time.
std::vector<double> steady(std::size_t count) {
    std::vector<double> margins;
    for (std::size_t i = 0; i < count; ++i) {
        margins.push_back(6.0 + 0.4 * (static_cast<double>((i * 7 + 3) % 11) / 5.0 - 1.0));
    }
    return margins;
}

} // namespace

TEST_CASE("limits are three moving ranges over d2 from the mean", "[trending]") {
    Invented book;
    book.days({5.0, 6.0, 4.0, 5.0});
    const auto trend = marginTrend(book.facts, {});
    REQUIRE(trend.limits);
    // mean 5; moving ranges 1, 2, 1: mean 4/3; 3 × (4/3)/1.128379 = 3.5449 (NIST/SEMATECH e-Handbook 6.3.2.2, d2 =
    // 2/√π)
    CHECK(trend.limits->centre.celsius() == Approx(5.0));
    CHECK(trend.limits->upper.celsius() == Approx(8.5449).epsilon(1e-4));
    CHECK(trend.limits->lower.celsius() == Approx(1.4551).epsilon(1e-4));
    const auto& caveats = trend.limits->caveats;
    CHECK(std::find(caveats.begin(), caveats.end(), st::ChartCaveat::FewPoints) != caveats.end());
    REQUIRE_FALSE(trend.drift);
    CHECK(trend.drift.error() == Refusal{NoFigure::tooFewEpisodes, 4, 20}); // decisions 6
    REQUIRE_FALSE(trend.below);
    CHECK(trend.below.error() == Refusal{NoFigure::tooFewEpisodes, 4, 5}); // decisions 6
}

TEST_CASE("a margin that sinks is said in weeks as a range", "[trending]") {
    Invented book;
    auto margins = steady(70);
    for (std::size_t i = 0; i < margins.size(); ++i) {
        margins[i] -= 0.5 / 7.0 * static_cast<double>(i); // half a kelvin a week
    }
    book.days(margins);
    const auto trend = marginTrend(book.facts, {});
    REQUIRE(trend.drift);
    CHECK(trend.drift->aWeek.celsius() == Approx(-0.5).margin(0.02));
    CHECK(trend.drift->standing == st::DriftStanding::Crosses);
    // at 6 − 69/7 × 0.5 = 1.07 K the cure line lies 2.1 weeks ahead
    CHECK(trend.drift->weeksEarliest <= 2.15);
    CHECK(trend.drift->weeksLatest >= 2.1);
    CHECK(trend.drift->leastAWeek <= trend.drift->aWeek);
}

TEST_CASE("a step is dated as a set of days with what was known to change in it", "[trending]") {
    Invented book;
    auto margins = steady(40);
    for (std::size_t i = 25; i < margins.size(); ++i) {
        margins[i] -= 3.0;
    }
    book.days(margins);
    const auto turned = kMonday + 25 * kDayMs + 6 * kHourMs;
    records::TrendEvent event;
    event.at = turned;
    event.kind = records::TrendEventKind::beltSpeed;
    event.dryer = 0;
    book.facts.events = {event};
    const auto trend = marginTrend(book.facts, {});
    REQUIRE(trend.since);
    CHECK(trend.since->earliest() <= turned);
    CHECK(trend.since->latest() >= turned);
    CHECK(trend.since->latest() - trend.since->earliest() <= 3 * kDayMs);
    CHECK(trend.since->before == Approx(6.0).margin(0.1));
    CHECK(trend.since->after == Approx(3.0).margin(0.1));
    CHECK(trend.since->events == std::vector<FactIndex>{0});
    TrendFilter south;
    south.dryer = "ds";
    CHECK(eventsIn(book.facts, south, trend.since->possible).empty());
    CHECK_FALSE(trend.alarms.empty());
}

TEST_CASE("a steady margin has neither drift nor change, and few pieces below the limit", "[trending]") {
    Invented book;
    book.days(steady(40));
    const auto trend = marginTrend(book.facts, {});
    REQUIRE(trend.drift);
    CHECK(trend.drift->standing == st::DriftStanding::NotShown);
    REQUIRE_FALSE(trend.since);
    CHECK(trend.since.error().why == NoFigure::noChange);
    REQUIRE(trend.below);
    CHECK(trend.below->perHundred < 0.1);
    CHECK(trend.below->atMostPerHundred < 1.0);
    CHECK(trend.below->oneAnEpisode);
    CHECK(trend.below->bound95.celsius() > 4.5);
}

TEST_CASE("a frozen baseline keeps its limits", "[trending]") {
    Invented book;
    book.days(steady(60));
    const auto before = marginTrend(book.facts, {});
    const auto frozen = frozenBaseline(before, "spring", 0, 30);
    REQUIRE(frozen);
    for (auto& reading : book.facts.readings) {
        reading.margin.low = reading.margin.high =
            *reading.margin.low - holdfast::analytics::TemperatureDifference::fromCelsius(4.0);
    }
    MarginQuestion question;
    question.baseline = *frozen;
    const auto after = marginTrend(book.facts, question);
    REQUIRE(after.limits);
    CHECK(after.limits->baseline == "spring");
    CHECK(after.limits->centre.celsius() == Approx(frozen->center));
    REQUIRE_FALSE(after.alarms.empty());
    CHECK(after.alarms.front().side == st::SignalSide::Below);
    CHECK_FALSE(frozenBaseline(before, "short", 0, 19));
}

TEST_CASE("one point, equal points and none are said, not guessed", "[trending][hostile]") {
    Invented book;
    const auto nothing = marginTrend(book.facts, {});
    CHECK(nothing.limits.error().why == NoFigure::noReadings);
    book.days({5.0});
    const auto one = marginTrend(book.facts, {});
    CHECK(one.points.size() == 1);
    CHECK(one.limits.error() == Refusal{NoFigure::tooFewEpisodes, 1, 2});
    CHECK(one.leadsTo == 0);
    Invented equal;
    equal.days(std::vector<double>(30, 5.0));
    const auto same = marginTrend(equal.facts, {});
    REQUIRE(same.limits);
    CHECK(same.limits->upper.celsius() == Approx(5.0));
    CHECK(same.below.error().why == NoFigure::allEqual);
    CHECK(same.since.error().why == NoFigure::allEqual);
    CHECK_FALSE(same.drift);
}
