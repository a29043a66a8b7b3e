#include "analytics/fastness/grade.hpp"
#include "tests/analytics/fastness/figures.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <vector>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;

namespace {

GradeFault faultIn(std::string_view text) {
    const auto read = Grade::fromText(text);
    REQUIRE_FALSE(read);
    return read.error();
}
std::vector<Grade> grades(std::initializer_list<const char*> texts) {
    std::vector<Grade> result;
    for (const char* text : texts)
        result.push_back(grade(text));
    return result;
}

} // namespace

TEST_CASE("the nine steps of the scale read and write as the standards write them", "[fastness][grade]") {
    // ISO 105-A02:1993 and A03:1993, 2.1: 5, 4-5, 4, 3-4, 3, 2-3, 2, 1-2, 1.
    const char* names[] = {"1", "1-2", "2", "2-3", "3", "3-4", "4", "4-5", "5"};
    const double numbers[] = {1, 1.5, 2, 2.5, 3, 3.5, 4, 4.5, 5};
    for (std::size_t step = 0; step < Grade::kSteps; ++step) {
        const auto g = Grade::fromStep(step);
        CHECK(g.text() == names[step]);
        CHECK(g.number() == numbers[step]);
        CHECK(Grade::fromText(names[step]) == g);
        CHECK(Grade::fromNumber(numbers[step]) == g);
    }
}

TEST_CASE("a half step may be written in every usual way", "[fastness][grade]") {
    for (const char* text : {"4-5", "4.5", "4,5", "4/5", "4–5", " 4 - 5 ", "4.50", "\t4.5\n"})
        CHECK(grade(text) == Grade::fromNumber(4.5));
    CHECK(grade("4.0") == Grade::fromNumber(4.0));
}

TEST_CASE("what is not a grade is refused with its cause", "[fastness][grade][hostile]") {
    CHECK(faultIn("") == GradeFault::empty);
    CHECK(faultIn("  ") == GradeFault::empty);
    CHECK(faultIn("four") == GradeFault::notANumber);
    CHECK(faultIn("4 5") == GradeFault::notANumber);
    CHECK(faultIn("4-") == GradeFault::notANumber);
    CHECK(faultIn("-") == GradeFault::notANumber);
    CHECK(faultIn("4-4-5") == GradeFault::notANumber);
    CHECK(faultIn("nan") == GradeFault::notANumber);
    CHECK(faultIn("inf") == GradeFault::notANumber);
    CHECK(faultIn("1e0") == GradeFault::notANumber);
    CHECK(faultIn("4.5.1") == GradeFault::notANumber);
    CHECK(faultIn(std::string(1000, '9')) == GradeFault::notANumber); // larger than any number
    CHECK(faultIn("0") == GradeFault::belowScale);
    CHECK(faultIn("0.5") == GradeFault::belowScale);
    CHECK(faultIn("-4") == GradeFault::belowScale);
    CHECK(faultIn("0-1") == GradeFault::belowScale);
    CHECK(faultIn("5.5") == GradeFault::aboveScale);
    CHECK(faultIn("5-6") == GradeFault::aboveScale);
    CHECK(faultIn("45") == GradeFault::aboveScale);
    CHECK(faultIn("4.2") == GradeFault::offHalfSteps);
    CHECK(faultIn("3.75") == GradeFault::offHalfSteps);
    CHECK(faultIn("5-4") == GradeFault::notNeighbours);
    CHECK(faultIn("2-4") == GradeFault::notNeighbours);
    CHECK(faultIn("3-3") == GradeFault::notNeighbours);
    CHECK(faultIn("3.5-4.5") == GradeFault::notNeighbours);
}

TEST_CASE("numbers off the scale or off its half steps are refused", "[fastness][grade][hostile]") {
    CHECK(Grade::fromNumber(0.99).error() == GradeFault::belowScale);
    CHECK(Grade::fromNumber(5.01).error() == GradeFault::aboveScale);
    CHECK(Grade::fromNumber(4.499).error() == GradeFault::offHalfSteps);
    CHECK(Grade::fromNumber(std::numeric_limits<double>::quiet_NaN()).error() == GradeFault::notANumber);
    CHECK(Grade::fromNumber(std::numeric_limits<double>::infinity()).error() == GradeFault::notANumber);
    CHECK(Grade::fromNumber(4.5 + 1e-12) == Grade::fromNumber(4.5));
}

TEST_CASE("a greater grade is a better one", "[fastness][grade]") {
    CHECK(grade("4-5") > grade("4"));
    CHECK(grade("1-2") < grade("2"));
    CHECK(Grade::worst() < Grade::best());
    CHECK(grade("3.5") == grade("3-4"));
}

TEST_CASE("the median of grades is a grade somebody gave", "[fastness][grade]") {
    // Median of ordinal data: Stevens, On the theory of scales of measurement, Science 103 (1946).
    CHECK_FALSE(medianGrade({}));
    CHECK(medianGrade(grades({"3"})) == grade("3"));
    CHECK(medianGrade(grades({"5", "3", "4"})) == grade("4"));
    CHECK(medianGrade(grades({"5", "1", "4-5", "4", "4"})) == grade("4"));
    CHECK(medianGrade(grades({"4", "3"})) == grade("3"));               // the lower of two
    CHECK(medianGrade(grades({"5", "2", "4", "3-4"})) == grade("3-4")); // 2, 3-4, 4, 5
    CHECK(medianGrade(grades({"1", "1", "5", "5"})) == grade("1"));
}

TEST_CASE("at least half of the assessors saw the print no better than its median", "[fastness][grade]") {
    for (std::size_t a = 0; a < Grade::kSteps; ++a)
        for (std::size_t b = 0; b < Grade::kSteps; ++b)
            for (std::size_t c = 0; c < Grade::kSteps; ++c) {
                const std::vector<Grade> four{Grade::fromStep(a), Grade::fromStep(b), Grade::fromStep(c),
                                              Grade::fromStep(4)};
                const auto median = *medianGrade(four);
                const auto atOrBelow = std::count_if(four.begin(), four.end(), [&](Grade g) { return g <= median; });
                const auto atOrAbove = std::count_if(four.begin(), four.end(), [&](Grade g) { return g >= median; });
                if (atOrBelow < 2 || atOrAbove < 2)
                    FAIL("not in the middle");
            }
    SUCCEED();
}

TEST_CASE("grades are counted step by step", "[fastness][grade]") {
    const auto counts = countGrades(grades({"4", "4-5", "4", "2", "5"}));
    CHECK(counts.of(grade("4")) == 2);
    CHECK(counts.of(grade("4-5")) == 1);
    CHECK(counts.of(grade("3")) == 0);
    CHECK(counts.total() == 5);
    CHECK(counts.atLeast(grade("4")) == 4);
    CHECK(counts.atLeast(grade("1")) == 5);
    CHECK(countGrades({}).total() == 0);
}
