#include "tests/kiosk/shop/support/watched_floor.hpp"

/// Brackets, bins and missed readings (decisions 5).
namespace holdfast::kiosk::shop::testing {

using analytics::DueWhy;
using analytics::PieceSpan;
using records::HoldCause;
using records::HoldChanged;
using records::HoldPlaced;
using records::ReadingMissed;
using records::ReadingTaken;

TEST_CASE("a bad reading names the pieces to be pulled, their number and a bin in its own commit", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.send(FreshIds{{"reading-1", "lot", "id-1", "id-2", "id-3", "id-4"}, {0, 0, 0, 0}});
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    REQUIRE(shop.rideKept(kGood).piece == 100);
    shop.typed(211);
    shop.ride(kBad);
    const auto taken = shop.newest<ReadingTaken>();
    REQUIRE(taken.size() == 1);
    CHECK(taken.front().piece == 212);
    const auto holds = shop.newest<HoldPlaced>();
    REQUIRE(holds.size() == 1);
    // From after the last proven piece, 100, to the bad one and the 10 behind it: 101 to 222, 122 pieces; what follows
    // belongs to it until one is proven.
    CHECK(holds.front().cause == HoldCause::reading);
    CHECK(holds.front().pieces == records::PieceRange{101, std::nullopt});
    CHECK(holds.front().count == 122);
    CHECK(holds.front().basis == records::CountBasis::typed);
    CHECK(holds.front().bin == 7);
    CHECK(holds.front().lot == *taken.front().lot);
    CHECK_FALSE(holds.front().hold.empty());
    const auto& commit = shop.floor.commits().back();
    CHECK(holds.front().because == commit.ids.at(commit.firstReading));
    CHECK(shownBracket(shop.floor.state()) == nullptr); // nothing is shown before it stands in the book
    shop.floor.commitDone();
    const auto* bracket = shownBracket(shop.floor.state());
    REQUIRE(bracket != nullptr);
    CHECK(bracket->pieces == PieceSpan{101, 222});
    CHECK(bracket->bin == 7);
    CHECK(verdictStays(shop.floor.state()));
}

TEST_CASE("a second bad reading goes into the same bin and a proven piece ends the bracket", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    (void)shop.rideKept(kGood);
    shop.typed(211);
    (void)shop.rideKept(kBad);
    shop.typed(215);
    shop.ride(kBad);
    const auto second = shop.newest<HoldPlaced>();
    const auto grown = shop.newest<HoldChanged>();
    REQUIRE(second.size() == 1);
    REQUIRE(grown.size() == 1);
    CHECK(second.front().bin == 7);
    // Piece 216 is bad: 101 to 226, 126 pieces.
    CHECK(second.front().count == 126);
    CHECK(grown.front().count == 126);
    shop.floor.commitDone();
    shop.floor.send(ActionPressed{ActionCard::hotter});
    shop.floor.commitDone();
    shop.floor.wait(1);
    // 216 pieces were on the belt at the change: the first of the new state is one of 237 to 241.
    shop.typed(236);
    shop.ride(kGood);
    const auto ended = shop.newest<HoldChanged>();
    REQUIRE(ended.size() == 2);
    for (const auto& one : ended) {
        // To before the proven piece 237: 101 to 236, 136 pieces.
        CHECK(one.pieces == records::PieceRange{101, 236});
        CHECK(one.count == 136);
    }
    shop.floor.commitDone();
    shop.typed(245);
    shop.ride(kBad); // another bracket, another bin
    REQUIRE(shop.newest<HoldPlaced>().size() == 1);
    CHECK(shop.newest<HoldPlaced>().front().bin == 8);
    // From after 237 to 246 + 10 = 256: 19 pieces.
    CHECK(shop.newest<HoldPlaced>().front().pieces->first == 238);
    CHECK(shop.newest<HoldPlaced>().front().count == 19);
}

TEST_CASE("the end of the run ends a bracket", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    (void)shop.rideKept(kGood);
    shop.typed(211);
    (void)shop.rideKept(kBad);
    shop.floor.send(KeptElsewhere{{records::RunFinished{kRun, 280, std::nullopt}}});
    const auto ended = shop.newest<HoldChanged>();
    REQUIRE(ended.size() == 1);
    // None proven after it: to the end of the run, 101 to 280, 180 pieces.
    CHECK(ended.front().pieces == records::PieceRange{101, 280});
    CHECK(ended.front().count == 180);
}

TEST_CASE("a decided bracket is left alone by what comes after", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(211);
    shop.ride(kBad);
    const auto hold = shop.newest<HoldPlaced>().front();
    shop.floor.commitDone();
    records::DecisionSigned signedDecision;
    signedDecision.holds = {hold.hold};
    shop.floor.send(KeptElsewhere{{signedDecision}});
    shop.typed(213);
    shop.ride(kBad);
    CHECK(shop.newest<HoldChanged>().empty());
    REQUIRE(shop.newest<HoldPlaced>().size() == 1);
    CHECK(shop.newest<HoldPlaced>().front().bin == 8); // a new cause starts a new hold
}

TEST_CASE("set-up readings hold nothing", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.send(ActionPressed{ActionCard::setUp});
    shop.ride(kBad);
    CHECK(shop.newest<HoldPlaced>().empty());
}

TEST_CASE("where nobody counts a bad reading holds the whole lot", "[shop][watch]") {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton"));
    floor.play("P-3", rideTo(kBad));
    const auto& commit = floor.commits().back();
    const auto* hold = std::get_if<HoldPlaced>(&commit.records.back());
    REQUIRE(hold != nullptr);
    CHECK_FALSE(hold->pieces);
    CHECK_FALSE(hold->count);
    CHECK(hold->bin == 0);
}

TEST_CASE("pieces in the tunnel when the belt stops are a bracket of their own", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    (void)shop.rideKept(kGood);
    shop.typed(212);
    shop.floor.send(ActionPressed{ActionCard::feedStopped});
    const auto holds = shop.newest<HoldPlaced>();
    REQUIRE(holds.size() == 1);
    CHECK(holds.front().cause == HoldCause::beltStopped);
    // The last ten of 212: 203 to 212.
    CHECK(holds.front().pieces == records::PieceRange{203, 212});
    CHECK(holds.front().count == 10);
    CHECK(holds.front().bin == 7);
}

TEST_CASE("pieces in the tunnel of a lot that nobody has read yet are held all the same", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(30);
    shop.floor.send(ActionPressed{ActionCard::feedStopped});
    const auto opened = shop.newest<records::LotOpened>();
    const auto holds = shop.newest<HoldPlaced>();
    REQUIRE(opened.size() == 1); // the lot stands in the book before what it holds
    REQUIRE(holds.size() == 1);
    CHECK(holds.front().lot == opened.front().lot);
    CHECK(holds.front().cause == HoldCause::beltStopped);
    CHECK(holds.front().pieces == records::PieceRange{21, 30}); // the last ten of 30
    CHECK(std::holds_alternative<records::LotOpened>(shop.floor.commits().back().records.front()));
}

TEST_CASE("a bin that a place took meanwhile is not given twice", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(211);
    shop.ride(kBad);
    REQUIRE(shop.newest<HoldPlaced>().front().bin == 7);
    shop.floor.send(CommitFailed{shop.floor.commits().back().key, {ledger::FailureCode::refused, "the bin is taken"}});
    HoldPlaced other; // of a failed wash, kept under Tests
    other.hold = "hold-of-a-test";
    other.lot = "lot-of-another";
    other.bin = 7;
    shop.floor.send(KeptElsewhere{{other}});
    shop.floor.send(RetryPressed{});
    CHECK(shop.newest<HoldPlaced>().front().bin == 8);
    shop.floor.commitDone();
    CHECK(shownBracket(shop.floor.state())->bin == 8);
}

/// Read up to piece 212 before the kiosk was started anew: 100 was proven, 212 was not, and 101 on are in bin 4.
std::shared_ptr<const AnnouncedRun> runUnderWay() {
    auto run = std::make_shared<AnnouncedRun>(*runOfPieces(288));
    auto& file = run->onFile;
    file.lot = records::LotRow{};
    file.lot->id = run->lotId;
    file.lot->run = kRun;
    file.lotsSoFar = 1;
    records::ReadingRow good;
    good.id = "reading-1";
    good.lot = run->lotId;
    good.piece = 100;
    good.word = analytics::Word::cured;
    auto bad = good;
    bad.id = "reading-2";
    bad.piece = 212;
    bad.word = analytics::Word::underCured;
    file.readings = {good, bad};
    file.furthestPiece = 212;
    HoldPlaced hold;
    hold.hold = "hold-1";
    hold.lot = run->lotId;
    hold.because = "reading-2";
    hold.pieces = records::PieceRange{101, std::nullopt};
    hold.count = 122;
    hold.bin = 4;
    file.openHolds = {hold};
    return run;
}

TEST_CASE("after a start the brackets and pieces of a run under way stand as the book has them", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runUnderWay());
    shop.floor.wait(1);
    CHECK_FALSE(shop.watch().made); // what was fed meanwhile nobody knows
    REQUIRE(shop.watch().brackets.size() == 1);
    CHECK(shop.watch().brackets.front().open);
    CHECK(shop.watch().brackets.front().pieces == PieceSpan{101, 222}); // 122 pieces
    CHECK(shop.watch().lastProven == 100);

    shop.typed(211); // fewer than were read
    CHECK(shop.floor.state().refusal->cause == RefusalCause::countRunsBackwards);
    CHECK_FALSE(shop.watch().made);
    shop.typed(236);
    CHECK(shop.watch().made->pieces == 236);

    shop.ride(kGood); // piece 237
    const auto ended = shop.newest<HoldChanged>();
    REQUIRE(ended.size() == 1);
    CHECK(ended.front().hold == "hold-1");
    CHECK(ended.front().pieces == records::PieceRange{101, 236}); // up to the proven piece 237
    CHECK(ended.front().count == 136);
}

TEST_CASE("a bad reading after a start goes into the bin that the bracket has already", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runUnderWay());
    shop.floor.wait(1);
    shop.typed(215);
    shop.ride(kBad);
    const auto holds = shop.newest<HoldPlaced>();
    REQUIRE(holds.size() == 1);
    CHECK(holds.front().bin == 4);
    CHECK(holds.front().pieces == records::PieceRange{101, std::nullopt});
    CHECK(holds.front().count == 126); // 101 to 216 and the ten behind it
}

TEST_CASE("a due reading that was not taken when the next fell due is an entry", "[shop][watch]") {
    WatchedFloor shop{1.5};
    shop.floor.send(FreshIds{{}, {2}});
    shop.floor.announce(runOfPieces(1000));
    shop.floor.wait(200);
    REQUIRE(shop.rideKept(kGood).piece == 23);
    const auto commits = shop.floor.commits().size();
    // 23 + 200 = 223 falls due, 423 is the next: at 6 pieces a minute the count is 423 after 4230 s.
    while (shop.watch().made->pieces < 422) {
        shop.floor.wait(10);
    }
    CHECK(shop.floor.commits().size() == commits);
    shop.floor.wait(20);
    REQUIRE(shop.floor.commits().size() == commits + 1);
    const auto missed = shop.newest<ReadingMissed>();
    REQUIRE(missed.size() == 1);
    CHECK(missed.front().due == records::DueReadingKind::pieces);
    CHECK(missed.front().lot == "lot-of-20418");
    shop.floor.commitDone();
    shop.floor.wait(600);
    CHECK(shop.floor.commits().size() == commits + 1); // once
    CHECK(shop.due().reading.now);                     // and still one is due
}

TEST_CASE("the last reading is missed a quarter of an hour after the end", "[shop][watch]") {
    WatchedFloor shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    (void)shop.rideKept(kGood);
    shop.typed(287);
    CHECK(shop.due().reading.why == DueWhy::last);
    CHECK(shop.due().piece == 288);
    CHECK(shop.due().reading.now);
    const auto commits = shop.floor.commits().size();
    shop.floor.send(KeptElsewhere{{records::RunFinished{kRun, 288, std::nullopt}}});
    shop.floor.wait(899);
    CHECK(shop.floor.commits().size() == commits);
    shop.floor.wait(2);
    REQUIRE(shop.floor.commits().size() == commits + 1);
    REQUIRE(shop.newest<ReadingMissed>().size() == 1);
    CHECK(shop.newest<ReadingMissed>().front().due == records::DueReadingKind::last);
    CHECK(watchOf(shop.floor.state(), kRun) == nullptr); // nothing more is watched
}

TEST_CASE("a ticket that was scanned and never ridden misses nothing", "[shop][watch]") {
    WatchedFloor shop{1.5};
    shop.floor.announce(runOfPieces(1000));
    shop.floor.wait(9000);
    CHECK(shop.floor.commits().empty());
}

} // namespace holdfast::kiosk::shop::testing
