#include "tests/analytics/cure/trace/recording.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;

// Every limit in this file is from decisions 3.

TEST_CASE("a plain ride is one pass that ends at the first sample at or below 60 °C", "[analytics][trace]") {
    const CleanedRecording clean = cleanRecording(ride(), nullptr);
    REQUIRE(clean.passes.size() == 1);
    const Pass& pass = clean.passes.front();
    CHECK(pass.everAbove80);
    CHECK_FALSE(pass.startsHot);
    CHECK_FALSE(pass.secondOrLater);
    CHECK(pass.medianInterval.count() == Approx(0.25));
    CHECK(pass.samples.back().t.celsius() <= 60.0);
    CHECK(pass.samples[pass.samples.size() - 2].t.celsius() > 60.0);
    CHECK(pass.joins.size() + 1 == pass.samples.size());
    CHECK(dropped(clean, DropWhy::tail) == static_cast<int>(ride().samples.size() - pass.samples.size()));
    CHECK(isComplete(pass, Temperature::fromCelsius(155)));
}

TEST_CASE("a median interval of 5 s is judged and one above it is too coarse", "[analytics][trace]") {
    CHECK_FALSE(cleanRecording(along(rideKnots(), 5.0), nullptr).passes.front().tooCoarse);
    CHECK(cleanRecording(along(rideKnots(), 5.000001), nullptr).passes.front().tooCoarse);
}

TEST_CASE("the ends of the stated range are inside", "[analytics][trace]") {
    RawTrace trace = ride();
    trace.range = MeasuringRange{Temperature::fromCelsius(25), Temperature::fromCelsius(165)};
    CHECK(dropped(cleanRecording(trace, nullptr), DropWhy::outOfRange) == 0);
    trace.range = MeasuringRange{Temperature::fromCelsius(25), Temperature::fromCelsius(164.9)};
    // 165 °C from 40 s to 50 s at 0.25 s: 41 samples.
    CHECK(dropped(cleanRecording(trace, nullptr), DropWhy::outOfRange) == 41);
}

TEST_CASE("one to three samples off both ways are a spike and four are not", "[analytics][trace][spike]") {
    for (const double height : {-150.0, 40.0, 858.75}) {
        for (std::size_t length = 1; length <= 4; ++length) {
            RawTrace trace = ride();
            const std::size_t from = indexAt(trace, 30.0);
            for (std::size_t i = from; i < from + length; ++i) {
                trace.samples[i].indicated = trace.samples[i].indicated + TemperatureDifference::fromCelsius(height);
            }
            const CleanedRecording clean = cleanRecording(trace, nullptr);
            CAPTURE(height, length);
            CHECK(dropped(clean, DropWhy::spike) == (length <= 3 ? static_cast<int>(length) : 0));
            if (length <= 3) {
                CHECK(rawPeak(clean.passes.front())->t.celsius() == Approx(165.0));
            }
        }
    }
}

TEST_CASE("a step at exactly the film's limit is not too fast", "[analytics][trace][spike]") {
    // 15 °C/s × 0.25 s + 2 °C = 5.75 °C in, and out.
    RawTrace trace = along({{0, 25}, {20, 25}});
    trace.samples[40].indicated = Temperature::fromCelsius(25 + 5.75);
    CHECK(dropped(cleanRecording(trace, nullptr), DropWhy::spike) == 0);
    trace.samples[40].indicated = Temperature::fromCelsius(25 + 5.751);
    CHECK(dropped(cleanRecording(trace, nullptr), DropWhy::spike) == 1);
    // Three steps of 1 °C widen it to 6.75 °C.
    trace.resolution = TemperatureDifference::fromCelsius(1.0);
    trace.samples[40].indicated = Temperature::fromCelsius(25 + 6.75);
    CHECK(dropped(cleanRecording(trace, nullptr), DropWhy::spike) == 0);
}

TEST_CASE("stamps closer than half the median count as half the median", "[analytics][trace][spike]") {
    RawTrace trace = along({{0, 25}, {20, 25}});
    trace.samples[40].at = trace.samples[39].at + MonotonicTime{1};
    // 15 °C/s × 0.125 s + 2 °C = 3.875 °C
    trace.samples[40].indicated = Temperature::fromCelsius(25 + 3.875);
    CHECK(dropped(cleanRecording(trace, nullptr), DropWhy::spike) == 0);
}

TEST_CASE("runs of under four samples go at once, then runs of 10 s between jumps", "[analytics][trace][runs]") {
    const auto step = [](std::size_t length) {
        RawTrace trace = along({{0, 25}, {60, 25}});
        for (std::size_t i = 40; i < 40 + length; ++i) {
            trace.samples[i].indicated = Temperature::fromCelsius(140);
        }
        return cleanRecording(trace, nullptr);
    };
    // 41 samples at 0.25 s span exactly 10 s.
    CHECK(dropped(step(41), DropWhy::shortRun) == 41);
    const CleanedRecording longer = step(42);
    CHECK(dropped(longer, DropWhy::shortRun) == 0);
    const auto& joins = longer.passes.front().joins;
    CHECK(std::count(joins.begin(), joins.end(), Join::jump) == 2); // up, and down again to the 25 °C that end the pass
    CHECK_FALSE(isComplete(longer.passes.front(), Temperature::fromCelsius(120)));
}

TEST_CASE("three samples behind a jump at the end of a recording do not make a fall", "[analytics][trace][runs]") {
    RawTrace trace = without(ride(), 45.0, 200.0);
    const double last = Duration{trace.samples.back().at}.count();
    for (int i = 1; i <= 3; ++i) {
        trace.samples.push_back(sampleAt(last + 0.25 * i, 25));
    }
    const CleanedRecording clean = cleanRecording(trace, nullptr);
    CHECK(dropped(clean, DropWhy::shortRun) == 3);
    CHECK_FALSE(hasFallen(clean.passes.front()));
}

TEST_CASE("a change of unit is found in both directions and what follows is never used", "[analytics][trace][unit]") {
    for (const bool up : {true, false}) {
        RawTrace trace = ride();
        trace.unit = up ? TemperatureUnit::celsius : TemperatureUnit::fahrenheit;
        for (std::size_t i = indexAt(trace, 30.0); i < trace.samples.size(); ++i) {
            Temperature& t = trace.samples[i].indicated;
            // The instrument says the number in the other unit; the file is still said to be in the first.
            t = up ? Temperature::fromCelsius(t.fahrenheit()) : Temperature::fromFahrenheit(t.celsius());
        }
        const CleanedRecording clean = cleanRecording(trace, nullptr);
        CAPTURE(up);
        REQUIRE(clean.passes.size() == 1);
        const Pass& pass = clean.passes.front();
        REQUIRE(pass.unitSwitchedAt);
        CHECK(pass.unitSwitchedAt->count() == Approx(29.75));
        CHECK(pass.everAbove80);
        CHECK(rawPeak(pass)->t.celsius() < 125.0 + 1e-6); // 25 + 4 × 25 s
        const Spoiled spoiled = spoiledFor(pass, Temperature::fromCelsius(155));
        CHECK(spoiled.by == Join::unitSwitch);
        CHECK(spoiled.usableSamples == 0);
        CHECK(dropped(clean, DropWhy::afterUnitSwitch) > 0);
    }
}

TEST_CASE("a change of unit slower than a probe's limit is still found", "[analytics][trace][unit]") {
    // 25 → 77 in 1 s: 52 °C is not more than 50 × 1 + 2 °C, but 25 °C is 77 °F.
    RawTrace trace = along({{0, 25}, {30, 25}}, 1.0);
    for (std::size_t i = 15; i < trace.samples.size(); ++i) {
        trace.samples[i].indicated = Temperature::fromCelsius(77);
    }
    CHECK(cleanRecording(trace, nullptr).passes.front().unitSwitchedAt);
}

TEST_CASE("heat behind a change of unit makes a second pass although the first ended with the last sample before",
          "[analytics][trace][unit]") {
    // Decisions 3.4: what follows the switch is never used; 3.8: the pass ends at 60 °C, what rises again is another.
    RawTrace trace = along({{0, 25}, {35, 165}, {45, 165}, {71.25, 60}});
    const double end = 71.25;
    for (int i = 1; i <= 200; ++i) {
        trace.samples.push_back(sampleAt(1000.0 + end + 0.25 * i, 140.0 + 0.25 * i)); // 60 °C is 140 °F
    }
    const CleanedRecording clean = cleanRecording(trace, nullptr);
    REQUIRE(clean.passes.size() == 2);
    CHECK(isComplete(clean.passes[0], Temperature::fromCelsius(155)));
    const Pass& second = clean.passes[1];
    CHECK(second.secondOrLater);
    CHECK(second.everAbove80);
    REQUIRE(second.unitSwitchedAt);
    CHECK(second.unitSwitchedAt->count() == Approx(end));
    CHECK(second.samples.size() == 1); // the sample that ended the first pass
    CHECK(spoiledFor(second, Temperature::fromCelsius(155)).by == Join::unitSwitch);
}

TEST_CASE("a step over more than 2 s that fits the other unit better asks for the unit", "[analytics][trace][unit]") {
    const auto idle = [](double gap, double after, bool confirmed) {
        RawTrace trace = along({{0, 25}, {10, 25}});
        trace.unitConfirmed = confirmed;
        const double last = Duration{trace.samples.back().at}.count();
        for (int i = 0; i < 12; ++i) {
            trace.samples.push_back(sampleAt(last + gap + 0.25 * i, after));
        }
        return cleanRecording(trace, nullptr).passes.front().unitInDoubt;
    };
    CHECK(idle(4.0, 55.0, false)); // 55 is nearer to 77 than to 25: the middle is 51
    CHECK_FALSE(idle(4.0, 50.0, false));
    CHECK_FALSE(idle(2.0, 55.0, false));
    CHECK_FALSE(idle(4.0, 55.0, true));
}

TEST_CASE("a recording that starts hot or freezing asks for the unit", "[analytics][trace][unit]") {
    const auto from = [](double celsius, bool confirmed) {
        RawTrace trace = along({{0, celsius}, {10, celsius}});
        trace.unitConfirmed = confirmed;
        return cleanRecording(trace, nullptr).passes.front().startsHot;
    };
    CHECK_FALSE(from(40, false));
    CHECK(from(40.01, false));
    CHECK_FALSE(from(60, true));
    CHECK(from(60.01, true));
    CHECK_FALSE(from(5, false));
    CHECK(from(4.99, false));
    CHECK(from(4.99, true));
}

TEST_CASE("an interval of exactly the limit is no gap", "[analytics][trace][gap]") {
    CHECK(gapLimit(Duration{0.25}).count() == 2.0);
    CHECK(gapLimit(Duration{0.6}).count() == Approx(2.4));
    CHECK(gapLimit(Duration{3.0}).count() == 5.0);
    const auto gaps = [](double until) {
        const auto joins = cleanRecording(without(ride(), 20.0, until), nullptr).passes.front().joins;
        return std::count(joins.begin(), joins.end(), Join::gap);
    };
    CHECK(gaps(22.0) == 0);
    CHECK(gaps(22.25) == 1);
}

TEST_CASE("a gap that may hide the end of the pass ends it, and the next pass remembers it",
          "[analytics][trace][gap]") {
    // At 30 s the ride is at 125 °C, at 60 s again: (125 + 125 − 15 × 30)/2 = −100 °C.
    const CleanedRecording clean = cleanRecording(without(ride(), 30.0, 60.0), nullptr);
    REQUIRE(clean.passes.size() == 2);
    CHECK_FALSE(hasFallen(clean.passes[0]));
    const Pass& second = clean.passes[1];
    CHECK(second.secondOrLater);
    CHECK(hasFallen(second));
    const auto tops = hiddenTops(second);
    REQUIRE(tops.size() == 1);
    CHECK(tops[0].top.celsius() == Approx((125.0 + 125.0 + 15.0 * 30.0) / 2.0));
}

TEST_CASE("a gap whose hidden bottom stays above 60 °C does not end the pass", "[analytics][trace][gap]") {
    // 145 and 165 °C, 5 s apart: bottom 117.5, top 192.5 °C.
    const CleanedRecording clean = cleanRecording(without(ride(), 35.0, 40.0), nullptr);
    REQUIRE(clean.passes.size() == 1);
    const auto tops = hiddenTops(clean.passes.front());
    REQUIRE(tops.size() == 1);
    CHECK(tops[0].top.celsius() == Approx(192.5));
    CHECK(tops[0].from.count() == 35.0);
    CHECK(tops[0].to.count() == 40.0);
}

TEST_CASE("a gap in the cold before the ride hides nothing", "[analytics][trace][gap]") {
    CHECK(hiddenTops(cleanRecording(without(ride(), 0.0, 4.0), nullptr).passes.front()).empty());
    // 25 °C at 5 s, 61 °C at 14 s.
    CHECK(hiddenTops(cleanRecording(without(ride(), 5.0, 14.0), nullptr).passes.front()).size() == 1);
}

TEST_CASE("a second print in one recording is a pass of its own", "[analytics][trace][pass]") {
    RawTrace trace = ride();
    RawTrace again = along(rideKnots(), 0.25, 1000.0 + 90.25);
    trace.samples.insert(trace.samples.end(), again.samples.begin(), again.samples.end());
    const CleanedRecording clean = cleanRecording(trace, nullptr);
    REQUIRE(clean.passes.size() == 2);
    CHECK_FALSE(clean.passes[0].secondOrLater);
    CHECK(clean.passes[1].secondOrLater);
    CHECK(clean.passes[1].samples.front().at == clean.passes[0].samples.back().at);
    CHECK(rawPeak(clean.passes[1])->at.count() == Approx(40.0 + 90.25));
}

TEST_CASE("80 °C exactly is no pass", "[analytics][trace][pass]") {
    const auto to = [](double celsius) {
        const CleanedRecording clean =
            cleanRecording(along({{0, 25}, {20, celsius}, {30, celsius}, {50, 25}}), nullptr);
        REQUIRE(clean.passes.size() == 1);
        return clean.passes.front().everAbove80;
    };
    CHECK_FALSE(to(80.0));
    CHECK(to(80.1));
}

TEST_CASE("a clock that goes back before the fall leaves what lies before", "[analytics][trace][break]") {
    RawTrace trace = ride();
    const std::size_t at = indexAt(trace, 45.0);
    for (std::size_t i = at; i < trace.samples.size(); ++i) {
        trace.samples[i].at -= MonotonicTime{20'000'000};
    }
    const Pass pass = cleanRecording(trace, nullptr).passes.front();
    const Spoiled spoiled = spoiledFor(pass, Temperature::fromCelsius(155));
    CHECK(spoiled.by == Join::clockFault);
    CHECK(spoiled.usableSamples == at);
    CHECK(spoiled.at.count() == Approx(44.75));
    CHECK_FALSE(isComplete(pass, Temperature::fromCelsius(155)));
}

TEST_CASE("a break after the fall only ends the trace unless it grows hot again", "[analytics][trace][break]") {
    RawTrace trace = ride();
    const std::size_t at = indexAt(trace, 70.0); // 85 °C
    for (std::size_t i = at; i < trace.samples.size(); ++i) {
        trace.samples[i].at -= MonotonicTime{20'000'000};
    }
    const Pass pass = cleanRecording(trace, nullptr).passes.front();
    const Spoiled calm = spoiledFor(pass, Temperature::fromCelsius(155));
    CHECK(calm.by == Join::line);
    CHECK(calm.usableSamples == at);
    CHECK(isComplete(pass, Temperature::fromCelsius(155)));
    CHECK(spoiledFor(pass, Temperature::fromCelsius(84.9)).by == Join::clockFault);
}

TEST_CASE("the gap that ends the trace after the fall counts against nothing", "[analytics][trace][gap]") {
    // 65 s: 105 °C, 69 s: 89 °C; hidden top (105 + 89 + 60)/2 = 127 °C, hidden bottom 67 °C.
    const Pass pass = cleanRecording(without(ride(), 65.0, 69.0), nullptr).passes.front();
    CHECK(hiddenTops(pass).size() == 1);
    CHECK(hiddenTops(pass, Temperature::fromCelsius(155)).empty());
    CHECK(hiddenTops(pass, Temperature::fromCelsius(80)).size() == 1);
}

TEST_CASE("equal time with another value is a clock fault", "[analytics][trace][break]") {
    RawTrace trace = ride();
    const std::size_t at = indexAt(trace, 20.0);
    TraceSample twin = trace.samples[at];
    twin.indicated = twin.indicated + TemperatureDifference::fromCelsius(0.5);
    trace.samples.insert(trace.samples.begin() + static_cast<std::ptrdiff_t>(at) + 1, twin);
    const Pass pass = cleanRecording(trace, nullptr).passes.front();
    CHECK(spoiledFor(pass, Temperature::fromCelsius(155)).by == Join::clockFault);
}

TEST_CASE("only the pass that was open when it was stopped says so", "[analytics][trace][pass]") {
    RawTrace trace = ride();
    RawTrace again = along({{0, 25}, {35, 165}}, 0.25, 1000.0 + 90.25);
    trace.samples.insert(trace.samples.end(), again.samples.begin(), again.samples.end());
    trace.stoppedByHand = true;
    const CleanedRecording clean = cleanRecording(trace, nullptr);
    REQUIRE(clean.passes.size() == 2);
    CHECK_FALSE(clean.passes[0].stoppedByHand);
    CHECK(clean.passes[1].stoppedByHand);
}
