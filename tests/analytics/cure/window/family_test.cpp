#include "window_support.hpp"

#include <limits>

using namespace holdfast::analytics;
using namespace holdfast::analytics::support;

namespace {

constexpr double kNaN = std::numeric_limits<double>::quiet_NaN();
constexpr double kInfinity = std::numeric_limits<double>::infinity();

std::vector<FamilyFault> only(FamilyFault fault) {
    return {fault};
}

} // namespace

TEST_CASE("a family whose limits touch may be used", "[cure][family]") {
    auto family = withCeiling(ink("touching", f(320)), f(320)); // decisions 1: C ≥ g_hi, M ≥ C
    family.gel = GelRange{f(320), f(320)};
    family.additiveBand = AdditiveBand{0.02, 0.02};
    CHECK(faultsOf(family).empty());
}

TEST_CASE("each rule of a family is asked alone", "[cure][family]") {
    // decisions 1, Family
    auto family = ink("one", f(285));
    SECTION("name") {
        family.name = "  ";
        CHECK(faultsOf(family) == only(FamilyFault::nameEmpty));
    }
    SECTION("gel range reversed") {
        family.gel = GelRange{f(260), f(250)};
        CHECK(faultsOf(family) == only(FamilyFault::gelReversed));
    }
    SECTION("cure below the gel range's high end") {
        family.gel = GelRange{f(250), f(286)};
        CHECK(faultsOf(family) == only(FamilyFault::cureBelowGel));
    }
    SECTION("cure above the ceiling") {
        family.ceiling = f(284.9);
        CHECK(faultsOf(family) == only(FamilyFault::cureAboveCeiling));
    }
    SECTION("hold below 0") {
        family.hold = Duration{-1e-3};
        CHECK(faultsOf(family) == only(FamilyFault::holdNegative));
    }
    SECTION("pot life and rest below 0 are times below 0 too") {
        family.potLife = Duration{-1};
        family.restBeforeTest = Duration{-1};
        CHECK(faultsOf(family) == only(FamilyFault::holdNegative));
    }
    SECTION("band reversed") {
        family.additiveBand = AdditiveBand{0.05, 0.02};
        CHECK(faultsOf(family) == only(FamilyFault::bandReversed));
    }
}

TEST_CASE("pairs must be hotter and shorter, above the gel range", "[cure][family]") {
    auto family = ink("pairs", f(300));
    family.gel = GelRange{f(250), f(260)};
    const CurePoint hot{Duration{30}, f(320)};
    const CurePoint cool{Duration{90}, f(285)};
    CHECK(faultsOf(withPairs(family, hot, cool)).empty());
    CHECK(faultsOf(withPairs(family, cool, hot)) == only(FamilyFault::pairsNotHotterShorter));
    CHECK(faultsOf(withPairs(family, hot, {Duration{30}, f(285)})) == only(FamilyFault::pairsNotHotterShorter));
    CHECK(faultsOf(withPairs(family, {Duration{0}, f(320)}, cool)) == only(FamilyFault::pairsNotHotterShorter));
    CHECK(faultsOf(withPairs(family, hot, {Duration{90}, f(260)})) == only(FamilyFault::pairsNotAboveGel));
    family.gel.reset();
    CHECK(faultsOf(withPairs(family, hot, {Duration{9000}, c(60)})) == only(FamilyFault::pairsNotAboveGel));
    CHECK(faultsOf(withCeiling(withPairs(family, hot, cool), f(310))) == only(FamilyFault::cureAboveCeiling));
}

TEST_CASE("all faults of a family come at once", "[cure][family]") {
    InkFamily family;
    family.gel = GelRange{f(300), f(290)};
    family.cure = f(285);
    family.ceiling = f(200);
    family.hold = Duration{-5};
    family.additiveBand = AdditiveBand{0.3, 0.1};
    family = withPairs(family, {Duration{90}, f(250)}, {Duration{30}, f(260)});
    CHECK(faultsOf(family) == std::vector{FamilyFault::nameEmpty, FamilyFault::gelReversed, FamilyFault::cureBelowGel,
                                          FamilyFault::cureAboveCeiling, FamilyFault::holdNegative,
                                          FamilyFault::pairsNotHotterShorter, FamilyFault::pairsNotAboveGel,
                                          FamilyFault::bandReversed});
}

TEST_CASE("no number of a family may be other than finite", "[cure][family]") {
    for (const double bad : {kNaN, kInfinity, -kInfinity}) {
        CAPTURE(bad);
        const auto refused = [](const InkFamily& family) {
            const auto faults = faultsOf(family);
            return std::find(faults.begin(), faults.end(), FamilyFault::notFinite) != faults.end();
        };
        const auto sound = ink("one", f(285));
        auto family = sound;
        family.cure = c(bad);
        CHECK(refused(family));
        family = sound;
        family.hold = Duration{bad};
        CHECK(refused(family));
        family = sound;
        family.gel = GelRange{c(bad), f(260)};
        CHECK(refused(family));
        CHECK(refused(withCeiling(sound, c(bad))));
        CHECK(refused(withPairs(sound, {Duration{bad}, f(320)}, {Duration{90}, f(285)})));
        CHECK(refused(withPairs(sound, {Duration{30}, f(320)}, {Duration{90}, c(bad)})));
        family = sound;
        family.potLife = Duration{bad};
        CHECK(refused(family));
        family = sound;
        family.restBeforeTest = Duration{bad};
        CHECK(refused(family));
        family = sound;
        family.additiveBand = AdditiveBand{0.0, bad};
        CHECK(refused(family));
    }
}
