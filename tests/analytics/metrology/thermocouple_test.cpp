#include "analytics/metrology/thermocouple.hpp"
#include "tests/analytics/metrology/instruments.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;
using Catch::WithinAbs;

namespace {

Emf millivolts(double e) {
    return Emf::fromMillivolts(e);
}

struct TableCell {
    ThermocoupleType type;
    double celsius;
    double printed;   ///< mV, three decimals
    double reference; ///< mV, six decimals
};

// `printed`: NIST SRD 60, ITS-90 thermocouple tables (Monograph 175; the same in IEC 60584-1:2013).
// `reference`: the published reference function in double precision, Python 3.11, rounded to six decimals.
const TableCell kTable[] = {
    {ThermocoupleType::k, -200, -5.891, -5.891404}, {ThermocoupleType::k, -100, -3.554, -3.553631},
    {ThermocoupleType::k, -50, -1.889, -1.889383},  {ThermocoupleType::k, -20, -0.778, -0.777540},
    {ThermocoupleType::k, 0, 0.000, 0.000000},      {ThermocoupleType::k, 20, 0.798, 0.798120},
    {ThermocoupleType::k, 37, 1.489, 1.488918},     {ThermocoupleType::k, 50, 2.023, 2.023078},
    {ThermocoupleType::k, 100, 4.096, 4.096230},    {ThermocoupleType::k, 127, 5.206, 5.206093},
    {ThermocoupleType::k, 150, 6.138, 6.138344},    {ThermocoupleType::k, 165, 6.741, 6.740555},
    {ThermocoupleType::k, 177, 7.220, 7.220255},    {ThermocoupleType::k, 200, 8.138, 8.138473},
    {ThermocoupleType::k, 250, 10.153, 10.153369},  {ThermocoupleType::k, 300, 12.209, 12.208566},
    {ThermocoupleType::k, 350, 14.293, 14.293149},  {ThermocoupleType::k, 400, 16.397, 16.397142},
    {ThermocoupleType::j, -200, -7.890, -7.890483}, {ThermocoupleType::j, -100, -4.633, -4.632524},
    {ThermocoupleType::j, -40, -1.961, -1.960646},  {ThermocoupleType::j, 0, 0.000, 0.000000},
    {ThermocoupleType::j, 25, 1.277, 1.277288},     {ThermocoupleType::j, 50, 2.585, 2.585315},
    {ThermocoupleType::j, 100, 5.269, 5.268916},    {ThermocoupleType::j, 121, 6.415, 6.415074},
    {ThermocoupleType::j, 150, 8.010, 8.009905},    {ThermocoupleType::j, 160, 8.562, 8.562217},
    {ThermocoupleType::j, 200, 10.779, 10.778746},  {ThermocoupleType::j, 250, 13.555, 13.555192},
    {ThermocoupleType::j, 300, 16.327, 16.327206},  {ThermocoupleType::j, 350, 19.090, 19.090463},
    {ThermocoupleType::j, 400, 21.848, 21.848065},  {ThermocoupleType::t, -200, -5.603, -5.602961},
    {ThermocoupleType::t, -100, -3.379, -3.378582}, {ThermocoupleType::t, -40, -1.475, -1.474992},
    {ThermocoupleType::t, 0, 0.000, 0.000000},      {ThermocoupleType::t, 20, 0.790, 0.789612},
    {ThermocoupleType::t, 50, 2.036, 2.035722},     {ThermocoupleType::t, 100, 4.279, 4.278519},
    {ThermocoupleType::t, 121, 5.277, 5.276676},    {ThermocoupleType::t, 150, 6.704, 6.704087},
    {ThermocoupleType::t, 160, 7.209, 7.208795},    {ThermocoupleType::t, 200, 9.288, 9.288102},
    {ThermocoupleType::t, 250, 12.013, 12.013410},  {ThermocoupleType::t, 300, 14.862, 14.861928},
    {ThermocoupleType::t, 350, 17.819, 17.818669},  {ThermocoupleType::t, 400, 20.872, 20.871970},
    {ThermocoupleType::e, -100, -5.237, -5.237184}, {ThermocoupleType::e, 0, 0.000, 0.000000},
    {ThermocoupleType::e, 25, 1.495, 1.495112},     {ThermocoupleType::e, 100, 6.319, 6.318930},
    {ThermocoupleType::e, 150, 9.789, 9.788815},    {ThermocoupleType::e, 200, 13.421, 13.421296},
    {ThermocoupleType::e, 300, 21.036, 21.036238},  {ThermocoupleType::n, -100, -2.407, -2.406811},
    {ThermocoupleType::n, 0, 0.000, 0.000000},      {ThermocoupleType::n, 25, 0.659, 0.658646},
    {ThermocoupleType::n, 100, 2.774, 2.774124},    {ThermocoupleType::n, 150, 4.302, 4.301844},
    {ThermocoupleType::n, 200, 5.913, 5.913415},    {ThermocoupleType::n, 300, 9.341, 9.341152},
};

struct Polynomial {
    ThermocoupleType type;
    double lowest;  ///< mV
    double highest; ///< mV
    double errorLow;
    double errorHigh;
};

// NIST SRD 60, inverse coefficients: voltage range and error of each sub-range in °C.
const Polynomial kPolynomials[] = {
    {ThermocoupleType::k, -5.891, 0.000, -0.02, 0.04},  {ThermocoupleType::k, 0.000, 20.644, -0.05, 0.04},
    {ThermocoupleType::k, 20.644, 54.886, -0.05, 0.06}, {ThermocoupleType::j, -8.095, 0.000, -0.05, 0.03},
    {ThermocoupleType::j, 0.000, 42.919, -0.04, 0.04},  {ThermocoupleType::j, 42.919, 69.553, -0.04, 0.03},
    {ThermocoupleType::t, -5.603, 0.000, -0.02, 0.04},  {ThermocoupleType::t, 0.000, 20.872, -0.03, 0.03},
    {ThermocoupleType::e, -8.825, 0.000, -0.01, 0.03},  {ThermocoupleType::e, 0.000, 76.373, -0.02, 0.02},
    {ThermocoupleType::n, -3.990, 0.000, -0.02, 0.03},  {ThermocoupleType::n, 0.000, 20.613, -0.02, 0.03},
    {ThermocoupleType::n, 20.613, 47.513, -0.04, 0.02},
};

const ThermocoupleType kTypes[] = {ThermocoupleType::k, ThermocoupleType::j, ThermocoupleType::t, ThermocoupleType::e,
                                   ThermocoupleType::n};

} // namespace

TEST_CASE("the reference function gives the published table", "[metrology][thermocouple]") {
    for (const auto& cell : kTable) {
        CAPTURE(static_cast<int>(cell.type), cell.celsius);
        const auto emf = emfOf(cell.type, celsius(cell.celsius));
        REQUIRE(emf);
        CHECK_THAT(emf->millivolts(), WithinAbs(cell.printed, 0.0005 + 1e-9));
        CHECK_THAT(emf->millivolts(), WithinAbs(cell.reference, 2e-6));
    }
}

TEST_CASE("the exact inverse reads the table backwards", "[metrology][thermocouple]") {
    for (const auto& cell : kTable) {
        CAPTURE(static_cast<int>(cell.type), cell.celsius);
        // half a printed microvolt is at most 0.035 °C, at −200 °C of type K (15.2 µV/°C); NIST SRD 60
        const auto fromPrinted = temperatureOf(cell.type, millivolts(cell.printed));
        REQUIRE(fromPrinted);
        CHECK_THAT(fromPrinted->celsius(), WithinAbs(cell.celsius, 0.035));
        const auto fromReference = temperatureOf(cell.type, millivolts(cell.reference));
        REQUIRE(fromReference);
        CHECK_THAT(fromReference->celsius(), WithinAbs(cell.celsius, 4e-5));
    }
}

TEST_CASE("the ends of the published ranges have the published emf", "[metrology][thermocouple]") {
    // NIST SRD 60: voltage ranges of the inverse functions and last cells of the tables.
    struct End {
        ThermocoupleType type;
        double celsius;
        double printed;
    };
    const auto end = GENERATE(End{ThermocoupleType::k, -270, -6.458}, End{ThermocoupleType::k, 500, 20.644},
                              End{ThermocoupleType::k, 1372, 54.886}, End{ThermocoupleType::j, -210, -8.095},
                              End{ThermocoupleType::j, 760, 42.919}, End{ThermocoupleType::j, 1200, 69.553},
                              End{ThermocoupleType::t, -270, -6.258}, End{ThermocoupleType::t, 400, 20.872},
                              End{ThermocoupleType::e, -270, -9.835}, End{ThermocoupleType::e, -200, -8.825},
                              End{ThermocoupleType::e, 1000, 76.373}, End{ThermocoupleType::n, -270, -4.345},
                              End{ThermocoupleType::n, -200, -3.990}, End{ThermocoupleType::n, 600, 20.613},
                              End{ThermocoupleType::n, 1300, 47.513});
    CAPTURE(static_cast<int>(end.type), end.celsius);
    const auto emf = emfOf(end.type, celsius(end.celsius));
    REQUIRE(emf);
    CHECK_THAT(emf->millivolts(), WithinAbs(end.printed, 0.0005 + 1e-9));
}

TEST_CASE("the published inverse polynomials give the worked values", "[metrology][thermocouple]") {
    // The coefficients of NIST SRD 60 evaluated in double precision, Python 3.11, four decimals.
    struct Example {
        ThermocoupleType type;
        double millivolts;
        double celsius;
    };
    const auto example =
        GENERATE(Example{ThermocoupleType::k, 4.096, 99.9633}, Example{ThermocoupleType::k, 6.540, 160.0234},
                 Example{ThermocoupleType::k, 8.138, 199.9721}, Example{ThermocoupleType::k, -1.889, -49.9843},
                 Example{ThermocoupleType::j, 8.562, 160.0064}, Example{ThermocoupleType::j, 10.779, 199.9944},
                 Example{ThermocoupleType::t, 4.279, 100.0150}, Example{ThermocoupleType::t, 7.209, 160.0049},
                 Example{ThermocoupleType::e, 13.421, 199.9974}, Example{ThermocoupleType::n, 5.913, 199.9986});
    CAPTURE(static_cast<int>(example.type), example.millivolts);
    const auto t = inversePolynomial(example.type, millivolts(example.millivolts));
    REQUIRE(t);
    CHECK_THAT(t->celsius(), WithinAbs(example.celsius, 0.0002));
}

TEST_CASE("the published polynomials stay within their published error of the exact inverse",
          "[metrology][thermocouple]") {
    // The bands are printed to 0.01 °C, so half of that may be hidden in them.
    for (const auto& p : kPolynomials) {
        double least = 0.0;
        double most = 0.0;
        for (int i = 0; i <= 2000; ++i) {
            // Both ends of a joint are left out: there the neighbouring sub-range answers.
            const auto emf = millivolts(p.lowest + (p.highest - p.lowest) * (i + 0.5) / 2001.0);
            const double error =
                inversePolynomial(p.type, emf).value().celsius() - temperatureOf(p.type, emf).value().celsius();
            least = std::min(least, error);
            most = std::max(most, error);
        }
        CAPTURE(static_cast<int>(p.type), p.lowest, p.highest, least, most);
        CHECK(least >= p.errorLow - 0.005);
        CHECK(most <= p.errorHigh + 0.005);
    }
}

TEST_CASE("a warm reference junction is added as emf, not as degrees", "[metrology][thermocouple]") {
    // Bisection on the published reference function, Python 3.11.
    struct Example {
        ThermocoupleType type;
        double junction;
        double measured;
        double sum;
        double celsius;
    };
    const auto example = GENERATE(Example{ThermocoupleType::k, 25.0, 5.540, 6.540242, 160.001},
                                  Example{ThermocoupleType::k, 22.5, 5.700, 6.599063, 161.468},
                                  Example{ThermocoupleType::j, 30.0, 6.900, 8.436654, 157.728},
                                  Example{ThermocoupleType::t, 21.0, 6.300, 7.129918, 158.445});
    const auto offset = emfOf(example.type, celsius(example.junction));
    REQUIRE(offset);
    CHECK_THAT(offset->millivolts() + example.measured, WithinAbs(example.sum, 2e-6));
    const auto t = compensated(example.type, millivolts(example.measured), celsius(example.junction));
    REQUIRE(t);
    CHECK_THAT(t->celsius(), WithinAbs(example.celsius, 0.002));
}

TEST_CASE("temperature to emf and back returns the same temperature over the whole range",
          "[metrology][thermocouple]") {
    for (const auto type : kTypes) {
        const auto range = referenceRange(type);
        double worst = 0.0;
        for (int i = 0; i <= 20000; ++i) {
            const double t = range.low.celsius() + (range.high - range.low).celsius() * i / 20000.0;
            const auto back = emfOf(type, celsius(t)).and_then([&](Emf e) { return temperatureOf(type, e); });
            REQUIRE(back);
            worst = std::max(worst, std::abs(back->celsius() - t));
        }
        CAPTURE(static_cast<int>(type), worst);
        CHECK(worst < 1e-6);
    }
}

TEST_CASE("a hotter junction never gives less emf", "[metrology][thermocouple]") {
    for (const auto type : kTypes) {
        const auto range = referenceRange(type);
        double before = emfOf(type, range.low).value().millivolts();
        int falls = 0;
        for (double t = range.low.celsius() + 0.05; t <= range.high.celsius(); t += 0.05) {
            const double now = emfOf(type, celsius(t)).value().millivolts();
            falls += now > before ? 0 : 1;
            before = now;
        }
        CAPTURE(static_cast<int>(type));
        CHECK(falls == 0);
    }
}

TEST_CASE("a junction as warm as its reference reads its own temperature", "[metrology][thermocouple]") {
    for (const auto type : kTypes) {
        for (const double t : {-40.0, 0.0, 23.4, 60.0}) {
            CHECK_THAT(compensated(type, millivolts(0.0), celsius(t)).value().celsius(), WithinAbs(t, 1e-6));
        }
    }
}

TEST_CASE("outside the reference function there is a cause and no temperature", "[metrology][thermocouple]") {
    for (const auto type : kTypes) {
        CAPTURE(static_cast<int>(type));
        const auto range = referenceRange(type);
        const auto tick = TemperatureDifference::fromCelsius(1e-6);
        CHECK(emfOf(type, range.low));
        CHECK(emfOf(type, range.high));
        CHECK(emfOf(type, range.low - tick).error() == ThermocoupleError::belowRange);
        CHECK(emfOf(type, range.high + tick).error() == ThermocoupleError::aboveRange);
        CHECK(emfOf(type, celsius(kNan)).error() == ThermocoupleError::notFinite);
        CHECK(emfOf(type, celsius(-kInfinity)).error() == ThermocoupleError::notFinite);

        const auto lowest = emfOf(type, range.low).value();
        const auto highest = emfOf(type, range.high).value();
        CHECK(temperatureOf(type, lowest).value() == range.low);
        CHECK(temperatureOf(type, highest).value() == range.high);
        CHECK(temperatureOf(type, lowest - millivolts(0.0004)).value() == range.low);
        CHECK(temperatureOf(type, highest + millivolts(0.0004)).value() == range.high);
        CHECK(temperatureOf(type, lowest - millivolts(0.0006)).error() == ThermocoupleError::belowRange);
        CHECK(temperatureOf(type, highest + millivolts(0.0006)).error() == ThermocoupleError::aboveRange);
        CHECK(temperatureOf(type, millivolts(1e300)).error() == ThermocoupleError::aboveRange);
        CHECK(temperatureOf(type, millivolts(kNan)).error() == ThermocoupleError::notFinite);
        CHECK(inversePolynomial(type, millivolts(kInfinity)).error() == ThermocoupleError::notFinite);
        CHECK(inversePolynomial(type, millivolts(-50.0)).error() == ThermocoupleError::belowRange);
        CHECK(inversePolynomial(type, millivolts(80.0)).error() == ThermocoupleError::aboveRange);

        CHECK(compensated(type, millivolts(1.0), celsius(kNan)).error() == ThermocoupleError::notFinite);
        CHECK(compensated(type, millivolts(1.0), celsius(-400)).error() == ThermocoupleError::belowRange);
        CHECK(compensated(type, millivolts(80.0), celsius(25)).error() == ThermocoupleError::aboveRange);
    }
}
