// The eighteen months as plain facts: how large they are, how they err, and what a quiet history has not.
#include "kiosk/demo/history/history_model.hpp"
#include "tests/kiosk/demo/support/whole_history.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <ctime>
#include <map>
#include <set>

using namespace holdfast;
using namespace holdfast::kiosk::demo;
using analytics::InstrumentKind;
using analytics::Word;

namespace {

bool isProbe(const HistoryFacts& facts, const ReadingFact& reading) {
    return facts.instruments[reading.instrument].kind == InstrumentKind::probe;
}

/// Share of the spread of drawn readings that those of one episode have in common: the one-way analysis of variance,
/// (MSB − MSW) / (MSB + (n0 − 1) MSW) (Shrout and Fleiss 1979, ICC(1); n0 of unequal groups from Snedecor and Cochran).
double intraclassOf(const HistoryFacts& facts) {
    std::map<std::size_t, std::vector<double>> groups;
    for (const auto& reading : facts.readings) {
        if (isProbe(facts, reading) && reading.asked == Asked::drawn && reading.word != Word::underCured &&
            reading.word != Word::overheated) {
            groups[facts.runs[reading.run].episode].push_back(reading.trueMargin.celsius());
        }
    }
    double sum = 0.0;
    double n = 0.0;
    double squares = 0.0;
    for (const auto& [episode, values] : groups) {
        for (const double value : values) {
            sum += value;
        }
        n += static_cast<double>(values.size());
        squares += static_cast<double>(values.size() * values.size());
    }
    const double mean = sum / n;
    double between = 0.0;
    double within = 0.0;
    for (const auto& [episode, values] : groups) {
        double own = 0.0;
        for (const double value : values) {
            own += value / static_cast<double>(values.size());
        }
        between += static_cast<double>(values.size()) * (own - mean) * (own - mean);
        for (const double value : values) {
            within += (value - own) * (value - own);
        }
    }
    const auto k = static_cast<double>(groups.size());
    const double msb = between / (k - 1.0);
    const double msw = within / (n - k);
    const double n0 = (n - squares / n) / (k - 1.0);
    return (msb - msw) / (msb + (n0 - 1.0) * msw);
}

/// Of the prints' washes.
bool washedOut(const HistoryFacts& facts, std::size_t print) {
    return std::any_of(facts.tests.begin(), facts.tests.end(), [&](const TestFact& test) {
        return test.print == print && test.tested == Tested::wash && test.outcome == Outcome::failed;
    });
}

std::string textOf(const HistoryFacts& facts) {
    std::string text;
    for (const auto& reading : facts.readings) {
        text += std::to_string(reading.run) + ' ' + std::to_string(reading.at) + ' ' +
                std::to_string(reading.seen.celsius()) + '\n';
    }
    for (const auto& test : facts.tests) {
        text += std::to_string(test.print) + ' ' + std::to_string(test.at) + ' ' + test.change.text() + '\n';
    }
    for (const auto& complaint : facts.complaints) {
        text += std::to_string(complaint.run) + ' ' + std::to_string(complaint.received) + '\n';
    }
    return text;
}

} // namespace

TEST_CASE("the history is about as large as it was asked for", "[demo][history]") {
    // issue 5, point 9: about 4,000 runs, 30,000 readings, 6,000 tests
    const auto& facts = whole();
    CHECK(facts.runs.size() == Approx(4000).epsilon(0.05));
    CHECK(facts.readings.size() == Approx(30000).epsilon(0.05));
    CHECK(facts.tests.size() == Approx(6000).epsilon(0.10));
    CHECK(facts.runs.back().number == 20373); // the twelve days begin with 20374
    for (std::size_t i = 1; i < facts.runs.size(); ++i) {
        REQUIRE(facts.runs[i].number == facts.runs[i - 1].number + 1);
        REQUIRE(facts.runs[i].begins >= facts.runs[i - 1].begins);
    }
    CHECK(facts.buckets.size() <= 300); // the twelve days open bucket 301
    CHECK(facts.complaints.size() >= 20);
    CHECK(facts.complaints.size() <= 100);
}

TEST_CASE("the history is the same every time, and another for another seed", "[demo][history]") {
    CHECK(textOf(historyOf(HistoryPlan{})) == textOf(whole()));
    HistoryPlan other;
    other.seed = 7;
    CHECK(textOf(historyOf(other)) != textOf(whole()));
}

TEST_CASE("a quiet history takes far less than a fifth of a second", "[demo][history]") {
    constexpr int kSeeds = 10;
    const auto before = std::clock();
    std::size_t readings = 0;
    for (std::uint64_t seed = 1; seed <= kSeeds; ++seed) {
        readings += historyOf(HistoryPlan::quiet(seed)).readings.size();
    }
    const double seconds = static_cast<double>(std::clock() - before) / CLOCKS_PER_SEC;
    CHECK(readings > 250'000);
    CHECK(seconds / kSeeds < 0.2);
}

TEST_CASE("readings of one episode are alike, strips are read too high, some are taken again and some skipped",
          "[demo][history]") {
    const HistoryPlan plan = HistoryPlan::quiet(3);
    const auto facts = historyOf(plan);
    CHECK(intraclassOf(facts) == Approx(plan.intraclass).margin(0.04));
    double optimism = 0.0;
    int strips = 0;
    int doubtful = 0;
    int again = 0;
    int due = 0;
    for (const auto& reading : facts.readings) {
        if (reading.lastDark || reading.firstLight) {
            optimism += (reading.seen - reading.trueMargin).celsius();
            ++strips;
        }
        const bool drawn = reading.asked == Asked::drawn;
        due += drawn ? 1 : 0;
        doubtful += drawn && reading.word == Word::notProven && isProbe(facts, reading) ? 1 : 0;
        again += reading.retakeOf ? 1 : 0;
    }
    REQUIRE(strips > 500);
    CHECK(optimism / strips == Approx(plan.optimism.celsius()).margin(0.1));
    REQUIRE(doubtful > 100);
    CHECK(static_cast<double>(again) / doubtful == Approx(plan.retaken).margin(0.1));
    const double skipped = static_cast<double>(facts.missed.size());
    CHECK(skipped / (due + skipped) == Approx(plan.skipped).margin(0.003));
}

TEST_CASE("shares of a quiet history can be set", "[demo][history]") {
    auto plan = HistoryPlan::quiet(3);
    plan.skipped = 0.0;
    plan.retaken = 0.0;
    plan.intraclass = 0.0;
    plan.strips = 0.0;
    const auto facts = historyOf(plan);
    CHECK(facts.missed.empty());
    CHECK(std::none_of(facts.readings.begin(), facts.readings.end(),
                       [](const auto& reading) { return reading.retakeOf || reading.lastDark; }));
    CHECK(intraclassOf(facts) == Approx(0.0).margin(0.03));
}

TEST_CASE("in a quiet history nothing is wrong but chance", "[demo][history]") {
    const auto facts = historyOf(HistoryPlan::quiet(11));
    CHECK(facts.planted.pail == 0);
    CHECK(facts.planted.alarmLoad == 0);
    CHECK(facts.planted.poured.empty());
    for (const auto& bucket : facts.buckets) {
        CHECK(bucket.label == bucket.holds);
        CHECK(bucket.why != Emptied::mislabelled);
    }
    CHECK(std::all_of(facts.checks.begin(), facts.checks.end(), [](const auto& check) { return check.passed; }));
    std::array<double, 3> sum{};
    std::array<int, 3> count{};
    for (const auto& turn : facts.turns) {
        CHECK(turn.turn != Turn::repaired);
        CHECK(turn.turn != Turn::beltFaster);
        CHECK(turn.turn != Turn::beltSlower);
    }
    for (const auto& episode : facts.episodes) {
        sum[static_cast<std::size_t>(episode.dryer)] += episode.warmUp.celsius();
        ++count[static_cast<std::size_t>(episode.dryer)];
    }
    for (std::size_t i = 0; i < sum.size(); ++i) {
        // four standard errors of a mean of that many, each with √(1.6² × 0.5) °C
        CHECK(std::abs(sum[i] / count[i]) < 4.0 * 1.132 / std::sqrt(static_cast<double>(count[i])));
    }
}

TEST_CASE("every series of the history comes to an end before the twelve days", "[demo][history]") {
    const auto& facts = whole();
    const HistoryMinute end = facts.days * kMinutesADay;
    std::set<std::size_t> ended;
    std::set<std::size_t> washed;
    for (const auto& test : facts.tests) {
        REQUIRE(test.at < end);
        if (test.tested == Tested::wash) {
            washed.insert(test.print);
            const bool last = test.outcome == Outcome::failed || (test.cycle == 5 && !test.isVoid);
            last ? static_cast<void>(ended.insert(test.print)) : static_cast<void>(0);
        }
    }
    CHECK(ended == washed);
    CHECK(washed.size() == facts.prints.size());
    for (const auto& load : facts.loads) {
        REQUIRE(load.judged < end);
    }
    for (const auto& complaint : facts.complaints) {
        REQUIRE(complaint.closed < end);
        REQUIRE(complaint.received > facts.runs[complaint.run].ends);
    }
}

TEST_CASE("a print washes out the more often the less its film got", "[demo][history]") {
    using analytics::TemperatureDifference;
    const auto at = [](double celsius) { return washOutChance(TemperatureDifference::fromCelsius(celsius)); };
    CHECK(at(6.0) < 0.01);
    CHECK(at(0.0) > 0.3);
    CHECK(at(-8.0) > 0.95);
    const auto& facts = whole();
    int high = 0;
    int highOut = 0;
    int low = 0;
    int lowOut = 0;
    for (std::size_t i = 0; i < facts.prints.size(); ++i) {
        const auto& print = facts.prints[i];
        if (i == facts.planted.alarmPrint) {
            continue;
        }
        const bool isHigh = print.trueMargin > TemperatureDifference::fromCelsius(4.0);
        (isHigh ? high : low) += 1;
        (isHigh ? highOut : lowOut) += washedOut(facts, i) ? 1 : 0;
    }
    REQUIRE(low > 20);
    CHECK(static_cast<double>(lowOut) / low > 5.0 * static_cast<double>(highOut) / high);
}
