// The axes, words and notes of the charts.
#include "kiosk/screens/presenting/trending/trends_axes.hpp"
#include "tests/kiosk/trending_places/trends_rig.hpp"

#include <limits>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

namespace {

constexpr std::int64_t kDay = TrendsRig::kDay;

} // namespace

TEST_CASE("an axis of days is told in months, weeks or days, in the shop's own time", "[trends]") {
    const wording::Speech speech;
    const TrendsHow how{speech, -300, TrendsRig::kMonday};
    CHECK(how.axisDay(0) == Approx(-300.0 / 1440.0)); // five hours behind UTC it is still the day before
    const auto year = dayAxis(TrendsRig::kMonday, TrendsRig::kMonday + 200 * kDay, how);
    REQUIRE(year.ticks.size() >= 6); // 5 Oct 2025 to 23 Apr 2026: Nov to Apr
    CHECK(year.days);
    CHECK(year.ticks.first().text == QStringLiteral("Nov"));
    CHECK(year.ticks[2].text == QStringLiteral("Jan 2026"));
    const auto weeks = dayAxis(TrendsRig::kMonday, TrendsRig::kMonday + 20 * kDay, how);
    CHECK(weeks.ticks.first().text == QStringLiteral("6 Oct")); // a Monday (ISO 8601 calendar)
    CHECK(weeks.ticks.size() == 3);
    const auto one = dayAxis(TrendsRig::kMonday, TrendsRig::kMonday, how);
    CHECK(one.from < one.to);
}

TEST_CASE("an axis of margins has even steps, signs, and its nought with the unit", "[trends]") {
    wording::Speech speech;
    speech.figures.unit = analytics::TemperatureUnit::fahrenheit;
    const TrendsHow how{speech, 0, 0};
    const auto axis = marginAxis(-6.0, 21.0, how);
    REQUIRE(axis.ticks.size() == 3);
    CHECK(axis.ticks[0].text == QStringLiteral("0\u00A0°F"));
    CHECK(axis.ticks[0].bold);
    CHECK(axis.ticks[1].text == QStringLiteral("+10"));
    CHECK(axis.ticks[2].text == QStringLiteral("+20"));
    CHECK(marginAxis(-25.0, 5.0, how).ticks.first().text == QStringLiteral("−20"));
    CHECK(marginAxis(3.0, 3.0, how).ticks.isEmpty());
    CHECK(marginAxis(std::numeric_limits<double>::quiet_NaN(), 3.0, how).ticks.isEmpty());
    CHECK(marginAxis(0.0, std::numeric_limits<double>::infinity(), how).ticks.isEmpty());
}

TEST_CASE("shares stand on nought and are told in per cent", "[trends]") {
    const wording::Speech speech;
    const TrendsHow how{speech, 0, 0};
    const auto axis = shareAxis(9.0, how);
    CHECK(axis.from == 0.0);
    CHECK(axis.ticks.first().text == QStringLiteral("0"));
    CHECK(axis.ticks[1].text == QStringLiteral("5\u00A0%"));
    CHECK(shareAxis(0.0, how).to > 0.0);
}

TEST_CASE("both units and both languages say the same chart", "[trends]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    trends.act("trends.dryer.north");
    const auto fahrenheit = trends.sheet().blocks.first().trend;
    rig.speech.figures.unit = analytics::TemperatureUnit::celsius;
    const auto celsius = trends.sheet().blocks.first().trend;
    REQUIRE(celsius.points.size() == fahrenheit.points.size());
    for (qsizetype i = 0; i < celsius.points.size(); ++i) {
        CHECK(celsius.points[i].y * 1.8 == Approx(fahrenheit.points[i].y)); // 9/5, ITS-90
    }
    const auto english = readAll(trends);
    rig.speech.language = &wording::Language::spanish();
    CHECK(reads(trends, "Tendencias · North"));
    CHECK(readAll(trends) != english);
}

TEST_CASE("under-cured episodes wear their film, and the cure line is there", "[trends]") {
    TrendsRig rig;
    rig.history();
    auto& trends = rig.opened();
    trends.act("trends.dryer.north");
    const auto chart = trends.sheet().blocks.first().trend;
    const auto bad = std::count_if(chart.points.begin(), chart.points.end(),
                                   [](const auto& point) { return point.mark == MarkKind::UnderCured; });
    CHECK(bad == 6);
    CHECK(std::any_of(chart.lines.begin(), chart.lines.end(),
                      [](const auto& line) { return line.stroke == TrendStroke::Proof; }));
    CHECK(leftOut(chart) == 0);
}

TEST_CASE("a strip is drawn as its interval, open where it is open", "[trends]") {
    TrendsRig rig;
    rig.history();
    const auto when = TrendsRig::kMonday + 13 * 7 * kDay + 3 * kDay;
    records::RunPlanned plan;
    plan.run = "run-strip";
    plan.number = 30'001;
    plan.dryer = "north";
    plan.fabric = "100% cotton";
    plan.layers = {{"white", "low-cure", {{"low-cure", 1.0}}}};
    records::LotOpened lot;
    lot.lot = "lot-strip";
    lot.run = plan.run;
    lot.dryer = "north";
    records::ActionTaken started;
    started.dryer = "north";
    started.action = records::FloorAction::started;
    rig.at(when, {plan, started, lot});
    auto reading = records::testing::sampleReading();
    reading.run = plan.run;
    reading.lot = lot.lot;
    reading.dryer = "north";
    reading.instrument = "strips";
    reading.reason = records::ReadingReason::drawn;
    reading.evidence = records::StripSeen{};
    reading.verdict->word = analytics::Word::cured;
    reading.verdict->margin = analytics::MarginRange{analytics::TemperatureDifference::fromCelsius(1.0), std::nullopt};
    rig.at(when + 600'000, {reading});
    auto& trends = rig.opened();
    trends.act("trends.dryer.north");
    const auto chart = trends.sheet().blocks.first().trend;
    REQUIRE(chart.points.last().span);
    CHECK(chart.points.last().span->low == Approx(1.8)); // °F
    CHECK(chart.points.last().span->openHigh);
    CHECK(reads(trends, "One reading is a strip"));
}
