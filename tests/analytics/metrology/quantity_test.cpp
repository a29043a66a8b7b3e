#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/probability.hpp"
#include "analytics/quantity/temperature.hpp"
#include "analytics/quantity/voltage.hpp"
#include "tests/analytics/metrology/instruments.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <type_traits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;
using Catch::WithinAbs;

namespace {

template <class A, class B>
concept Addable = requires(A a, B b) {
    a + b;
};

template <class A, class B>
concept Comparable = requires(A a, B b) {
    a < b;
};

} // namespace

TEST_CASE("a temperature cannot be mixed up with a number, a difference or another temperature", "[quantity]") {
    STATIC_REQUIRE_FALSE(std::is_convertible_v<double, Temperature>);
    STATIC_REQUIRE_FALSE(std::is_convertible_v<double, TemperatureDifference>);
    STATIC_REQUIRE_FALSE(std::is_convertible_v<double, Probability>);
    STATIC_REQUIRE_FALSE(std::is_convertible_v<TemperatureDifference, Temperature>);
    STATIC_REQUIRE_FALSE(std::is_convertible_v<Temperature, TemperatureDifference>);
    STATIC_REQUIRE_FALSE(Addable<Temperature, Temperature>);
    STATIC_REQUIRE(Addable<Temperature, TemperatureDifference>);
    STATIC_REQUIRE_FALSE(Comparable<Temperature, TemperatureDifference>);
    STATIC_REQUIRE_FALSE(Comparable<Temperature, double>);
}

TEST_CASE("the fixed points of ITS-90 read the same in kelvin and degrees Celsius", "[quantity]") {
    // Preston-Thomas, The International Temperature Scale of 1990, Metrologia 27 (1990), Table 1; last digit printed.
    struct FixedPoint {
        double kelvin;
        double celsius;
        double printed;
    };
    const auto point = GENERATE(FixedPoint{54.3584, -218.7916, 5e-5}, FixedPoint{83.8058, -189.3442, 5e-5},
                                FixedPoint{234.3156, -38.8344, 5e-5}, FixedPoint{273.16, 0.01, 5e-3},
                                FixedPoint{302.9146, 29.7646, 5e-5}, FixedPoint{429.7485, 156.5985, 5e-5},
                                FixedPoint{505.078, 231.928, 5e-4}, FixedPoint{692.677, 419.527, 5e-4},
                                FixedPoint{933.473, 660.323, 5e-4}, FixedPoint{1234.93, 961.78, 5e-3},
                                FixedPoint{1337.33, 1064.18, 5e-3}, FixedPoint{1357.77, 1084.62, 5e-3});
    CHECK_THAT(Temperature::fromKelvin(point.kelvin).celsius(), WithinAbs(point.celsius, point.printed));
    CHECK_THAT(Temperature::fromCelsius(point.celsius).kelvin(), WithinAbs(point.kelvin, point.printed));
}

TEST_CASE("temperatures convert to degrees Fahrenheit with the 32", "[quantity]") {
    // t/°F = 9/5 t/°C + 32: NIST SP 811 (2008), appendix B.8; absolute zero is −459.67 °F by definition (SP 811).
    struct Pair {
        double celsius;
        double fahrenheit;
    };
    const auto pair = GENERATE(Pair{0, 32}, Pair{100, 212}, Pair{-40, -40}, Pair{37, 98.6}, Pair{160, 320},
                               Pair{-273.15, -459.67}, Pair{1372, 2501.6});
    CHECK_THAT(Temperature::fromCelsius(pair.celsius).fahrenheit(), WithinAbs(pair.fahrenheit, 1e-9));
    CHECK_THAT(Temperature::fromFahrenheit(pair.fahrenheit).celsius(), WithinAbs(pair.celsius, 1e-9));
    CHECK(Temperature::from(pair.fahrenheit, TemperatureUnit::fahrenheit) ==
          Temperature::fromFahrenheit(pair.fahrenheit));
    CHECK(Temperature::from(pair.celsius, TemperatureUnit::celsius).in(TemperatureUnit::celsius) == pair.celsius);
}

TEST_CASE("differences convert by 9/5 only", "[quantity]") {
    // ASTM E230, Table 1, note: the tolerance in °F is 1.8 times the tolerance in °C.
    CHECK_THAT(TemperatureDifference::fromCelsius(2.2).fahrenheit(), WithinAbs(3.96, 1e-9));
    CHECK_THAT(TemperatureDifference::fromCelsius(1.0).fahrenheit(), WithinAbs(1.8, 1e-9));
    CHECK_THAT(TemperatureDifference::fromFahrenheit(9.0).celsius(), WithinAbs(5.0, 1e-9));
    CHECK_THAT(TemperatureDifference::from(-4.5, TemperatureUnit::fahrenheit).celsius(), WithinAbs(-2.5, 1e-9));
    CHECK(TemperatureDifference{}.in(TemperatureUnit::fahrenheit) == 0.0);
}

TEST_CASE("a reading shifted in one unit is shifted alike in the other", "[quantity]") {
    const double celsius = GENERATE(-270.0, -40.0, 0.0, 25.0, 159.95, 1372.0);
    const auto start = Temperature::fromCelsius(celsius);
    const auto shift = TemperatureDifference::fromFahrenheit(1.8);
    CHECK_THAT((start + shift).celsius(), WithinAbs(celsius + 1.0, 1e-9));
    CHECK_THAT(((start + shift) - start).fahrenheit(), WithinAbs(1.8, 1e-9));
    CHECK_THAT(((start + shift) - shift).kelvin(), WithinAbs(start.kelvin(), 1e-9));
}

TEST_CASE("differences add, scale and keep their sign apart from their size", "[quantity]") {
    const auto three = TemperatureDifference::fromCelsius(3.0);
    const auto minusOne = TemperatureDifference::fromCelsius(-1.0);
    CHECK((three + minusOne).celsius() == 2.0);
    CHECK((three - minusOne).celsius() == 4.0);
    CHECK((-three).celsius() == -3.0);
    CHECK(minusOne.magnitude().celsius() == 1.0);
    CHECK((2.0 * three).celsius() == 6.0);
    CHECK((three / 2.0).celsius() == 1.5);
    CHECK(three / minusOne == -3.0);
    CHECK(minusOne < three);
}

TEST_CASE("equality counts as met, a billionth of a degree below included", "[quantity]") {
    // decisions 0: within 1e-9.
    const auto limit = Temperature::fromCelsius(160.0);
    CHECK(atLeast(limit, limit));
    CHECK(atMost(limit, limit));
    CHECK(atLeast(Temperature::fromCelsius(160.0 - 5e-10), limit));
    CHECK_FALSE(atLeast(Temperature::fromCelsius(160.0 - 5e-9), limit));
    CHECK(atMost(Temperature::fromCelsius(160.0 + 5e-10), limit));
    CHECK_FALSE(atMost(Temperature::fromCelsius(160.0 + 5e-9), limit));
    CHECK(atLeast(Temperature::fromFahrenheit(320.0), limit));
    CHECK(atLeast(TemperatureDifference::fromCelsius(0.1 + 0.2), TemperatureDifference::fromCelsius(0.3)));
    CHECK(atLeast(Duration{40.0 - 5e-10}, Duration{40.0}));
    CHECK_FALSE(atLeast(Duration{39.9}, Duration{40.0}));
}

TEST_CASE("what is not a number meets no limit on either side", "[quantity]") {
    const auto broken = Temperature::fromCelsius(kNan);
    const auto limit = Temperature::fromCelsius(160.0);
    CHECK_FALSE(broken.isFinite());
    CHECK_FALSE(Temperature::fromCelsius(kInfinity).isFinite());
    CHECK_FALSE(TemperatureDifference::fromCelsius(kNan).isFinite());
    CHECK_FALSE(atLeast(broken, limit));
    CHECK_FALSE(atMost(broken, limit));
    CHECK_FALSE(atLeast(limit, broken));
    CHECK_FALSE(atMost(limit, broken));
}

TEST_CASE("what a person typed keeps its number and unit and converts when asked", "[quantity]") {
    const AuthoredTemperature cure{320.0, TemperatureUnit::fahrenheit};
    CHECK(cure.value == 320.0);
    CHECK_THAT(cure.temperature().celsius(), WithinAbs(160.0, 1e-9));
    const AuthoredDifference tolerance{9.0, TemperatureUnit::fahrenheit};
    CHECK_THAT(tolerance.difference().celsius(), WithinAbs(5.0, 1e-9));
    CHECK_FALSE(cure == AuthoredTemperature{160.0, TemperatureUnit::celsius});
}

TEST_CASE("a rate times a time is a difference, and back", "[quantity]") {
    const auto rate = TemperatureDifference::fromCelsius(30.0) / Duration{2.0};
    CHECK(rate.celsiusPerSecond() == 15.0);
    CHECK((HeatingRate::fromCelsiusPerSecond(15.0) * Duration{0.5}).celsius() == 7.5);
    CHECK(Duration{MonotonicTime{1'500'000}}.count() == 1.5);
}

TEST_CASE("a probability says whether it is one", "[quantity]") {
    CHECK(Probability::fromPercent(5.0) == Probability::fromFraction(0.05));
    CHECK(Probability::fromFraction(0.25).percent() == 25.0);
    CHECK(Probability::fromFraction(0.0).isValid());
    CHECK(Probability::fromFraction(1.0).isValid());
    CHECK_FALSE(Probability::fromFraction(1.0001).isValid());
    CHECK_FALSE(Probability::fromFraction(-0.0001).isValid());
    CHECK_FALSE(Probability::fromFraction(kNan).isValid());
}

TEST_CASE("emfs add and subtract in millivolts", "[quantity]") {
    CHECK((Emf::fromMillivolts(5.54) + Emf::fromMillivolts(1.0)).millivolts() == Approx(6.54).margin(1e-12));
    CHECK((Emf::fromMillivolts(1.0) - Emf::fromMillivolts(3.0)).millivolts() == -2.0);
}
