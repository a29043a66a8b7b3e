#include "analytics/fastness/grey_scale.hpp"
#include "tests/analytics/fastness/figures.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;

namespace {

struct Step {
    const char* grade;
    double difference;
    double tolerance;
};

// ISO 105-A02:1993 (EN 20105-A02), table in 2.4; the same figures in GOST R ISO 105-A02-99, table 1.
const Step kChange[] = {{"5", 0, 0.2},     {"4-5", 0.8, 0.2}, {"4", 1.7, 0.3},   {"3-4", 2.5, 0.35}, {"3", 3.4, 0.4},
                        {"2-3", 4.8, 0.5}, {"2", 6.8, 0.6},   {"1-2", 9.6, 0.7}, {"1", 13.6, 1.0}};

// ISO 105-A03:1993 (EN 20105-A03), table in 2.4.
const Step kStaining[] = {{"5", 0, 0.2},      {"4-5", 2.2, 0.3}, {"4", 4.3, 0.3},    {"3-4", 6.0, 0.4}, {"3", 8.5, 0.5},
                          {"2-3", 12.0, 0.7}, {"2", 16.9, 1.0},  {"1-2", 24.0, 1.5}, {"1", 34.1, 2.0}};

using Rule = tl::expected<Grade, ColourFault> (*)(double);

/// A scale inside its tolerance grades itself right.
void gradesItself(std::span<const Step> steps, Rule rule) {
    for (const auto& step : steps) {
        CAPTURE(step.grade);
        CHECK(rule(step.difference) == grade(step.grade));
        CHECK(rule(step.difference + step.tolerance) == grade(step.grade));
        CHECK(rule(std::max(0.0, step.difference - step.tolerance)) == grade(step.grade));
    }
}

void breaksAtTheMiddle(std::span<const Step> steps, Rule rule) {
    for (std::size_t i = 1; i < steps.size(); ++i) {
        const double middle = (steps[i - 1].difference + steps[i].difference) / 2.0;
        CAPTURE(middle);
        CHECK(rule(middle) == grade(steps[i].grade)); // half way: the worse
        CHECK(rule(middle - 0.001) == grade(steps[i - 1].grade));
        CHECK(rule(middle + 0.001) == grade(steps[i].grade));
    }
}

void onlyFalls(Rule rule) {
    auto last = Grade::best();
    for (int i = 0; i <= 50000; ++i) {
        const auto now = rule(i * 0.001);
        if (!now || *now > last)
            FAIL("a larger difference has a better grade at " << i * 0.001);
        last = *now;
    }
    CHECK(last == Grade::worst());
}

} // namespace

TEST_CASE("the scale for change is the standard's, and every chip has its grade", "[fastness][grey-scale]") {
    const auto scale = changeScale();
    for (std::size_t i = 0; i < scale.size(); ++i) {
        CHECK(scale[i].grade == grade(kChange[i].grade));
        CHECK(scale[i].difference == kChange[i].difference);
        CHECK(scale[i].tolerance == kChange[i].tolerance);
    }
    gradesItself(kChange, changeGrade);
}

TEST_CASE("the scale for staining is the standard's, and every chip has its grade", "[fastness][grey-scale]") {
    const auto scale = stainingScale();
    for (std::size_t i = 0; i < scale.size(); ++i) {
        CHECK(scale[i].grade == grade(kStaining[i].grade));
        CHECK(scale[i].difference == kStaining[i].difference);
        CHECK(scale[i].tolerance == kStaining[i].tolerance);
    }
    gradesItself(kStaining, stainingGrade);
}

TEST_CASE("half way between two chips is the worse grade", "[fastness][grey-scale]") {
    breaksAtTheMiddle(kChange, changeGrade);
    breaksAtTheMiddle(kStaining, stainingGrade);
}

TEST_CASE("the middles of the scale for change are the limits of ISO 105-A05's own table", "[fastness][grey-scale]") {
    // ISO 105-A05:1996, table of ΔE_F and grade (from memory): 5 below 0.40, 4-5 below 1.25, 4 below 2.10, 3-4 below
    // 2.95, 3 below 4.10, 2-3 below 5.80, 2 below 8.20, 1-2 below 11.60, else 1.
    const double limits[] = {0.40, 1.25, 2.10, 2.95, 4.10, 5.80, 8.20, 11.60};
    for (std::size_t i = 0; i < std::size(limits); ++i) {
        CHECK(changeGrade(limits[i]) == grade(kChange[i + 1].grade));
        CHECK(changeGrade(limits[i] - 0.01) == grade(kChange[i].grade));
    }
}

TEST_CASE("a larger difference never has a better grade, and the last grade has no end", "[fastness][grey-scale]") {
    onlyFalls(changeGrade);
    onlyFalls(stainingGrade);
    CHECK(changeGrade(1000.0) == Grade::worst());
    CHECK(stainingGrade(1000.0) == Grade::worst());
}

TEST_CASE("the same difference is a worse change than stain", "[fastness][grey-scale]") {
    for (int i = 0; i <= 4000; ++i)
        if (*changeGrade(i * 0.01) > *stainingGrade(i * 0.01))
            FAIL("at " << i * 0.01);
    SUCCEED();
}

TEST_CASE("a difference below nothing or not finite has no grade", "[fastness][grey-scale][hostile]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    const double inf = std::numeric_limits<double>::infinity();
    CHECK(changeGrade(-0.001).error() == ColourFault::differenceOutOfRange);
    CHECK(stainingGrade(-5).error() == ColourFault::differenceOutOfRange);
    CHECK(changeGrade(nan).error() == ColourFault::notFinite);
    CHECK(changeGrade(inf).error() == ColourFault::notFinite);
    CHECK(stainingGrade(nan).error() == ColourFault::notFinite);
}
