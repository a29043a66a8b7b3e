#include "analytics/statistics/models/lanes.hpp"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

using namespace holdfast::analytics::statistics;

namespace {

constexpr double kEps = std::numeric_limits<double>::epsilon();

} // namespace

TEST_CASE("Two chances at once are those of the library's exponential", "[statistics][models][lanes]") {
    double worst = 0.0;
    for (int i = 1; i <= 200'000; ++i) {
        const double near = -40.0 * i / 200'000.0;
        const double far = -708.0 * i / 200'000.0;
        const auto chance = logisticOfNegative(Lanes{near, far});
        for (const std::size_t lane : {0U, 1U}) {
            const long double e = std::exp(static_cast<long double>(lane == 0 ? near : far));
            const auto off = [](double value, long double exact) {
                return static_cast<double>(std::abs((value - exact) / exact));
            };
            worst = std::max(
                {worst, off(chance.smaller[lane], e / (1.0L + e)), off(chance.larger[lane], 1.0L / (1.0L + e))});
        }
    }
    CHECK(worst < 3.0 * kEps);
    CHECK(logisticOfNegative(Lanes{}).larger[0] == 0.5);
    CHECK(logisticOfNegative(Lanes{-709.0, -1e308}).smaller[0] == 0.0);
    CHECK(logisticOfNegative(Lanes{-709.0, -1e308}).smaller[1] == 0.0);
    CHECK(logisticOfNegative(Lanes{-709.0, -1e308}).larger[1] == 1.0);
}

TEST_CASE("Two logarithms at once are those of the library", "[statistics][models][lanes]") {
    double worst = 0.0;
    for (int i = 1; i <= 200'000; ++i) {
        const double x = i / 200'000.0;
        const long double exact = std::log1p(static_cast<long double>(x));
        worst = std::max(worst, static_cast<double>(std::abs((logOfOneAnd(Lanes{0.0, x})[1] - exact) / exact)));
    }
    CHECK(worst < 3.0 * kEps);
    CHECK(logOfOneAnd(Lanes{0.0, 1e-300})[0] == 0.0);
    CHECK(logOfOneAnd(Lanes{0.0, 1e-300})[1] == Approx(1e-300));
}

TEST_CASE("Half a million equal terms sum without drift", "[statistics][models][lanes]") {
    LaneSum sum;
    for (int i = 0; i < 500'000; ++i) {
        sum.add(Lanes{0.1, 0.7});
    }
    CHECK(std::abs(sum.total() - 400'000.0) < 1e-9); // 0.1 and 0.7 themselves are off by 5e-17
}
