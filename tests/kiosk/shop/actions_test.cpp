#include "drivers/protocol/ticket_code.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

// Peaks as in ride_test.cpp: 168 °C is cured, 150 °C under-cured, 185 °C overheated for standard on cotton.
using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
using holdfast::analytics::Word;
namespace drivers = holdfast::drivers;
namespace records = holdfast::kiosk::records;
namespace ledger = holdfast::kiosk::ledger;
using records::FloorAction;

namespace {

ScannedText card(std::uint64_t number) {
    return {drivers::encode(drivers::TicketKind::action, number, 3)};
}
ScannedText card(ActionCard action) {
    return card(static_cast<std::uint64_t>(action));
}

Floor floorAfterKeptRide(double peak) {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton", 1));
    floor.play("P-3", rideTo(peak));
    floor.commitDone();
    return floor;
}

template <class R>
std::vector<R> in(const Commit& commit) {
    std::vector<R> found;
    for (const auto& record : commit.records) {
        if (const auto* one = std::get_if<R>(&record)) {
            found.push_back(*one);
        }
    }
    return found;
}

records::DryerNow dryerOf(std::optional<double> speed) {
    records::DryerNow dryer;
    dryer.described.dryer = "dryer";
    dryer.described.heatedLengthMetres = 2.0;
    dryer.described.piecesPerMetre = 1.6;
    dryer.beltMetresPerMinute = speed;
    return dryer;
}

} // namespace

TEST_CASE("belt slower is one entry, ends the lot and makes the next reading one after a change", "[shop][actions]") {
    auto floor = floorAfterKeptRide(168);
    floor.send(card(ActionCard::beltSlower));
    REQUIRE(floor.commits().size() == 2);
    const auto taken = in<records::ActionTaken>(floor.commits()[1]);
    REQUIRE(taken.size() == 1);
    CHECK(taken[0].action == FloorAction::beltSlower);
    const auto closed = in<records::LotClosed>(floor.commits()[1]);
    REQUIRE(closed.size() == 1);
    CHECK(closed[0].lot == "lot-of-1");
    CHECK(closed[0].why == records::LotEnd::dryerChanged);
    REQUIRE(floor.state().floor.lastAction);
    CHECK_FALSE(floor.state().floor.lastAction->kept);
    floor.commitDone();
    CHECK(floor.state().floor.lastAction->kept);
    CHECK(floor.state().nextReason == records::ReadingReason::afterChange);
    floor.play("P-3", {{25, 60}});
    floor.play("P-3", rideTo(168));
    REQUIRE(floor.commits().size() == 3);
    const auto opened = in<records::LotOpened>(floor.commits()[2]);
    REQUIRE(opened.size() == 1);
    CHECK(opened[0].lot != "lot-of-1");
    CHECK(opened[0].number == 2);
    CHECK(in<records::ReadingTaken>(floor.commits()[2]).at(0).reason == records::ReadingReason::afterChange);
    floor.commitDone();
    CHECK(floor.state().nextReason == records::ReadingReason::drawn); // it counted once
}

TEST_CASE("ten scans within two seconds are one entry, ten over minutes are ten", "[shop][actions]") {
    Floor floor;
    for (int i = 0; i < 10; ++i) {
        floor.send(card(ActionCard::hotter));
    }
    CHECK(floor.commits().size() == 1);
    for (int i = 0; i < 10; ++i) {
        floor.wait(20);
        floor.send(card(ActionCard::hotter));
        floor.commitDone();
    }
    floor.commitDone();
    CHECK(floor.commits().size() == 11);
}

TEST_CASE("a change during a ride leaves it its lot, which the ride's own commit opens and closes", "[shop][actions]") {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton", 1));
    floor.play("P-3", {{25, 30}, {120, 32}});
    floor.send(card(ActionCard::hotter));
    CHECK(in<records::LotClosed>(floor.commits().at(0)).empty()); // it does not stand in the book yet
    floor.commitDone();
    floor.play("P-3", {{168, 16}, {168, 10}, {45, 41}});
    REQUIRE(floor.commits().size() == 2);
    CHECK(in<records::LotOpened>(floor.commits()[1]).at(0).lot == "lot-of-1");
    CHECK(in<records::LotClosed>(floor.commits()[1]).at(0).lot == "lot-of-1");
    CHECK(floor.state().run->lotId != "lot-of-1");
}

TEST_CASE("only a stop longer than one dwell ends the lot", "[shop][actions]") {
    const auto lotsEnded = [](double seconds, std::optional<double> speed) {
        auto floor = floorAfterKeptRide(168);
        floor.send(FloorLoaded{dryerOf(speed), {}, {}, false});
        floor.send(card(ActionCard::feedStopped));
        CHECK(in<records::ActionTaken>(floor.commits().back()).at(0).pieces == 4); // 2 m × 1.6 a metre, rounded up
        floor.wait(seconds);
        floor.send(card(ActionCard::started));
        floor.commitDone();
        floor.commitDone();
        return in<records::LotClosed>(floor.commits().back()).size();
    };
    CHECK(lotsEnded(110, 1.0) == 0); // 2 m at 1 m/min: a dwell of 120 s
    CHECK(lotsEnded(130, 1.0) == 1);
    CHECK(lotsEnded(10, std::nullopt) == 1); // nobody knows the dwell
}

TEST_CASE("pulled takes its number from the card, from typed digits, or goes without", "[shop][actions]") {
    const auto pieces = [](const Floor& floor) { return in<records::ActionTaken>(floor.commits().at(0)).at(0).pieces; };
    Floor byCard;
    byCard.send(card(static_cast<std::uint64_t>(ActionCard::pulledPieces) + 12));
    CHECK(pieces(byCard) == 12);
    Floor typed;
    typed.send(card(ActionCard::pulled));
    CHECK(typed.commits().empty());
    CHECK(typed.state().floor.lastAction);
    typed.send(ScannedText{"0"});
    CHECK(typed.state().refusal->cause == RefusalCause::numberUnusable);
    typed.send(ScannedText{"37"});
    CHECK(pieces(typed) == 37);
    CHECK(typed.all<LookUpRun>().empty());
    Floor without;
    without.send(card(ActionCard::pulled));
    without.wait(12);
    CHECK_FALSE(pieces(without));
    without.send(ScannedText{"37"});
    CHECK(without.all<LookUpRun>().size() == 1); // a run again
}

TEST_CASE("a bad verdict stays through Next and a new ticket until one scan says what was done", "[shop][actions]") {
    const double peak = GENERATE(150.0, 185.0);
    auto floor = floorAfterKeptRide(peak);
    REQUIRE(floor.state().floor.unanswered.size() == 1);
    const auto id = floor.state().floor.unanswered[0].id;
    floor.send(NextPressed{});
    REQUIRE(floor.state().refusal);
    CHECK(floor.state().refusal->cause == RefusalCause::badVerdictUnanswered);
    floor.announce(runOf("standard", "100% cotton", 2));
    CHECK(floor.stage() == Stage::verdict);
    CHECK(shownRun(floor.state())->onFile.plan.number == 1);
    CHECK(floor.state().run->onFile.plan.number == 2);
    floor.send(card(ActionCard::problem));
    CHECK(in<records::ActionTaken>(floor.commits().back()).at(0).answers == id);
    CHECK(verdictStays(floor.state()) == false);
    floor.commitDone();
    CHECK(floor.state().floor.unanswered.empty());
    CHECK(floor.stage() == Stage::window); // the other ticket waited
}

TEST_CASE("an answer that could not be written is kept, and one press tries again", "[shop][actions]") {
    auto floor = floorAfterKeptRide(150);
    floor.send(card(ActionCard::cooler));
    floor.commitFails(ledger::FailureCode::diskFull);
    CHECK(floor.stage() == Stage::notKept);
    CHECK(floor.state().floor.unanswered.size() == 1);
    floor.send(RetryPressed{});
    floor.commitDone();
    CHECK(floor.state().floor.unanswered.empty());
    CHECK(floor.all<Commit>()[1].key == floor.all<Commit>()[2].key);
}

TEST_CASE("a ride begins although a bad verdict waits", "[shop][actions]") {
    auto floor = floorAfterKeptRide(150);
    floor.play("P-3", {{25, 60}});
    floor.play("P-3", rideTo(168));
    floor.commitDone();
    CHECK(floor.state().verdict->word == Word::cured);
    CHECK(floor.state().floor.unanswered.size() == 1); // still asks
}

TEST_CASE("unanswered readings come back after a restart", "[shop][actions]") {
    Floor floor;
    records::ReadingRow row;
    row.id = "entry-7";
    row.lot = "lot";
    row.word = Word::overheated;
    floor.send(FloorLoaded{dryerOf(1.0), {row}, {}, false});
    REQUIRE(floor.state().floor.unanswered.size() == 1);
    floor.send(ActionPressed{ActionCard::cooler});
    CHECK(in<records::ActionTaken>(floor.commits().at(0)).at(0).answers == "entry-7");
}

TEST_CASE("in set-up nothing stays, and ready ends it", "[shop][actions]") {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton"));
    floor.send(card(ActionCard::setUp));
    CHECK(floor.state().floor.setUp);
    floor.play("P-3", rideTo(150));
    CHECK(in<records::ReadingTaken>(floor.commits().at(0)).at(0).reason == records::ReadingReason::setUp);
    floor.commitDone();
    CHECK(floor.state().floor.unanswered.empty());
    floor.send(NextPressed{});
    CHECK_FALSE(floor.state().refusal);
    CHECK(floor.state().floor.setUp);
    floor.send(card(ActionCard::ready));
    CHECK_FALSE(floor.state().floor.setUp);
    CHECK(floor.state().nextReason == records::ReadingReason::drawn);
}

TEST_CASE("wipe locks touches for twenty seconds", "[shop][actions]") {
    Floor floor;
    floor.send(card(ActionCard::wipe));
    CHECK(touchLocked(floor.state()));
    floor.wait(19);
    CHECK(touchLocked(floor.state()));
    floor.wait(2);
    CHECK_FALSE(touchLocked(floor.state()));
    CHECK(floor.commits().empty());
}

TEST_CASE("after a power loss the dryer is not ready until a ride is proven", "[shop][actions]") {
    Floor floor;
    floor.plug("P-3");
    floor.send(FloorLoaded{dryerOf(1.0), {}, {}, true});
    CHECK(floor.state().floor.notReady);
    CHECK(floor.state().floor.handOver);
    CHECK(floor.state().floor.inTunnelAtLoss == 4);
    floor.send(card(ActionCard::takenOver));
    CHECK_FALSE(floor.state().floor.handOver);
    CHECK(in<records::ActionTaken>(floor.commits().at(0)).at(0).action == FloorAction::takenOver);
    floor.commitDone();
    CHECK(floor.state().floor.notReady);
    floor.announce(runOf("standard", "100% cotton"));
    floor.play("P-3", rideTo(168));
    floor.commitDone();
    CHECK_FALSE(floor.state().floor.notReady);
}
