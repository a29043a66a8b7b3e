#include "analytics/statistics/charts/cusum.hpp"
#include "analytics/statistics/charts/run_length.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

using Table = std::vector<std::pair<double, double>>;

RuleSet zones(bool two, bool four, bool eight) {
    auto rules = RuleSet::none().with(NelsonRule::BeyondThreeSigma).withOneSideRun(8);
    rules = two ? rules.with(NelsonRule::TwoOfThree) : rules;
    rules = four ? rules.with(NelsonRule::FourOfFive) : rules;
    return eight ? rules.with(NelsonRule::OneSide) : rules;
}

} // namespace

TEST_CASE("Run lengths of three-sigma limits", "[statistics][charts][arl]") {
    // 1/(Φ(−3 − d) + Φ(−3 + d)), scipy 1.10.1; Montgomery prints 370.4
    for (const auto& [shift, length] :
         Table{{0, 370.398}, {0.5, 155.224}, {1, 43.895}, {1.5, 14.968}, {2, 6.303}, {3, 2.000}}) {
        CHECK(*shewhartRunLength(3.0, shift) == Approx(length).margin(1.1e-3));
        CHECK(*shewhartRunLength(3.0, -shift) == Approx(length).margin(1.1e-3));
    }
}

TEST_CASE("Run lengths of zone rules in control", "[statistics][charts][arl]") {
    // Exact Markov chain, scipy 1.10.1 sparse; equal to Champ and Woodall, Technometrics 29 (1987)
    CHECK(*rulesRunLength(zones(false, false, false), 0) == Approx(370.40).margin(0.01));
    CHECK(*rulesRunLength(zones(true, false, false), 0) == Approx(225.44).margin(0.01));
    CHECK(*rulesRunLength(zones(false, true, false), 0) == Approx(166.05).margin(0.01));
    CHECK(*rulesRunLength(zones(false, false, true), 0) == Approx(152.73).margin(0.01));
    CHECK(*rulesRunLength(zones(true, true, false), 0) == Approx(132.89).margin(0.01));
    CHECK(*rulesRunLength(RuleSet::westernElectric(), 0) == Approx(91.75).margin(0.01));
}

TEST_CASE("Run lengths of all zone rules after a shift", "[statistics][charts][arl]") {
    // As above; Champ and Woodall 1987
    for (const auto& [shift, length] : Table{{0.5, 27.33}, {1, 9.22}, {2, 3.13}}) {
        CHECK(*rulesRunLength(RuleSet::westernElectric(), shift) == Approx(length).margin(0.01));
        CHECK(*rulesRunLength(RuleSet::westernElectric(), -shift) == Approx(length).margin(0.01));
    }
}

TEST_CASE("Run lengths of a run on one side alone are known in closed form", "[statistics][charts][arl]") {
    // Nine heads or nine tails in a row with a fair coin: 2⁹ − 1 throws (Feller, Introduction to Probability, XIII.7)
    CHECK(*rulesRunLength(RuleSet::none().with(NelsonRule::OneSide), 0) == Approx(511.0).epsilon(1e-10));
    // Fifteen in a row of chance p: (p⁻¹⁵ − 1)/(1 − p), p = Φ(1) − Φ(−1)
    const double p = std::erf(1.0 / std::sqrt(2.0));
    CHECK(*rulesRunLength(RuleSet::none().with(NelsonRule::FifteenWithin), 0) ==
          Approx((std::pow(p, -15.0) - 1.0) / (1.0 - p)).epsilon(1e-10));
}

TEST_CASE("The Markov chain of Nelson's zone rules is what drawing shows", "[statistics][charts][arl]") {
    const auto rules = RuleSet::all().without(NelsonRule::Trend).without(NelsonRule::Alternating);
    for (const auto only8 : {false, true}) {
        const auto tested = only8 ? RuleSet::none().with(NelsonRule::EightBeyond) : rules;
        const double exact = *rulesRunLength(tested, only8 ? 0.0 : 0.3);
        std::mt19937_64 random{4};
        std::normal_distribution<double> normal{only8 ? 0.0 : 0.3, 1.0};
        double sum = 0.0;
        double squares = 0.0;
        const int rounds = only8 ? 500 : 5000;
        for (int round = 0; round < rounds; ++round) {
            std::vector<double> z;
            RuleFindings found;
            while (found.alarms.empty()) {
                for (int i = 0; i < (only8 ? 40000 : 2000); ++i) {
                    z.push_back(normal(random));
                }
                found = *findSignals(z, tested);
            }
            const double length = static_cast<double>(found.alarms.front().at) + 1.0;
            sum += length;
            squares += length * length;
        }
        const double mean = sum / rounds;
        const double error = std::sqrt((squares / rounds - mean * mean) / rounds);
        CAPTURE(only8, exact, mean, error);
        CHECK(std::abs(mean - exact) < 4.0 * error);
    }
}

TEST_CASE("Drawn run lengths are within their error of exact ones", "[statistics][charts][arl]") {
    // Trend and alternation: numpy 1.24.2, the chance of no pattern by the rank of the last of n points, summed over n
    // (David and Barton, Combinatorial Chance, 1962, ch. 10; with the rising trend alone it gives 1/(1/6! − 1/7! + …)).
    // Zones: Champ and Woodall 1987, as above.
    struct Known final {
        RuleSet rules;
        double shift, exact;
    };
    for (const auto& [rules, shift, exact] : {Known{RuleSet::none().with(NelsonRule::Trend), 0.0, 421.59839},
                                              {RuleSet::none().with(NelsonRule::Trend), 5.0, 421.59839},
                                              {RuleSet::none().with(NelsonRule::Alternating), 0.0, 601.00767},
                                              {RuleSet::westernElectric(), 0.0, 91.75},
                                              {RuleSet::westernElectric(), 1.0, 9.22}}) {
        const auto drawn = drawnRunLength(rules, shift, 4'000);
        REQUIRE(drawn);
        CAPTURE(shift, exact, drawn->mean, drawn->standardError);
        CHECK(std::abs(drawn->mean - exact) < 4.0 * drawn->standardError);
        CHECK(drawn->standardError < 0.02 * exact);
        CHECK(drawn->charts == 4'000);
    }
}

TEST_CASE("Rules three and four shorten the run to a false alarm", "[statistics][charts][arl]") {
    const auto zones = RuleSet::all().without(NelsonRule::Trend).without(NelsonRule::Alternating);
    const double without = *rulesRunLength(zones, 0.0);
    const auto with = drawnRunLength(RuleSet::all(), 0.0, 4'000);
    REQUIRE(with);
    CHECK(with->mean + 4.0 * with->standardError < without);
    // were each rule's alarms independent, their rates would add
    CHECK(1.0 / with->mean < 1.0 / without + 1.0 / 421.6 + 1.0 / 601.0 + 0.001);
    CHECK(drawnRunLength(RuleSet::all(), 0.0, 200)->mean == drawnRunLength(RuleSet::all(), 0.0, 200)->mean);
    CHECK(drawnRunLength(RuleSet::all(), 0.0, 200, 2)->mean != drawnRunLength(RuleSet::all(), 0.0, 200)->mean);
}

TEST_CASE("Run lengths that cannot be drawn are refused by name", "[statistics][charts][arl]") {
    CHECK(drawnRunLength(RuleSet::none(), 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(drawnRunLength(RuleSet::all(), 0.0, 1).error() == StatisticsFault::OutOfDomain);
    CHECK(drawnRunLength(RuleSet::all(), std::numeric_limits<double>::quiet_NaN()).error() ==
          StatisticsFault::OutOfDomain);
    CHECK(drawnRunLength(RuleSet::all(), 1e308, 10)->mean == 1.0);
}

TEST_CASE("Run lengths of a two-sided CUSUM", "[statistics][charts][arl]") {
    // R 4.2.2, package spc 0.6.7: xcusum.arl(0.5, 4, d, sided = "two", r = 60); Montgomery prints 168 74.2 26.6 8.38 …
    for (const auto& [shift, length] :
         Table{{0, 167.684}, {0.25, 74.224}, {0.5, 26.630}, {1, 8.383}, {1.5, 4.747}, {2, 3.343}, {3, 2.194}}) {
        CHECK(*cusumRunLength(0.5, 4.0, shift) == Approx(length).margin(1.1e-3));
    }
    // xcusum.arl(0.5, 5, d, sided = "two", r = 60)
    for (const auto& [shift, length] : Table{{0, 465.444}, {0.5, 37.996}, {1, 10.376}, {2, 4.009}}) {
        CHECK(*cusumRunLength(0.5, 5.0, shift) == Approx(length).margin(1.1e-3));
    }
}

TEST_CASE("Run lengths of a one-sided CUSUM", "[statistics][charts][arl]") {
    // R 4.2.2, package spc 0.6.7, sided = "one"
    CHECK(*cusumRunLength(0.5, 4.0, 0.0, Sides::One) == Approx(335.368).margin(2e-3));
    CHECK(*cusumRunLength(0.5, 4.0, 1.0, Sides::One) == Approx(8.3832).margin(1e-4));
    CHECK(*cusumRunLength(0.5, 5.0, 0.0, Sides::One) == Approx(930.887).margin(5e-3));
}

TEST_CASE("Run lengths of an EWMA", "[statistics][charts][arl]") {
    // R 4.2.2, package spc 0.6.7: xewma.arl(0.2, 2.962, d, sided = "two", r = 60); Lucas and Saccucci 1990 print 500
    // 150 41.8 10.5 5.5 3.7 2.4
    for (const auto& [shift, length] :
         Table{{0, 499.74}, {0.25, 150.22}, {0.5, 41.764}, {1, 10.542}, {1.5, 5.501}, {2, 3.743}, {3, 2.381}}) {
        CHECK(*ewmaRunLength(0.2, 2.962, shift) == Approx(length).margin(shift < 0.5 ? 0.02 : 1.1e-3));
    }
    // xewma.arl(0.1, 2.814, d, sided = "two")
    for (const auto& [shift, length] : Table{{0, 499.58}, {0.5, 31.297}, {1, 10.331}, {2, 4.362}}) {
        CHECK(*ewmaRunLength(0.1, 2.814, shift) == Approx(length).margin(shift < 0.5 ? 0.02 : 1.1e-3));
    }
    CHECK(*ewmaRunLength(0.2, 2.86, 0.0) == Approx(371.10).margin(0.02));
    CHECK(*ewmaRunLength(0.2, 2.86, 1.0) == Approx(9.8015).margin(1e-3));
}

TEST_CASE("The limit for a wanted run length", "[statistics][charts][arl]") {
    CHECK(*ewmaWidthFor(0.2, 370.4) == Approx(2.85934).margin(1e-4));   // R 4.2.2, spc 0.6.7: xewma.crit(0.2, 370.4)
    CHECK(*shewhartWidthFor(370.39834737) == Approx(3.0).margin(1e-9)); // 1/(2Φ(−3))
    CHECK(*cusumIntervalFor(0.5, 167.684) == Approx(4.0).margin(1e-5)); // the table above, backwards
    CHECK(*cusumIntervalFor(0.5, 930.887, Sides::One) == Approx(5.0).margin(1e-5));
    for (const double wanted : {2.0, 50.0, 370.4, 5000.0, 1e6}) {
        CHECK(*cusumRunLength(0.5, *cusumIntervalFor(0.5, wanted), 0.0) == Approx(wanted).epsilon(1e-6));
        CHECK(*ewmaRunLength(0.1, *ewmaWidthFor(0.1, wanted), 0.0) == Approx(wanted).epsilon(1e-6));
        CHECK(*shewhartRunLength(*shewhartWidthFor(wanted), 0.0) == Approx(wanted).epsilon(1e-9));
    }
}

TEST_CASE("Charts that are the same have the same run length", "[statistics][charts][arl]") {
    CHECK(*ewmaRunLength(1.0, 3.0, 0.7) == Approx(*shewhartRunLength(3.0, 0.7)));
    // k = 3 and h next to nothing is a one-sided limit at 3
    CHECK(*cusumRunLength(3.0, 1e-9, 0.0, Sides::One) == Approx(740.797).margin(1e-2));
    CHECK(*rulesRunLength(zones(false, false, false), 1.0) == Approx(*shewhartRunLength(3.0, 1.0)).epsilon(1e-10));
    CHECK(*ewmaRunLength(0.02, 2.5, 0.4) > *ewmaRunLength(0.02, 2.5, 0.8));
}

TEST_CASE("Run lengths of impossible charts", "[statistics][charts][arl][hostile]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(shewhartRunLength(0.0, 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(shewhartRunLength(nan, 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(shewhartRunLength(60.0, 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(rulesRunLength(RuleSet::all(), 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(rulesRunLength(RuleSet::none(), 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(rulesRunLength(RuleSet::westernElectric(), nan).error() == StatisticsFault::OutOfDomain);
    CHECK(cusumRunLength(-0.1, 4.0, 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(cusumRunLength(0.5, 0.0, 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(cusumRunLength(0.5, 4.0, nan).error() == StatisticsFault::OutOfDomain);
    CHECK_FALSE(cusumRunLength(2.0, 100.0, 0.0).has_value()); // beyond what doubles can solve
    CHECK(ewmaRunLength(0.0, 3.0, 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK(ewmaRunLength(0.2, -1.0, 0.0).error() == StatisticsFault::OutOfDomain);
    CHECK_FALSE(ewmaRunLength(0.2, 10.0, 0.0).has_value());
    CHECK(ewmaWidthFor(0.2, 1.0).error() == StatisticsFault::OutOfDomain);
    CHECK(cusumIntervalFor(0.5, 1e12).error() == StatisticsFault::OutOfDomain);
    CHECK(cusumIntervalFor(0.5, nan).error() == StatisticsFault::OutOfDomain);
    CHECK(*cusumRunLength(0.5, 4.0, 40.0) == Approx(1.0).margin(1e-9));
}
