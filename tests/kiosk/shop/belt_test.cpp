#include "kiosk/ledger/trace_codec.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

// Starters of contracts.md: standard cures at 320 °F = 160 °C, low-cure at 285 °F = 140.6 °C; cotton bears 176.7 °C.
using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
using holdfast::analytics::Word;
namespace records = holdfast::kiosk::records;
namespace ledger = holdfast::kiosk::ledger;

namespace {

Floor floorWithTwo() {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton", 1));
    floor.send(ActionPressed{ActionCard::alsoOnBelt});
    floor.announce(runOf("low-cure", "100% cotton", 2));
    return floor;
}

/// Answers LoadTrace from the commit that holds the trace.
void loadTrace(Floor& floor, std::size_t commit) {
    const auto asked = floor.all<LoadTrace>().back();
    TraceLoaded loaded{
        asked.reading, std::get<records::ReadingTaken>(floor.readingsIn(commit).at(0)), probeNamed("P-3"), {}};
    const auto points = ledger::decodeTrace(floor.commits().at(commit).trace);
    for (const auto& point : *points) {
        loaded.samples.push_back(
            {MonotonicTime{point.microseconds}, point.counts, static_cast<holdfast::drivers::SampleFlag>(point.flags)});
    }
    floor.send(loaded);
}

} // namespace

TEST_CASE("a ride is judged for every run on the belt, and the worst verdict is shown", "[shop][belt]") {
    auto floor = floorWithTwo();
    REQUIRE(floor.state().belt.size() == 2);
    CHECK(floor.state().run->onFile.plan.number == 2);
    floor.play("P-3", rideTo(150)); // enough for low-cure, not for standard
    REQUIRE(floor.commits().size() == 1);
    const auto readings = floor.readingsIn(0);
    REQUIRE(readings.size() == 2);
    const auto& one = std::get<records::ReadingTaken>(readings[0]);
    const auto& other = std::get<records::ReadingTaken>(readings[1]);
    CHECK(*one.run != *other.run);
    CHECK(std::get<records::TraceSeen>(one.evidence).sha256 == std::get<records::TraceSeen>(other.evidence).sha256);
    floor.commitDone();
    REQUIRE(floor.state().verdict);
    CHECK(floor.state().verdict->word == Word::underCured);
    CHECK(floor.state().shownReadings.size() == 2);
    CHECK(shownReading(floor.state())->run->onFile.plan.number == 1);
    CHECK(floor.state().floor.unanswered.size() == 1);
}

TEST_CASE("the belt's window is the intersection, and says whose layer asks it", "[shop][belt]") {
    const auto floor = floorWithTwo();
    const auto& window = floor.state().beltWindow;
    REQUIRE(window);
    CHECK(window->lower.celsius() == Approx(160.0)); // 320 °F, the standard layer's
    const auto asks = layerOnBelt(floor.state(), window->lowerLayer);
    REQUIRE(asks.run);
    CHECK(asks.run->onFile.plan.number == 1);
    CHECK(asks.position == 1);
    CHECK_FALSE(layerOnBelt(floor.state(), 3).run);
}

TEST_CASE("a run leaves the belt by its ticket, by a press, or with Next", "[shop][belt]") {
    auto byTicket = floorWithTwo();
    byTicket.send(ActionPressed{ActionCard::alsoOnBelt});
    byTicket.announce(runOf("low-cure", "100% cotton", 2));
    REQUIRE(byTicket.state().belt.size() == 1);
    CHECK(byTicket.state().run->onFile.plan.number == 1);
    CHECK_FALSE(byTicket.state().beltWindow);
    auto byPress = floorWithTwo();
    byPress.send(BeltLeft{"run-1"});
    CHECK(byPress.state().belt.size() == 1);
    auto byNext = floorWithTwo();
    byNext.send(NextPressed{});
    REQUIRE(byNext.state().belt.size() == 1);
    CHECK(byNext.state().run->onFile.plan.number == 2);
    auto replaced = floorWithTwo();
    replaced.announce(runOf("standard", "100% cotton", 3));
    CHECK(replaced.state().belt.size() == 1);
}

TEST_CASE("a ticket names the ride before it, which is judged for its run", "[shop][claim]") {
    Floor floor;
    floor.plug("P-3");
    floor.play("P-3", rideTo(168));
    floor.commitDone();
    REQUIRE(floor.state().unclaimed);
    const auto id = *floor.state().unclaimed;
    floor.announce(runOf("standard", "100% cotton"));
    REQUIRE(floor.all<LoadTrace>().size() == 1);
    loadTrace(floor, 0);
    REQUIRE(floor.commits().size() == 2);
    const auto correction = std::get<records::CorrectionMade>(floor.readingsIn(1).at(0));
    CHECK(correction.corrects == id);
    CHECK(*correction.reading.run == "run-20418");
    CHECK(*correction.reading.lot == "lot-of-20418");
    CHECK(std::holds_alternative<records::LotOpened>(floor.commits()[1].records.at(0)));
    floor.commitDone();
    REQUIRE(floor.state().verdict);
    CHECK(floor.state().verdict->word == Word::cured);
    CHECK_FALSE(floor.state().unclaimed);
    CHECK(floor.state().kept.size() == 1);
}

TEST_CASE("a ticket names no ride that is older than ten minutes or was put away", "[shop][claim]") {
    const bool wait = GENERATE(true, false);
    Floor floor;
    floor.plug("P-3");
    floor.play("P-3", rideTo(168));
    floor.commitDone();
    if (wait) {
        floor.wait(601);
    } else {
        floor.send(NextPressed{});
    }
    floor.announce(runOf("standard", "100% cotton"));
    CHECK(floor.all<LoadTrace>().empty());
}

TEST_CASE("a ride judged by a window card is judged again for the run that is named later", "[shop][claim]") {
    Floor floor;
    floor.plug("P-3");
    auto usual = std::make_shared<AnnouncedRun>(*runOf("low-cure", "100% cotton", 7));
    usual->onFile.plan.kind = records::PlanKind::windowCard;
    floor.announce(usual);
    floor.play("P-3", rideTo(150));
    floor.commitDone();
    CHECK(floor.state().verdict->word == Word::cured);
    CHECK_FALSE(std::get<records::ReadingTaken>(floor.readingsIn(0).at(0)).lot);
    floor.announce(runOf("standard", "100% cotton"));
    loadTrace(floor, 0);
    floor.commitDone();
    CHECK(floor.state().verdict->word == Word::underCured);
    CHECK(verdictStays(floor.state()));
}

TEST_CASE("an old ride is named from the list, and what cannot be named is refused", "[shop][claim]") {
    Floor floor;
    floor.send(ClaimPressed{"entry-9"});
    CHECK(floor.state().refusal->cause == RefusalCause::rideNotFound);
    records::ReadingRow row;
    row.id = "entry-9";
    floor.send(FloorLoaded{std::nullopt, {}, {row}, false});
    floor.send(ClaimPressed{"entry-9"});
    CHECK(floor.state().claiming == "entry-9");
    floor.announce(runOf("standard", "100% cotton"));
    REQUIRE(floor.all<LoadTrace>().size() == 1);
    floor.send(TraceNotLoaded{"entry-9", RefusalCause::traceUnreadable});
    CHECK(floor.state().refusal->cause == RefusalCause::traceUnreadable);
    CHECK_FALSE(floor.state().claim);
    CHECK(floor.commits().empty());
}
