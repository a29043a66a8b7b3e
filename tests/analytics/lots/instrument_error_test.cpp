#include "analytics/lots/instrument_error.hpp"
#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using ride::celsius;
using ride::degrees;

namespace {

/// The boiling check (100 °C reference) showed this much too high.
ErrorFound inBoilingWater(double error) {
    return {celsius(100.0), degrees(error)};
}

ReadingInDoubt rideTo(double peak, double cure = 160.0, Fabric fabric = {}) {
    ReadingInDoubt reading;
    reading.plan = ride::plan({ride::family(cure)}, std::move(fabric));
    reading.evidence = ride::trapezoid(peak);
    return reading;
}

Word recomputedWord(const ReadingInDoubt& reading, const ErrorFound& found) {
    return recompute(reading, found, ride::inDate()).value().verdict.word;
}

} // namespace

TEST_CASE("an error found is carried flat or in proportion to the temperature", "[lots][error]") {
    const auto found = inBoilingWater(2.0);
    // Flat: 170 − 2 = 168. In proportion: 170 = t + 2 × t / 100, t = 170 / 1.02 = 166.6667.
    CHECK(asItWas(celsius(170.0), found, ErrorShape::flat).celsius() == Approx(168.0).margin(1e-9));
    CHECK(asItWas(celsius(170.0), found, ErrorShape::proportional).celsius() == Approx(166.6667).margin(5e-5));
    // The check itself comes out right in both: 102 was 100.
    CHECK(asItWas(celsius(102.0), found, ErrorShape::flat).celsius() == Approx(100.0).margin(1e-9));
    CHECK(asItWas(celsius(102.0), found, ErrorShape::proportional).celsius() == Approx(100.0).margin(1e-9));
    const auto lost = celsius(std::numeric_limits<double>::quiet_NaN());
    CHECK_FALSE(asItWas(lost, found, ErrorShape::flat).isFinite());
}

TEST_CASE("only a check above 50 °C is carried in proportion", "[lots][error]") {
    using Shapes = std::vector<ErrorShape>;
    CHECK(shapesOf({celsius(0.0), degrees(2.0)}) == Shapes{ErrorShape::flat}); // melting ice
    CHECK(shapesOf({celsius(50.0), degrees(2.0)}) == Shapes{ErrorShape::flat});
    CHECK(shapesOf({celsius(50.1), degrees(2.0)}) == Shapes{ErrorShape::flat, ErrorShape::proportional});
}

TEST_CASE("the shape that lowers a reading more decides", "[lots][error]") {
    // Cure 160, g = 2.849 (decisions 2): cured needs P ≥ 162.849. 165.5 in boiling water's +2: flat 163.5, still cured;
    // in proportion 165.5 / 1.02 = 162.2549: not proven any more.
    const auto reading = rideTo(165.5);
    REQUIRE(ride::judge(reading.plan, std::get<RawTrace>(reading.evidence)).word == Word::cured);
    const auto again = recompute(reading, inBoilingWater(2.0), ride::inDate()).value();
    CHECK(again.verdict.word == Word::notProven);
    CHECK(again.shape == ErrorShape::proportional);
    CHECK_FALSE(again.stillCured());
    // its margin: 162.2549 − 160
    REQUIRE(again.verdict.margin);
    CHECK(again.verdict.margin->low->celsius() == Approx(2.2549).margin(5e-5));
    // The same error found in ice is flat: 163.5 − 160 = 3.5 ≥ 2.849.
    const auto ice = recompute(reading, {celsius(0.0), degrees(2.0)}, ride::inDate()).value();
    CHECK(ice.stillCured());
    CHECK(ice.verdict.margin->low->celsius() == Approx(3.5).margin(1e-9));
}

TEST_CASE("a reading with enough margin stays cured and one far off becomes under-cured", "[lots][error]") {
    // 168 / 1.02 = 164.7059 ≥ 162.849.
    CHECK(recompute(rideTo(168.0), inBoilingWater(2.0), ride::inDate()).value().stillCured());
    // +6 in boiling water: 165.5 / 1.06 = 156.1321 ≤ 160 − 2.849 = 157.151.
    CHECK(recomputedWord(rideTo(165.5), inBoilingWater(6.0)) == Word::underCured);
}

TEST_CASE("an instrument that read low is also judged against the ceilings", "[lots][error]") {
    // Ceiling 175, g 2.849: cured needs a raw peak ≤ 172.151. 170 with −2 in boiling water: flat 172.0, cured; in
    // proportion 170 / 0.98 = 173.4694: no longer shown below the ceiling.
    const auto reading = rideTo(170.0, 160.0, ride::ceilings(175.0));
    const auto again = recompute(reading, inBoilingWater(-2.0), ride::inDate()).value();
    CHECK(again.verdict.word == Word::notProven);
    CHECK(again.shape == ErrorShape::proportional);
    // −5: 170 / 0.95 = 178.9474 ≥ 175 + 2.849.
    CHECK(recomputedWord(reading, inBoilingWater(-5.0)) == Word::overheated);
    CHECK(recomputedWord(rideTo(170.0), inBoilingWater(-5.0)) == Word::cured); // no ceiling
}

TEST_CASE("no error leaves every verdict as it was", "[lots][error]") {
    for (double peak = 150.0; peak <= 180.0; peak += 2.5) {
        const auto reading = rideTo(peak, 160.0, ride::ceilings(175.0));
        const auto before = ride::judge(reading.plan, std::get<RawTrace>(reading.evidence));
        const auto again = recompute(reading, inBoilingWater(0.0), ride::inDate()).value();
        CHECK(ride::wordOf(again.verdict) == ride::wordOf(before));
    }
}

TEST_CASE("a larger error read too high never makes a reading better", "[lots][error]") {
    const auto reading = rideTo(166.0);
    auto margin = std::numeric_limits<double>::infinity();
    for (double error = 0.0; error <= 8.0; error += 0.5) {
        const auto again = recompute(reading, inBoilingWater(error), ride::inDate()).value();
        CHECK(again.verdict.margin->low->celsius() <= margin);
        margin = again.verdict.margin->low->celsius();
    }
}

TEST_CASE("a spot's held maximum and a gun's shot are moved too", "[lots][error]") {
    auto instrument = ride::probe();
    instrument.kind = InstrumentKind::spot;
    ReadingInDoubt spot = rideTo(0.0);
    spot.evidence = SpotReading{celsius(167.0), celsius(30.0)};
    // 167 − 1.5 = 165.5 (decisions 4, Spot) was cured; 167 / 1.02 = 163.7255, − 1.5 = 162.2255 < 162.849.
    CHECK(recompute(spot, inBoilingWater(0.0), ride::inDate(instrument)).value().stillCured());
    CHECK(recompute(spot, inBoilingWater(2.0), ride::inDate(instrument)).value().verdict.word == Word::notProven);

    auto gun = ride::probe();
    gun.kind = InstrumentKind::gun;
    gun.statedTolerance = degrees(2.0);
    ReadingInDoubt shot = rideTo(0.0, 160.0, ride::ceilings(175.0));
    shot.evidence = SurfaceReading{celsius(185.0), ShotPlace::outfeed};
    CHECK(recompute(shot, inBoilingWater(0.0), ride::inDate(gun)).value().verdict.word == Word::overheated);
    // 185 / 1.06 = 174.5283: nothing shows it above 175 any more.
    CHECK(recompute(shot, inBoilingWater(6.0), ride::inDate(gun)).value().verdict.word == Word::notProven);
}

TEST_CASE("a strip of a pack whose steps turn late is read at its true steps", "[lots][error]") {
    Instrument instrument;
    instrument.kind = InstrumentKind::strip;
    instrument.strip = StripSteps{{celsius(150.0), celsius(160.0), celsius(170.0)}, degrees(1.0), std::nullopt};
    ReadingInDoubt strip = rideTo(0.0, 150.0);
    strip.evidence = StripReading{std::size_t{1}, std::size_t{2}};
    // Last dark 160: lo = 160 − 1 − 1.6449 × 1.5 = 156.5327 ≥ 150: cured. The pack turned 7 °C early: the 160 step at
    // 153 flat, or 160 / 1.07 = 149.53 in proportion to a check at 100 °C: lo below 150.
    CHECK(recompute(strip, inBoilingWater(0.0), Calibration{instrument, ride::today()}).value().stillCured());
    CHECK(recompute(strip, inBoilingWater(7.0), Calibration{instrument, ride::today()}).value().verdict.word ==
          Word::notProven);
}

TEST_CASE("errors that cannot be, and passes that are not there, are refused", "[lots][error]") {
    const auto reading = rideTo(166.0);
    const auto nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(recompute(reading, inBoilingWater(nan), ride::inDate()).error() == ErrorFault::notFinite);
    CHECK(recompute(reading, {celsius(nan), degrees(1.0)}, ride::inDate()).error() == ErrorFault::notFinite);
    // A tenth of 373.15 K is 37.3 K.
    CHECK(recompute(reading, inBoilingWater(38.0), ride::inDate()).error() == ErrorFault::tooLarge);
    CHECK(recompute(reading, inBoilingWater(37.0), ride::inDate()));
    auto second = reading;
    second.pass = 2;
    CHECK(recompute(second, inBoilingWater(1.0), ride::inDate()).error() == ErrorFault::noSuchPass);
    second.pass = 0;
    CHECK(recompute(second, inBoilingWater(1.0), ride::inDate()).error() == ErrorFault::noSuchPass);
}

TEST_CASE("readings since the last good check are in doubt", "[lots][error]") {
    // Good on 10 and 30, failed on 20 (repaired since) and on 50: what was read from after 30 to 50 is in doubt.
    const auto doubtful = doubtfulTime({{30, true}, {10, true}, {20, false}, {60, true}}, 50);
    CHECK(doubtful == DoubtfulTime{30, 50});
    CHECK_FALSE(doubtful.holds(30));
    CHECK(doubtful.holds(31));
    CHECK(doubtful.holds(50));
    CHECK_FALSE(doubtful.holds(51));
    CHECK(doubtfulTime({}, 50) == DoubtfulTime{std::nullopt, 50}); // never checked: all of them
    CHECK(doubtfulTime({}, 50).holds(0));
}
