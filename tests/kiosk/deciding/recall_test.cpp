#include "kiosk/shop/deciding/recall.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::shop::deciding;
using kiosk::records::MoveRow;
using kiosk::records::PiecePlace;
using kiosk::records::ReachedCarton;

namespace {

ReachedCarton reached(const std::string& lot, int number, const std::string& customer, std::vector<std::string> cartons,
                      int pieces) {
    ReachedCarton one;
    one.run = "run-1";
    one.runNumber = 20418;
    one.lot = lot;
    one.lotNumber = number;
    one.customer = customer;
    one.cartons = std::move(cartons);
    one.pieces = pieces;
    return one;
}

} // namespace

TEST_CASE("a recall counts lots, pieces and cartons once each", "[deciding][recall]") {
    // Two lots went out, one is here: 40 + 20 + 30 = 90 pieces in C-1, C-2, C-3 of one customer and C-1 of another.
    const auto list = recallOf({reached("a", 1, "Kestrel", {"C-1", "C-2"}, 40), reached("a", 1, "Kestrel", {"C-2"}, 20),
                                reached("b", 2, "Heron", {"C-1"}, 30), reached("c", 3, "", {}, 0)});
    CHECK(list.lots == 3);
    CHECK(list.lotsHere == 1);
    CHECK(list.pieces == 90);
    CHECK(list.cartons == 3);
    CHECK(list.customers == 2);
    REQUIRE(list.lines.size() == 3);
    CHECK(list.lines.front().customer == "Heron"); // by customer
}

TEST_CASE("a lot's recall leaves out corrected moves, those taken back and those that went elsewhere",
          "[deciding][recall]") {
    MoveRow first;
    first.moved = {"lot-2", PiecePlace::shipped, 60, std::nullopt, "Kestrel", {"C-1"}, std::nullopt};
    first.corrected = true;
    MoveRow second = first;
    second.corrected = false;
    second.moved.count = 50;
    MoveRow back = second;
    back.moved.count = 0;
    MoveRow kept = second;
    kept.moved.to = PiecePlace::retained;
    const auto list = recallOf({first, second, back, kept}, "run-1", 20418, "lot-2", 2);
    REQUIRE(list.lines.size() == 1);
    CHECK(list.pieces == 50);
    CHECK(recallOf({}, "run-1", 20418, "lot-2", 2).lotsHere == 1);
}
