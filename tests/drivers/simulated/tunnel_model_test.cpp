#include "drivers/simulated/tunnel_model.hpp"

#include "drivers/simulated/scenario.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <vector>

using namespace holdfast::drivers;
using namespace std::chrono_literals;

namespace {

TunnelModel tunnel() {
    TunnelModel model;
    model.ambientCelsius = 20.0;
    model.airCelsius = 220.0;
    model.lagSeconds = 10.0;
    model.heatedLengthMetres = 5.0;
    model.beltMetresPerMinute = 5.0; // a minute inside
    return model;
}

} // namespace

TEST_CASE("the rise is a first-order step response", "[drivers][tunnel]") {
    // Any control handbook prints it: 63.2 % of the step after one time constant, 86.5 % after two, 95.0 % after three,
    // 98.2 % after four.
    const std::vector<double> percents = {63.2, 86.5, 95.0, 98.2};
    for (std::size_t i = 0; i < percents.size(); ++i) {
        const double celsius = tunnel().celsiusAt(10.0 * static_cast<double>(i + 1), 20.0);
        CHECK((celsius - 20.0) / 200.0 * 100.0 == Approx(percents[i]).margin(0.05));
    }
}

TEST_CASE("behind the outfeed it cools by the same law towards the room", "[drivers][tunnel]") {
    const TunnelModel model = tunnel();
    const double peak = model.peakCelsius(20.0);
    const double after = model.celsiusAt(model.secondsInside() + model.coolingLagSeconds, 20.0);
    CHECK((after - 20.0) / (peak - 20.0) * 100.0 == Approx(36.8).margin(0.05)); // 100 - 63.2, same table
}

TEST_CASE("belt speed and load act as on a real dryer", "[drivers][tunnel]") {
    TunnelModel faster = tunnel();
    faster.beltMetresPerMinute = 10.0;
    TunnelModel fuller = tunnel();
    fuller.loadFactor = 1.5;
    CHECK(tunnel().secondsInside() == Approx(60.0));
    CHECK(faster.secondsInside() == Approx(30.0));
    CHECK(faster.peakCelsius(20.0) < tunnel().peakCelsius(20.0));
    CHECK(fuller.peakCelsius(20.0) < tunnel().peakCelsius(20.0));
}

TEST_CASE("a peak that is asked for is met", "[drivers][tunnel]") {
    for (const double wanted : {80.0, 140.6, 160.0, 171.1, 204.4}) {
        CHECK(tunnel().withPeak(wanted, 24.0).peakCelsius(24.0) == Approx(wanted).margin(1e-9));
    }
}

TEST_CASE("nothing is hotter than the peak and the heat is never left before the outfeed", "[drivers][tunnel]") {
    const TunnelModel model = tunnel();
    double last = model.celsiusAt(-1.0, 20.0);
    CHECK(last == 20.0);
    for (int tick = 0; tick <= 1000; ++tick) { // five a second, as a probe reads; a minute inside
        const double now = model.celsiusAt(tick * 0.2, 20.0);
        REQUIRE(now <= model.peakCelsius(20.0) + 1e-9);
        REQUIRE((tick <= 300 ? now >= last : now <= last + 1e-9));
        last = now;
    }
}

TEST_CASE("noise repeats with its seed and has the spread it says", "[drivers][tunnel]") {
    double sum = 0.0;
    double squares = 0.0;
    constexpr int count = 20'000;
    for (int i = 0; i < count; ++i) {
        const double noise = noiseAt(42, i);
        REQUIRE(noise == noiseAt(42, i));
        sum += noise;
        squares += noise * noise;
    }
    // standard errors of mean and variance of n normal values: 1/sqrt(n) and sqrt(2/n); four of each
    CHECK(std::abs(sum / count) < 4.0 / std::sqrt(count));
    CHECK(std::abs(squares / count - 1.0) < 4.0 * std::sqrt(2.0 / count));
    CHECK(noiseAt(42, 7) != noiseAt(43, 7));
}

TEST_CASE("rides follow one another, each from what the last has left", "[drivers][tunnel]") {
    Scenario scenario;
    scenario.rides = {{10s, 160.0, 40.0}, {70s, 150.0, 40.0}};
    CHECK(scenario.celsiusAt(0s) == scenario.tunnel.ambientCelsius);
    CHECK(scenario.celsiusAt(10s) == scenario.tunnel.ambientCelsius);
    CHECK(scenario.celsiusAt(50s) == Approx(160.0).margin(1e-9));
    CHECK(scenario.celsiusAt(70s) > 60.0); // 20 s behind the outfeed it is still warm
    CHECK(scenario.celsiusAt(110s) == Approx(150.0).margin(1e-9));
    double last = scenario.celsiusAt(0s);
    for (MonotonicTime at = 0s; at < 200s; at += 20ms) { // no jumps where one ride ends and the next begins
        const double now = scenario.celsiusAt(at);
        REQUIRE(std::abs(now - last) < 0.5);
        last = now;
    }
}
