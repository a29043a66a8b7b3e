#include "analytics/statistics/counts/attribute_plan.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;

namespace {

struct Point {
    AttributePlan plan;
    double bad, binomial, poisson;
};

struct Demonstration {
    double good, confidence;
    std::int64_t failures, size;
};

} // namespace

TEST_CASE("a plan's chance to accept is the binomial and the Poisson one", "[statistics][counts]") {
    // scipy 1.10.1 binom.cdf(Ac, n, p) and poisson.cdf(Ac, n p); plans of ISO 2859-1, single, normal.
    const auto row = GENERATE(Point{{20, 0}, .01, .817907, .818731}, Point{{32, 1}, .025, .809732, .808792},
                              Point{{50, 2}, .025, .870622, .868468}, Point{{80, 2}, .01, .953447, .952577},
                              Point{{80, 5}, .025, .984785, .983436}, Point{{125, 3}, .01, .962551, .961731},
                              Point{{125, 7}, .025, .986384, .985163}, Point{{125, 7}, .05, .711717, .708904},
                              Point{{200, 5}, .01, .983977, .983436});
    CAPTURE(row.plan.size, row.plan.accept);
    CHECK_THAT(*acceptanceBinomial(row.plan, row.bad), WithinAbs(row.binomial, 1e-6));
    CHECK_THAT(*acceptancePoisson(row.plan, row.bad), WithinAbs(row.poisson, 1e-6));
    CHECK_THAT(*badShareAccepted(row.plan, *acceptanceBinomial(row.plan, row.bad)), WithinAbs(row.bad, 1e-10));
}

TEST_CASE("Poisson means accepted agree with the table's", "[statistics][counts]") {
    // scipy 1.10.1 chi2.ppf(1 - Pa, 2 Ac + 2)/2, the figures of Cameron, Industrial Quality Control 9, 1952.
    struct Row {
        std::int64_t accept;
        double at95, at50, at10;
    };
    const auto row =
        GENERATE(Row{0, .0513, .6931, 2.3026}, Row{1, .3554, 1.6783, 3.8897}, Row{2, .8177, 2.6741, 5.3223},
                 Row{3, 1.3663, 3.6721, 6.6808}, Row{5, 2.6130, 5.6702, 9.2747}, Row{7, 3.9808, 7.6692, 11.7709});
    CHECK_THAT(*poissonMeanAccepted(row.accept, 0.95), WithinAbs(row.at95, 1e-4));
    CHECK_THAT(*poissonMeanAccepted(row.accept, 0.50), WithinAbs(row.at50, 1e-4));
    CHECK_THAT(*poissonMeanAccepted(row.accept, 0.10), WithinAbs(row.at10, 1e-4));
}

TEST_CASE("pieces that must hold to show a share good", "[statistics][counts]") {
    // Without failures ceil(ln(1 - C)/ln R); 59 and 299 as printed in reliability handbooks. With failures the smallest
    // n with scipy 1.10.1 binom.cdf(f, n, 1 - R) <= 1 - C.
    const auto row =
        GENERATE(Demonstration{.80, .80, 0, 8}, Demonstration{.80, .90, 0, 11}, Demonstration{.80, .95, 0, 14},
                 Demonstration{.90, .90, 0, 22}, Demonstration{.90, .95, 0, 29}, Demonstration{.90, .99, 0, 44},
                 Demonstration{.95, .90, 0, 45}, Demonstration{.95, .95, 0, 59}, Demonstration{.99, .90, 0, 230},
                 Demonstration{.99, .95, 0, 299}, Demonstration{.90, .90, 1, 38}, Demonstration{.90, .90, 2, 52},
                 Demonstration{.90, .90, 3, 65}, Demonstration{.95, .95, 1, 93}, Demonstration{.95, .95, 2, 124},
                 Demonstration{.95, .95, 3, 153});
    CAPTURE(row.good, row.confidence, row.failures);
    CHECK(*demonstrationSize(row.good, row.confidence, row.failures) == row.size);
}

TEST_CASE("a risk that is met exactly is met", "[statistics][counts]") {
    CHECK(*demonstrationSize(0.5, 0.75) == 2); // 0.5² = 1 − 0.75
    CHECK(*demonstrationSize(0.1, 0.9) == 1);  // 0.1 = 1 − 0.9, not exact in binary
}

TEST_CASE("plans and shares outside their domain are refused", "[statistics][counts]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(acceptanceBinomial({0, 0}, .1).error() == StatisticsFault::NoValues);
    CHECK(acceptanceBinomial({10, -1}, .1).error() == StatisticsFault::OutOfDomain);
    CHECK(acceptanceBinomial({10, 1}, nan).error() == StatisticsFault::OutOfDomain);
    CHECK(acceptanceBinomial({10, 1}, 1.1).error() == StatisticsFault::OutOfDomain);
    CHECK(acceptancePoisson({10, 1}, -1.0).error() == StatisticsFault::OutOfDomain);
    CHECK(acceptancePoisson({10, 1}, std::numeric_limits<double>::max()).error() == StatisticsFault::OutOfDomain);
    CHECK(badShareAccepted({5, 5}, .5).error() == StatisticsFault::OutOfDomain);
    CHECK(poissonMeanAccepted(-1, .5).error() == StatisticsFault::OutOfDomain);
    CHECK(demonstrationSize(1.0, .95).error() == StatisticsFault::OutOfDomain);
    CHECK(demonstrationSize(.95, nan).error() == StatisticsFault::OutOfDomain);
    CHECK(demonstrationSize(.95, .95, -1).error() == StatisticsFault::OutOfDomain);
    CHECK(demonstrationSize(1.0 - 1e-15, .95).error() == StatisticsFault::OutOfDomain);
    CHECK(*acceptanceBinomial({10, 1}, 0.0) == 1.0);
    CHECK(*acceptanceBinomial({10, 1}, 1.0) == 0.0);
    CHECK(*acceptanceBinomial({10, 10}, 1.0) == 1.0);
}
