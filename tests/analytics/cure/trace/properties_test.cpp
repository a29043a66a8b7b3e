#include "analytics/cure/valid_rows.hpp"
#include "tests/analytics/cure/trace/recording.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <numeric>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;

namespace {

/// A ride with noise, jitter of the clock, and random shape; never a break.
RawTrace randomRide(std::mt19937& random) {
    std::uniform_real_distribution<double> noise{-0.4, 0.4};
    std::uniform_real_distribution<double> peak{90.0, 190.0};
    std::uniform_real_distribution<double> dwell{0.0, 40.0};
    std::uniform_int_distribution<int> jitter{-20'000, 20'000};
    const double top = peak(random);
    const double up = 5.0 + (top - 25.0) / 4.0;
    const double level = up + dwell(random);
    RawTrace trace = along({{0, 25}, {5, 25}, {up, top}, {level, top}, {level + (top - 30.0) / 4.0, 30}}, 0.25);
    for (TraceSample& sample : trace.samples) {
        sample.indicated = sample.indicated + TemperatureDifference::fromCelsius(noise(random));
        sample.at += MonotonicTime{jitter(random)};
    }
    return trace;
}

/// Decisions 3.3 word by word, on a list.
std::vector<tracing::Row> runsByDefinition(std::vector<tracing::Row> rows, const tracing::StepRules& steps) {
    using Rows = std::vector<tracing::Row>;
    const auto cut = [&steps](const Rows& all) {
        std::vector<Rows> runs;
        for (std::size_t i = 0; i < all.size(); ++i) {
            if (i == 0 || steps.joinOf(all[i - 1], all[i]) != Join::line) {
                runs.emplace_back();
            }
            runs.back().push_back(all[i]);
        }
        return runs;
    };
    const auto glue = [](const std::vector<Rows>& runs) {
        Rows all;
        for (const Rows& run : runs) {
            all.insert(all.end(), run.begin(), run.end());
        }
        return all;
    };
    std::vector<Rows> runs = cut(rows);
    std::erase_if(runs, [](const Rows& run) { return run.size() < 4; });
    rows = glue(runs);
    for (bool again = true; again;) {
        again = false;
        runs = cut(rows);
        for (std::size_t i = 1; i + 1 < runs.size() && !again; ++i) {
            const auto& before = runs[i - 1].back();
            const auto& after = runs[i + 1].front();
            const Duration length = runs[i].back().at - runs[i].front().at;
            if (steps.tooFastForProbe(before, runs[i].front()) && steps.tooFastForProbe(runs[i].back(), after) &&
                !steps.tooFastForProbe(before, after) && atLeast(Duration{10.0}, length)) {
                runs.erase(runs.begin() + static_cast<std::ptrdiff_t>(i));
                rows = glue(runs);
                again = true;
            }
        }
    }
    return rows;
}

} // namespace

TEST_CASE("the trace does not care when its clock began", "[analytics][trace][property]") {
    std::mt19937 random{11};
    for (int round = 0; round < 50; ++round) {
        const RawTrace trace = randomRide(random);
        RawTrace later = trace;
        for (TraceSample& sample : later.samples) {
            sample.at += MonotonicTime{86'400'000'000'123};
        }
        const auto a = cleanRecording(trace, nullptr);
        const auto b = cleanRecording(later, nullptr);
        REQUIRE(a.passes.size() == b.passes.size());
        CHECK(std::equal(a.passes.begin(), a.passes.end(), b.passes.begin(), samePass));
    }
}

TEST_CASE("facts move with the temperature", "[analytics][trace][property]") {
    std::mt19937 random{12};
    for (int round = 0; round < 50; ++round) {
        RawTrace trace = randomRide(random);
        const Pass pass = cleanWithoutCutting(trace, nullptr).whole;
        const double shift = -3.0 + 0.125 * round;
        for (TraceSample& sample : trace.samples) {
            sample.indicated = sample.indicated + TemperatureDifference::fromCelsius(shift);
        }
        const Pass moved = cleanWithoutCutting(trace, nullptr).whole;
        REQUIRE(pass.samples.size() == moved.samples.size());
        CHECK(sustainedPeak(moved)->t.celsius() - sustainedPeak(pass)->t.celsius() == Approx(shift).margin(1e-9));
        CHECK(rawPeak(moved)->at == rawPeak(pass)->at);
        const double before = timeAtOrAbove(pass, Temperature::fromCelsius(85)).total.count();
        const double after = timeAtOrAbove(moved, Temperature::fromCelsius(85 + shift)).total.count();
        CHECK(after == Approx(before).margin(1e-6));
    }
}

TEST_CASE("a row sent twice changes nothing but its count", "[analytics][trace][property]") {
    std::mt19937 random{13};
    for (int round = 0; round < 100; ++round) {
        const RawTrace trace = randomRide(random);
        RawTrace twice = trace;
        const std::size_t at = std::uniform_int_distribution<std::size_t>{0, trace.samples.size() - 1}(random);
        twice.samples.insert(twice.samples.begin() + static_cast<std::ptrdiff_t>(at), trace.samples[at]);
        const auto a = cleanRecording(trace, nullptr);
        const auto b = cleanRecording(twice, nullptr);
        CHECK(dropped(b, DropWhy::duplicate) == dropped(a, DropWhy::duplicate) + 1);
        REQUIRE(a.passes.size() == b.passes.size());
        CHECK(std::equal(a.passes.begin(), a.passes.end(), b.passes.begin(), samePass));
    }
}

TEST_CASE("a spike between two rows changes nothing but its count", "[analytics][trace][property]") {
    std::mt19937 random{14};
    for (int round = 0; round < 200; ++round) {
        const RawTrace trace = ride(); // even steps: the median stays what it is
        RawTrace spiked = trace;
        const std::size_t at = std::uniform_int_distribution<std::size_t>{1, trace.samples.size() - 2}(random);
        const double height = (round % 2 == 0 ? 1.0 : -1.0) * std::uniform_real_distribution<double>{30, 900}(random);
        TraceSample spike = trace.samples[at];
        spike.at += MonotonicTime{125'000};
        spike.indicated = spike.indicated + TemperatureDifference::fromCelsius(height);
        spiked.samples.insert(spiked.samples.begin() + static_cast<std::ptrdiff_t>(at) + 1, spike);
        const auto a = cleanRecording(trace, nullptr);
        const auto b = cleanRecording(spiked, nullptr);
        CAPTURE(at, height);
        CHECK(dropped(b, DropWhy::spike) == 1);
        REQUIRE(a.passes.size() == b.passes.size());
        CHECK(std::equal(a.passes.begin(), a.passes.end(), b.passes.begin(), samePass));
    }
}

TEST_CASE("short runs go as the definition says, one at a time from the left", "[analytics][trace][property]") {
    std::mt19937 random{15};
    std::uniform_int_distribution<int> length{1, 60};
    std::uniform_int_distribution<int> level{0, 3};
    std::uniform_int_distribution<int> kind{0, 9};
    const tracing::StepRules steps{TraceRules{}, Duration{0.25}, TemperatureDifference{}};
    int removed = 0;
    for (int round = 0; round < 400; ++round) {
        std::vector<tracing::Row> rows;
        std::int64_t at = 0;
        for (int run = 0; run < 12; ++run) {
            const double celsius = 50.0 + 100.0 * level(random);
            const int what = kind(random);
            at += what == 0 ? 4'000'000 : what == 1 ? -2'000'000 : 250'000;
            for (int i = length(random); i > 0; --i) {
                rows.push_back({Duration{MonotonicTime{at}}, Temperature::fromCelsius(celsius),
                                Temperature::fromCelsius(celsius)});
                at += 250'000;
            }
        }
        const auto expected = runsByDefinition(rows, steps);
        tracing::DropCounts counts{};
        const std::size_t before = rows.size();
        tracing::removeShortRuns(rows, steps, counts);
        REQUIRE(rows.size() == expected.size());
        CHECK(std::equal(rows.begin(), rows.end(), expected.begin(),
                         [](const auto& a, const auto& b) { return a.at == b.at && a.indicated == b.indicated; }));
        removed += static_cast<int>(before - rows.size());
    }
    CHECK(removed > 1000);
}

TEST_CASE("the median is that of the sorted steps", "[analytics][trace][property]") {
    std::mt19937_64 random{16};
    for (std::size_t count : {0U, 1U, 2U, 3U, 10U, 101U, 1000U, 5001U}) {
        for (const std::uint64_t spread :
             {std::uint64_t{1}, std::uint64_t{5}, std::uint64_t{1'000'000}, std::uint64_t{1} << 62U}) {
            std::vector<std::int64_t> values(count);
            for (auto& value : values) {
                value = 1 + static_cast<std::int64_t>(random() % spread);
            }
            std::vector<std::int64_t> sorted = values;
            std::sort(sorted.begin(), sorted.end());
            double expected = 0.0;
            if (count > 0) {
                expected =
                    (static_cast<double>(sorted[(count - 1) / 2]) + static_cast<double>(sorted[count / 2])) / 2.0;
            }
            CHECK(tracing::medianOf(values) == expected);
        }
    }
}

TEST_CASE("hostile recordings are survived and every row is accounted for", "[analytics][trace][hostile]") {
    constexpr double kNan = std::numeric_limits<double>::quiet_NaN();
    constexpr double kInf = std::numeric_limits<double>::infinity();
    constexpr double kHuge = std::numeric_limits<double>::max();
    std::mt19937_64 random{17};
    const std::vector<double> values{kNan, kInf, -kInf, kHuge, -kHuge, 0.0, 25.0, 100.0, 165.0, 1e-300, -273.15, 512.0};
    for (int round = 0; round < 600; ++round) {
        RawTrace trace;
        const std::size_t count = random() % 60;
        std::int64_t at = static_cast<std::int64_t>(random());
        for (std::size_t i = 0; i < count; ++i) {
            const auto kind = random() % 8;
            at = kind == 0 ? static_cast<std::int64_t>(random()) : kind == 1 ? at : at / 2 + 250'000;
            trace.samples.push_back(
                {MonotonicTime{at}, Temperature::fromCelsius(values[random() % values.size()]), random() % 10 == 0});
        }
        const CleanedRecording clean = cleanRecording(trace, nullptr);
        REQUIRE_FALSE(clean.passes.empty());
        std::size_t seen = 0;
        for (int many : clean.dropped) {
            seen += static_cast<std::size_t>(many);
        }
        for (const Pass& pass : clean.passes) {
            seen += pass.samples.size();
            CHECK((pass.samples.empty() ? pass.joins.empty() : pass.joins.size() + 1 == pass.samples.size()));
            (void)sustainedPeak(pass);
            (void)samplingTerm(pass);
            (void)hiddenTops(pass);
            (void)timeAtOrAbove(pass, Temperature::fromCelsius(100));
            (void)isComplete(pass, Temperature::fromCelsius(100));
        }
        CHECK(seen >= count);
        CHECK(seen < count + clean.passes.size()); // a sample at or below 60 °C may be in two passes
    }
}

TEST_CASE("empty, single and equal-time recordings give one pass", "[analytics][trace][hostile]") {
    CHECK(cleanRecording(RawTrace{}, nullptr).passes.front().samples.empty());
    RawTrace one;
    one.samples.push_back(sampleAt(0, 25));
    CHECK(cleanRecording(one, nullptr).passes.size() == 1);
    CHECK(dropped(cleanRecording(one, nullptr), DropWhy::shortRun) == 1);
    RawTrace equal;
    for (int i = 0; i < 50; ++i) {
        equal.samples.push_back(sampleAt(3, 25 + i % 2));
    }
    CHECK(cleanRecording(equal, nullptr).passes.size() == 1);
    RawTrace backwards = ride();
    std::reverse(backwards.samples.begin(), backwards.samples.end());
    CHECK(cleanRecording(backwards, nullptr).passes.front().samples.empty());
}

TEST_CASE("a hundred thousand alternating spikes take no time to speak of", "[analytics][trace][hostile]") {
    for (const int period : {2, 3, 4, 5, 8}) {
        RawTrace trace;
        for (int i = 0; i < 100'000; ++i) {
            trace.samples.push_back(sampleAt(0.1 * i, i % period == 0 ? 900.0 : 25.0));
        }
        const auto start = std::chrono::steady_clock::now();
        const CleanedRecording clean = cleanRecording(trace, nullptr);
        for (const Pass& pass : clean.passes) {
            (void)sustainedPeak(pass);
        }
        const Duration spent = std::chrono::steady_clock::now() - start;
        CHECK(spent < Duration{1.0});
        CHECK(dropped(clean, DropWhy::spike) + dropped(clean, DropWhy::shortRun) >= 100'000 / period);
    }
}
