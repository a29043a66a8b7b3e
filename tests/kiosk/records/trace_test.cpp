#include "kiosk/records/floor_queries.hpp"
#include "tests/kiosk/records/support/lot_book.hpp"

using namespace holdfast::kiosk::records;
using namespace holdfast::kiosk::records::testing;
namespace a = holdfast::analytics;

namespace {

BucketOpened tracedPail(const std::string& id, std::int64_t number, const std::string& batch) {
    BucketOpened one;
    one.bucket = id;
    one.number = number;
    one.family = "low-cure";
    one.batch = batch;
    return one;
}

MixMade tracedMix(const std::string& id, std::int64_t number, std::vector<BucketPart> parts) {
    MixMade one;
    one.bucket = id;
    one.number = number;
    one.name = id;
    one.parts = std::move(parts);
    return one;
}

RunPlanned plan() {
    for (const auto& sample : sampleOfEveryKind()) {
        if (const auto* planned = std::get_if<RunPlanned>(&sample)) {
            auto run = *planned;
            run.childrensWear = false;
            return run;
        }
    }
    return {};
}

std::vector<ClueHit> hits(const LotShop& lot, const std::string& clue) {
    std::vector<ClueHit> all;
    const auto rows = runsByClue(lot.shop.db(), clue, 20);
    REQUIRE(rows);
    for (const auto& row : *rows) {
        CHECK(row.runNumber == 20418);
        all.push_back(row.hit);
    }
    return all;
}

/// White of batch B-7 in a mix of a mix that the run was printed with, shipped in two cartons.
void fill(LotShop& lot) {
    REQUIRE(lot.say(tracedPail("b1", 41, "B-7")));
    REQUIRE(lot.say(tracedPail("b2", 42, "B-8")));
    REQUIRE(lot.say(tracedPail("b3", 43, "B-9")));
    REQUIRE(lot.say(tracedMix("m1", 44, {{"b1", 2.0}, {"b2", 1.0}})));
    REQUIRE(lot.say(tracedMix("m2", 45, {{"m1", 1.0}, {"b3", 0.0}})));
    auto again = plan();
    again.layers.at(0).buckets = {45};
    REQUIRE(lot.say(RunReplanned{again}));
}

} // namespace

TEST_CASE("a batch is followed through mixes of mixes to every carton", "[records][trace]") {
    LotShop lot;
    fill(lot);
    LotOpened second;
    second.lot = "second";
    second.run = kRun;
    second.number = 2;
    REQUIRE(lot.say(second));
    REQUIRE(lot.say(PiecesMoved{kLot, PiecePlace::shipped, 96, day(2026, 3, 4), "school", {"C1", "C2"}}));
    REQUIRE(lot.say(PiecesMoved{kLot, PiecePlace::shipped, 12, {}, "club", {"C3"}}));
    REQUIRE(lot.say(PiecesMoved{kLot, PiecePlace::tested, 2}));
    const auto rows = reachedByBatch(lot.shop.db(), "b-7");
    REQUIRE(rows);
    REQUIRE(rows->size() == 3);
    CHECK(rows->at(0).customer == "school");
    CHECK(rows->at(0).cartons == Ids{"C1", "C2"});
    CHECK(rows->at(0).pieces == 96);
    CHECK(rows->at(0).day == day(2026, 3, 4));
    CHECK(rows->at(1).customer == "club");
    CHECK(rows->at(2).lot == "second"); // nothing shipped
    CHECK(rows->at(2).cartons.empty());
    CHECK(rows->at(2).pieces == 0);
    CHECK(reachedByBucket(lot.shop.db(), 42)->size() == 3);
    CHECK(reachedByBucket(lot.shop.db(), 45)->size() == 3);
    CHECK(reachedByBatch(lot.shop.db(), "B-9")->empty()); // nothing of it is in the mix
    CHECK(reachedByBatch(lot.shop.db(), "")->empty());
    CHECK(reachedByBucket(lot.shop.db(), 99)->empty());
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("a lot that was printed before another bucket was scanned keeps its own", "[records][trace]") {
    LotShop lot;
    fill(lot);
    lot.close(70);
    auto other = plan();
    other.layers.at(0).buckets = {43};
    REQUIRE(lot.say(RunReplanned{other}));
    LotOpened second;
    second.lot = "second";
    second.run = kRun;
    second.number = 2;
    REQUIRE(lot.say(second));
    CHECK(reachedByBatch(lot.shop.db(), "B-7")->size() == 1);
    CHECK(reachedByBatch(lot.shop.db(), "B-7")->at(0).lot == kLot);
    CHECK(reachedByBatch(lot.shop.db(), "B-9")->size() == 1);
    CHECK(reachedByBatch(lot.shop.db(), "B-9")->at(0).lot == "second");
}

TEST_CASE("any clue leads to the run", "[records][trace]") {
    LotShop lot;
    fill(lot);
    lot.print("p7", 77);
    REQUIRE(lot.say(PiecesMoved{kLot, PiecePlace::shipped, 96, {}, "school", {"C1"}}, kFirst));
    CHECK(hits(lot, "20418") == std::vector{ClueHit::runNumber});
    CHECK(hits(lot, "4411") == std::vector{ClueHit::reference}); // of "PO 4411"
    CHECK(hits(lot, "SCHOOL") == std::vector{ClueHit::customer});
    CHECK(hits(lot, " jersey ") == std::vector{ClueHit::title});
    CHECK(hits(lot, "c1") == std::vector{ClueHit::carton});
    CHECK(hits(lot, "B-7") == std::vector{ClueHit::batch});
    CHECK(hits(lot, "41") == std::vector{ClueHit::bucket, ClueHit::reference}); // "PO 4411" has it too
    CHECK(hits(lot, "77") == std::vector{ClueHit::print});
    for (const char* nothing :
         {"", "  ", "%", "_", "no such", "B-9", "99999999999999999999", "-1", "'; DROP TABLE runs"}) {
        INFO(nothing);
        CHECK(hits(lot, nothing).empty());
    }
    auto moved = PiecesMoved{kLot, PiecePlace::shipped, 96, {}, "school", {"C9"}, kFirst};
    REQUIRE(lot.say(moved));
    CHECK(hits(lot, "C1").empty()); // was typed wrong
    CHECK(hits(lot, "C9") == std::vector{ClueHit::carton});
    CHECK(runsByClue(lot.shop.db(), "20418", 0)->empty());
}

TEST_CASE("pieces are summed from moves that stand and from the last counts", "[records][lots]") {
    LotShop lot;
    CHECK_FALSE(piecesOfLot(lot.shop.db(), kLot)->made);
    REQUIRE(lot.say(PiecesCounted{kLot, 140, {}}));
    REQUIRE(lot.say(PiecesCounted{kLot, 144, 40}));
    REQUIRE(lot.say(PiecesCounted{kLot, {}, 38}));
    REQUIRE(lot.say(PiecesMoved{kLot, PiecePlace::shipped, 96}, kFirst));
    REQUIRE(lot.say(PiecesMoved{kLot, PiecePlace::shipped, 100}, kSecond)); // more than was made: seen, not refused
    REQUIRE(lot.say(PiecesMoved{kLot, PiecePlace::retained, 1}));
    REQUIRE(lot.say(PiecesMoved{kLot, PiecePlace::scrapped, 3}));
    auto pieces = piecesOfLot(lot.shop.db(), kLot);
    CHECK(pieces->made == 144);
    CHECK(pieces->here == 38);
    CHECK(pieces->shipped == 196);
    PiecesMoved back{kLot, PiecePlace::shipped, 0};
    back.corrects = kSecond;
    REQUIRE(lot.say(back));
    CHECK_FALSE(lot.say(back)); // corrected already
    back.corrects = kNone;
    CHECK_FALSE(lot.say(back));
    pieces = piecesOfLot(lot.shop.db(), kLot);
    CHECK(pieces->shipped == 96);
    CHECK(pieces->retained == 1);
    CHECK(pieces->scrapped == 3);
    CHECK(pieces->tested == 0);
    const auto moves = movesOfLot(lot.shop.db(), kLot);
    REQUIRE(moves->size() == 5);
    CHECK(moves->at(1).corrected);
    CHECK_FALSE(moves->at(4).corrected);
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("past lots of a dryer say whether they were ever held", "[records][lots]") {
    LotShop lot;
    const auto open = [&](const std::string& id, int number) {
        LotOpened opened;
        opened.lot = id;
        opened.run = kRun;
        opened.number = number;
        opened.dryer = "d";
        REQUIRE(lot.say(opened));
    };
    open("second", 2);
    auto reading = sampleReading();
    reading.lot = "second";
    reading.verdict->word = a::Word::underCured;
    REQUIRE(lot.say(reading));
    auto released = LotShop::decision("d1", DecisionWord::released);
    released.lot = "second";
    REQUIRE(lot.say(released));
    REQUIRE(lot.say(LotClosed{"second", 90, LotEnd::dryerChanged}));
    open("third", 3);
    CHECK(pastLots(lot.shop.db(), "d", 5)->size() == 1); // the third goes on
    REQUIRE(lot.say(LotClosed{"third", 120, LotEnd::dryerChanged}));
    const auto past = pastLots(lot.shop.db(), "d", 5);
    REQUIRE(past->size() == 2);
    CHECK(past->at(0).lot.id == "third");
    CHECK_FALSE(past->at(0).wasHeld);
    CHECK(past->at(1).wasHeld);
    CHECK(past->at(1).lot.state == LotState::released);
    CHECK(pastLots(lot.shop.db(), "d", 1)->size() == 1);
}

TEST_CASE("complaints are tied to their run, and closed by a finding", "[records][trace]") {
    LotShop lot;
    CHECK(*nextComplaint(lot.shop.db()) == 1);
    ComplaintTaken taken{"c1", 1, "school", ComplaintKind::washedOut};
    REQUIRE(lot.say(taken));
    CHECK(*nextComplaint(lot.shop.db()) == 2);
    CHECK_FALSE(lot.say(ComplaintTaken{"c2", 1, "club"}));
    CHECK_FALSE(lot.say(ComplaintTaken{"c1", 2, "school"})); // keeps its number
    taken.run = "no such run";
    CHECK_FALSE(lot.say(taken));
    taken.run = kRun;
    taken.lot = "no such lot";
    CHECK_FALSE(lot.say(taken));
    taken.lot = kLot;
    REQUIRE(lot.say(taken));
    CHECK(complaintsOfRun(lot.shop.db(), kRun)->at(0).versions == 2);
    CHECK(complaints(lot.shop.db(), false)->size() == 1);
    FindingSigned finding{"c9", "", "belt too fast", "", false, {12}};
    CHECK_FALSE(lot.say(finding));
    finding.complaint = "c1";
    finding.lot = "no such lot";
    CHECK_FALSE(lot.say(finding));
    finding.lot.clear();
    REQUIRE(lot.say(finding));
    CHECK(complaints(lot.shop.db(), false)->empty());
    CHECK(complaints(lot.shop.db(), true)->at(0).finding->cause == "belt too fast");
    CHECK(findingsOfLot(lot.shop.db(), kLot)->size() == 1); // by its complaint
    CHECK((*complaintById(lot.shop.db(), "c1"))->taken.lot == kLot);
    CHECK_FALSE(*complaintById(lot.shop.db(), "c9"));
    CHECK(lot.shop.rebuildsTheSame());
}
