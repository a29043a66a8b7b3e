#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;
using namespace ride;

namespace {

Temperature fahrenheit(double t) {
    return Temperature::fromFahrenheit(t);
}

/// 280 to 340 °F in steps of 5, tolerance 2 °F, in wet ink: an edge lies 2 °F + 1.6448536 × 1.5 °C × 9/5 = 6.44110 °F
/// off its step (decisions 4, Strip).
Instrument strip() {
    Instrument instrument;
    instrument.name = "strip";
    instrument.kind = InstrumentKind::strip;
    StripSteps steps;
    for (double f = 280.0; f <= 340.0; f += 5.0) {
        steps.steps.push_back(fahrenheit(f));
    }
    steps.tolerance = TemperatureDifference::fromFahrenheit(2.0);
    instrument.strip = steps;
    return instrument;
}

/// Index of a step.
std::size_t step(double f) {
    return static_cast<std::size_t>((f - 280.0) / 5.0 + 0.5);
}

InkFamily atFahrenheit(double cure, double hold = 0.0) {
    auto ink = family(fahrenheit(cure).celsius(), hold);
    return ink;
}

Verdict strips(const RunPlan& run, std::optional<double> dark, std::optional<double> light) {
    StripReading reading;
    if (dark) {
        reading.lastDark = step(*dark);
    }
    if (light) {
        reading.firstLight = step(*light);
    }
    return judgeStrip(run, reading, inDate(strip()), {}, Duration{45.0});
}

Instrument spot() {
    auto instrument = probe();
    instrument.kind = InstrumentKind::spot;
    return instrument;
}

Verdict spots(const RunPlan& run, double held, std::optional<Duration> dwell = std::nullopt) {
    return judgeSpot(run, {celsius(held), celsius(30.0), degrees(1.5)}, inDate(spot()), {}, dwell);
}

/// Stated ±2 °C, u² = 2²/3 + 3² = 10.3333, u = 3.2145503, g = 5.2874648 °C.
Instrument gun() {
    Instrument instrument;
    instrument.kind = InstrumentKind::gun;
    instrument.statedTolerance = degrees(2.0);
    instrument.checks = probe().checks;
    return instrument;
}

Verdict shoots(const RunPlan& run, double surface, ShotPlace place, std::optional<Duration> dwell = std::nullopt) {
    return judgeSurface(run, {celsius(surface), place}, inDate(gun()), {}, dwell);
}

} // namespace

TEST_CASE("a strip is cured between its guarded edges", "[cure][strip]") {
    // 295 dark, 300 light: lo = 288.559 °F, hi = 306.441 °F
    CHECK(wordOf(strips(plan({atFahrenheit(288.5)}, ceilings(fahrenheit(306.5).celsius())), 295.0, 300.0)) == "cured");
    const auto low = strips(plan({atFahrenheit(288.6)}), 295.0, 300.0);
    CHECK(wordOf(low) == "not proven");
    CHECK(says(low, ReasonCode::stripInterval));
    const auto high = strips(plan({atFahrenheit(288.5)}, ceilings(fahrenheit(306.4).celsius())), 295.0, 300.0);
    CHECK(wordOf(high) == "not proven");
    const auto verdict = strips(plan({atFahrenheit(285.0)}), 295.0, 300.0);
    CHECK(verdict.margin->low->fahrenheit() == Approx(3.55890).margin(1e-4));
    CHECK(verdict.margin->high->fahrenheit() == Approx(21.44110).margin(1e-4));
}

TEST_CASE("a strip is under-cured below its light edge and overheated above its dark one", "[cure][strip]") {
    // 290 dark, 295 light: lo = 283.559, hi = 301.441 °F
    CHECK(wordOf(strips(plan({atFahrenheit(301.5)}), 290.0, 295.0)) == "under-cured");
    CHECK(wordOf(strips(plan({atFahrenheit(301.4)}), 290.0, 295.0)) == "not proven");
    CHECK(wordOf(strips(plan({atFahrenheit(270.0)}, ceilings(fahrenheit(283.5).celsius())), 290.0, 295.0)) ==
          "overheated");
    CHECK(wordOf(strips(plan({atFahrenheit(270.0)}, ceilings(fahrenheit(283.6).celsius())), 290.0, 295.0)) ==
          "not proven");
}

TEST_CASE("an open end of a strip proves nothing on that side", "[cure][strip]") {
    const auto run = plan({atFahrenheit(300.0)}, ceilings(fahrenheit(360.0).celsius()));
    const auto allDark = strips(run, 340.0, std::nullopt);
    CHECK(wordOf(allDark) == "not proven"); // no upper edge
    CHECK_FALSE(allDark.margin->high);
    CHECK(wordOf(strips(plan({atFahrenheit(300.0)}), 340.0, std::nullopt)) == "cured"); // nothing above it asked
    const auto noneDark = strips(run, std::nullopt, 280.0);
    CHECK(wordOf(noneDark) == "under-cured"); // hi = 286.441
    CHECK_FALSE(noneDark.margin->low);
}

TEST_CASE("a half-dark step belongs to neither edge", "[cure][strip]") {
    // 295 half dark between 290 and 300: lo = 283.559, hi = 306.441
    const auto verdict = strips(plan({atFahrenheit(283.5)}), 290.0, 300.0);
    CHECK(wordOf(verdict) == "cured");
    CHECK(verdict.peakRange->high->fahrenheit() == Approx(306.44110).margin(1e-4));
}

TEST_CASE("a strip near the bleed ceiling stays cured and asks for a watch", "[cure][strip]") {
    auto ink = atFahrenheit(285.0);
    ink.bleedResistance = BleedResistance::low;
    const auto run = plan({ink}, ceilings(fahrenheit(350.0).celsius(), fahrenheit(300.0).celsius()));
    const auto verdict = strips(run, 295.0, 300.0);
    CHECK(wordOf(verdict) == "cured");
    CHECK(verdict.bleedNotRuledOut);
    CHECK(wordOf(strips(run, 310.0, 315.0)) == "overheated"); // lo = 303.559
}

TEST_CASE("a strip never proves a hold or a dose, but may fail them", "[cure][strip]") {
    const auto hold = strips(plan({atFahrenheit(285.0, 60.0)}), 300.0, 305.0);
    CHECK(wordOf(hold) == "not proven");
    CHECK_FALSE(hold.couldProve);
    CHECK(says(hold, ReasonCode::holdNeedsTrace));
    CHECK_FALSE(hold.margin->low);
    CHECK(wordOf(strips(plan({atFahrenheit(320.0, 60.0)}), 300.0, 305.0)) == "under-cured");
    // pairs 30 s at 165 or 90 s at 155: hi = 296.441 °F = 146.91 °C for 45 s is worth 45·exp(θ(1/438.15 − 1/420.06))
    // = 45 × 0.132 = 5.9 s
    const auto dose = strips(plan({familyWithPairs()}), 285.0, 290.0);
    CHECK(wordOf(dose) == "under-cured");
    // hi = 341.441 °F = 171.9 °C: 45 s there are more than enough
    CHECK(wordOf(strips(plan({familyWithPairs()}), 330.0, 335.0)) == "not proven");
}

TEST_CASE("a strip used, expired, not light before or read out of order is refused", "[cure][strip]") {
    const auto run = plan({atFahrenheit(285.0)});
    const StripReading good{step(295.0), step(300.0), false, true};
    const auto code = [&](StripReading reading, Instrument instrument) {
        const auto verdict = judgeStrip(run, reading, inDate(std::move(instrument)));
        REQUIRE(wordOf(verdict) == "refused");
        return verdict.reasons.front().code;
    };
    auto used = good;
    used.usedBefore = true;
    CHECK(code(used, strip()) == ReasonCode::stripUsedBefore);
    auto dirty = good;
    dirty.allLightBefore = false;
    CHECK(code(dirty, strip()) == ReasonCode::stripNotAllLightBefore);
    CHECK(code({step(300.0), step(295.0), false, true}, strip()) == ReasonCode::stripStepsOutOfOrder);
    CHECK(code({std::size_t{99}, std::nullopt, false, true}, strip()) == ReasonCode::stripUnknownStep);
    auto expired = strip();
    expired.strip->expiry = today() - std::chrono::days{1};
    CHECK(code(good, expired) == ReasonCode::stripExpired);
    CHECK(code(good, probe()) == ReasonCode::noToleranceKnown);
}

TEST_CASE("a held maximum is cured 1.5 °C later and under-cured as it stands", "[cure][spot]") {
    // L = 160, g = 2.84897: cured from 164.34897, under-cured to 157.15103; H = 180: kept to 177.15103, over from
    // 184.34897
    const auto run = plan({family(160.0)}, ceilings(180.0));
    CHECK(wordOf(spots(run, 164.35)) == "cured");
    CHECK(wordOf(spots(run, 164.34)) == "not proven");
    CHECK(wordOf(spots(run, 157.16)) == "not proven");
    CHECK(wordOf(spots(run, 157.15)) == "under-cured");
    CHECK(wordOf(spots(run, 177.15)) == "cured");
    CHECK(wordOf(spots(run, 177.16)) == "not proven");
    CHECK(wordOf(spots(run, 184.35)) == "overheated");
    CHECK(wordOf(spots(run, 184.34)) == "not proven");
    CHECK(spots(run, 166.0).margin->low->celsius() == Approx(4.5));
    CHECK(spots(run, 166.0).upperMargin->celsius() == Approx(14.0));
}

TEST_CASE("a held maximum needs a reset below the gel range", "[cure][spot]") {
    const auto run = plan({family(160.0)});
    const auto word = [&](std::optional<Temperature> before) {
        return wordOf(judgeSpot(run, {celsius(168.0), before, degrees(1.5)}, inDate(spot())));
    };
    CHECK(word(std::nullopt) == "refused");
    CHECK(word(celsius(110.0)) == "refused"); // g_lo itself is not below it
    CHECK(word(celsius(109.9)) == "cured");
    CHECK(wordOf(spots(run, std::nan(""))) == "refused");
}

TEST_CASE("a held maximum never proves a hold or a dose", "[cure][spot]") {
    CHECK(wordOf(spots(plan({family(160.0, 30.0)}), 190.0)) == "not proven");
    CHECK(wordOf(spots(plan({family(160.0, 30.0)}), 157.0)) == "under-cured");
    const auto run = plan({familyWithPairs()});
    CHECK(wordOf(spots(run, 190.0, Duration{60.0})) == "not proven");
    // 157.15103 + g = 160 °C, rate 0.5810228 (dose tests): 51 s are worth 29.6 s, 52 s 30.2 s of 30
    CHECK(wordOf(spots(run, 157.1510299, Duration{51.0})) == "under-cured");
    CHECK(wordOf(spots(run, 157.1510299, Duration{52.0})) == "not proven");
    CHECK(wordOf(spots(run, 157.1510299)) == "not proven"); // no dwell known
    CHECK(wordOf(spots(run, 107.0)) == "under-cured");      // 109.8 °C: below g_lo nothing counts
}

TEST_CASE("a surface gun shows overheated anywhere and under-cured in the tunnel only", "[cure][gun]") {
    // L = 160, H = 180, g = 5.28746: over from 185.28746, cold to 154.71254
    const auto run = plan({family(160.0)}, ceilings(180.0));
    CHECK(wordOf(shoots(run, 185.29, ShotPlace::outfeed)) == "overheated");
    CHECK(wordOf(shoots(run, 185.28, ShotPlace::outfeed)) == "not proven");
    CHECK(wordOf(shoots(run, 154.71, ShotPlace::inTunnelHottest)) == "under-cured");
    CHECK(wordOf(shoots(run, 154.72, ShotPlace::inTunnelHottest)) == "not proven");
    const auto outfeed = shoots(run, 120.0, ShotPlace::outfeed);
    CHECK(wordOf(outfeed) == "not proven");
    CHECK(says(outfeed, ReasonCode::outfeedShotProvesNothing));
    CHECK(advises(outfeed, Remedy::useProbeTrace));
    const auto right = shoots(run, 170.0, ShotPlace::inTunnelHottest);
    CHECK(wordOf(right) == "not proven");
    CHECK_FALSE(right.couldProve);
    CHECK(says(right, ReasonCode::surfaceOnly));
}

TEST_CASE("a flash is gelled between its guarded limits", "[cure][flash]") {
    // g_lo = 110, C = 160, g = 2.84897
    const auto layer = plan({family(160.0)}).layers.front();
    const auto word = [&](double peak) { return judgeFlash(layer, celsius(peak), inDate()).word; };
    CHECK(word(107.15) == FlashWord::notGelled);
    CHECK(word(112.84) == FlashWord::notProven);
    CHECK(word(112.85) == FlashWord::gelled);
    CHECK(word(157.15) == FlashWord::gelled);
    CHECK(word(157.16) == FlashWord::overFlashed);
    auto withoutGel = layer;
    withoutGel.ink.requirement.gel.reset();
    CHECK(judgeFlash(withoutGel, celsius(130.0), inDate()).word == FlashWord::doesNotApply);
    auto old = probe();
    old.checks.clear();
    CHECK(judgeFlash(layer, celsius(130.0), inDate(old)).word == FlashWord::notProven);
}
