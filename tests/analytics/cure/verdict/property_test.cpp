#include "tests/analytics/cure/verdict/simulated_ride.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;
using namespace ride;

namespace {

RunPlan shifted(RunPlan run, TemperatureDifference by) {
    const auto move = [&](std::optional<Temperature>& t) { t = t ? std::optional{*t + by} : t; };
    for (auto& layer : run.layers) {
        auto& ink = layer.ink.requirement;
        ink.cure = ink.cure + by;
        ink.gel = GelRange{ink.gel->low + by, ink.gel->high + by};
        layer.ink = pureInk(ink);
    }
    move(run.fabric.hardCeiling);
    move(run.fabric.bleedCeiling);
    return run;
}

RawTrace withoutSamples(RawTrace trace, std::size_t from, std::size_t count) {
    const auto begin = trace.samples.begin() + static_cast<std::ptrdiff_t>(std::min(from, trace.samples.size()));
    const auto end = trace.samples.begin() + static_cast<std::ptrdiff_t>(std::min(from + count, trace.samples.size()));
    trace.samples.erase(begin, end);
    return trace;
}

bool anyCured(const std::vector<Verdict>& verdicts) {
    return std::any_of(verdicts.begin(), verdicts.end(), [](const Verdict& v) { return v.word == Word::cured; });
}

std::size_t randomIndex(std::mt19937& engine, std::size_t below) {
    return std::uniform_int_distribution<std::size_t>{0, below - 1}(engine);
}

} // namespace

TEST_CASE("shifting limits and trace together changes neither word nor margin", "[cure][property]") {
    std::mt19937 engine{1U};
    int seen[5] = {};
    for (int i = 0; i < 150; ++i) {
        const auto hump = randomHump(engine);
        const auto trace = sampled(hump, randomStep(engine));
        auto moved = trace;
        const auto by = degrees(std::uniform_real_distribution<double>{-5.0, 5.0}(engine));
        for (auto& sample : moved.samples) {
            sample.indicated = sample.indicated + by;
        }
        for (const auto& run : manyPlans()) {
            const bool byDose = std::any_of(run.layers.begin(), run.layers.end(),
                                            [](const Layer& layer) { return layer.ink.requirement.pairs; });
            if (byDose) {
                continue; // a dose depends on kelvin, not on differences
            }
            const auto before = judge(run, trace);
            const auto after = judge(shifted(run, by), moved);
            CHECK(before.word == after.word);
            REQUIRE(before.margin.has_value() == after.margin.has_value());
            if (before.margin->low->celsius() > -60.0) { // further down the fixed 60 °C that ends a pass shows
                CHECK(before.margin->low->celsius() == Approx(after.margin->low->celsius()).margin(1e-6));
            }
            ++seen[static_cast<int>(before.word)];
        }
    }
    CHECK(seen[static_cast<int>(Word::cured)] > 20);
    CHECK(seen[static_cast<int>(Word::underCured)] > 20);
    CHECK(seen[static_cast<int>(Word::overheated)] > 20);
}

TEST_CASE("stretching time and hold together changes neither word nor margin", "[cure][property]") {
    std::mt19937 engine{2U};
    for (int i = 0; i < 100; ++i) {
        const auto trace = sampled(randomHump(engine), 0.4);
        auto slow = trace;
        for (auto& sample : slow.samples) {
            sample.at = sample.at * 3 / 2;
        }
        auto ink = family(155.0, 45.0);
        const auto before = judge(plan({ink}, ceilings(185.0)), trace);
        ink.hold = Duration{67.5};
        const auto after = judge(plan({ink}, ceilings(185.0)), slow);
        CHECK(before.word == after.word);
        CHECK(before.margin->low->celsius() == Approx(after.margin->low->celsius()).margin(1e-4));
    }
}

TEST_CASE("Fahrenheit limits and trace give the verdict of the same in Celsius", "[cure][property]") {
    std::mt19937 engine{3U};
    for (int i = 0; i < 60; ++i) {
        const auto trace = sampled(randomHump(engine), 0.5);
        auto typed = trace;
        for (auto& sample : typed.samples) {
            sample.indicated = Temperature::fromFahrenheit(sample.indicated.fahrenheit());
        }
        typed.unit = TemperatureUnit::fahrenheit;
        for (const auto& run : manyPlans()) {
            CHECK(judge(run, trace).word == judge(run, typed).word);
        }
    }
}

TEST_CASE("a hotter ride never turns cured into under-cured", "[cure][property]") {
    std::mt19937 engine{4U};
    int cured = 0;
    for (int i = 0; i < 150; ++i) {
        const auto hump = randomHump(engine);
        const double step = randomStep(engine);
        const auto trace = sampled(hump, step);
        const double lift = std::uniform_real_distribution<double>{0.0, 6.0}(engine);
        const double where = std::uniform_real_distribution<double>{20.0, hump.end()}(engine);
        auto hotter = trace;
        for (auto& sample : hotter.samples) {
            const double at = static_cast<double>(sample.at.count()) / 1e6;
            const double warm = std::clamp((sample.indicated.celsius() - 60.0) / 40.0, 0.0, 1.0);
            sample.indicated = sample.indicated + degrees(warm * lift * std::exp(-(at - where) * (at - where) / 800.0));
        }
        for (const auto& run : manyPlans()) {
            const bool was = judge(run, trace).word == Word::cured;
            cured += was;
            CHECK_FALSE((was && judge(run, hotter).word == Word::underCured));
        }
    }
    CHECK(cured > 100);
}

TEST_CASE("a wider guard never turns not proven into cured", "[cure][property]") {
    std::mt19937 engine{5U};
    const double risks[] = {20.0, 10.0, 5.0, 2.0, 0.5, 0.1};
    int narrowed = 0;
    for (int i = 0; i < 150; ++i) {
        const auto trace = sampled(randomHump(engine), randomStep(engine));
        for (const auto& run : manyPlans()) {
            // Overheated may become cured, where only the bleed ceiling was exceeded; not proven may not.
            bool wasNotProven = false;
            bool wasCured = false;
            for (const double risk : risks) { // each a wider guard than the one before
                const GuardSetting guard{Probability::fromPercent(risk)};
                const auto word = judge(run, trace, inDate(), guard).word;
                CHECK_FALSE((word == Word::cured && wasNotProven));
                wasNotProven = wasNotProven || word == Word::notProven;
                narrowed += wasCured && word == Word::notProven;
                wasCured = word == Word::cured;
            }
            auto taped = probe();
            taped.placement = Placement::tapedOnFilm;
            CHECK_FALSE(
                (judge(run, trace, inDate(taped)).word == Word::cured && judge(run, trace).word == Word::notProven));
        }
    }
    CHECK(narrowed > 30);
}

TEST_CASE("a dropout never turns under-cured or overheated into cured", "[cure][property]") {
    std::mt19937 engine{6U};
    int wrong = 0;
    for (int i = 0; i < 400; ++i) {
        const auto trace = sampled(randomHump(engine), randomStep(engine));
        const std::size_t from = randomIndex(engine, trace.samples.size());
        const auto torn = withoutSamples(trace, from, 1 + randomIndex(engine, 80));
        for (const auto& run : manyPlans()) {
            const auto word = judge(run, trace).word;
            if (word == Word::underCured || word == Word::overheated) {
                ++wrong;
                CHECK_FALSE(anyCured(judgeRecording(run, torn, inDate())));
            }
        }
    }
    CHECK(wrong > 300);
}

TEST_CASE("a dropout longer than the gap limit never turns anything into cured", "[cure][property]") {
    std::mt19937 engine{7U};
    int notCured = 0;
    for (int i = 0; i < 400; ++i) {
        const double step = randomStep(engine);
        const auto trace = sampled(randomHump(engine), step);
        const std::size_t from = randomIndex(engine, trace.samples.size());
        const double limit = std::min(5.0, std::max(2.0, 4.0 * step));
        const auto least = static_cast<std::size_t>(limit / step) + 1;
        const auto torn = withoutSamples(trace, from, least + randomIndex(engine, 60));
        for (const auto& run : manyPlans()) {
            if (judge(run, trace).word != Word::cured) {
                ++notCured;
                CHECK_FALSE(anyCured(judgeRecording(run, torn, inDate())));
            }
        }
    }
    CHECK(notCured > 500);
}

TEST_CASE("hostile recordings never give a cured verdict or stop the program", "[cure][property]") {
    std::mt19937 engine{8U};
    std::uniform_real_distribution<double> wild{-400.0, 2000.0};
    for (int i = 0; i < 300; ++i) {
        RawTrace trace;
        const std::size_t count = randomIndex(engine, 60);
        for (std::size_t k = 0; k < count; ++k) {
            const auto pick = randomIndex(engine, 8);
            const double t = pick == 0 ? std::nan("") : pick == 1 ? HUGE_VAL : wild(engine);
            trace.samples.push_back({std::chrono::microseconds{static_cast<long long>(randomIndex(engine, 20'000'000))},
                                     celsius(t), pick == 2});
        }
        for (const auto& run : manyPlans()) {
            CHECK_FALSE(anyCured(judgeRecording(run, trace, inDate())));
        }
    }
}
