#include "drivers/protocol/ticket_code.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
using holdfast::analytics::AuthoredTemperature;
using holdfast::analytics::Placement;
using holdfast::analytics::TemperatureUnit;
using holdfast::analytics::Word;
namespace analytics = holdfast::analytics;
namespace drivers = holdfast::drivers;
namespace records = holdfast::kiosk::records;

namespace {

KnownInstrument packOfSingles() {
    auto pack = stripOf280To330F();
    pack.name = "singles";
    pack.number = 50;
    pack.pack = records::StripPack{100, 20, {}};
    return pack;
}

Floor floorWithHands(bool announced = true) {
    Floor floor;
    floor.send(InstrumentsLoaded{{probeNamed("P-3"), handInstrument("S-1", analytics::InstrumentKind::spot, 11),
                                  handInstrument("G-1", analytics::InstrumentKind::gun, 12), packOfSingles()},
                                 analytics::starterFamilies(),
                                 analytics::GuardSetting{}});
    if (announced) {
        floor.announce(runOf("standard", "100% cotton"));
    }
    return floor;
}

void scanInstrument(Floor& floor, std::uint64_t number) {
    floor.send(ScannedText{drivers::encode(drivers::TicketKind::instrument, number, 3)});
}

RefusalCause causeOf(const Floor& floor) {
    REQUIRE(floor.state().refusal);
    return floor.state().refusal->cause;
}

} // namespace

TEST_CASE("a spot is opened by its code, previewed, kept and only then shown", "[shop][hand]") {
    auto floor = floorWithHands();
    scanInstrument(floor, 11);
    REQUIRE(floor.stage() == Stage::hand);
    floor.send(HandTyped{fahrenheit(340)}); // cure of the standard starter is 320 °F (contracts, Starters)
    CHECK(floor.state().hand->missing == RefusalCause::beforeUseMissing);
    floor.send(HandBeforeTyped{fahrenheit(75)});
    REQUIRE(floor.state().hand->preview);
    CHECK(floor.state().hand->preview->word == Word::cured);
    floor.send(PositionTouched{records::BeltPosition::right});
    floor.send(HandKept{});
    REQUIRE(floor.stage() == Stage::writing);
    CHECK_FALSE(floor.state().verdict);
    const auto taken = std::get<records::ReadingTaken>(floor.readingsIn(0).at(0));
    const auto seen = std::get<records::SpotSeen>(taken.evidence);
    CHECK(seen.held == fahrenheit(340)); // as typed
    CHECK(seen.beforeUse == fahrenheit(75));
    CHECK(taken.position == records::BeltPosition::right);
    CHECK(taken.instrument == "id-of-S-1");
    floor.commitDone();
    CHECK(floor.stage() == Stage::verdict);
    CHECK(floor.state().verdict->word == Word::cured);
}

TEST_CASE("what is missing or impossible on the page of a typed reading is refused by name", "[shop][hand]") {
    auto floor = floorWithHands();
    floor.send(HandKept{});
    CHECK(causeOf(floor) == RefusalCause::nothingEntered);
    floor.send(HandOpened{"S-1"});
    floor.send(HandKept{});
    CHECK(causeOf(floor) == RefusalCause::valueMissing);
    floor.send(HandTyped{fahrenheit(330)});
    floor.send(HandKept{});
    CHECK(causeOf(floor) == RefusalCause::beforeUseMissing);
    floor.send(HandBeforeTyped{fahrenheit(75)});
    floor.send(HandTyped{AuthoredTemperature{451, TemperatureUnit::celsius}}); // 450 °C is the most (contracts, Rides)
    floor.send(HandKept{});
    CHECK(causeOf(floor) == RefusalCause::valueImpossible);
    CHECK(floor.state().refusal->text == "451 °C");
    floor.send(HandTyped{AuthoredTemperature{-41, TemperatureUnit::celsius}});
    floor.send(HandKept{});
    CHECK(causeOf(floor) == RefusalCause::valueImpossible);
    CHECK(floor.commits().empty());
    CHECK(floor.stage() == Stage::hand); // nothing typed is lost
}

TEST_CASE("only a spot or a gun has a page for a typed value, and only with a run", "[shop][hand]") {
    auto floor = floorWithHands();
    floor.send(HandOpened{"P-3"});
    CHECK(causeOf(floor) == RefusalCause::byHandOnly);
    CHECK(floor.state().refusal->text == "P-3");
    auto without = floorWithHands(false);
    scanInstrument(without, 12);
    CHECK(causeOf(without) == RefusalCause::noRunAnnounced);
    CHECK_FALSE(without.state().hand);
}

TEST_CASE("a spot that was not reset below the gel range is kept as refused", "[shop][hand]") {
    auto floor = floorWithHands();
    floor.send(HandOpened{"S-1"});
    floor.send(HandTyped{fahrenheit(330)});
    floor.send(HandBeforeTyped{fahrenheit(310)}); // still hot from the print before
    floor.send(HandKept{});
    CHECK(std::holds_alternative<records::ReadingRefused>(floor.readingsIn(0).at(0)));
}

TEST_CASE("a gun proves nothing cured; cold in the tunnel it shows too cool, at the outfeed nothing", "[shop][hand]") {
    auto floor = floorWithHands();
    scanInstrument(floor, 12);
    floor.send(HandTyped{fahrenheit(340)});
    CHECK(floor.state().hand->preview->word == Word::notProven);
    floor.send(HandTyped{fahrenheit(250)});
    CHECK(floor.state().hand->preview->word == Word::notProven); // it has cooled on the way out (decisions 4)
    floor.send(ShotPlaceChosen{analytics::ShotPlace::inTunnelHottest});
    CHECK(floor.state().hand->preview->word == Word::underCured);
    floor.send(HandKept{});
    const auto taken = std::get<records::ReadingTaken>(floor.readingsIn(0).at(0));
    CHECK(std::get<records::GunSeen>(taken.evidence).place == analytics::ShotPlace::inTunnelHottest);
}

TEST_CASE("a typed reading is judged and kept for every run on the belt", "[shop][hand]") {
    auto floor = floorWithHands();
    floor.send(ActionPressed{ActionCard::alsoOnBelt});
    floor.announce(runOf("low-cure", "100% polyester", 2));
    floor.send(HandOpened{"S-1"});
    floor.send(HandTyped{fahrenheit(340)});
    floor.send(HandBeforeTyped{fahrenheit(75)});
    floor.send(HandKept{});
    const auto readings = floor.readingsIn(0);
    REQUIRE(readings.size() == 2);
    CHECK(std::get<records::ReadingTaken>(readings[0]).run == "run-2");
    CHECK(std::get<records::ReadingTaken>(readings[1]).run == "run-20418");
    floor.commitDone();
    REQUIRE(floor.state().verdict);
    CHECK(floor.state().shownReadings.size() == 2);
}

TEST_CASE("the reason chosen goes with the typed reading, once where it counts once", "[shop][hand]") {
    auto floor = floorWithHands();
    floor.send(ActionPressed{ActionCard::worry});
    floor.send(HandOpened{"G-1"});
    floor.send(HandTyped{fahrenheit(300)});
    floor.send(HandKept{});
    CHECK(std::get<records::ReadingTaken>(floor.readingsIn(0).at(0)).reason == records::ReadingReason::worry);
    CHECK(floor.state().nextReason == records::ReadingReason::drawn);
}

TEST_CASE("the placement chosen with a reading is the one it is kept and guarded with", "[shop][hand]") {
    auto floor = floorWithHands();
    floor.plug("P-3");
    const auto guard = floor.state().window->layers.at(0).cure.guard;
    floor.send(PlacementChosen{Placement::inOrUnderCloth});
    CHECK(floor.state().window->layers.at(0).cure.guard > guard); // less sure than in wet ink (decisions 2)
    floor.play("P-3", rideTo(168));
    const auto ride = std::get<records::ReadingTaken>(floor.readingsIn(0).at(0));
    CHECK(ride.placement == Placement::inOrUnderCloth);
    CHECK(ride.guards.layers.at(0).guard > guard);
    floor.commitDone();
    floor.send(NextPressed{});
    floor.send(StripOpened{});
    floor.send(PlacementChosen{Placement::tapedOnFilm});
    floor.send(StripStepTouched{9});
    floor.send(StripKept{});
    CHECK(std::get<records::ReadingTaken>(floor.readingsIn(1).at(0)).placement == Placement::tapedOnFilm);
}

TEST_CASE("a single strip is opened by its own label once the book knows of no use", "[shop][strip]") {
    auto floor = floorWithHands();
    scanInstrument(floor, 119); // the last of 100 to 119
    REQUIRE(floor.all<LookUpStrip>().size() == 1);
    CHECK_FALSE(floor.state().strip);
    floor.send(StripLookedUp{118}); // of a label scanned before
    CHECK_FALSE(floor.state().strip);
    floor.send(StripLookedUp{119});
    REQUIRE(floor.state().strip);
    CHECK(floor.state().strip->number == 119);
    floor.send(StripStepTouched{9});
    floor.send(StripKept{});
    const auto taken = std::get<records::ReadingTaken>(floor.readingsIn(0).at(0));
    CHECK(std::get<records::StripSeen>(taken.evidence).number == 119);
    floor.wait(3);              // a label scanned twice at once counts once
    scanInstrument(floor, 119); // on its way into the book
    CHECK(causeOf(floor) == RefusalCause::stripUsedBefore);
}

TEST_CASE("a single strip that a reading has used, or of no pack, is refused", "[shop][strip]") {
    auto floor = floorWithHands();
    scanInstrument(floor, 100);
    floor.send(StripLookedUp{100, true, false});
    CHECK(causeOf(floor) == RefusalCause::stripUsedBefore);
    CHECK(floor.state().refusal->number == 100);
    scanInstrument(floor, 101);
    floor.send(StripLookedUp{101, false, true});
    CHECK(causeOf(floor) == RefusalCause::bookUnreadable);
    scanInstrument(floor, 120); // one past the pack
    CHECK(causeOf(floor) == RefusalCause::instrumentNotFound);
    CHECK_FALSE(floor.state().strip);
}

TEST_CASE("a flash is noted for a layer and shown as kept once it stands in the book", "[shop][flash]") {
    auto floor = floorWithHands();
    floor.send(FlashKept{});
    CHECK(causeOf(floor) == RefusalCause::nothingEntered);
    floor.send(FlashOpened{});
    REQUIRE(floor.stage() == Stage::flash);
    CHECK(floor.state().flash->instrument.name == "S-1");
    floor.send(FlashTyped{fahrenheit(300)}); // gels at 280 °F, cures at 320 °F (contracts, Starters)
    floor.send(FlashLayerChosen{2});
    floor.send(FlashKept{});
    CHECK(causeOf(floor) == RefusalCause::flashLayerMissing);
    floor.send(FlashLayerChosen{1});
    REQUIRE(floor.state().flash->preview);
    CHECK(floor.state().flash->preview->word == analytics::FlashWord::gelled);
    floor.send(FlashKept{});
    const auto noted = std::get<records::FlashNoted>(floor.readingsIn(0).at(0));
    CHECK(noted.position == 1);
    CHECK(noted.peak == fahrenheit(300));
    CHECK(noted.word == analytics::FlashWord::gelled);
    REQUIRE(floor.state().lastFlash);
    CHECK_FALSE(floor.state().lastFlash->kept);
    floor.commitDone();
    CHECK(floor.state().lastFlash->kept);
    CHECK_FALSE(floor.state().verdict); // no reading of the lot
}
