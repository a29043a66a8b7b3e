#include "analytics/fastness/stretch.hpp"
#include "tests/analytics/fastness/figures.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <vector>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;

namespace {

// Elongations of common practice: 25 to 50 % on jersey, 50 to 100 % on sports cloth (from memory).
StretchFinding read(const std::vector<Pull>& pulls, CrackClass allowed = CrackClass::noCrack) {
    const auto finding = readPulls(pulls, allowed);
    REQUIRE(finding);
    return *finding;
}
const std::vector<Pull> kLadder{{percent(25), CrackClass::noCrack},
                                {percent(50), CrackClass::hairline},
                                {percent(75), CrackClass::breaks},
                                {percent(100), CrackClass::powders}};

} // namespace

TEST_CASE("the classes of cracking are in order", "[fastness][stretch]") {
    CHECK(CrackClass::noCrack < CrackClass::hairline);
    CHECK(CrackClass::hairline < CrackClass::breaks);
    CHECK(CrackClass::breaks < CrackClass::powders);
}

TEST_CASE("a print held as far as the last pull that looked as allowed", "[fastness][stretch]") {
    CHECK(read(kLadder).held == percent(25));
    CHECK(read(kLadder).firstFailed == percent(50));
    CHECK(read(kLadder).worst == CrackClass::powders);
    CHECK(read(kLadder, CrackClass::hairline).held == percent(50));
    CHECK(read(kLadder, CrackClass::breaks).held == percent(75));
    CHECK(read(kLadder, CrackClass::powders).held == percent(100));
    CHECK_FALSE(read(kLadder, CrackClass::powders).firstFailed);
}

TEST_CASE("the order in which pulls were made does not matter", "[fastness][stretch]") {
    auto pulls = kLadder;
    std::reverse(pulls.begin(), pulls.end());
    CHECK(read(pulls).held == percent(25));
    CHECK(read(pulls).firstFailed == percent(50));
    CHECK_FALSE(read(pulls).contradictory);
}

TEST_CASE("a print that cracks at the first pull held nothing", "[fastness][stretch]") {
    const auto finding = read({{percent(25), CrackClass::breaks}});
    CHECK_FALSE(finding.held);
    CHECK(finding.firstFailed == percent(25));
    CHECK(judgeStretch(finding, percent(25)) == StretchVerdict::failed);
}

TEST_CASE("a higher pull that looks better than a failed lower one contradicts it and does not count",
          "[fastness][stretch]") {
    const auto finding = read({{percent(25), CrackClass::breaks}, {percent(50), CrackClass::noCrack}});
    CHECK(finding.contradictory);
    CHECK_FALSE(finding.held);
    CHECK(judgeStretch(finding, percent(50)) == StretchVerdict::failed);
}

TEST_CASE("two pulls to the same elongation count as the worse", "[fastness][stretch]") {
    const auto finding = read({{percent(50), CrackClass::noCrack}, {percent(50), CrackClass::breaks}});
    CHECK_FALSE(finding.held);
    CHECK_FALSE(finding.contradictory);
}

TEST_CASE("passed, failed and not pulled far enough", "[fastness][stretch]") {
    const auto finding = read(kLadder, CrackClass::hairline); // held 50 %, fails at 75 %
    CHECK(judgeStretch(finding, percent(25)) == StretchVerdict::passed);
    CHECK(judgeStretch(finding, percent(50)) == StretchVerdict::passed);
    CHECK(judgeStretch(finding, percent(60)) == StretchVerdict::notPulledFarEnough);
    CHECK(judgeStretch(finding, percent(75)) == StretchVerdict::failed);
    CHECK(judgeStretch(finding, percent(100)) == StretchVerdict::failed);
    CHECK(judgeStretch(read({{percent(25), CrackClass::noCrack}}), percent(50)) == StretchVerdict::notPulledFarEnough);
}

TEST_CASE("pulls that pull nothing are refused", "[fastness][stretch][hostile]") {
    CHECK(readPulls({}, CrackClass::noCrack).error() == StretchFault::noPulls);
    for (const double bad : {0.0, -10.0}) {
        const Pull pull{percent(bad), CrackClass::noCrack};
        CHECK(readPulls({&pull, 1}, CrackClass::noCrack).error() == StretchFault::notPositive);
    }
    const Pull pull{percent(std::numeric_limits<double>::quiet_NaN()), CrackClass::noCrack};
    CHECK(readPulls({&pull, 1}, CrackClass::noCrack).error() == StretchFault::notFinite);
}
