#include "analytics/statistics/summary/mean_difference.hpp"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

using namespace holdfast::analytics::statistics;

TEST_CASE("Two means with spreads of their own are compared as published", "[statistics][summary][means]") {
    // Hours of sleep gained (Student, Biometrika 6, 1908); R 4.2.2 t.test(extra ~ group, data = sleep)
    const auto sleep = compareMeans({10, 0.75, 3.2005555555556}, {10, 2.33, 4.009});
    REQUIRE(sleep);
    CHECK(sleep->difference / sleep->standardError == Approx(-1.860813467).epsilon(1e-9));
    CHECK(sleep->degrees == Approx(17.77647352).epsilon(1e-9));
    CHECK(sleep->p == Approx(0.07939414019).epsilon(1e-9));
    // Miles a gallon of cars, NIST/SEMATECH e-Handbook 1.3.5.3 prints both samples' figures; R 4.2.2 pt of them
    const auto cars = compareMeans({249, 20.14458, 6.41470 * 6.41470}, {79, 30.48101, 6.10771 * 6.10771});
    REQUIRE(cars);
    CHECK(cars->difference / cars->standardError == Approx(-12.94627).margin(1e-4));
    CHECK(cars->degrees == Approx(136.8750).margin(1e-3));
    CHECK(cars->p < 1e-20);
}

TEST_CASE("Swapping two samples turns the difference and nothing else", "[statistics][summary][means]") {
    const SampleMean one{5, 20.0, 4.0};
    const SampleMean other{12, 17.5, 9.0};
    const auto plain = *compareMeans(one, other);
    const auto turned = *compareMeans(other, one);
    CHECK(turned.difference == -plain.difference);
    CHECK(turned.p == Approx(plain.p).epsilon(1e-12));
    CHECK(turned.degrees == Approx(plain.degrees).epsilon(1e-12));
    CHECK(plain.degrees > 4.0);                                                 // the smaller sample's
    CHECK(plain.degrees < 15.0);                                                // those of a common spread
    CHECK(compareMeans({8, 0.0, 1.0}, {8, 1.0, 1.0})->degrees == Approx(14.0)); // equal sizes and spreads: Student's
    CHECK(compareMeans(one, one)->p == 1.0);
}

TEST_CASE("Means that cannot be compared are refused by name", "[statistics][summary][means]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(compareMeans({1, 0.0, 0.0}, {5, 0.0, 1.0}).error() == StatisticsFault::TooFewValues);
    CHECK(compareMeans({}, {}).error() == StatisticsFault::TooFewValues);
    CHECK(compareMeans({5, nan, 1.0}, {5, 0.0, 1.0}).error() == StatisticsFault::NotFinite);
    CHECK(compareMeans({5, 0.0, HUGE_VAL}, {5, 0.0, 1.0}).error() == StatisticsFault::NotFinite);
    CHECK(compareMeans({5, 0.0, -1.0}, {5, 0.0, 1.0}).error() == StatisticsFault::OutOfDomain);
    CHECK(compareMeans({5, 2.0, 0.0}, {5, 2.0, 0.0})->p == 1.0);
    CHECK(compareMeans({5, 2.0, 0.0}, {5, 3.0, 0.0})->p == 0.0);
    CHECK(compareMeans({5, 2.0, 0.0}, {5, 3.0, 1.0})->degrees == Approx(4.0));
    CHECK(compareMeans({5, 1e200, 1e-300}, {5, 0.0, 1e-300})->p >= 0.0);
}
