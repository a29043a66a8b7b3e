#include "analytics/cure/hold_level.hpp"
#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;
using namespace ride;

TEST_CASE("with hold 0 the sustained peak decides at L + g and the raw peak at L − g", "[cure][verdict]") {
    // decisions 4, hold 0: L = 160, g = 2.84897: cured from 162.84897, under-cured up to 157.15103
    const auto run = plan({family(160.0)});
    CHECK(wordOf(judge(run, trapezoid(162.85))) == "cured");
    CHECK(wordOf(judge(run, trapezoid(162.84))) == "not proven");
    CHECK(wordOf(judge(run, trapezoid(157.16))) == "not proven");
    CHECK(wordOf(judge(run, trapezoid(157.15))) == "under-cured");
    CHECK(says(judge(run, trapezoid(162.85)), ReasonCode::reachedCure));
    CHECK(says(judge(run, trapezoid(162.84)), ReasonCode::overCureWithinGuard));
    CHECK(says(judge(run, trapezoid(159.9)), ReasonCode::underCureWithinGuard));
    CHECK(says(judge(run, trapezoid(157.15)), ReasonCode::belowCure));
}

TEST_CASE("a needle above the limit is neither sustained nor below it", "[cure][verdict]") {
    // 165 °C for one sample only: P is 159.5 (three samples of the ramps, 3 °C/s × 0.5 s), raw 161: not proven
    const auto verdict = judge(plan({family(160.0)}), trapezoid(161.0, 0.0));
    CHECK(wordOf(verdict) == "not proven");
    CHECK(verdict.raw->t.celsius() == Approx(161.0).margin(0.5));
    CHECK(verdict.sustained->t < verdict.raw->t);
}

TEST_CASE("the verdict carries peak, margin, guard and limit of the hold 0 layer", "[cure][verdict]") {
    const auto verdict = judge(plan({family(160.0)}, ceilings(180.0)), trapezoid(166.0));
    REQUIRE(verdict.margin);
    CHECK(verdict.margin->low->celsius() == Approx(6.0)); // P − L = 166 − 160
    CHECK(verdict.margin->high == verdict.margin->low);
    CHECK(verdict.upperMargin->celsius() == Approx(14.0)); // H − raw = 180 − 166
    CHECK(verdict.guard.celsius() == Approx(kGuard).epsilon(1e-7));
    CHECK(verdict.layers.front().limit.limit == celsius(160.0));
    // decisions 2: Φ((H − t)/u) − Φ((L − t)/u) = Φ(8.083) − Φ(−3.4641) = 1 − 0.00026596 (tables: Φ(−3.4641) = 0.000266)
    CHECK(verdict.conformance->fraction() == Approx(0.999734).margin(1e-6));
}

TEST_CASE("a hold is reached by the time at L + g and failed by the time at L − g", "[cure][verdict]") {
    // decisions 4, hold h = 90 s at 160. Peak 170, ramps 3 °C/s: time at 162.84897 = p + 2·7.15103/3 = p + 4.7674,
    // at 157.15103 = p + 2·12.84897/3 = p + 8.5660. Cured from p = 85.2326, under-cured below p = 81.4340.
    const auto run = plan({family(160.0, 90.0)});
    const double step = 1.0 / 3.0;
    CHECK(wordOf(judge(run, trapezoid(170.0, 85.5, step))) == "cured");
    CHECK(wordOf(judge(run, trapezoid(170.0, 85.0, step))) == "not proven");
    CHECK(wordOf(judge(run, trapezoid(170.0, 81.5, step))) == "not proven");
    CHECK(wordOf(judge(run, trapezoid(170.0, 81.0, step))) == "under-cured");
}

TEST_CASE("a hold short by less than one interval says so", "[cure][verdict]") {
    // p = 85: 89.77 s of 90 s, short by 0.23 s, less than the interval of 0.333 s
    const auto run = plan({family(160.0, 90.0)});
    const auto close = judge(run, trapezoid(170.0, 85.0, 1.0 / 3.0));
    CHECK(says(close, ReasonCode::holdShortByOneInterval));
    CHECK(reasonOf(close, ReasonCode::holdWithinGuard).duration->count() == Approx(89.767).margin(0.01));
    CHECK_FALSE(says(judge(run, trapezoid(170.0, 84.0, 1.0 / 3.0)), ReasonCode::holdShortByOneInterval));
}

TEST_CASE("the margin of a hold is the highest level kept for it", "[cure][verdict]") {
    // p + 2·(170 − λ)/3 = 90: λ = 170 − 1.5·(90 − p); p = 86: 164, margin 4; p = 80: 155, margin −5; p = 100: the
    // plateau itself, margin 10
    const auto run = plan({family(160.0, 90.0)});
    const auto margin = [&](double plateau) {
        return judge(run, trapezoid(170.0, plateau, 1.0 / 3.0)).margin->low->celsius();
    };
    CHECK(margin(86.0) == Approx(4.0).margin(0.01));
    CHECK(margin(80.0) == Approx(-5.0).margin(0.01));
    CHECK(margin(100.0) == Approx(10.0).margin(1e-9));
}

TEST_CASE("a hold asked of a trace shorter than it has a margin at most, not a number", "[cure][verdict]") {
    const auto verdict = judge(plan({family(160.0, 900.0)}), trapezoid(170.0, 30.0));
    CHECK(wordOf(verdict) == "under-cured");
    REQUIRE(verdict.margin);
    CHECK_FALSE(verdict.margin->low);
    CHECK(verdict.margin->high->celsius() == Approx(25.0 - 160.0)); // the coldest sample lies that far below
}

TEST_CASE("a hold is not failed before the trace has come down to L − g", "[cure][verdict]") {
    // Fallen by 20 °C from 190, but the last sample, 170, is above 157.15: more heat may have come
    const auto run = plan({family(160.0, 90.0)});
    const Knots hot{{0.0, 25.0}, {10.0, 25.0}, {65.0, 190.0}, {70.0, 190.0}, {77.0, 169.0}};
    const auto open = judge(run, along(hot));
    CHECK(wordOf(open) == "not proven");
    CHECK(advises(open, Remedy::waitForCoolDown));
    auto cold = hot;
    cold.push_back({88.0, 136.0});
    CHECK(wordOf(judge(run, along(cold))) == "under-cured");
}

TEST_CASE("an unbroken hold survives a short shallow dip and no other", "[cure][verdict]") {
    // decisions 4: at λ = 162.85 a dip of at most 2 s down to λ − g = 160 does not end the spell, but does not count.
    auto ink = family(160.0, 60.0);
    ink.unbroken = true;
    const auto run = plan({ink});
    const auto dip = [](double bottom, double seconds) {
        return along({{0.0, 25.0},
                      {10.0, 25.0},
                      {60.0, 165.0},
                      {95.0, 165.0},
                      {95.0 + seconds / 2.0, bottom},
                      {95.0 + seconds, 165.0},
                      {130.0 + seconds, 165.0},
                      {170.0 + seconds, 45.0}},
                     0.25);
    };
    CHECK(wordOf(judge(run, dip(161.0, 2.0))) == "cured");
    CHECK(wordOf(judge(run, dip(155.0, 2.0))) == "not proven");  // deeper than 160
    CHECK(wordOf(judge(run, dip(161.0, 12.0))) == "not proven"); // below 162.85 for 12·1.85/4 = 6.4 s
    // accumulated, the same rides are cured: some 70 s at 162.85
    ink.unbroken = false;
    CHECK(wordOf(judge(plan({ink}), dip(155.0, 2.0))) == "cured");
}

TEST_CASE("the time of a dip counts for under-cured and not for cured", "[cure][verdict]") {
    // λ = L − g = 157.15, λ − g = 154.3. Two spells of 30 s with a dip to 156 between: with the dip's time about 60.9 s
    auto ink = family(160.0, 64.0);
    ink.unbroken = true;
    const Knots knots{{0.0, 25.0},   {10.0, 25.0},  {57.0, 166.0},  {88.0, 166.0},
                      {89.0, 156.0}, {90.0, 166.0}, {121.0, 166.0}, {163.0, 40.0}};
    const auto trace = along(knots, 0.25);
    const auto pass = cleanRecording(trace, nullptr).passes.front();
    const auto with = longestSpellBridgingDips(pass, celsius(160.0 - kGuard), degrees(kGuard), true);
    const auto without = longestSpellBridgingDips(pass, celsius(160.0 - kGuard), degrees(kGuard), false);
    CHECK(with - without > Duration{0.1});
    ink.hold = (with + without) / 2.0; // between the two: with the dip's time it is not too short
    CHECK(wordOf(judge(plan({ink}), trace)) == "not proven");
    ink.hold = with + Duration{0.1};
    CHECK(wordOf(judge(plan({ink}), trace)) == "under-cured");
}

TEST_CASE("cured at the lower limit exactly when the margin is at least the guard", "[cure][verdict]") {
    auto unbroken = family(160.0, 60.0);
    unbroken.unbroken = true;
    const auto families = {family(160.0), family(160.0, 60.0), unbroken, familyWithPairs()};
    for (const auto& ink : families) {
        int cured = 0;
        int other = 0;
        for (int i = 0; i <= 120; ++i) {
            const auto verdict = judge(plan({ink}), trapezoid(158.0 + 0.1 * i, 58.0));
            REQUIRE(verdict.layers.front().margin->low);
            const bool byMargin = atLeast(*verdict.layers.front().margin->low, verdict.layers.front().limit.guard);
            CHECK((verdict.word == Word::cured) == byMargin);
            ++(byMargin ? cured : other);
        }
        CHECK(cured > 0);
        CHECK(other > 0);
    }
}

TEST_CASE("the level search agrees with the time above a level for a jagged trace", "[cure][verdict]") {
    Pass pass;
    std::uint32_t dice = 7;
    for (int i = 0; i < 4000; ++i) {
        dice = dice * 1664525U + 1013904223U; // Numerical Recipes' constants; any would do
        const double t = 100.0 + static_cast<double>(dice >> 16U) / 65536.0 * 80.0;
        pass.samples.push_back({Duration{i * 0.1}, celsius(t), celsius(t)});
    }
    pass.joins.assign(3999, Join::line);
    pass.joins[1000] = Join::gap;
    for (const double hold : {0.5, 40.0, 200.0, 399.0}) {
        const auto level = highestLevelKept(pass, Duration{hold}, {celsius(500.0), false});
        REQUIRE(level);
        CHECK(timeAtOrAbove(pass, *level - degrees(1e-6)).total.count() >= hold - 1e-6);
        CHECK(timeAtOrAbove(pass, *level + degrees(1e-6)).total.count() <= hold + 1e-6);
    }
    CHECK_FALSE(highestLevelKept(pass, Duration{400.0}, {celsius(500.0), false}));
}
