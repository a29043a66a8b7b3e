#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/shop/proving/action_card.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
using holdfast::analytics::Word;
namespace drivers = holdfast::drivers;
namespace records = holdfast::kiosk::records;

namespace {

Floor floorWithoutProbe() {
    Floor floor;
    floor.announce(runOf("standard", "100% cotton"));
    return floor;
}

} // namespace

TEST_CASE("a strip needs a run", "[shop][strip]") {
    Floor floor;
    floor.send(StripOpened{});
    CHECK(floor.state().refusal->cause == RefusalCause::noRunAnnounced);
    CHECK_FALSE(floor.state().strip);
}

TEST_CASE("a strip is previewed, kept and only then shown", "[shop][strip]") {
    auto floor = floorWithoutProbe();
    floor.send(StripOpened{});
    REQUIRE(floor.stage() == Stage::strip);
    floor.send(StripKept{});
    CHECK(floor.state().refusal->cause == RefusalCause::stripNotChosen);
    floor.send(StripStepTouched{8}); // 320 °F last dark, 325 °F light
    REQUIRE(floor.state().strip->preview);
    CHECK(floor.state().strip->preview->word == Word::notProven); // 320 - 2 °F lies below 320 °F
    CHECK_FALSE(floor.state().verdict);
    floor.send(PositionTouched{records::BeltPosition::left});
    floor.send(StripKept{});
    REQUIRE(floor.stage() == Stage::writing);
    const auto taken = std::get<records::ReadingTaken>(floor.readingsIn(0).at(0));
    const auto seen = std::get<records::StripSeen>(taken.evidence);
    CHECK(seen.lastDark->value == 320.0); // as authored
    CHECK(seen.firstLight->value == 325.0);
    CHECK(taken.position == records::BeltPosition::left);
    CHECK(floor.commits()[0].trace.empty());
    floor.commitDone();
    CHECK(floor.stage() == Stage::verdict);
    CHECK(floor.state().verdict->word == Word::notProven);
}

TEST_CASE("an unsure step belongs to neither side", "[shop][strip]") {
    auto floor = floorWithoutProbe();
    floor.send(StripOpened{});
    floor.send(StripStepTouched{2});
    floor.send(StripUnsureTouched{});
    floor.send(StripKept{});
    const auto seen = std::get<records::StripSeen>(std::get<records::ReadingTaken>(floor.readingsIn(0).at(0)).evidence);
    CHECK(seen.lastDark->value == 290.0);
    CHECK(seen.firstLight->value == 300.0);
}

TEST_CASE("all light and all dark have an open end", "[shop][strip]") {
    auto floor = floorWithoutProbe();
    floor.send(StripOpened{});
    floor.send(StripStepTouched{-1});
    REQUIRE(floor.state().strip->preview);
    CHECK(floor.state().strip->preview->word == Word::underCured); // under 280 °F + 2 °F, cure at 320 °F
    floor.send(StripStepTouched{10});
    CHECK(floor.state().strip->preview->word == Word::notProven); // no upper edge
    floor.send(StripStepTouched{11});
    CHECK(floor.state().strip->lastDark == 10); // no such step
}

TEST_CASE("a strip that was used before is refused, and kept as refused", "[shop][strip]") {
    auto floor = floorWithoutProbe();
    floor.send(StripOpened{});
    floor.send(StripStepTouched{9});
    floor.send(StripUsedTouched{});
    CHECK(floor.state().strip->preview->word == Word::refused);
    floor.send(StripKept{});
    CHECK(std::holds_alternative<records::ReadingRefused>(floor.readingsIn(0).at(0)));
}

TEST_CASE("leaving the strip page keeps nothing", "[shop][strip]") {
    auto floor = floorWithoutProbe();
    floor.send(StripOpened{});
    floor.send(StripStepTouched{3});
    floor.send(StripLeft{});
    CHECK(floor.stage() == Stage::window);
    CHECK(floor.commits().empty());
}

TEST_CASE("a strip is proven with three scans and no touch", "[shop][strip]") {
    auto floor = floorWithoutProbe();
    const auto scan = [&](drivers::TicketKind kind, std::uint64_t number) {
        floor.send(ScannedText{drivers::encode(kind, number, 3)});
    };
    scan(drivers::TicketKind::instrument, 7);
    REQUIRE(floor.stage() == Stage::strip);
    scan(drivers::TicketKind::action, static_cast<std::uint64_t>(ActionCard::firstStep) + 9);
    CHECK(floor.state().strip->lastDark == 9);
    scan(drivers::TicketKind::action, static_cast<std::uint64_t>(ActionCard::keepStrip));
    REQUIRE(floor.commits().size() == 1);
    floor.commitDone();
    REQUIRE(floor.state().verdict);
}
