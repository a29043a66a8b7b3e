#include "tests/kiosk/shop/support/watched_floor.hpp"

/// Pieces counted and readings due (decisions 5).
namespace holdfast::kiosk::shop::testing {

using analytics::BeltLane;
using analytics::CountSource;
using analytics::DueWhy;
using analytics::PieceSpan;
using records::HoldPlaced;
using records::ReadingReason;

TEST_CASE("pieces are counted by rate and time without a touch", "[shop][watch]") {
    WatchedFloor shop{1.5};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    CHECK(shop.watch().made->source == CountSource::rate);
    shop.floor.wait(600);
    // 1.5 m/min × 4 a metre × 10 min = 60.
    CHECK(shop.watch().made->pieces == 60);
    shop.floor.wait(3000); // 360 by the rate, but the run has 288
    CHECK(shop.watch().made->pieces == 288);
}

TEST_CASE("nothing is counted while the belt stands or the run is being set up", "[shop][watch]") {
    WatchedFloor shop{1.5};
    shop.floor.announce(runOfPieces(288));
    shop.floor.send(ActionPressed{ActionCard::setUp});
    shop.floor.wait(300);
    CHECK(shop.watch().made->pieces == 0);
    shop.floor.send(ActionPressed{ActionCard::ready});
    shop.floor.wait(100);
    CHECK(shop.watch().made->pieces == 10);
    shop.floor.send(ActionPressed{ActionCard::feedStopped});
    shop.floor.wait(90); // less than the dwell of 100 s
    CHECK(shop.watch().made->pieces == 10);
    shop.floor.send(ActionPressed{ActionCard::started});
    shop.floor.wait(100);
    CHECK(shop.watch().made->pieces == 20);
}

TEST_CASE("two runs share what lies on a metre of the belt", "[shop][watch]") {
    WatchedFloor shop{1.5};
    shop.floor.announce(runOfPieces(288));
    shop.floor.send(ActionPressed{ActionCard::alsoOnBelt});
    shop.floor.announce(runOfPieces(288, 20419));
    shop.floor.wait(600);
    CHECK(shop.watch().made->pieces == 30);
    CHECK(shop.watch("run-20419").made->pieces == 30);
}

TEST_CASE("a number typed counts, and one that runs backwards is refused", "[shop][watch]") {
    WatchedFloor shop{1.5};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(100);
    CHECK(shop.watch().made == analytics::PieceCount{100, CountSource::typed});
    shop.floor.wait(60); // six more by the rate
    CHECK(shop.watch().made == analytics::PieceCount{106, CountSource::typed});
    shop.typed(90);
    REQUIRE(shop.floor.state().refusal);
    CHECK(shop.floor.state().refusal->cause == RefusalCause::countRunsBackwards);
    CHECK(shop.floor.state().refusal->text == "90");
    CHECK(shop.floor.state().refusal->number == 106U);
    CHECK(shop.watch().made->pieces == 106);
    shop.typed(-1);
    CHECK(shop.floor.state().refusal->cause == RefusalCause::countUnusable);
    shop.floor.send(PiecesTyped{"another", 5});
    CHECK(shop.floor.state().refusal->cause == RefusalCause::noRunToCount);
    shop.typed(110);
    CHECK_FALSE(shop.floor.state().refusal);
}

TEST_CASE("the piece to be read is drawn and its lane named before it comes", "[shop][watch]") {
    WatchedFloor shop{1.5};
    shop.floor.send(FreshIds{{}, {2}});
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(10);
    const auto& due = shop.due();
    CHECK(due.reading.why == DueWhy::first);
    CHECK(due.reading.lane == BeltLane::right); // the map's coldest
    // Two dwells are 20 pieces: one of 21 to 25; 2 mod 5 = 2, the third of them.
    CHECK(due.reading.among == PieceSpan{21, 25});
    CHECK(due.piece == 23);
    CHECK_FALSE(due.reading.now);
    CHECK(dueFirst(shop.floor.state()) == &shop.watch());
    shop.floor.wait(190);
    CHECK(shop.due().reading.now);
    CHECK(shop.due().piece == 23);
}

TEST_CASE("a ride of a due reading is of the piece drawn, where it was due", "[shop][watch]") {
    WatchedFloor shop{1.5};
    shop.floor.send(FreshIds{{}, {2}});
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(200);
    const auto taken = shop.rideKept(kGood);
    CHECK(taken.piece == 23);
    CHECK(taken.position == records::BeltPosition::right);
    CHECK(taken.reason == ReadingReason::drawn);
    CHECK(taken.verdict->word == analytics::Word::cured);
    CHECK(shop.watch().lastProven == 23);
    shop.floor.wait(1);
    CHECK(shop.due().reading.why == DueWhy::pieces);
    // 23 + 200 = 223: one of 219 to 223.
    CHECK(shop.due().reading.among == PieceSpan{219, 223});
}

TEST_CASE("without a belt map the first three are left, centre and right", "[shop][watch]") {
    WatchedFloor shop{0.0, false};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(50);
    const records::BeltPosition positions[] = {records::BeltPosition::left, records::BeltPosition::centre,
                                               records::BeltPosition::right};
    const double peaks[] = {168.0, 169.0, 166.0};
    for (int i = 0; i < 3; ++i) {
        const auto taken = shop.rideKept(peaks[i]);
        CHECK(taken.position == positions[i]);
        CHECK(taken.reason == ReadingReason::drawn);
        shop.floor.wait(1);
    }
    // Three lanes of one lot are a map: right was the coldest.
    REQUIRE(shop.floor.state().watch.map);
    CHECK(shop.floor.state().watch.map->coldest == BeltLane::right);
    CHECK(shop.due().reading.lane == BeltLane::right);
    CHECK_FALSE(shop.due().reading.now);
}

TEST_CASE("a position that a person chose stands", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(50);
    shop.floor.send(PositionTouched{records::BeltPosition::left});
    CHECK(shop.rideKept(kGood).position == records::BeltPosition::left);
}

TEST_CASE("a ride on an empty belt is kept but proves nothing of the dryer's state", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(5);
    const auto taken = shop.rideKept(kGood);
    CHECK(taken.piece == 6);
    CHECK(taken.reason == ReadingReason::drawn);
    shop.floor.wait(1);
    CHECK(shop.due().reading.why == DueWhy::first);
    CHECK(shop.watch().lastProven == 6); // that one piece was seen
}

TEST_CASE("a ride that nobody asked for has worry as its reason unless a card says it was due", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(50);
    CHECK(shop.rideKept(kGood).reason == ReadingReason::drawn);
    shop.floor.wait(1);
    CHECK(shop.rideKept(kGood).reason == ReadingReason::worry);
    shop.floor.wait(1);
    shop.floor.send(ActionPressed{ActionCard::drawn});
    CHECK(shop.rideKept(kGood).reason == ReadingReason::drawn);
}

TEST_CASE("a change at the dryer begins the plan anew and the lots know their pieces", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    shop.ride(kGood);
    CHECK(shop.newest<records::LotOpened>().front().firstPiece == 1);
    shop.floor.commitDone();
    shop.typed(150);
    CHECK(shop.due().reading.why == DueWhy::last);
    shop.floor.send(ActionPressed{ActionCard::hotter, std::nullopt, std::nullopt,
                                  analytics::AuthoredTemperature{350.0, analytics::TemperatureUnit::fahrenheit}});
    CHECK(shop.newest<records::LotClosed>().front().lastPiece == 150);
    shop.floor.commitDone();
    shop.floor.wait(1);
    CHECK(shop.due().reading.why == DueWhy::first);
    CHECK(shop.due().reading.among == PieceSpan{171, 175}); // 150 + 20
    shop.typed(171);
    shop.ride(kGood);
    CHECK(shop.newest<records::LotOpened>().front().firstPiece == 151);
}

TEST_CASE("a run in a state that another one proved begins with what is left of it", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(500));
    shop.floor.wait(1);
    shop.typed(99);
    REQUIRE(shop.rideKept(kGood).piece == 100);
    shop.typed(249); // 149 pieces since
    shop.floor.announce(runOfPieces(500, 20419));
    shop.floor.wait(1);
    const auto& due = shop.due("run-20419");
    CHECK(due.reading.why == DueWhy::pieces);
    CHECK(due.reading.among == PieceSpan{47, 51}); // 200 − 149
}

TEST_CASE("after two held lots in five the numbers are halved", "[shop][watch]") {
    WatchedFloor shop{0.0};
    auto loaded = dryerAt(0.0);
    loaded.tightened = true;
    shop.floor.send(loaded);
    shop.floor.announce(runOfPieces(500));
    shop.floor.wait(1);
    shop.typed(99);
    REQUIRE(shop.rideKept(kGood).piece == 100);
    shop.floor.wait(1);
    CHECK(shop.due().reading.among == PieceSpan{196, 200}); // 100 + 100
}

TEST_CASE("a window card is no run: nothing of it is counted or held", "[shop][watch]") {
    WatchedFloor shop{1.5};
    auto card = std::make_shared<AnnouncedRun>(*runOfPieces(288));
    card->onFile.plan.kind = records::PlanKind::windowCard;
    shop.floor.announce(card);
    shop.floor.wait(300);
    CHECK(watchOf(shop.floor.state(), kRun) == nullptr);
    shop.ride(kBad);
    CHECK(shop.newest<HoldPlaced>().empty());
}

} // namespace holdfast::kiosk::shop::testing
