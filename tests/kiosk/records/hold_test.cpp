#include "tests/kiosk/records/support/lot_book.hpp"

using namespace holdfast::kiosk::records;
using namespace holdfast::kiosk::records::testing;
namespace a = holdfast::analytics;

TEST_CASE("a bad reading holds its lot without a hold, until a later decision about the lot", "[records][lots]") {
    LotShop lot;
    lot.shop.read(a::Word::cured);
    CHECK(lot.say(LotShop::decision("early", DecisionWord::released)));
    CHECK(lot.state() == LotState::released);
    lot.shop.read(a::Word::underCured); // a new cause starts a new hold (decisions 5)
    CHECK(lot.state() == LotState::onHold);
    CHECK(holds(lot.shop.db())->at(0).word == a::Word::underCured);
    CHECK(lot.open().empty());
    CHECK(lot.say(LotShop::decision("late", DecisionWord::released)));
    CHECK(lot.state() == LotState::released);
    CHECK(holds(lot.shop.db())->empty());
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("a hold of a bad reading ends by the decision that names it, and no other", "[records][lots]") {
    LotShop lot;
    const auto first = lot.shop.read(a::Word::underCured);
    CHECK(lot.say(LotShop::hold("h1", HoldCause::reading, first, PieceRange{1, 40}, 1)));
    const auto second = lot.shop.read(a::Word::overheated);
    CHECK(lot.say(LotShop::hold("h2", HoldCause::reading, second, PieceRange{60, {}}, 2)));
    CHECK(lot.open() == Ids{"h1", "h2"});
    CHECK_FALSE(lot.say(LotShop::hold("h3", HoldCause::reading, second, {}, 2))); // the bin is taken
    CHECK_FALSE(lot.say(LotShop::hold("h2", HoldCause::reading, second)));        // it stands already
    CHECK_FALSE(lot.say(LotShop::decision("d0", DecisionWord::released)));        // names none of them
    CHECK(lot.why.find("does not name") != std::string::npos);
    CHECK_FALSE(lot.say(LotShop::decision("d0", DecisionWord::released, {"h9"})));
    REQUIRE(lot.say(LotShop::decision("d1", DecisionWord::released, {"h1"})));
    CHECK(lot.state() == LotState::onHold);
    CHECK_FALSE(lot.say(LotShop::decision("d2", DecisionWord::scrapped, {"h1"}))); // decided
    CHECK_FALSE(lot.say(HoldChanged{"h1", PieceRange{1, 30}, 30, CountBasis::typed}));
    REQUIRE(lot.say(HoldChanged{"h2", PieceRange{60, 80}, 21, CountBasis::counter}));
    CHECK(holdByBin(lot.shop.db(), 2)->value().placed.count == 21);
    CHECK_FALSE(*holdByBin(lot.shop.db(), 9));
    CHECK(*nextBin(lot.shop.db()) == 3);
    REQUIRE(lot.say(LotShop::decision("d2", DecisionWord::released, {"h2"})));
    CHECK(lot.state() == LotState::released);
    const auto rows = holdsOfLot(lot.shop.db(), kLot);
    REQUIRE(rows->size() == 2);
    CHECK(rows->at(0).decision == "d1");
    CHECK(rows->at(1).decision == "d2");
    CHECK(decisionsOfLot(lot.shop.db(), kLot)->size() == 2);
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("a hold of another lot cannot be named, nor a lot that is not there", "[records][lots]") {
    LotShop lot;
    LotOpened other;
    other.lot = "other";
    other.run = kRun;
    other.number = 2;
    REQUIRE(lot.say(other));
    auto held = LotShop::hold("h1", HoldCause::beltStopped, "", PieceRange{1, 6});
    held.lot = "other";
    REQUIRE(lot.say(held));
    CHECK(lot.state("other") == LotState::onHold);
    CHECK(lot.state() == LotState::settingUp);
    CHECK_FALSE(lot.say(LotShop::decision("d1", DecisionWord::released, {"h1"})));
    held.hold = "h2";
    held.lot = "none";
    CHECK_FALSE(lot.say(held));
    auto nowhere = LotShop::decision("d1", DecisionWord::scrapped);
    nowhere.lot = "none";
    CHECK_FALSE(lot.say(nowhere));
    CHECK_FALSE(lot.say(ReadingMissed{"none", DueReadingKind::last, {}}));
    CHECK_FALSE(lot.say(PiecesCounted{"none", 1, {}}));
    CHECK_FALSE(lot.say(ShelfCounted{{{"h9", 1}}}));
    REQUIRE(lot.say(ShelfCounted{{{"h1", 5}}}));
    CHECK((*lastShelfCount(lot.shop.db()))->counted.bins.at(0).pieces == 5);
}

TEST_CASE("scrapped is final when the whole lot was scrapped", "[records][lots]") {
    LotShop lot;
    lot.print();
    const auto bad = lot.shop.read(a::Word::underCured);
    REQUIRE(lot.say(LotShop::hold("h1", HoldCause::reading, bad))); // without a bracket: all of it
    REQUIRE(lot.say(LotShop::decision("d1", DecisionWord::scrapped, {"h1"})));
    CHECK(lot.state() == LotState::scrapped);
    CHECK_FALSE(lot.say(LotShop::decision("d2", DecisionWord::released)));
    CHECK_FALSE(lot.say(lot.test(TestOutcome::passed)));
    CHECK(lot.why.find("scrapped") != std::string::npos);
    lot.shop.read(a::Word::cured);
    CHECK(lot.state() == LotState::scrapped);
    auto otherWords = LotShop::decision("d3", DecisionWord::scrapped, {"h1"});
    otherWords.corrects = "d1";
    CHECK(lot.say(otherWords)); // the same said better
    auto taken = LotShop::decision("d4", DecisionWord::released, {"h1"});
    taken.corrects = "d3";
    CHECK_FALSE(lot.say(taken));
    CHECK(lot.state() == LotState::scrapped);
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("when a bracket is scrapped the rest of the lot stands by its own readings", "[records][lots]") {
    LotShop lot;
    lot.shop.read(a::Word::cured);
    const auto bad = lot.shop.read(a::Word::underCured);
    lot.shop.read(a::Word::cured);
    const auto scrap = [&](std::optional<PieceRange> pieces) {
        REQUIRE(lot.say(LotShop::hold("h1", HoldCause::reading, bad, pieces)));
        lot.close(144);
        REQUIRE(lot.say(LotShop::decision("d1", DecisionWord::scrapped, {"h1"})));
    };
    SECTION("pieces 21 to 60 of 144") {
        scrap(PieceRange{21, 60});
        CHECK(lot.state() == LotState::cleared);
    }
    SECTION("from the first piece to the end") {
        scrap(PieceRange{1, {}});
        CHECK(lot.state() == LotState::scrapped);
    }
    SECTION("all 144 of them") {
        scrap(PieceRange{1, 144});
        CHECK(lot.state() == LotState::scrapped);
    }
    SECTION("all but the last") {
        scrap(PieceRange{1, 143});
        CHECK(lot.state() == LotState::cleared);
    }
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("a recall leaves the hold to be decided, and says that it was called back", "[records][lots]") {
    LotShop lot;
    const auto bad = lot.shop.read(a::Word::underCured);
    REQUIRE(lot.say(PiecesMoved{kLot, PiecePlace::shipped, 96, {}, "school", {"C1"}}));
    REQUIRE(lot.say(LotShop::hold("h1", HoldCause::reading, bad)));
    CHECK(openHolds(lot.shop.db())->at(0).shipped);
    CHECK_FALSE(openHolds(lot.shop.db())->at(0).recall);
    REQUIRE(lot.say(LotShop::decision("d1", DecisionWord::recalled)));
    CHECK(lot.state() == LotState::onHold);
    CHECK(openHolds(lot.shop.db())->at(0).recall == "d1");
    REQUIRE(lot.say(LotShop::decision("d2", DecisionWord::scrapped, {"h1"})));
    CHECK(lot.state() == LotState::scrapped);
    CHECK(lot.open().empty());
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("a decision that was signed in error is corrected by another, once", "[records][lots]") {
    LotShop lot;
    const auto bad = lot.shop.read(a::Word::underCured);
    REQUIRE(lot.say(LotShop::hold("h1", HoldCause::reading, bad)));
    REQUIRE(lot.say(LotShop::decision("d1", DecisionWord::released, {"h1"})));
    CHECK_FALSE(lot.say(LotShop::decision("d1", DecisionWord::released)));
    auto corrected = LotShop::decision("d2", DecisionWord::reRun, {"h1"});
    corrected.corrects = "no such";
    CHECK_FALSE(lot.say(corrected));
    corrected.corrects = "d1";
    REQUIRE(lot.say(corrected));
    CHECK(lot.state() == LotState::reRun);
    CHECK(holdsOfLot(lot.shop.db(), kLot)->at(0).decision == "d2");
    corrected.decision = "d3";
    CHECK_FALSE(lot.say(corrected)); // d1 is corrected already
    const auto rows = decisionsOfLot(lot.shop.db(), kLot);
    REQUIRE(rows->size() == 2);
    CHECK(rows->at(0).corrected);
    CHECK_FALSE(rows->at(1).corrected);
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("a missed reading leaves a lot unproven, and holds children's wear", "[records][lots]") {
    const bool children = GENERATE(false, true);
    LotShop lot{children};
    lot.shop.read(a::Word::cured);
    REQUIRE(lot.say(ReadingMissed{kLot, DueReadingKind::last, 140}));
    CHECK(lot.state() == (children ? LotState::onHold : LotState::unproven));
    lot.close();
    CHECK(missedOfLot(lot.shop.db(), kLot)->at(0).missed.piece == 140);
    CHECK(holds(lot.shop.db())->size() == (children ? 1U : 0U));
    REQUIRE(lot.say(LotShop::decision("d1", DecisionWord::released)));
    CHECK(lot.state() == LotState::released);
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("a hold is lifted when its reading is struck or judged again", "[records][lots]") {
    LotShop lot;
    const auto bad = lot.shop.read(a::Word::underCured);
    REQUIRE(lot.say(LotShop::hold("h1", HoldCause::reading, bad, PieceRange{1, 40}, 1)));
    auto again = sampleReading();
    again.verdict->word = a::Word::cured;
    again.reason = ReadingReason::drawn;
    SECTION("struck") {
        REQUIRE(lot.say(ReadingStruck{bad, StruckCause::probeFellOut}));
        CHECK(lot.state() == LotState::settingUp);
    }
    SECTION("cured after all, and then not") {
        REQUIRE(lot.say(CorrectionMade{bad, again}));
        CHECK(lot.state() == LotState::open);
        CHECK(lot.open().empty());
        CHECK(holdsOfLot(lot.shop.db(), kLot)->at(0).lifted);
        CHECK(holdsOfLot(lot.shop.db(), kLot)->at(0).decision == "");
        again.verdict->word = a::Word::underCured;
        REQUIRE(lot.say(CorrectionMade{bad, again}));
        CHECK(lot.state() == LotState::onHold);
        CHECK(lot.open() == Ids{"h1"});
        const auto versions = versionsOfReading(lot.shop.db(), bad);
        REQUIRE(versions->size() == 3);
        CHECK(versions->at(1).taken.verdict->word == a::Word::cured);
        CHECK(versions->at(2).taken.verdict->word == a::Word::underCured);
    }
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("an instrument found wrong holds once for all readings that it spoilt", "[records][lots]") {
    LotShop lot;
    const auto reading = lot.shop.read(a::Word::cured);
    CheckDone check{sampleReading().instrument, {a::CheckKind::boiling, false, day(2026, 3, 1), day(2026, 3, 8)}};
    REQUIRE(lot.say(check, kFirst));
    auto again = sampleReading();
    again.verdict->word = a::Word::underCured;
    REQUIRE(lot.say(CorrectionMade{reading, again, kFirst}));
    REQUIRE(lot.say(LotShop::hold("h1", HoldCause::instrument, kFirst, {}, 1)));
    CHECK(lot.state() == LotState::onHold);
    CHECK(readingsByInstrument(lot.shop.db(), sampleReading().instrument, 0)->size() == 1);
    CHECK(versionsOfReading(lot.shop.db(), reading)->at(1).check == kFirst);
    REQUIRE(lot.say(LotShop::decision("d1", DecisionWord::released, {"h1"})));
    CHECK(lot.state() == LotState::released);
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("held pieces of a finished run may go through the dryer again as a lot of its own", "[records][lots]") {
    LotShop lot;
    lot.shop.read(a::Word::cured);
    const auto bad = lot.shop.read(a::Word::underCured);
    REQUIRE(lot.say(LotShop::hold("h1", HoldCause::reading, bad, PieceRange{100, {}}, 1)));
    LotOpened again;
    again.lot = "again";
    again.run = kRun;
    again.number = 2;
    REQUIRE(lot.say(again)); // while lot 1 still runs
    auto reRun = LotShop::decision("d1", DecisionWord::reRun, {"h1"});
    reRun.reRunLot = "again";
    REQUIRE(lot.say(reRun));
    CHECK(lot.state() == LotState::reRun);
    CHECK((*lotById(lot.shop.db(), "again"))->reRunOf == kLot);
    CHECK((*runById(lot.shop.db(), kRun))->lot->id == kLot); // rides still belong to it
    lot.close();
    CHECK((*runById(lot.shop.db(), kRun))->lot->id == "again");
    REQUIRE(lot.say(LotClosed{"again", 40, LotEnd::runEnded}));
    REQUIRE(lot.say(RunFinished{kRun, 144, 0}));
    again.lot = "third";
    again.number = 3;
    CHECK(lot.say(again)); // the second stayed without a reading: its pieces are to be decided
    CHECK(lotsOfRun(lot.shop.db(), kRun)->size() == 3);
    CHECK(lot.shop.rebuildsTheSame());
}
