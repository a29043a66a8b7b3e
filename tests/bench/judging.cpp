#include "tests/analytics/cure/verdict/simulated_ride.hpp"
#include "tests/bench/rows.hpp"

#include <random>

namespace holdfast::bench {
namespace {

namespace a = holdfast::analytics;

/// A ride of 6,000 samples as a probe with a step of 0.1 °C shows it, with one step of noise; cured by every family
/// here.
a::RawTrace recording() {
    constexpr int kSamples = 6000;
    const ride::Hump hump{172.0, 8.0, 90.0, 9.0};
    std::mt19937 dice{1};
    a::RawTrace trace;
    trace.resolution = ride::degrees(0.1);
    for (int i = 0; i < kSamples; ++i) {
        const double at = hump.end() * i / (kSamples - 1);
        const double noise = (static_cast<int>(dice() % 3U) - 1) * 0.1;
        trace.samples.push_back({std::chrono::microseconds{std::llround(at * 1e6)},
                                 ride::celsius(std::round(hump.at(at) * 10.0) / 10.0 + noise), false});
    }
    return trace;
}

void sum(benchmark::State& state) {
    const auto trace = recording();
    for (auto _ : state) {
        double total = 0.0;
        for (const auto& sample : trace.samples) {
            total += sample.indicated.celsius();
        }
        benchmark::DoNotOptimize(total);
    }
}

Measure judging(const a::InkFamily& family) {
    return [family](benchmark::State& state) {
        const auto trace = recording();
        const auto calibration = ride::inDate();
        const auto run = ride::plan({family}, ride::ceilings(185.0));
        if (ride::judge(run, trace, calibration).word != a::Word::cured) {
            state.SkipWithError("the ride should be cured");
        }
        for (auto _ : state) {
            benchmark::DoNotOptimize(a::judgeRecording(run, trace, calibration, {}, {}));
        }
    };
}

} // namespace

void addJudging(Rows& rows) {
    const std::string baseline = "sum of 6,000 samples";
    rows.addBaseline(baseline, sum);
    auto unbroken = ride::family(155.0, 40.0);
    unbroken.unbroken = true;
    rows.add({"judge 6,000 samples, peak", baseline, 20.0}, judging(ride::family(160.0)));
    rows.add({"judge 6,000 samples, hold", baseline, 20.0}, judging(ride::family(155.0, 45.0)));
    rows.add({"judge 6,000 samples, unbroken hold", baseline, 20.0}, judging(unbroken));
    rows.add({"judge 6,000 samples, equal-cure pairs", baseline, 20.0}, judging(ride::familyWithPairs()));
}

} // namespace holdfast::bench
