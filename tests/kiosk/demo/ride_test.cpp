// The demo's rides fit what they ride for.
#include "kiosk/demo/demo_ride.hpp"
#include "kiosk/demo/demo_runs.hpp"
#include "kiosk/demo/demo_today.hpp"
#include "tests/kiosk/demo/support/demo_book.hpp"

#include "analytics/cure/verdict.hpp"
#include "drivers/catalogue/catalogue.hpp"
#include "kiosk/demo/demo_shop.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::tests;

namespace {

analytics::Calibration shopProbe() {
    const auto instruments = records::instruments(wholeDemo().reader());
    REQUIRE(instruments);
    for (const auto& one : *instruments) {
        if (one.instrument.name == demo::kDemoProbe) {
            return analytics::Calibration{one.instrument, kToday};
        }
    }
    FAIL("the demo has no probe");
    return analytics::Calibration{{}, kToday};
}

analytics::RawTrace traceOf(const demo::SimulatedSamples& ride) {
    analytics::RawTrace trace;
    for (const auto& sample : ride.samples) {
        trace.samples.push_back(
            {sample.at, analytics::Temperature::fromCelsius(static_cast<double>(sample.counts) * 0.1), false});
    }
    trace.resolution = analytics::TemperatureDifference::fromCelsius(0.1);
    return trace;
}

} // namespace

TEST_CASE("a run of the demo that can be proven is cured by the ride that fits it", "[demo]") {
    const auto probe = shopProbe();
    int proven = 0;
    for (const auto& run : demo::demoRuns()) {
        const auto layers = runOf(wholeDemo(), run.number).layers;
        const auto window = analytics::windowOf(layers, &probe);
        REQUIRE(window);
        if (window->state != analytics::WindowState::open || demo::rideOfToday(run.number)) {
            continue;
        }
        INFO(run.number);
        const auto ride = demo::samplesOf(demo::fittingRide(*window), static_cast<std::uint64_t>(run.number), {});
        const auto verdicts = analytics::judgeRecording(layers, traceOf(ride), probe);
        REQUIRE(verdicts.size() == 1);
        CHECK(verdicts.front().word == analytics::Word::cured);
        ++proven;
    }
    CHECK(proven >= 35);
}

TEST_CASE("a simulated ride has the probe's rate and steps, begins cold and ends cold", "[demo]") {
    demo::RideShape shape;
    shape.peakFahrenheit = 302.0; // 150 °C
    const drivers::MonotonicTime begin{5'000'000};
    const auto ride = demo::samplesOf(shape, 1, begin);
    const auto* probe = drivers::findInstrument(demo::kDemoCatalogueId);
    REQUIRE(probe != nullptr);
    REQUIRE(ride.samples.size() > 100);
    CHECK(ride.samples.front().at == begin);
    CHECK(ride.samples[1].at - ride.samples[0].at == drivers::MonotonicTime{probe->interval});
    std::int64_t highest = 0;
    for (const auto& sample : ride.samples) {
        highest = std::max(highest, sample.counts);
    }
    CHECK(highest == Approx(1500).margin(5)); // counts of 0.1 °C; the noise is 0.1 °C
    CHECK(ride.samples.front().counts < 400);
    CHECK(ride.samples.back().counts < 600);
}

TEST_CASE("a silent ride misses its top and nothing else", "[demo]") {
    demo::RideShape shape;
    shape.peakFahrenheit = 302.0;
    const auto whole = demo::samplesOf(shape, 1, {});
    shape.silentSeconds = 7;
    const auto silent = demo::samplesOf(shape, 1, {});
    CHECK(silent.length == whole.length);
    CHECK(whole.samples.size() - silent.samples.size() == Approx(7 * 5).margin(1)); // five a second
}
