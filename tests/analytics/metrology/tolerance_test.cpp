#include "analytics/metrology/tolerance.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;
using Catch::WithinAbs;
using enum ThermocoupleType;
using enum ToleranceClass;

namespace {

struct Row {
    ThermocoupleType type;
    ToleranceClass toleranceClass;
    double celsius;
    double tolerance;
};

std::optional<TemperatureDifference> at(ThermocoupleType type, ToleranceClass toleranceClass, double celsius) {
    return classTolerance(type, toleranceClass, Temperature::fromCelsius(celsius));
}

void checkAll(const std::vector<Row>& rows) {
    for (const auto& row : rows) {
        CAPTURE(static_cast<int>(row.type), static_cast<int>(row.toleranceClass), row.celsius);
        const auto tolerance = at(row.type, row.toleranceClass, row.celsius);
        REQUIRE(tolerance);
        CHECK_THAT(tolerance->celsius(), WithinAbs(row.tolerance, 1e-9));
    }
}

} // namespace

TEST_CASE("classes of IEC 60584-1 are the greater of a fixed figure and a share", "[metrology][tolerance]") {
    // IEC 60584-1:2013, tolerance classes (figures and shares as reproduced in public tolerance tables, with JIS C
    // 1602).
    checkAll(
        {{k, iecClass1, 160, 1.5},  {k, iecClass2, 160, 2.5},   {k, iecClass1, 400, 1.6},   {k, iecClass2, 400, 3.0},
         {t, iecClass1, 160, 0.64}, {t, iecClass2, 100, 1.0},   {j, iecClass2, 350, 2.625}, {k, iecClass1, 1000, 4.0},
         {k, iecClass2, 1200, 9.0}, {k, iecClass3, -200, 3.0},  {k, iecClass3, -40, 2.5},   {n, iecClass1, 160, 1.5},
         {n, iecClass2, 1200, 9.0}, {n, iecClass3, -200, 3.0},  {j, iecClass1, 750, 3.0},   {j, iecClass2, -40, 2.5},
         {t, iecClass1, 350, 1.4},  {t, iecClass2, 350, 2.625}, {t, iecClass3, -200, 3.0},  {t, iecClass3, 40, 1.0},
         {e, iecClass1, 800, 3.2},  {e, iecClass2, 900, 6.75},  {e, iecClass3, -200, 3.0}});
}

TEST_CASE("the share takes over where the standard says", "[metrology][tolerance]") {
    // Break points of IEC 60584-1 and JIS C 1602 as printed: 375 and 333 °C; T: 125 and 133; class 3: −167, T −67 °C.
    checkAll({{k, iecClass1, 375, 1.5},
              {k, iecClass1, 376, 1.504},
              {e, iecClass1, 375, 1.5},
              {j, iecClass1, 376, 1.504},
              {k, iecClass2, 333, 2.5},
              {k, iecClass2, 334, 2.505},
              {t, iecClass1, 125, 0.5},
              {t, iecClass1, 126, 0.504},
              {t, iecClass2, 133, 1.0},
              {t, iecClass2, 134, 1.005},
              {k, iecClass3, -166, 2.5},
              {k, iecClass3, -168, 2.52},
              {t, iecClass3, -66, 1.0},
              {t, iecClass3, -68, 1.02}});
}

TEST_CASE("limits of ASTM E230 above and below 0 °C", "[metrology][tolerance]") {
    // ASTM E230/E230M, Table 1 (as reproduced in public tolerance tables). Below 0 °C for type K: the larger of the two
    // figures found, 2.0 %, also printed in ANSI MC96.1.
    checkAll({{k, astmStandard, 160, 2.2},  {k, astmStandard, 1260, 9.45}, {k, astmSpecial, 160, 1.1},
              {k, astmSpecial, 1260, 5.04}, {n, astmStandard, 400, 3.0},   {n, astmSpecial, 400, 1.6},
              {j, astmStandard, 160, 2.2},  {j, astmStandard, 760, 5.7},   {j, astmSpecial, 760, 3.04},
              {t, astmStandard, 160, 1.2},  {t, astmStandard, 100, 1.0},   {t, astmSpecial, 370, 1.48},
              {t, astmSpecial, 0, 0.5},     {e, astmStandard, 870, 4.35},  {e, astmStandard, 160, 1.7},
              {e, astmSpecial, 160, 1.0},   {e, astmSpecial, 870, 3.48},   {t, astmStandard, -200, 3.0},
              {t, astmStandard, -10, 1.0},  {e, astmStandard, -200, 2.0},  {e, astmStandard, -100, 1.7},
              {k, astmStandard, -200, 4.0}, {k, astmStandard, -100, 2.2}});
}

TEST_CASE("outside the range of a class there is no tolerance", "[metrology][tolerance]") {
    // Ranges: IEC 60584-1:2013; ASTM E230/E230M, Table 1.
    const Row beyond[] = {{k, iecClass1, -40.1, 0},    {k, iecClass1, 1000.1, 0},   {k, iecClass2, 1200.1, 0},
                          {k, iecClass3, 40.1, 0},     {k, iecClass3, -200.1, 0},   {k, iecClass3, 160, 0},
                          {j, iecClass1, 750.1, 0},    {t, iecClass1, 350.1, 0},    {t, iecClass2, -40.1, 0},
                          {e, iecClass1, 800.1, 0},    {e, iecClass2, 900.1, 0},    {k, astmStandard, 1260.1, 0},
                          {k, astmSpecial, -0.1, 0},   {j, astmStandard, -0.1, 0},  {j, astmStandard, 760.1, 0},
                          {n, astmStandard, -0.1, 0},  {t, astmStandard, 370.1, 0}, {t, astmStandard, -200.1, 0},
                          {e, astmStandard, 870.1, 0}, {e, astmSpecial, -0.1, 0}};
    for (const auto& row : beyond) {
        CAPTURE(static_cast<int>(row.type), static_cast<int>(row.toleranceClass), row.celsius);
        CHECK_FALSE(at(row.type, row.toleranceClass, row.celsius));
    }
}

TEST_CASE("type J has no class 3, every other pairing exists", "[metrology][tolerance]") {
    // IEC 60584-1:2013, tolerance classes.
    CHECK_FALSE(isClassDefined(j, iecClass3));
    CHECK_FALSE(at(j, iecClass3, -100));
    CHECK_FALSE(at(j, iecClass3, 20));
    for (const auto type : {k, j, t, e, n}) {
        for (const auto toleranceClass : {iecClass1, iecClass2, astmStandard, astmSpecial}) {
            CHECK(isClassDefined(type, toleranceClass));
        }
    }
}

TEST_CASE("the better class is never the wider one", "[metrology][tolerance]") {
    for (const auto type : {k, j, t, e, n}) {
        for (int celsius = 0; celsius <= 350; ++celsius) {
            REQUIRE(*at(type, iecClass1, celsius) <= *at(type, iecClass2, celsius));
            REQUIRE(*at(type, astmSpecial, celsius) <= *at(type, astmStandard, celsius));
        }
    }
}

TEST_CASE("a temperature that is not finite has no tolerance", "[metrology][tolerance]") {
    for (const double broken : {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity(),
                                -std::numeric_limits<double>::infinity()}) {
        CHECK_FALSE(at(k, iecClass1, broken));
        CHECK_FALSE(at(t, astmStandard, broken));
    }
}
