#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;
using namespace ride;

TEST_CASE("the hard ceiling is exceeded at H + g and kept at H − g", "[cure][verdict]") {
    // H = 175, g = 2.84897: kept to 172.15103, overheated from 177.84897
    const auto run = plan({family(160.0)}, ceilings(175.0));
    CHECK(wordOf(judge(run, trapezoid(172.15))) == "cured");
    const auto near = judge(run, trapezoid(172.16));
    CHECK(wordOf(near) == "not proven");
    CHECK(says(near, ReasonCode::hardCeilingNotRuledOut));
    CHECK(near.layers.front().word == Word::cured);
    CHECK(wordOf(judge(run, trapezoid(177.84))) == "not proven");
    const auto over = judge(run, trapezoid(177.85));
    CHECK(wordOf(over) == "overheated");
    CHECK(reasonOf(over, ReasonCode::aboveHardCeiling).subject == "cloth");
    CHECK(advises(over, Remedy::sendProbeCooler));
}

TEST_CASE("an ink's own ceiling names the layer and gives it the word", "[cure][verdict]") {
    auto delicate = family(150.0);
    delicate.ceiling = celsius(165.0);
    const auto verdict = judge(plan({family(150.0), delicate}, ceilings(190.0)), trapezoid(170.0));
    CHECK(wordOf(verdict) == "overheated");
    CHECK(reasonOf(verdict, ReasonCode::aboveHardCeiling).layer == 2);
    CHECK(reasonOf(verdict, ReasonCode::aboveHardCeiling).subject == "ink at 150");
    CHECK(verdict.layers[0].word == Word::cured);
    CHECK(verdict.layers[1].word == Word::overheated);
}

TEST_CASE("near the bleed ceiling the word stays cured and a bleed watch is due", "[cure][verdict]") {
    auto ink = family(150.0);
    ink.bleedResistance = BleedResistance::low;
    const auto run = plan({ink}, ceilings(190.0, 165.0));
    const auto below = judge(run, trapezoid(162.1)); // 165 − 2.849 = 162.151
    CHECK(wordOf(below) == "cured");
    CHECK_FALSE(below.bleedNotRuledOut);
    CHECK_FALSE(below.bleedWatchDue);
    const auto near = judge(run, trapezoid(162.2));
    CHECK(wordOf(near) == "cured");
    CHECK(near.bleedNotRuledOut);
    CHECK(near.bleedWatchDue);
    CHECK(near.remedies == std::vector<Remedy>{Remedy::watchForBleed});
    CHECK(near.upperMargin->celsius() == Approx(2.8)); // the smaller upper, 165 − 162.2
    const auto over = judge(run, trapezoid(167.9));    // 165 + 2.849 = 167.849
    CHECK(wordOf(over) == "overheated");
    CHECK(says(over, ReasonCode::aboveBleedCeiling));
}

TEST_CASE("a layer that resists bleed less than it must makes a watch due, cured or not", "[cure][verdict]") {
    const auto verdict = judge(plan({family(150.0)}, ceilings(190.0, 165.0)), trapezoid(158.0));
    CHECK(wordOf(verdict) == "cured");
    CHECK_FALSE(verdict.bleedNotRuledOut);
    CHECK(verdict.bleedWatchDue);
    CHECK(says(verdict, ReasonCode::bleedsAnyway));
}

TEST_CASE("a reading on a closed window is never cured", "[cure][verdict]") {
    // lower 170 above hard upper 165; the bleed ceiling closes it too when lower + 2 °C > bleed
    const auto hard = plan({family(170.0)}, ceilings(165.0));
    const auto bleed = plan({family(160.0)}, ceilings(200.0, 161.5));
    for (double peak = 150.0; peak < 185.0; peak += 0.25) {
        CHECK(judge(hard, trapezoid(peak)).word != Word::cured);
        CHECK(judge(bleed, trapezoid(peak)).word != Word::cured);
    }
    const auto verdict = judge(bleed, trapezoid(163.0));
    CHECK(says(verdict, ReasonCode::windowClosed));
    CHECK(advises(verdict, Remedy::takeWayOut));
}

TEST_CASE("within one reading the words keep their order", "[cure][verdict]") {
    // decisions 4: under-cured, then overheated, then not proven, then cured; the other words are named
    auto delicate = family(140.0);
    delicate.ceiling = celsius(150.0);
    const auto both = judge(plan({delicate, family(170.0)}), trapezoid(160.0)); // ≥ 152.85 and ≤ 167.15
    CHECK(wordOf(both) == "under-cured");
    CHECK(both.reasons.front().code == ReasonCode::belowCure);
    CHECK(says(both, ReasonCode::aboveHardCeiling));
    const auto hotAndOpen = judge(plan({delicate, family(160.0)}), trapezoid(160.0));
    CHECK(wordOf(hotAndOpen) == "overheated");
    CHECK(says(hotAndOpen, ReasonCode::overCureWithinGuard));
    const auto coolAndOpen = judge(plan({family(170.0), family(160.0)}), trapezoid(160.0));
    CHECK(wordOf(coolAndOpen) == "under-cured");
    const auto openAndCured = judge(plan({family(140.0), family(160.0)}), trapezoid(160.0));
    CHECK(wordOf(openAndCured) == "not proven");
    CHECK(says(openAndCured, ReasonCode::reachedCure));
}

TEST_CASE("a bad bucket turns only cured into not proven", "[cure][verdict]") {
    auto run = plan({family(160.0)}, ceilings(180.0));
    run.layers.front().bucketTrouble = BucketTrouble{"K7F", BucketFault::pastPotLife};
    const auto hot = judge(run, trapezoid(168.0));
    CHECK(wordOf(hot) == "not proven");
    CHECK(hot.layers.front().word == Word::notProven);
    CHECK(reasonOf(hot, ReasonCode::bucketPastPotLife).subject == "K7F");
    CHECK(advises(hot, Remedy::freshBucket));
    CHECK(wordOf(judge(run, trapezoid(150.0))) == "under-cured");
    CHECK(wordOf(judge(run, trapezoid(185.0))) == "overheated");
}

TEST_CASE("a lifted probe turns cured and under-cured into not proven, overheated stands", "[cure][verdict]") {
    const auto run = plan({family(160.0)}, ceilings(180.0));
    ReadingContext lifted;
    lifted.probeLifted = true;
    const auto word = [&](double peak) { return wordOf(judge(run, trapezoid(peak), inDate(), {}, lifted)); };
    CHECK(word(168.0) == "not proven");
    CHECK(word(150.0) == "not proven");
    CHECK(word(185.0) == "overheated");
    const auto verdict = judge(run, trapezoid(168.0), inDate(), {}, lifted);
    CHECK(verdict.reasons.front().code == ReasonCode::probeLifted);
    CHECK_FALSE(verdict.margin); // has no margin, so it does not use up a retake
}

TEST_CASE("an instrument out of date proves nothing cured but may show the rest", "[cure][verdict]") {
    auto instrument = probe();
    instrument.checks.clear();
    const auto old = inDate(instrument);
    const auto run = plan({family(160.0)}, ceilings(180.0));
    const auto verdict = judge(run, trapezoid(168.0), old);
    CHECK(wordOf(verdict) == "not proven");
    CHECK_FALSE(verdict.couldProve);
    CHECK(reasonOf(verdict, ReasonCode::noCertificateOrCheckInDate).subject == "probe");
    CHECK(wordOf(judge(run, trapezoid(150.0), old)) == "under-cured");
    CHECK(wordOf(judge(run, trapezoid(185.0), old)) == "overheated");
}

TEST_CASE("an instrument without a known tolerance shows nothing at all", "[cure][verdict]") {
    auto instrument = probe();
    instrument.toleranceClass.reset();
    for (const auto& ink : {family(160.0), family(160.0, 30.0), familyWithPairs()}) {
        for (const double peak : {150.0, 168.0, 195.0}) {
            const auto verdict = judge(plan({ink}, ceilings(180.0)), trapezoid(peak), inDate(instrument));
            CHECK(wordOf(verdict) == "not proven");
            CHECK(says(verdict, ReasonCode::noToleranceKnown));
        }
    }
}

TEST_CASE("a run without layers is refused", "[cure][verdict]") {
    const auto verdict = judge(plan({}), trapezoid(168.0));
    CHECK(wordOf(verdict) == "refused");
    CHECK(says(verdict, ReasonCode::emptyLayerList));
}
