#include "analytics/metrology/aim.hpp"

#include "analytics/metrology/conformance.hpp"
#include "tests/analytics/metrology/instruments.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <random>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;
using Catch::WithinAbs;

namespace {

/// Lower 160 °C, guard 3 °C at every limit; ceilings in °C.
AimRequest request(std::optional<double> hard, std::optional<double> bleed = {}) {
    AimRequest made;
    made.lower = celsius(160);
    made.guardLower = made.guardHard = made.guardBleed = kelvins(3);
    if (hard) {
        made.hardUpper = celsius(*hard);
    }
    if (bleed) {
        made.bleedUpper = celsius(*bleed);
    }
    return made;
}

void checkAim(const AimRequest& asked, double at, AimRule rule) {
    const auto aim = aimFor(asked);
    REQUIRE(aim);
    CHECK_THAT(aim->at.celsius(), WithinAbs(at, 1e-9));
    CHECK(aim->rule == rule);
}

} // namespace

TEST_CASE("with room the aim stands two and a half guards above the limit", "[metrology][aim]") {
    // decisions 2: L + 2.5 g.
    checkAim(request({}), 167.5, AimRule::aboveLower);
    checkAim(request(200), 167.5, AimRule::aboveLower);
    checkAim(request(175), 167.5, AimRule::aboveLower); // [163, 172], middle 167.5: both rules agree
    checkAim(request({}, 180), 167.5, AimRule::aboveLower);
}

TEST_CASE("in a narrow window the aim is its middle", "[metrology][aim]") {
    // decisions 2: the middle of [L + g, upper − g].
    checkAim(request(174), 167.0, AimRule::middle);
    checkAim(request(170), 165.0, AimRule::middle);
    checkAim(request(166), 163.0, AimRule::middle); // a single temperature is left
    checkAim(request(200, 170), 165.0, AimRule::middle);
    checkAim(request(170, 200), 165.0, AimRule::middle);
    auto uneven = request(172);
    uneven.guardHard = kelvins(5); // [163, 167]
    checkAim(uneven, 165.0, AimRule::middle);
}

TEST_CASE("the ceiling that leaves less room counts, not the lower one", "[metrology][aim]") {
    auto asked = request(172, 171);
    asked.guardHard = kelvins(6);  // up to 166
    asked.guardBleed = kelvins(1); // up to 170
    checkAim(asked, 164.5, AimRule::middle);
}

TEST_CASE("if only the bleed ceiling leaves no room the aim ignores it and stays low", "[metrology][aim]") {
    // decisions 2: L + 1.5 g, below hard upper − g.
    checkAim(request({}, 165), 164.5, AimRule::bleedOnly);
    checkAim(request(180, 165), 164.5, AimRule::bleedOnly);
    checkAim(request(167.5, 165), 164.5, AimRule::bleedOnly); // exactly at hard upper − g
    checkAim(request(167, 165), 163.5, AimRule::bleedOnly);   // 164.5 would pass 164: the middle of [163, 164]
    checkAim(request({}, 100), 164.5, AimRule::bleedOnly);
}

TEST_CASE("without room below the hard ceiling there is no aim", "[metrology][aim]") {
    CHECK_FALSE(aimFor(request(165.9)));
    CHECK_FALSE(aimFor(request(100)));
    CHECK_FALSE(aimFor(request(165.9, 165)));
    CHECK_FALSE(aimFor(request(165.9, 200)));
}

TEST_CASE("without guards the aim is the limit itself", "[metrology][aim]") {
    auto asked = request(180);
    asked.guardLower = asked.guardHard = kelvins(0);
    checkAim(asked, 160.0, AimRule::aboveLower);
    asked.hardUpper = celsius(160);
    checkAim(asked, 160.0, AimRule::aboveLower);
}

TEST_CASE("an aim lies in the acceptance zone and never rises when a ceiling falls", "[metrology][aim]") {
    std::mt19937 random{20260101};
    std::uniform_real_distribution<double> upper{150, 200};
    std::uniform_real_distribution<double> guard{0, 8};
    for (int i = 0; i < 5000; ++i) {
        auto asked = request(upper(random));
        asked.guardLower = kelvins(guard(random));
        asked.guardHard = kelvins(guard(random));
        const auto zone = acceptanceLimits({asked.lower, asked.hardUpper}, {asked.guardLower, asked.guardHard});
        const auto aim = aimFor(asked);
        REQUIRE(aim.has_value() == zone.has_value());
        if (!aim) {
            continue;
        }
        REQUIRE(atLeast(aim->at, *zone->lower));
        REQUIRE(atMost(aim->at, *zone->upper));
        auto tighter = asked;
        tighter.hardUpper = *asked.hardUpper - kelvins(1);
        const auto lower = aimFor(tighter);
        REQUIRE((!lower || atMost(lower->at, aim->at)));
    }
}

TEST_CASE("moving the whole window moves the aim with it", "[metrology][aim]") {
    for (const double shift : {-300.0, -0.1, 0.0, 40.0}) {
        for (const double hard : {166.0, 170.0, 190.0}) {
            const auto base = aimFor(request(hard, 172));
            auto moved = request(hard + shift, 172 + shift);
            moved.lower = celsius(160 + shift);
            REQUIRE(base);
            REQUIRE(aimFor(moved));
            CHECK_THAT((aimFor(moved)->at - base->at).celsius(), WithinAbs(shift, 1e-9));
        }
    }
}

TEST_CASE("broken requests have no aim", "[metrology][aim]") {
    for (const double broken : {kNan, kInfinity, -kInfinity}) {
        auto asked = request(180, 175);
        asked.lower = celsius(broken);
        CHECK_FALSE(aimFor(asked));
        asked = request(broken, 175);
        CHECK_FALSE(aimFor(asked));
        asked = request(180, broken);
        CHECK_FALSE(aimFor(asked));
        asked = request(180, 175);
        asked.guardLower = kelvins(broken);
        CHECK_FALSE(aimFor(asked));
        CHECK_FALSE(chanceAt(asked, Aim{celsius(165), AimRule::middle}));
    }
    auto negative = request(180);
    negative.guardHard = kelvins(-1);
    CHECK_FALSE(aimFor(negative));
    auto unread = request({});
    unread.guardHard = unread.guardBleed = kelvins(kNan); // guards of absent ceilings
    CHECK(aimFor(unread));
    CHECK_FALSE(chanceAt(request({}), Aim{celsius(kNan), AimRule::aboveLower}));
    CHECK_FALSE(chanceAt(request({}), Aim{celsius(167), AimRule::aboveLower}, {Probability::fromPercent(0)}));
}

TEST_CASE("at the aim about one lot of six in twenty-five has a reading not proven", "[metrology][aim]") {
    // decisions 2: at L + 2.5 g one lot of six readings in twenty-five, at 1.5 g more than half.
    // Python 3.11, NormalDist: cdf(1.5 z) = 0.99319, 1 − cdf(1.5 z)^6 = 0.0401; 1 − cdf(0.5 z)^6 = 0.7483.
    const auto asked = request({});
    const auto usual = chanceAt(asked, *aimFor(asked));
    REQUIRE(usual);
    CHECK_THAT(usual->provenReading.fraction(), WithinAbs(0.99319, 5e-6));
    CHECK_THAT(1.0 - std::pow(usual->provenReading.fraction(), 6), WithinAbs(1.0 / 25.0, 0.002));
    const auto bleeding = request({}, 165);
    const auto low = chanceAt(bleeding, *aimFor(bleeding));
    REQUIRE(low);
    CHECK_THAT(1.0 - std::pow(low->provenReading.fraction(), 6), WithinAbs(0.7483, 5e-5));
}

TEST_CASE("the chance at an aim is the conformance probability between its limits", "[metrology][aim]") {
    const auto asked = request(170);
    const auto aim = aimFor(asked);
    REQUIRE(aim);
    const auto chance = chanceAt(asked, *aim);
    REQUIRE(chance);
    // JCGM 106:2012, 7.4, with u = g/z of both limits
    const auto u = kelvins(3) / GuardSetting{}.z();
    const auto between = conformanceProbability(aim->at, u, {celsius(160), celsius(170)});
    CHECK_THAT(chance->conforming.fraction(), WithinAbs(between->fraction(), 1e-12));
    // a reading on the acceptance limit itself is proven every other time, and conforms at 95 %
    const auto edge = chanceAt(request({}), Aim{celsius(163), AimRule::aboveLower});
    CHECK_THAT(edge->provenReading.fraction(), WithinAbs(0.5, 1e-12));
    CHECK_THAT(edge->conforming.fraction(), WithinAbs(0.95, 1e-12));
    // the bleed ceiling counts unless it was the one left out
    const Aim high{celsius(168), AimRule::middle};
    CHECK(chanceAt(request({}, 170), high)->conforming < chanceAt(request({}), high)->conforming);
    CHECK(chanceAt(request({}, 165), Aim{celsius(164.5), AimRule::bleedOnly})->conforming ==
          chanceAt(request({}), Aim{celsius(164.5), AimRule::aboveLower})->conforming);
}
