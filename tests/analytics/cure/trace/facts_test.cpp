#include "tests/analytics/cure/trace/recording.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;

namespace {

Pass passOf(const std::vector<Knot>& knots, double step = 0.25) {
    return cleanWithoutCutting(along(knots, step), nullptr).whole;
}

/// Samples as they stand, joined by lines.
Pass joined(const std::vector<Knot>& samples) {
    Pass pass;
    for (const Knot& knot : samples) {
        const Temperature t = Temperature::fromCelsius(knot.celsius);
        pass.samples.push_back({Duration{knot.seconds}, t, t});
    }
    pass.joins.assign(samples.empty() ? 0 : samples.size() - 1, Join::line);
    return pass;
}

/// Straight from the definition: every stretch of at least three samples and 2 s without a gap.
std::optional<double> sustainedByDefinition(const Pass& pass) {
    std::optional<double> best;
    for (std::size_t i = 0; i < pass.samples.size(); ++i) {
        double lowest = pass.samples[i].t.celsius();
        for (std::size_t j = i + 1; j < pass.samples.size() && pass.joins[j - 1] == Join::line; ++j) {
            lowest = std::min(lowest, pass.samples[j].t.celsius());
            if (j >= i + 2 && atLeast(pass.samples[j].at - pass.samples[i].at, Duration{2.0})) {
                best = best ? std::max(*best, lowest) : lowest;
            }
        }
    }
    return best;
}

} // namespace

TEST_CASE("the sustained peak is what the film kept for 2 s", "[analytics][trace][peak]") {
    // Up and down at 2 °C/s: at 1 s either side of the top it is 2 °C lower.
    const Pass tent = passOf({{0, 25}, {70, 165}, {130, 45}});
    REQUIRE(sustainedPeak(tent));
    CHECK(sustainedPeak(tent)->t.celsius() == Approx(163.0));
    CHECK(sustainedPeak(tent)->at.count() == Approx(70.0));
    CHECK(rawPeak(tent)->t.celsius() == Approx(165.0));
}

TEST_CASE("the sustained peak needs three samples and 2 s", "[analytics][trace][peak]") {
    // At one sample in 1.9 s three samples span 3.8 s; two samples are never enough.
    const Pass slow = joined({{0, 30}, {1.9, 30}, {3.8, 100}, {5.7, 100}, {7.6, 30}, {9.5, 30}});
    CHECK(sustainedPeak(slow)->t.celsius() == Approx(30.0));
    Pass few = passOf({{0, 30}, {10, 30}});
    CHECK_FALSE(sustainedPeak(firstSamples(few, 8))); // 1.75 s
    CHECK(sustainedPeak(firstSamples(few, 9)));       // exactly 2 s
    CHECK_FALSE(sustainedPeak(Pass{}));
    CHECK_FALSE(rawPeak(Pass{}));
}

TEST_CASE("no stretch of the sustained peak runs across a gap", "[analytics][trace][peak]") {
    Pass pass = passOf({{0, 100}, {3, 100}}, 0.5);
    pass.joins[2] = Join::gap;
    pass.samples[5].t = Temperature::fromCelsius(90);
    CHECK_FALSE(sustainedPeak(firstSamples(pass, 6))); // 1 s and 1 s
    CHECK(sustainedByDefinition(pass) == std::nullopt);
}

TEST_CASE("the sustained peak equals its definition on random passes", "[analytics][trace][peak]") {
    std::mt19937 random{20240611};
    std::uniform_real_distribution<double> value{20.0, 200.0};
    std::uniform_real_distribution<double> step{0.05, 1.6};
    std::uniform_int_distribution<int> join{0, 14};
    for (int round = 0; round < 400; ++round) {
        Pass pass;
        double at = 0.0;
        const int count = 3 + round % 40;
        for (int i = 0; i < count; ++i) {
            const Temperature t = Temperature::fromCelsius(value(random));
            pass.samples.push_back({Duration{at}, t, t});
            if (i + 1 < count) {
                pass.joins.push_back(join(random) == 0 ? Join::gap : Join::line);
            }
            at += step(random);
        }
        const auto expected = sustainedByDefinition(pass);
        const auto found = sustainedPeak(pass);
        REQUIRE(found.has_value() == expected.has_value());
        if (found) {
            CHECK(found->t.celsius() == *expected);
            CHECK(found->t <= rawPeak(pass)->t);
        }
    }
}

TEST_CASE("time above a level follows the straight lines", "[analytics][trace][time]") {
    const Pass tent = passOf({{0, 20}, {40, 180}, {80, 20}});
    // 4 °C/s: above 150 °C for 30/4 s either side.
    CHECK(timeAtOrAbove(tent, Temperature::fromCelsius(150)).total.count() == Approx(15.0));
    CHECK(timeAtOrAbove(tent, Temperature::fromCelsius(180)).total.count() == Approx(0.0).margin(1e-8));
    CHECK(timeAtOrAbove(tent, Temperature::fromCelsius(181)).total.count() == 0.0);
    // A level kept exactly counts as met.
    CHECK(timeAtOrAbove(passOf({{0, 150}, {10, 150}}), Temperature::fromCelsius(150)).total.count() == 10.0);
    // 20 → 180 in one step of 4 s: a straight line, 0.75 s above 150 °C.
    CHECK(timeAtOrAbove(joined({{0, 20}, {4, 180}}), Temperature::fromCelsius(150)).total.count() == Approx(0.75));
}

TEST_CASE("a gap adds no time and ends the spell", "[analytics][trace][time]") {
    const Pass pass = cleanRecording(without(ride(), 41.0, 44.0), nullptr).passes.front();
    const TimeAbove above = timeAtOrAbove(pass, Temperature::fromCelsius(165));
    CHECK(above.total.count() == Approx(1.0 + 6.0));
    CHECK(above.longest.count() == Approx(6.0));
}

TEST_CASE("a dip of 2 s down to λ − g is bridged, a longer or deeper one is not", "[analytics][trace][time]") {
    const auto spell = [](double dipSeconds, double floor, bool counts) {
        // 10 s at 160 °C, a dip with steep sides, 10 s at 160 °C.
        const Pass pass =
            joined({{0, 160}, {10, 160}, {10 + dipSeconds / 2, floor}, {10 + dipSeconds, 160}, {20 + dipSeconds, 160}});
        return longestSpellBridgingDips(pass, Temperature::fromCelsius(160), TemperatureDifference::fromCelsius(5),
                                        counts)
            .count();
    };
    CHECK(spell(2.0, 155, false) == Approx(20.0));
    CHECK(spell(2.0, 155, true) == Approx(22.0));
    CHECK(spell(2.01, 155, false) == Approx(10.0));
    CHECK(spell(2.01, 155, true) == Approx(10.0));
    CHECK(spell(2.0, 154.9, true) == Approx(10.0));
}

TEST_CASE("neither a way up nor a way down is a dip", "[analytics][trace][time]") {
    // 1 s from 157 up to 160 °C, 3 s there, 1 s down: both lie within λ − g.
    const Pass pass = passOf({{0, 157}, {1, 160}, {4, 160}, {5, 157}});
    CHECK(longestSpellBridgingDips(pass, Temperature::fromCelsius(160), TemperatureDifference::fromCelsius(5), true)
              .count() == Approx(3.0));
}

TEST_CASE("the sampling term is half the longest step times the steepest slope", "[analytics][trace][peak]") {
    // 4 °C/s beside the peak, one sample in 2 s: 4 × 2 / 2.
    CHECK(samplingTerm(passOf({{0, 25}, {36, 169}, {70, 33}}, 2.0)).celsius() == Approx(4.0));
    CHECK(samplingTerm(passOf({{0, 25}, {36, 169}, {70, 33}}, 1.0)).celsius() == 0.0);
    CHECK(samplingTerm(Pass{}).celsius() == 0.0);
}

TEST_CASE("fallen means 20 °C below the highest sample, afterwards, once 80 °C was passed", "[analytics][trace]") {
    CHECK(hasFallen(passOf({{0, 25}, {30, 145}, {35, 125}})));
    CHECK_FALSE(hasFallen(passOf({{0, 25}, {30, 145}, {35, 125.1}})));
    CHECK_FALSE(hasFallen(passOf({{0, 25}, {20, 80}, {40, 25}})));
    CHECK_FALSE(hasFallen(passOf({{0, 25}, {30, 145}, {35, 125}, {45, 165}})));
}
