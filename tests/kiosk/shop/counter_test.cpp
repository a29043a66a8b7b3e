// Pieces counted by a counter at the feed (decisions 5: a counter pulse, or rate × time, or typed, and it says which).
#include "tests/kiosk/shop/support/watched_floor.hpp"

namespace holdfast::kiosk::shop::testing {

using analytics::CountSource;
using analytics::PieceCount;

namespace {

/// 1.5 m/min × 4 a metre = 6 pieces a minute by the rate.
struct CountedFloor final : WatchedFloor {
    CountedFloor() : WatchedFloor{1.5} { floor.send(CounterLink{true}); }
    void pulses(int pieces) {
        for (int i = 0; i < pieces; ++i) {
            floor.send(PiecesPulsed{});
        }
    }
};

} // namespace

TEST_CASE("a counter counts the pieces, whatever the belt would have carried", "[shop][watch][counter]") {
    CountedFloor shop;
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(60);
    CHECK(shop.watch().made == PieceCount{0, CountSource::counter}); // 6 by the rate, but nobody fed any
    shop.pulses(4);
    CHECK(shop.watch().made == PieceCount{4, CountSource::counter});
    shop.floor.send(PiecesPulsed{300});
    CHECK(shop.watch().made == PieceCount{304, CountSource::counter}); // more than planned, and seen
}

TEST_CASE("a piece fed in set-up is not the run's", "[shop][watch][counter]") {
    CountedFloor shop;
    shop.floor.announce(runOfPieces(288));
    shop.floor.send(ActionPressed{ActionCard::setUp});
    shop.pulses(5);
    CHECK(shop.watch().made->pieces == 0);
    shop.floor.send(ActionPressed{ActionCard::ready});
    shop.pulses(2);
    CHECK(shop.watch().made == PieceCount{2, CountSource::counter});
}

TEST_CASE("a counter that falls silent leaves what it told, and belt and time go on", "[shop][watch][counter]") {
    CountedFloor shop;
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.pulses(20);
    shop.floor.send(CounterLink{false});
    shop.floor.wait(60);
    CHECK(shop.watch().made == PieceCount{26, CountSource::rate});
    shop.floor.send(CounterLink{true}); // what passed meanwhile nobody saw: not from here on
    shop.pulses(3);
    CHECK(shop.watch().made == PieceCount{26, CountSource::rate});
    shop.typed(30); // now the number is known, and the counter goes on from it
    shop.pulses(3);
    CHECK(shop.watch().made == PieceCount{33, CountSource::counter});
}

TEST_CASE("of two runs on one belt a counter cannot tell which it saw", "[shop][watch][counter]") {
    CountedFloor shop;
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.pulses(10);
    shop.floor.send(ActionPressed{ActionCard::alsoOnBelt});
    shop.floor.announce(runOfPieces(288, 20419));
    shop.pulses(1);
    shop.floor.wait(600);
    CHECK(shop.watch().made == PieceCount{40, CountSource::rate}); // 10, and half of 60
    CHECK(shop.watch("run-20419").made->source == CountSource::rate);
}

TEST_CASE("a counter that comes while a run goes on does not count that run", "[shop][watch][counter]") {
    WatchedFloor shop{1.5};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(60);
    shop.floor.send(CounterLink{true});
    shop.floor.send(PiecesPulsed{});
    CHECK(shop.watch().made == PieceCount{6, CountSource::rate});
    shop.floor.send(PiecesPulsed{-4});
    shop.floor.send(PiecesPulsed{0});
    CHECK(shop.watch().made->pieces == 6);
}

TEST_CASE("a number of pulses that no belt carries ends the counter's say", "[shop][watch][counter]") {
    CountedFloor shop;
    shop.floor.announce(runOfPieces(288));
    shop.pulses(2);
    shop.floor.send(PiecesPulsed{analytics::kMostPieces});
    REQUIRE(shop.watch().made);
    CHECK(shop.watch().made->pieces == 2);
    CHECK(shop.watch().made->source == CountSource::rate);
}

} // namespace holdfast::kiosk::shop::testing
