#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

// A boiling bath near sea level stands at 100 °C (IAPWS R7-97), an ice bath at 0 °C; a ride begins at 60 °C and a rise
// of 5 °C over the last minute (contracts.md, Rides).
using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;

namespace {

const std::vector<Leg> kIntoBoilingWater{{25, 10}, {100, 5}, {100, 40}};

const Probe& probeOf(const Floor& floor) {
    return floor.state().probes.front();
}

} // namespace

TEST_CASE("a probe that goes into boiling water unannounced is taken for a ride", "[shop][proving]") {
    Floor floor;
    floor.plug("P-3");
    floor.play("P-3", kIntoBoilingWater);
    CHECK(probeOf(floor).recording);
}

TEST_CASE("a probe in a check starts no ride, neither in the bath nor when it comes out of it", "[shop][proving]") {
    Floor floor;
    floor.plug("P-3");
    floor.send(InstrumentInCheck{"P-3", true});
    const bool ice = GENERATE(false, true);
    floor.play("P-3", ice ? std::vector<Leg>{{25, 10}, {0, 5}, {0, 40}} : kIntoBoilingWater);
    CHECK_FALSE(probeOf(floor).recording);
    CHECK_FALSE(probeOf(floor).lastMinute.empty()); // the check reads these
    floor.send(InstrumentInCheck{"P-3", false});
    floor.play("P-3", ice ? std::vector<Leg>{{22, 20}, {22, 60}} : std::vector<Leg>{{100, 20}, {25, 40}, {25, 60}});
    CHECK_FALSE(probeOf(floor).recording);
    CHECK(floor.all<OpenSpool>().empty());
    CHECK(floor.commits().empty());
}

TEST_CASE("a ride right after a check is whole", "[shop][proving]") {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton"));
    floor.send(InstrumentInCheck{"P-3", true});
    floor.play("P-3", {{0, 5}, {0, 40}});
    floor.send(InstrumentInCheck{"P-3", false});
    floor.play(
        "P-3",
        {{25, 10}, {25, 5}, {168, 48}, {168, 10}, {45, 41}, {45, 6}}); // out of the ice, on a print, into the dryer
    REQUIRE(floor.commits().size() == 1);
    floor.commitDone();
    REQUIRE(floor.stage() == Stage::verdict);
    CHECK(floor.state().verdict->word == holdfast::analytics::Word::cured);
}

TEST_CASE("what a warm hand began is dropped when the check begins, a ride is not", "[shop][proving]") {
    Floor floor;
    floor.plug("P-3");
    floor.play("P-3", {{25, 30}, {34, 5}}); // carried to the bath
    REQUIRE(probeOf(floor).recording);
    floor.send(InstrumentInCheck{"P-3", true});
    CHECK_FALSE(probeOf(floor).recording);
    CHECK(floor.all<DiscardSpool>().size() == 1);
    floor.send(InstrumentInCheck{"P-3", false});
    floor.play("P-3", {{25, 10}, {25, 70}, {120, 32}});
    REQUIRE(probeOf(floor).recording);
    floor.send(InstrumentInCheck{"P-3", true});
    CHECK(probeOf(floor).recording);
    CHECK_FALSE(probeOf(floor).inCheck);
    floor.send(InstrumentInCheck{"P-9", true}); // nobody's
    CHECK(floor.state().probes.size() == 1);
}
