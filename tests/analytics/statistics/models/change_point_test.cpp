#include "analytics/statistics/models/change_point.hpp"

#include "tests/analytics/statistics/models/nile.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

/// British coal-mining disasters with ten or more men killed, by year, 1851 to 1962 (Jarrett, Biometrika 66:191, 1979).
std::vector<std::int64_t> coalDisasters() {
    return {4, 5, 4, 1, 0, 4, 3, 4, 0, 6, 3, 3, 4, 0, 2, 6, 3, 3, 5, 4, 5, 3, 1, 4, 4, 1, 5, 5,
            3, 4, 2, 5, 2, 2, 3, 4, 2, 1, 3, 2, 2, 1, 1, 1, 1, 3, 0, 0, 1, 0, 1, 1, 0, 0, 3, 1,
            0, 3, 2, 2, 0, 1, 1, 1, 0, 1, 0, 1, 0, 0, 0, 2, 1, 0, 0, 0, 1, 1, 0, 2, 3, 3, 1, 1,
            2, 1, 1, 1, 1, 2, 3, 3, 0, 0, 0, 1, 4, 0, 0, 0, 1, 0, 0, 0, 0, 0, 1, 0, 0, 1, 0, 1};
}

std::vector<FailedOfTotal> weeks() {
    const std::vector<std::int64_t> failed{1, 0, 2, 1, 1, 0, 1, 2, 4, 3, 5, 2, 4, 6};
    const std::vector<std::int64_t> total{20, 18, 22, 20, 19, 21, 20, 20, 22, 20, 21, 18, 20, 23};
    std::vector<FailedOfTotal> periods;
    for (std::size_t i = 0; i < failed.size(); ++i) {
        periods.push_back({failed[i], total[i]});
    }
    return periods;
}

bool holds(const ChangePoint& change, std::size_t position) {
    return std::binary_search(change.possible.begin(), change.possible.end(), position);
}

} // namespace

TEST_CASE("Nile: the mean changed after 1898", "[statistics][models]") {
    const auto result = changeInMean(nileFlow());
    REQUIRE(result);
    // Cobb, Biometrika 65:243, 1978; R 4.2.2, strucchange 1.5-3: breakpoints(Nile ~ 1)
    CHECK(result->position == 28);
    CHECK(result->before == Approx(1097.75).margin(1e-9));
    CHECK(result->after == Approx(849.972222).margin(5e-7));
    CHECK(result->squaresNone == Approx(2835156.750).margin(0.0005));
    CHECK(result->squaresOne == Approx(1597457.194).margin(0.0005));
    // R 4.2.2: 100·log(deviance(lm(Nile ~ 1))/deviance(lm(Nile ~ half))) for all splits
    CHECK(result->statistic == Approx(57.3684115086).margin(1e-8));
    CHECK(result->possible == std::vector<std::size_t>{26, 27, 28, 29});
    // strucchange 1.5-3 confint(breakpoints(Nile ~ 1)), another method (Bai 1997): observations 25 to 32
    CHECK(result->earliest() >= 25);
    CHECK(result->latest() <= 32);
    CHECK(result->p == Approx(0.001));
}

TEST_CASE("Coal mines: the rate of disasters fell about 1891", "[statistics][models]") {
    const auto result = changeInRate(coalDisasters());
    REQUIRE(result);
    // Carlin, Gelfand and Smith, Appl. Statist. 41:389, 1992: year 41 (1891), about 3.1 a year before and 0.9 after
    CHECK(result->position == 41);
    CHECK(result->before == Approx(3.1).margin(0.05));
    CHECK(result->after == Approx(0.9).margin(0.05));
    // R 4.2.2: differences of glm(y ~ half, family = poisson)$deviance
    CHECK(result->statistic == Approx(69.9883447473).margin(1e-8));
    CHECK(result->before == Approx(3.09756097561).margin(1e-10));
    CHECK(result->after == Approx(0.901408450704).margin(1e-10));
    CHECK(result->dispersion == Approx(1.02747181451).margin(1e-9)); // sum of squared Pearson residuals over 110
    CHECK(result->earliest() == 35);                                 // 1885 to 1896
    CHECK(result->latest() == 46);
    CHECK(result->p == Approx(0.001));
}

TEST_CASE("Failed of so many in fourteen weeks", "[statistics][models]") {
    const auto result = changeInShare(weeks());
    REQUIRE(result);
    // R 4.2.2: glm(cbind(failed, total - failed) ~ half, family = binomial) for all splits
    CHECK(result->position == 8);
    CHECK(result->statistic == Approx(14.6039243042).margin(1e-8));
    CHECK(result->before == Approx(0.05).margin(1e-12));
    CHECK(result->after == Approx(0.193548387097).margin(1e-11));
    CHECK(result->dispersion == 1.0); // 0.489 there
    CHECK(result->possible == std::vector<std::size_t>{6, 7, 8, 9, 10});
    CHECK(result->p < 0.05);
    CHECK(result->p == changeInShare(weeks())->p); // the same seed, the same orders
}

TEST_CASE("The set reaches as far as the published limits of the threshold law", "[statistics][models]") {
    // Hansen, Econometrica 68:575, 2000, table 1: 5.94, 7.35, 10.59
    for (const auto& [level, limit] : {std::pair{0.90, 5.94}, std::pair{0.95, 7.35}, std::pair{0.99, 10.59}}) {
        ChangeOptions options;
        options.level = level;
        options.permutations = 0;
        const auto result = changeInMean(nileFlow(), options);
        const auto flow = nileFlow();
        for (std::size_t k = 1; k < flow.size(); ++k) {
            double left = 0.0;
            double right = 0.0;
            for (std::size_t i = 0; i < flow.size(); ++i) {
                (i < k ? left : right) += flow[i];
            }
            double within = 0.0;
            for (std::size_t i = 0; i < flow.size(); ++i) {
                const double mean =
                    i < k ? left / static_cast<double>(k) : right / static_cast<double>(flow.size() - k);
                within += (flow[i] - mean) * (flow[i] - mean);
            }
            const double below = 100.0 * std::log(within / result->squaresOne);
            if (std::abs(below - limit) > 0.01) {
                CHECK(holds(*result, k) == (below < limit));
            }
        }
    }
}

TEST_CASE("The set holds the true position at least as often as it says", "[statistics][models]") {
    std::mt19937_64 random{17};
    std::normal_distribution<double> normal;
    ChangeOptions options;
    options.permutations = 0;
    for (const auto& [n, step] :
         {std::pair{40U, 1.0}, std::pair{40U, 2.0}, std::pair{12U, 2.0}, std::pair{100U, 0.7}}) {
        int held = 0;
        for (int trial = 0; trial < 2'000; ++trial) {
            std::vector<double> values;
            for (std::size_t i = 0; i < n; ++i) {
                values.push_back(normal(random) + (i < n / 3 ? 0.0 : step));
            }
            held += holds(*changeInMean(values, options), n / 3) ? 1 : 0;
        }
        INFO("n " << n << " step " << step << " held " << held);
        CHECK(held > 2'000 * 0.94);
    }
}

TEST_CASE("The set of a change in shares holds the true period", "[statistics][models]") {
    std::mt19937_64 random{18};
    ChangeOptions options;
    options.permutations = 0;
    for (const std::int64_t size : {1, 12}) {
        const std::size_t n = size == 1 ? 150 : 26;
        int held = 0;
        int trials = 0;
        while (trials < 2'000) {
            std::vector<FailedOfTotal> periods;
            for (std::size_t i = 0; i < n; ++i) {
                std::binomial_distribution<std::int64_t> count{size, i < n / 2 ? 0.06 : 0.30};
                periods.push_back({count(random), size});
            }
            if (const auto result = changeInShare(periods, options)) {
                ++trials;
                held += holds(*result, n / 2) ? 1 : 0;
            }
        }
        INFO("size " << size << " held " << held);
        CHECK(held > 2'000 * 0.94);
    }
}

TEST_CASE("Without a change p is as often below 0.1 as it says", "[statistics][models]") {
    std::mt19937_64 random{19};
    std::normal_distribution<double> normal;
    ChangeOptions options;
    options.permutations = 199;
    int below = 0;
    constexpr int kTrials = 1'000;
    for (int trial = 0; trial < kTrials; ++trial) {
        std::vector<double> values(30);
        std::generate(values.begin(), values.end(), [&] { return std::exp(normal(random)); });
        options.seed = static_cast<std::uint64_t>(trial);
        below += changeInMean(values, options)->p <= 0.1 ? 1 : 0;
    }
    CHECK(below > 72); // 100 ± 3 standard errors
    CHECK(below < 128);
}

TEST_CASE("A step without noise leaves one position", "[statistics][models]") {
    const auto result = changeInMean({1, 1, 1, 1, 5, 5, 5, 5, 5});
    REQUIRE(result);
    CHECK(result->position == 4);
    CHECK(result->possible == std::vector<std::size_t>{4});
    CHECK(result->before == 1.0);
    CHECK(result->after == 5.0);
    CHECK(std::isfinite(result->statistic));
}

TEST_CASE("Empty weeks say nothing: the change may lie in any of them", "[statistics][models]") {
    const auto result = changeInShare({{0, 20}, {0, 20}, {0, 20}, {0, 0}, {0, 0}, {9, 20}, {9, 20}, {8, 20}});
    REQUIRE(result);
    CHECK(holds(*result, 3));
    CHECK(holds(*result, 4));
    CHECK(holds(*result, 5));
    CHECK(result->before == 0.0);
    CHECK(result->after == Approx(26.0 / 60.0));
}

TEST_CASE("Weeks that scatter more than chance widen the set", "[statistics][models]") {
    const std::vector<FailedOfTotal> scattered{{0, 40},  {8, 40}, {1, 40},  {9, 40}, {0, 40}, {12, 40},
                                               {20, 40}, {6, 40}, {22, 40}, {5, 40}, {18, 40}};
    const auto result = changeInShare(scattered);
    REQUIRE(result);
    CHECK(result->dispersion > 2.0);
    CHECK(result->possible.size() >= 3);
}

TEST_CASE("A mirrored or shifted series has its change mirrored or kept", "[statistics][models]") {
    auto flow = nileFlow();
    const auto plain = changeInMean(flow);
    for (double& value : flow) {
        value = 3.0 * value - 1e7;
    }
    CHECK(changeInMean(flow)->possible == plain->possible);
    CHECK(changeInMean(flow)->before == Approx(3.0 * plain->before - 1e7));
    auto backwards = nileFlow();
    std::reverse(backwards.begin(), backwards.end());
    CHECK(changeInMean(backwards)->position == 100 - plain->position);
    CHECK(changeInMean(backwards)->before == Approx(plain->after));
}

TEST_CASE("A million values, and ten thousand with their p", "[statistics][models]") {
    std::mt19937_64 random{23};
    std::normal_distribution<double> normal;
    std::vector<double> values(1'000'000);
    for (std::size_t i = 0; i < values.size(); ++i) {
        values[i] = normal(random) + (i < 400'000 ? 0.0 : 0.05);
    }
    ChangeOptions options;
    options.permutations = 99;
    const auto million = changeInMean(values, options);
    REQUIRE(million);
    CHECK(holds(*million, 400'000));
    CHECK(million->p == Approx(0.01));
    values.resize(10'000);
    const auto none = changeInMean(values);
    REQUIRE(none);
    CHECK(none->p > 0.01);
}

TEST_CASE("Series without a change to look for are refused by name", "[statistics][models]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(changeInMean({}).error() == StatisticsFault::NoValues);
    CHECK(changeInMean({1, 2}).error() == StatisticsFault::TooFewValues);
    CHECK(changeInMean({4, 4, 4, 4}).error() == StatisticsFault::NoSpread);
    CHECK(changeInMean({4, nan, 4, 4}).error() == StatisticsFault::NotFinite);
    CHECK(changeInMean({4, HUGE_VAL, 4, 4}).error() == StatisticsFault::NotFinite);
    CHECK(changeInMean({1, 2, 3}, {1.5, 99, 1}).error() == StatisticsFault::OutOfDomain);
    CHECK(changeInMean({1, 2, 3}, {0.95, -1, 1}).error() == StatisticsFault::OutOfDomain);
    CHECK(changeInMean({1, 2, 3}, {0.95, 0, 1})->p == 1.0);
    CHECK(changeInMean({1e300, -1e300, 1e300})->possible.size() == 2);
    CHECK(changeInShare({{0, 5}, {0, 5}, {0, 5}}).error() == StatisticsFault::NoSpread); // none failed
    CHECK(changeInShare({{5, 5}, {5, 5}, {5, 5}}).error() == StatisticsFault::NoSpread); // all failed
    CHECK(changeInShare({{-1, 5}, {0, 5}, {1, 5}}).error() == StatisticsFault::OutOfDomain);
    CHECK(changeInShare({{6, 5}, {0, 5}, {1, 5}}).error() == StatisticsFault::OutOfDomain);
    CHECK(changeInShare({{0, 0}, {0, 0}, {0, 0}}).error() == StatisticsFault::NoSpread);
    CHECK(changeInRate({0, 0, 0}).error() == StatisticsFault::NoSpread);
    CHECK(changeInRate({1, -2, 0}).error() == StatisticsFault::OutOfDomain);
    CHECK(changeInRate({1, 2}).error() == StatisticsFault::TooFewValues);
}
