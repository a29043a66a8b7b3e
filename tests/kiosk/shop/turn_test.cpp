#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>
#include <cmath>

// Heat as a tunnel gives it: T = air − (air − 25)·e^(−t/τ), out of it the same way back to the room.
using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
using holdfast::analytics::AuthoredTemperature;
using holdfast::analytics::TemperatureUnit;
using holdfast::analytics::TurnKnob;
using holdfast::analytics::Word;
namespace analytics = holdfast::analytics;
namespace records = holdfast::kiosk::records;

namespace {

constexpr double kRoom = 25.0;

/// Legs of one second along the curve: 30 s of room, `inTunnel` s of heat, then 150 s of cooling.
std::vector<Leg> heated(double air, double tau, int inTunnel) {
    std::vector<Leg> legs{{kRoom, 30}};
    double t = kRoom;
    for (int s = 1; s <= inTunnel; ++s) {
        t = air - (air - kRoom) * std::exp(-s / tau);
        legs.push_back({t, 1});
    }
    const double peak = t;
    for (int s = 1; s <= 150; ++s) {
        legs.push_back({kRoom + (peak - kRoom) * std::exp(-s / 40.0), 1});
    }
    return legs;
}

records::DryerNow dryer() {
    records::DryerNow now;
    now.described.dryer = "dryer";
    now.described.heatedLengthMetres = 2.0;
    now.described.slowestMetresPerMinute = 0.5;
    now.described.fastestMetresPerMinute = 6.0;
    now.described.highestSetPoint = AuthoredTemperature{260, TemperatureUnit::celsius};
    now.beltMetresPerMinute = 3.0; // 2 m in 40 s
    now.setPoint = AuthoredTemperature{200, TemperatureUnit::celsius};
    return now;
}

Floor floorWithDryer() {
    Floor floor;
    floor.plug("P-3");
    floor.send(FloorLoaded{dryer(), {}, {}, false});
    floor.announce(runOf("standard", "100% cotton"));
    return floor;
}

void ride(Floor& floor, double air, double tau, int inTunnel) {
    floor.play("P-3", heated(air, tau, inTunnel));
    REQUIRE(floor.commitOpen());
    floor.commitDone();
    REQUIRE(floor.state().verdict);
}

} // namespace

TEST_CASE("an under-cured ride says what to turn, and nothing before it is kept", "[shop][turn]") {
    auto cool = floorWithDryer();
    cool.play("P-3", heated(190, 20, 30)); // 153 °C
    CHECK_FALSE(cool.state().turn);
    cool.commitDone();
    REQUIRE(cool.state().verdict->word == Word::underCured);
    REQUIRE(cool.state().turn);
    REQUIRE(cool.state().turn->has_value());
    const auto& turn = **cool.state().turn;
    CHECK(turn.knob == TurnKnob::beltSlower);
    REQUIRE(turn.beltMetresPerMinute);
    CHECK(*turn.beltMetresPerMinute < 3.0);
    CHECK(turn.predicted > analytics::Temperature::fromFahrenheit(320)); // cure of the standard starter (contracts)
    CHECK(turn.rideAgainAfter.count() > 0);
}

TEST_CASE("a cured ride proposes nothing, and Next takes a proposal away", "[shop][turn]") {
    auto floor = floorWithDryer();
    ride(floor, 190, 20, 45);
    CHECK(floor.state().verdict->word == Word::cured);
    CHECK_FALSE(floor.state().turn);
    ride(floor, 190, 20, 30);
    REQUIRE(floor.state().turn);
    floor.send(ActionPressed{ActionCard::problem});
    floor.commitDone();
    floor.send(NextPressed{});
    CHECK_FALSE(floor.state().turn);
}

TEST_CASE("nothing is claimed against the usual before five good rides", "[shop][turn]") {
    auto first = floorWithDryer();
    ride(first, 215, 20, 45);
    CHECK(shownReading(first.state())->ride->signs.empty());
    auto used = floorWithDryer();
    for (int i = 0; i < 5; ++i) { // UsualRules::leastRides, from memory
        ride(used, 190, 20, 45);
        CHECK(used.state().goodRides.size() == static_cast<std::size_t>(i) + 1);
    }
    ride(used, 215, 20, 45); // 191 °C, where this dryer gives 173 °C
    const auto* shown = shownReading(used.state());
    REQUIRE(shown->ride);
    CHECK(analytics::has(shown->ride->signs, analytics::RideSignKind::emptyBelt));
    CHECK(used.state().goodRides.size() == 5); // it does not join the usual
}

TEST_CASE("a ride without a run proposes nothing", "[shop][turn]") {
    Floor floor;
    floor.plug("P-3");
    floor.play("P-3", heated(190, 20, 30));
    floor.commitDone();
    CHECK_FALSE(floor.state().turn);
    CHECK(floor.state().goodRides.empty());
}
