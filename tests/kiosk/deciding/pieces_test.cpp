#include "kiosk/shop/deciding/pieces.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::shop::deciding;
using kiosk::records::MoveRow;
using kiosk::records::PiecePlace;

namespace {

/// 200 made; 60 shipped in two cartons, 1 retained, 3 tested.
LotOfPieces lot() {
    LotOfPieces made;
    made.lot = "lot-2";
    made.pieces.made = 200;
    made.pieces.shipped = 60;
    made.pieces.retained = 1;
    made.pieces.tested = 3;
    MoveRow row;
    row.entry = "m1";
    row.moved = {"lot-2", PiecePlace::shipped, 60, std::nullopt, "Kestrel", {"C-1", "C-2"}, std::nullopt};
    made.moves = {row};
    return made;
}

MoveDraft shipping(const std::string& count) {
    MoveDraft draft;
    draft.count = count;
    draft.customer = "Kestrel";
    draft.cartons = "C-3, C-4, C-3";
    draft.day = "2026-11-26";
    return draft;
}

Cause onlyCause(const Faults& faults) {
    REQUIRE(faults.size() == 1);
    return faults.front().cause;
}

} // namespace

TEST_CASE("shipped pieces keep the day, the customer and each carton once", "[deciding][pieces]") {
    const auto kept = moveFrom(shipping("40"), lot());
    REQUIRE(kept);
    CHECK(kept->move.count == 40);
    CHECK(kept->move.customer == "Kestrel");
    CHECK(kept->move.cartons == std::vector<std::string>{"C-3", "C-4"});
    CHECK(kept->move.day.has_value());
    CHECK_FALSE(kept->said.moreThanMade); // 60 + 1 + 3 + 40 = 104 of 200
    CHECK_FALSE(kept->said.fromHeldLot);
}

TEST_CASE("a count that is none is refused with what was typed", "[deciding][pieces]") {
    CHECK(onlyCause(moveFrom(shipping(""), lot()).error()) == Cause::countMissing);
    CHECK(onlyCause(moveFrom(shipping("0"), lot()).error()) == Cause::countOfNone);
    CHECK(onlyCause(moveFrom(shipping("-3"), lot()).error()) == Cause::countBelowZero);
    CHECK(onlyCause(moveFrom(shipping("\xE2\x88\x92"
                                      "3"),
                             lot())
                        .error()) == Cause::countBelowZero);
    CHECK(onlyCause(moveFrom(shipping("4.5"), lot()).error()) == Cause::notACount);
    CHECK(onlyCause(moveFrom(shipping("twelve"), lot()).error()) == Cause::notACount);
    CHECK(onlyCause(moveFrom(shipping("100000001"), lot()).error()) == Cause::countTooLarge); // kMostPieces + 1
    CHECK(onlyCause(moveFrom(shipping("99999999999999999999"), lot()).error()) == Cause::countTooLarge);
    CHECK(moveFrom(shipping("4.5"), lot()).error().front() == Fault{Cause::notACount, "count", "4.5"});
}

TEST_CASE("shipped pieces need a customer, and a day must be one", "[deciding][pieces]") {
    auto draft = shipping("4");
    draft.customer = "";
    draft.day = "2026-02-30";
    CHECK(moveFrom(draft, lot()).error() ==
          Faults{{Cause::notADay, "day", "2026-02-30"}, {Cause::customerMissing, "customer", ""}});
    draft.to = PiecePlace::scrapped; // nobody is asked for
    draft.day = "";
    CHECK(moveFrom(draft, lot()));
}

TEST_CASE("more pieces than were made is said, not refused: it has happened", "[deciding][pieces]") {
    const auto kept = moveFrom(shipping("137"), lot()); // 60 + 1 + 3 + 137 = 201 of 200
    REQUIRE(kept);
    CHECK(kept->said.moreThanMade);
    CHECK_FALSE(moveFrom(shipping("136"), lot())->said.moreThanMade);
}

TEST_CASE("shipping from a held lot is kept and makes a recall to decide", "[deciding][pieces]") {
    auto held = lot();
    held.held = true;
    CHECK(moveFrom(shipping("4"), held)->said.fromHeldLot);
}

TEST_CASE("a scrapped lot ships nothing; its pieces are put down as scrapped", "[deciding][pieces]") {
    auto gone = lot();
    gone.scrapped = true;
    CHECK(onlyCause(moveFrom(shipping("4"), gone).error()) == Cause::lotScrapped);
    auto draft = shipping("4");
    draft.to = PiecePlace::scrapped;
    CHECK(moveFrom(draft, gone));
}

TEST_CASE("an entry is put right by another that names it; none takes it back", "[deciding][pieces]") {
    auto draft = correctionOf(lot().moves.front());
    CHECK(draft.count == "60");
    CHECK(draft.cartons == "C-1, C-2");
    draft.count = "50";
    const auto kept = moveFrom(draft, lot());
    REQUIRE(kept);
    CHECK(kept->move.corrects == "m1");
    draft.count = "0";
    CHECK(moveFrom(draft, lot())->move.count == 0);
    draft.count = "";
    CHECK(onlyCause(moveFrom(draft, lot()).error()) == Cause::countMissing);
    auto corrected = lot();
    corrected.moves.front().corrected = true;
    CHECK(onlyCause(moveFrom(correctionOf(lot().moves.front()), corrected).error()) == Cause::entryCorrected);
}

TEST_CASE("the corrected move does not count twice against what was made", "[deciding][pieces]") {
    auto draft = correctionOf(lot().moves.front());
    draft.count = "196"; // 1 + 3 + 196 = 200
    CHECK_FALSE(moveFrom(draft, lot())->said.moreThanMade);
    draft.count = "197";
    CHECK(moveFrom(draft, lot())->said.moreThanMade);
}

TEST_CASE("a number of made pieces typed too high is lowered by a correction that names it", "[deciding][pieces]") {
    auto made = lot();
    holdfast::kiosk::records::CountRow row;
    row.entry = "count-1";
    row.counted.made = 200;
    made.counts = {row};
    auto draft = correctionOf(row);
    CHECK(draft.made == "200");
    draft.made = "150";
    const auto counted = countFrom(draft, made);
    REQUIRE(counted);
    CHECK(counted->made == 150);
    CHECK(counted->corrects == "count-1");
    draft.made = "63"; // 60 shipped, 1 retained and 3 tested were there
    CHECK(countFrom(draft, made).error() == Faults{{Cause::countRunsBackwards, "made", "64"}});
    draft.made = "150";
    holdfast::kiosk::records::CountRow later;
    later.entry = "count-2";
    later.counted.corrects = "count-1";
    made.counts.push_back(later);
    CHECK(onlyCause(countFrom(draft, made).error()) == Cause::entryCorrected);
    draft.corrects = "count-9";
    CHECK(onlyCause(countFrom(draft, made).error()) == Cause::entryCorrected);
}

TEST_CASE("a count that runs backwards is refused and says what stood", "[deciding][pieces]") {
    CHECK(countFrom({"199", ""}, lot()).error() == Faults{{Cause::countRunsBackwards, "made", "200"}});
    CHECK(countFrom({"200", "136"}, lot())->here == 136);
    CHECK(countFrom({"210", ""}, lot())->made == 210);
    CHECK(onlyCause(countFrom({"", ""}, lot()).error()) == Cause::countMissing);
    CHECK(onlyCause(countFrom({"", "-1"}, lot()).error()) == Cause::countBelowZero);
    CHECK(countFrom({"", "0"}, lot())->here == 0); // an empty shelf can be counted
}

TEST_CASE("pieces balance: made = shipped + here + retained + tested + scrapped", "[deciding][pieces]") {
    // Decisions 5. 200 − 60 − 1 − 3 = 136 are left over.
    auto pieces = lot().pieces;
    CHECK(sumOf(pieces)->pieces.here == 136);
    CHECK(sumOf(pieces)->balance.balances());
    pieces.here = 130; // counted
    CHECK(sumOf(pieces)->balance.difference == 6);
    pieces.here = 140;
    CHECK(sumOf(pieces)->balance.difference == -4);
    pieces.made.reset();
    CHECK_FALSE(sumOf(pieces));
}

TEST_CASE("more gone than made is a difference even before the shelf is counted", "[deciding][pieces]") {
    auto pieces = lot().pieces;
    pieces.shipped = 210; // 210 + 1 + 3 = 214, 14 more than 200
    CHECK(sumOf(pieces)->pieces.here == 0);
    CHECK(sumOf(pieces)->balance.difference == -14);
}

TEST_CASE("the history of a move is the chain of its corrections, newest first", "[deciding][pieces]") {
    auto moves = lot().moves;
    moves.front().corrected = true;
    MoveRow second = moves.front();
    second.entry = "m2";
    second.moved.count = 50;
    second.moved.corrects = "m1";
    MoveRow third = second;
    third.entry = "m3";
    third.moved.count = 55;
    third.moved.corrects = "m2";
    third.corrected = false;
    MoveRow other;
    other.entry = "m4";
    const auto histories = historiesOf({moves.front(), second, third, other});
    REQUIRE(histories.size() == 2);
    REQUIRE(histories.front().chain.size() == 3);
    CHECK(histories.front().chain.front().moved.count == 55);
    CHECK(histories.front().chain.back().moved.count == 60);
    CHECK(histories.back().chain.size() == 1);
}
