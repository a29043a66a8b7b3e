#include "analytics/statistics/charts/rules.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

using Places = std::vector<std::size_t>;

/// The only signal of a sequence under all eight rules.
Signal only(const std::vector<double>& z, RuleSet rules = RuleSet::all()) {
    const auto found = findSignals(z, rules);
    REQUIRE(found);
    REQUIRE(found->alarms.size() == 1);
    return found->alarms.front();
}

Places pointsOfOnly(const std::vector<double>& z, RuleSet rules = RuleSet::all()) {
    const auto found = findSignals(z, rules);
    REQUIRE(found->alarms.size() == 1);
    return found->pointsOf(found->alarms.front());
}

bool sameSide(const std::vector<double>& z, std::size_t end, std::size_t window, std::size_t needed, double line,
              double sign) {
    std::size_t beyond = 0;
    for (std::size_t i = end + 1 - window; i <= end; ++i) {
        beyond += z[i] * sign > line ? 1U : 0U;
    }
    return beyond >= needed;
}

/// Each rule read word by word at one point, whatever its cost.
bool literally(const std::vector<double>& z, std::size_t at, NelsonRule rule) {
    const auto ends = [&](std::size_t length) { return at + 1 >= length; };
    const auto all = [&](std::size_t length, auto holds) {
        bool result = ends(length);
        for (std::size_t i = 0; result && i < length; ++i) {
            result = holds(at - i);
        }
        return result;
    };
    switch (rule) {
    case NelsonRule::BeyondThreeSigma:
        return std::abs(z[at]) > 3.0;
    case NelsonRule::OneSide:
        return all(9, [&](std::size_t i) { return z[i] > 0.0; }) || all(9, [&](std::size_t i) { return z[i] < 0.0; });
    case NelsonRule::Trend:
        return ends(6) && (all(5, [&](std::size_t i) { return z[i] > z[i - 1]; }) ||
                           all(5, [&](std::size_t i) { return z[i] < z[i - 1]; }));
    case NelsonRule::Alternating:
        return ends(14) && all(12, [&](std::size_t i) { return (z[i] - z[i - 1]) * (z[i - 1] - z[i - 2]) < 0.0; });
    case NelsonRule::TwoOfThree:
        for (const double sign : {1.0, -1.0}) {
            for (const std::size_t window : {2U, 3U}) {
                if (ends(window) && z[at] * sign > 2.0 && sameSide(z, at, window, 2, 2.0, sign)) {
                    return true;
                }
            }
        }
        return false;
    case NelsonRule::FourOfFive:
        for (const double sign : {1.0, -1.0}) {
            for (const std::size_t window : {4U, 5U}) {
                if (ends(window) && z[at] * sign > 1.0 && sameSide(z, at, window, 4, 1.0, sign)) {
                    return true;
                }
            }
        }
        return false;
    case NelsonRule::FifteenWithin:
        return all(15, [&](std::size_t i) { return std::abs(z[i]) < 1.0; });
    case NelsonRule::EightBeyond:
        return all(8, [&](std::size_t i) { return std::abs(z[i]) > 1.0; }) &&
               !all(8, [&](std::size_t i) { return z[i] > 0.0; }) && !all(8, [&](std::size_t i) { return z[i] < 0.0; });
    }
    return false;
}

} // namespace

// Nelson 1984 printed no sequences; these are constructed, their first signals found by a literal reading of each rule.
TEST_CASE("Rule 1: one point beyond three sigma", "[statistics][charts][nelson]") {
    const std::vector<double> z{0.4, -0.7, 1.2, -0.3, 3.1, 0.2};
    const auto signal = only(z);
    CHECK(signal.rule == NelsonRule::BeyondThreeSigma);
    CHECK(signal.at == 4);
    CHECK(signal.side == SignalSide::Above);
    CHECK(pointsOfOnly(z) == Places{4});
    CHECK(findSignals(std::vector{0.4, -0.7, 3.0, -0.3, 0.5})->alarms.empty()); // on the line is not beyond it
    CHECK(only({0.4, -3.2, 0.1}).side == SignalSide::Below);
}

TEST_CASE("Rule 2: nine in a row on one side, eight after Western Electric", "[statistics][charts][nelson]") {
    const std::vector<double> z{-0.4, 0.3, 0.9, 0.2, 1.4, 0.6, 0.1, 1.2, 0.5, 0.8, -0.2};
    const auto signal = only(z);
    CHECK(signal.rule == NelsonRule::OneSide);
    CHECK(signal.at == 9);
    CHECK(pointsOfOnly(z) == Places{1, 2, 3, 4, 5, 6, 7, 8, 9});
    CHECK(only(z, RuleSet::westernElectric()).at == 8);
    CHECK(pointsOfOnly(z, RuleSet::westernElectric()).size() == 9); // told once, with every point it grew to
    std::vector<double> touching = z;
    touching[5] = 0.0; // on the centre line is on neither side
    CHECK(findSignals(touching)->alarms.empty());
}

TEST_CASE("Rule 3: six in a row steadily rising or falling", "[statistics][charts][nelson]") {
    const std::vector<double> z{0.6, -1.5, -0.9, -0.4, 0.1, 0.7, 1.3, -0.2};
    const auto signal = only(z);
    CHECK(signal.rule == NelsonRule::Trend);
    CHECK(signal.at == 6);
    CHECK(signal.side == SignalSide::Above);
    CHECK(pointsOfOnly(z) == Places{1, 2, 3, 4, 5, 6});
    CHECK(findSignals(std::vector{0.6, -1.5, -0.9, -0.4, -0.4, 0.7, 1.3, -0.2})->alarms.empty()); // a tie breaks it
    std::vector<double> falling = z;
    for (auto& value : falling) {
        value = -value;
    }
    CHECK(only(falling).side == SignalSide::Below);
}

TEST_CASE("Rule 4: fourteen in a row alternating", "[statistics][charts][nelson]") {
    const std::vector<double> z{0.5, -0.6, 1.2, -0.3, 0.8, -1.1, 0.4, -0.5, 1.3, -0.8, 0.6, -0.2, 0.9, -0.7};
    const auto signal = only(z);
    CHECK(signal.rule == NelsonRule::Alternating);
    CHECK(signal.at == 13);
    CHECK(signal.side == SignalSide::Both);
    CHECK(pointsOfOnly(z).size() == 14);
    CHECK(findSignals(std::span{z}.first(13))->alarms.empty());
}

TEST_CASE("Rule 5: two of three beyond two sigma on the same side", "[statistics][charts][nelson]") {
    const std::vector<double> z{0.3, 2.3, -0.4, 2.1, 0.5};
    const auto signal = only(z);
    CHECK(signal.rule == NelsonRule::TwoOfThree);
    CHECK(signal.at == 3);
    CHECK(pointsOfOnly(z) == Places{1, 3}); // not the one between
    CHECK(findSignals(std::vector{0.3, 2.3, -0.4, -2.1, 0.5})->alarms.empty());
    CHECK(findSignals(std::vector{0.3, 2.3, -0.4, 0.1, 2.1})->alarms.empty());
}

TEST_CASE("Rule 6: four of five beyond one sigma on the same side", "[statistics][charts][nelson]") {
    const std::vector<double> z{0.2, 1.4, 1.1, -0.3, 1.6, 1.2, 0.4};
    const auto signal = only(z);
    CHECK(signal.rule == NelsonRule::FourOfFive);
    CHECK(signal.at == 5);
    CHECK(pointsOfOnly(z) == Places{1, 2, 4, 5});
    CHECK(findSignals(std::vector{0.2, 1.4, 1.0, -0.3, 1.6, 1.2, 0.4})->alarms.empty()); // 1.0 is not beyond 1
}

TEST_CASE("Rule 7: fifteen in a row within one sigma", "[statistics][charts][nelson]") {
    const std::vector<double> z{0.2, -0.5, 0.7, -0.1, 0.4, -0.8, -0.3, 0.6, 0.9, -0.2, 0.1, -0.7, -0.4, 0.3, 0.8};
    const auto signal = only(z);
    CHECK(signal.rule == NelsonRule::FifteenWithin);
    CHECK(signal.at == 14);
    CHECK(pointsOfOnly(z).size() == 15);
}

TEST_CASE("Rule 8: eight in a row beyond one sigma on both sides", "[statistics][charts][nelson]") {
    const std::vector<double> z{1.2, -1.4, 1.6, 1.1, -1.3, -1.7, 1.5, -1.2, 0.3};
    const auto signal = only(z);
    CHECK(signal.rule == NelsonRule::EightBeyond);
    CHECK(signal.at == 7);
    CHECK(pointsOfOnly(z) == Places{0, 1, 2, 3, 4, 5, 6, 7});
}

TEST_CASE("Values in control give no signal", "[statistics][charts][nelson]") {
    const std::vector<double> z{0.3, -0.8, 1.1, -1.4, 0.2, 0.6, -0.3, 1.8, -0.9, 0.4, -1.1, 0.7, 0.1, -0.6, 1.2};
    CHECK(findSignals(z)->alarms.empty());
}

TEST_CASE("Each rule can be switched by itself", "[statistics][charts][nelson]") {
    const std::vector<double> z{0.2, 2.4, 3.2, 2.6, 1.4, 1.2, 1.3, 1.1, 1.5, 2.2};
    const auto all = findSignals(z);
    CHECK(all->alarms.size() == 4); // rules 1, 5, 6 and 2
    for (unsigned number = 1; number <= 8; ++number) {
        const auto rule = static_cast<NelsonRule>(number);
        const auto alone = findSignals(z, RuleSet::none().with(rule));
        const auto without = findSignals(z, RuleSet::all().without(rule));
        CHECK(alone->alarms.size() + without->alarms.size() == all->alarms.size());
        for (const auto& signal : alone->alarms) {
            CHECK(signal.rule == rule);
        }
    }
    CHECK(findSignals(z, RuleSet::none())->alarms.empty());
}

TEST_CASE("Random sequences are read as a literal reading of the rules does", "[statistics][charts][nelson]") {
    std::mt19937_64 random{17};
    std::normal_distribution<double> normal{0.0, 1.3};
    std::uniform_real_distribution<double> inside{-1.2, 1.2};
    for (int round = 0; round < 60; ++round) {
        std::vector<double> z(120);
        for (std::size_t i = 0; i < z.size(); ++i) {
            z[i] = round % 3 == 0   ? normal(random)
                   : round % 3 == 1 ? inside(random)
                                    : std::round(normal(random) * 2.0) / 2.0;
            if (round % 5 == 0) {
                z[i] += i % 40 > 20 ? 1.1 : -0.8;
            }
        }
        for (unsigned number = 1; number <= 8; ++number) {
            const auto rule = static_cast<NelsonRule>(number);
            const auto found = findSignals(z, RuleSet::none().with(rule));
            Places met;
            for (std::size_t i = 0; i < z.size(); ++i) {
                if (literally(z, i, rule)) {
                    met.push_back(i);
                }
            }
            CAPTURE(round, number);
            for (const auto& signal : found->alarms) {
                CHECK(std::find(met.begin(), met.end(), signal.at) != met.end());
                CHECK(std::find(met.begin(), met.end(), signal.last) != met.end());
            }
            for (const auto at : met) {
                CHECK(std::any_of(found->alarms.begin(), found->alarms.end(),
                                  [&](const Signal& signal) { return signal.at <= at && at <= signal.last; }));
            }
        }
    }
}

TEST_CASE("The mirror image of a sequence gives the mirror image of its signals", "[statistics][charts][nelson]") {
    std::mt19937_64 random{23};
    std::normal_distribution<double> normal{0.3, 1.4};
    std::vector<double> z(2000);
    for (auto& value : z) {
        value = normal(random);
    }
    std::vector<double> mirrored = z;
    for (auto& value : mirrored) {
        value = -value;
    }
    const auto one = findSignals(z);
    const auto other = findSignals(mirrored);
    REQUIRE(one->alarms.size() == other->alarms.size());
    CHECK(one->alarms.size() > 50);
    const auto count = [](const RuleFindings& found, SignalSide side) {
        return std::count_if(found.alarms.begin(), found.alarms.end(),
                             [side](const Signal& signal) { return signal.side == side; });
    };
    CHECK(count(*one, SignalSide::Above) == count(*other, SignalSide::Below));
    CHECK(count(*one, SignalSide::Both) == count(*other, SignalSide::Both));
}

TEST_CASE("Rules over nothing, over no numbers and over a million points", "[statistics][charts][nelson][hostile]") {
    CHECK(findSignals({}).error() == StatisticsFault::NoValues);
    CHECK(findSignals(std::vector{0.1, std::nan("")}).error() == StatisticsFault::NotFinite);
    CHECK(findSignals(std::vector{std::numeric_limits<double>::infinity()}).error() == StatisticsFault::NotFinite);
    CHECK(findSignals(std::vector{3.5})->alarms.size() == 1);
    CHECK(findSignals(std::vector<double>(50, 0.0), RuleSet::all().without(NelsonRule::FifteenWithin))->alarms.empty());
    const std::vector<double> high(1'000'000, 4.0);
    const auto found = findSignals(high, RuleSet::all().without(NelsonRule::BeyondThreeSigma));
    CHECK(found->alarms.size() == 3); // one for all million points: nine in a row, two of three, four of five
    CHECK(found->alarms.back().last == 999'999);
}
