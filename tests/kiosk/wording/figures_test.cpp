#include "kiosk/wording/figures.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::kiosk::wording;

namespace {
const std::string kNb = "\xC2\xA0"; // no-break space: look.md "Do not: break a line before a unit"
const std::string kMinus = "−";     // look.md "Do: real minus"
} // namespace

TEST_CASE("temperatures convert with the 32 and differences without it", "[wording]") {
    const Figures fahrenheit{TemperatureUnit::fahrenheit, 0};
    const Figures celsius{TemperatureUnit::celsius, 1};
    // Fixed points of the two scales: water freezes at 32 °F, boils at 212 °F.
    CHECK(fahrenheit.temperature(Temperature::fromCelsius(0)) == "32" + kNb + "°F");
    CHECK(fahrenheit.temperature(Temperature::fromCelsius(100)) == "212" + kNb + "°F");
    CHECK(celsius.temperature(Temperature::fromFahrenheit(212)) == "100.0" + kNb + "°C");
    CHECK(fahrenheit.difference(TemperatureDifference::fromCelsius(5)) == "9" + kNb + "°F");
}

TEST_CASE("signed figures wear a plus or a real minus, and zero neither", "[wording]") {
    const Figures figures{TemperatureUnit::fahrenheit, 0};
    CHECK(figures.signedDifference(TemperatureDifference::fromFahrenheit(6)) == "+6" + kNb + "°F");
    CHECK(figures.signedDifference(TemperatureDifference::fromFahrenheit(-8)) == kMinus + "8" + kNb + "°F");
    CHECK(figures.signedDifference(TemperatureDifference::fromFahrenheit(-0.2)) == "0" + kNb + "°F");
    CHECK(figures.signedDifference(TemperatureDifference::fromFahrenheit(0.2)) == "0" + kNb + "°F");
}

TEST_CASE("a figure gets as many decimals as it takes to show its side of the limit", "[wording]") {
    // decisions 0: shown numbers carry one decimal more whenever rounding would hide on which side they are.
    const Figures figures{TemperatureUnit::fahrenheit, 0};
    const auto limit = Temperature::fromFahrenheit(285);
    CHECK(figures.tellingApart(Temperature::fromFahrenheit(286), limit).decimals == 0);
    CHECK(figures.tellingApart(Temperature::fromFahrenheit(285.3), limit).decimals == 1);
    CHECK(figures.tellingApart(Temperature::fromFahrenheit(284.96), limit).decimals == 2);
    CHECK(figures.tellingApart(limit, limit).decimals == 0);
    CHECK(figures.tellingApart(Temperature::fromCelsius(std::numeric_limits<double>::quiet_NaN()), limit).decimals ==
          0);
}

TEST_CASE("times read as people say them", "[wording]") {
    CHECK(durationText(Duration{7}) == "7" + kNb + "s");
    CHECK(durationText(Duration{0.4}) == "0.4" + kNb + "s");
    CHECK(durationText(Duration{18.4}) == "18" + kNb + "s");
    CHECK(durationText(Duration{150}) == "2" + kNb + "min 30" + kNb + "s");
    CHECK(durationText(Duration{7200}) == "2" + kNb + "h");
    CHECK(durationText(Duration{-3}) == "0" + kNb + "s");
    CHECK(durationText(Duration{std::numeric_limits<double>::infinity()}) == "0" + kNb + "s");
}

TEST_CASE("the clock shows local minutes and survives times before 1970", "[wording]") {
    // 2026-11-25T13:02:00Z is 1795611720 s after the epoch (POSIX.1-2017, 4.16 Seconds Since the Epoch).
    CHECK(clockText(1795611720000, 60) == "14:02");
    CHECK(clockText(1795611720000, 0) == "13:02");
    CHECK(clockText(-60000, 0) == "23:59");
}

TEST_CASE("what is not a number is shown as none", "[wording]") {
    CHECK(numberText(std::numeric_limits<double>::quiet_NaN(), 1) == "–");
    CHECK(numberText(std::numeric_limits<double>::infinity(), 1) == "–");
}
