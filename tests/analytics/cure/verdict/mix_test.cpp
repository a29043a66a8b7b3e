#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;
using namespace ride;

namespace {

RunPlan mixed(std::vector<InkFamily> parts) {
    std::vector<MixPart> list;
    for (auto& part : parts) {
        list.push_back({pureInk(std::move(part)), 1.0});
    }
    RunPlan run = plan({});
    run.layers.push_back({"white", *mixInks("mix", list), std::nullopt});
    return run;
}

} // namespace

TEST_CASE("a mix is under-cured by the part that is too cool, and names it", "[cure][verdict][mix]") {
    // parts at 160 and 141: at 150 the part at 160 fails (≤ 157.15)
    const auto verdict = judge(mixed({family(160.0), family(141.0)}), trapezoid(150.0));
    CHECK(wordOf(verdict) == "under-cured");
    CHECK(reasonOf(verdict, ReasonCode::mixPartTooCool).subject == "ink at 160");
    CHECK(reasonOf(verdict, ReasonCode::mixPartTooCool).limit == celsius(160.0));
}

TEST_CASE("between the parts' own conditions and the whole's a mix is not proven", "[cure][verdict][mix]") {
    // parts (160 °C, 0 s) and (140 °C, 60 s): the whole asks 160 °C for 60 s. A peak of 170 with 30 s above 157 fails
    // the whole; the first part has its 160 °C, and the second 30 + 2·30/3 = 50 s above 140: 45 s plateau gives 65 s.
    const auto run = mixed({family(160.0), family(140.0, 60.0)});
    const auto between = judge(run, trapezoid(170.0, 45.0));
    CHECK(wordOf(between) == "not proven");
    CHECK(says(between, ReasonCode::mixBetweenPartAndWhole));
    // 2 s plateau: 2 + 2·(170 − 137.15)/3 = 23.9 s at 140 − g: the second part fails by itself
    const auto failed = judge(run, trapezoid(170.0, 2.0));
    CHECK(wordOf(failed) == "under-cured");
    CHECK(reasonOf(failed, ReasonCode::mixPartTooCool).subject == "ink at 140");
    CHECK(wordOf(judge(run, trapezoid(170.0, 60.0))) == "cured");
}

TEST_CASE("a part with pairs in a mix is failed by its own generous dose only", "[cure][verdict][mix]") {
    // The whole counts the part as 165 °C for 30 s. At 160 °C for 36 s the generous dose is 33.2 s (dose tests): the
    // part does not fail; at 160 °C for 30 s it is 28.5 s and fails.
    const auto run = mixed({familyWithPairs(), family(150.0)});
    const auto between = judge(run, trapezoid(160.0, 36.0, 1.0 / 3.0));
    CHECK(wordOf(between) == "not proven");
    CHECK(says(between, ReasonCode::mixBetweenPartAndWhole));
    CHECK(wordOf(judge(run, trapezoid(160.0, 30.0, 1.0 / 3.0))) == "under-cured");
    CHECK(wordOf(judge(run, trapezoid(170.0, 30.0, 1.0 / 3.0))) == "cured"); // 30 + 1.4 s at 167.85 °C
}

TEST_CASE("pairs are judged by dose alone", "[cure][verdict]") {
    // Doses and margins of the dose tests: cautious 32.2 ≥ 30, 24.5 < 30 ≤ 48.8, generous 28.5 < 30
    const auto run = plan({familyWithPairs()});
    const auto cured = judge(run, trapezoid(168.0, 28.0, 1.0 / 3.0));
    CHECK(wordOf(cured) == "cured");
    CHECK(cured.margin->low->celsius() == Approx(3.5785548).margin(1e-5));
    CHECK(reasonOf(cured, ReasonCode::reachedDose).duration->count() == Approx(32.1629827).epsilon(1e-6));
    CHECK(cured.layers.front().limit.limit == celsius(155.0)); // its C is T2
    const auto open = judge(run, trapezoid(165.0, 30.0, 1.0 / 3.0));
    CHECK(wordOf(open) == "not proven");
    CHECK(says(open, ReasonCode::doseWithinGuard));
    const auto failed = judge(run, trapezoid(160.0, 30.0, 1.0 / 3.0));
    CHECK(wordOf(failed) == "under-cured");
    CHECK(reasonOf(failed, ReasonCode::doseTooSmall).duration->count() == Approx(28.4630488).epsilon(1e-6));
}

TEST_CASE("pairs are not failed before the trace has come down below the gel range", "[cure][verdict]") {
    // ends at 120 °C, above g_lo − g = 107.15: what comes may still count
    const Knots knots{{0.0, 25.0}, {10.0, 25.0}, {55.0, 160.0}, {85.0, 160.0}, {98.0, 121.0}};
    CHECK(wordOf(judge(plan({familyWithPairs()}), along(knots))) == "not proven");
    auto colder = knots;
    colder.push_back({103.0, 106.0});
    CHECK(wordOf(judge(plan({familyWithPairs()}), along(colder))) == "under-cured");
}

TEST_CASE("each layer keeps its own condition", "[cure][verdict]") {
    // 150 °C for 60 s and 165 °C for 0 s: a ride of 170 with 30 s above 150 + g: 0 + 2·17.15/3 + p
    const auto run = plan({family(150.0, 60.0), family(165.0)});
    const auto verdict = judge(run, trapezoid(170.0, 50.0));
    CHECK(wordOf(verdict) == "cured"); // 61.4 s at 152.85; a C and an h are never asked together
    const auto cool = judge(run, trapezoid(160.0, 80.0));
    CHECK(wordOf(cool) == "under-cured");
    REQUIRE(cool.layers.size() == 2);
    CHECK(cool.layers[0].word == Word::cured);
    CHECK(cool.layers[1].word == Word::underCured);
    CHECK(cool.margin->low->celsius() == Approx(-5.0)); // the smaller of the layers'
}
