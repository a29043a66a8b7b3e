#include "analytics/statistics/models/change_point.hpp"
#include "analytics/statistics/models/random_order.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <numeric>
#include <random>

using namespace holdfast::analytics::statistics;

namespace {

double largestSquare(const std::vector<double>& values) {
    const double n = static_cast<double>(values.size());
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / n;
    double sum = 0.0;
    double most = 0.0;
    for (std::size_t k = 1; k < values.size(); ++k) {
        sum += values[k - 1] - mean;
        const double left = static_cast<double>(k);
        most = std::max(most, sum * sum * n / (left * (n - left)));
    }
    return most;
}

/// Share of all orders whose largest contrast is not below that of this one.
double exactP(std::vector<double> values) {
    const double observed = largestSquare(values) - 1e-9;
    std::sort(values.begin(), values.end());
    double orders = 0.0;
    double asLarge = 0.0;
    do {
        ++orders;
        asLarge += largestSquare(values) >= observed ? 1.0 : 0.0;
    } while (std::next_permutation(values.begin(), values.end()));
    return asLarge / orders;
}

} // namespace

TEST_CASE("The generator gives its published numbers", "[statistics][models]") {
    // the authors' xoshiro256plusplus.c from the state 1, 2, 3, 4, as the Rust crate rand_xoshiro 0.6 tests it
    Xoshiro256 random{Xoshiro256::State{1, 2, 3, 4}};
    for (const std::uint64_t expected : {41943041ULL, 58720359ULL, 3588806011781223ULL, 3591011842654386ULL,
                                         9228616714210784205ULL, 9973669472204895162ULL, 14011001112246962877ULL,
                                         12406186145184390807ULL, 15849039046786891736ULL, 10450023813501588000ULL}) {
        CHECK(random() == expected);
    }
}

TEST_CASE("Every order is as likely as any other", "[statistics][models]") {
    for (const std::size_t n : {2U, 3U, 4U, 5U, 6U}) {
        Xoshiro256 random{std::uint64_t{7}};
        std::vector<int> values(n);
        std::iota(values.begin(), values.end(), 0);
        double orders = 1.0;
        for (std::size_t i = 2; i <= n; ++i) {
            orders *= static_cast<double>(i);
        }
        const int trials = static_cast<int>(200.0 * orders);
        std::map<std::vector<int>, int> seen;
        for (int trial = 0; trial < trials; ++trial) {
            shuffle(values, n, random, [](int, std::size_t) {});
            ++seen[values];
        }
        double chiSquare = 0.0;
        for (const auto& [order, count] : seen) {
            chiSquare += (count - 200.0) * (count - 200.0) / 200.0;
        }
        INFO("n " << n);
        CHECK(static_cast<double>(seen.size()) == orders);
        CHECK(chiSquare < orders - 1.0 + 4.0 * std::sqrt(2.0 * (orders - 1.0))); // four standard deviations
    }
}

TEST_CASE("A shuffle tells each element once, at the place it keeps, and leaves the rest alone",
          "[statistics][models]") {
    Xoshiro256 random{std::uint64_t{1}};
    std::vector<int> values(103);
    std::iota(values.begin(), values.end(), 0);
    std::vector<int> told(100, -1);
    shuffle(values, 100, random, [&](int value, std::size_t place) { told[place] = value; });
    CHECK(std::equal(told.begin(), told.end(), values.begin()));
    CHECK(std::vector<int>(values.begin() + 100, values.end()) == std::vector<int>{100, 101, 102});
    CHECK(!std::is_sorted(told.begin(), told.end()));
    std::sort(told.begin(), told.end());
    CHECK(told.front() == 0);
    CHECK(std::adjacent_find(told.begin(), told.end(), [](int a, int b) { return b != a + 1; }) == told.end());
}

TEST_CASE("The drawn p is that of all orders", "[statistics][models]") {
    ChangeOptions options;
    options.permutations = 100'000;
    const double standardError = 0.5 / std::sqrt(1e5);
    for (const std::vector<double>& values :
         {std::vector<double>{1, 2, 1, 3, 4, 6, 5}, {3, 1, 4, 1, 5, 9, 2, 6}, {0, 0, 0, 1, 1}, {7, 2, 9}}) {
        INFO("values " << values.size());
        CHECK(std::abs(changeInMean(values, options)->p - exactP(values)) < 4.0 * standardError);
    }
}

TEST_CASE("Without a change p of pooled values is as often below 0.1 as it says", "[statistics][models]") {
    std::mt19937_64 random{29};
    std::normal_distribution<double> normal;
    ChangeOptions options;
    options.permutations = 19;
    int below = 0;
    constexpr int kTrials = 400;
    for (int trial = 0; trial < kTrials; ++trial) {
        std::vector<double> values(10'001); // 5,000 blocks of two and one of one
        std::generate(values.begin(), values.end(), [&] { return normal(random); });
        options.seed = static_cast<std::uint64_t>(trial);
        below += changeInMean(values, options)->p <= 0.1 ? 1 : 0;
    }
    CHECK(below > 22); // 40 ± 3 standard errors
    CHECK(below < 58);
}
