#include "analytics/lots/reading_plan.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <set>

using namespace holdfast::analytics;

namespace {

/// A run of 600 pieces at 6 pieces a minute with a belt map (coldest: left) and 10 pieces in the tunnel. `read` pieces
/// of it were read, the newest `since` pieces ago, at piece made − since.
EpisodeSoFar going(int made, int read, int since) {
    EpisodeSoFar e;
    e.planned = 600;
    e.made = made;
    e.readings = read;
    e.readingsOfRun = read;
    e.piecesSince = since;
    e.ranSince = Duration{since * 10.0};
    if (read > 0) {
        e.lastRead = made - since;
    }
    e.coldest = BeltLane::left;
    e.inTunnel = 10;
    return e;
}

ReadingPlan planOf(const EpisodeSoFar& e, const ReadingPlanSettings& settings = {}) {
    return readingPlan(e, settings).value();
}

} // namespace

TEST_CASE("the first reading is due at the coldest lane once the belt is loaded for two dwells", "[lots][plan]") {
    const auto plan = planOf(going(0, 0, 0));
    REQUIRE(plan.next);
    CHECK(plan.next->why == DueWhy::first);
    CHECK(plan.next->number == 1);
    CHECK(plan.next->lane == BeltLane::left);
    // Two dwells of 10 pieces: 20 have left; drawn from the five after them.
    CHECK(plan.next->among == PieceSpan{21, 25});
    CHECK_FALSE(plan.next->now);
    CHECK(plan.next->inPieces == 20);
    CHECK(plan.missed == 0);
    CHECK(planOf(going(20, 0, 20)).next->now);
    CHECK(planOf(going(20, 0, 20)).next->inPieces == 0);
}

TEST_CASE("a first piece that has passed is drawn anew from those to come", "[lots][plan]") {
    const auto due = planOf(going(40, 0, 40)).next;
    REQUIRE(due);
    CHECK(due->among == PieceSpan{41, 45});
    CHECK(due->now);
}

TEST_CASE("without a belt map the first three are left, centre and right, one piece each", "[lots][plan]") {
    const BeltLane lanes[] = {BeltLane::left, BeltLane::centre, BeltLane::right};
    for (int read = 0; read < 3; ++read) {
        auto e = going(21 + read, read, read == 0 ? 21 : 1);
        e.coldest.reset();
        const auto due = planOf(e).next;
        REQUIRE(due);
        CHECK(due->lane == lanes[read]);
        CHECK(due->number == read + 1);
        CHECK(due->why == (read == 0 ? DueWhy::first : DueWhy::position));
        CHECK(due->now);
        CHECK(due->among->first == 22 + read); // the next piece may be the one
    }
    auto e = going(24, 3, 1);
    e.coldest.reset();
    CHECK(planOf(e).next->why == DueWhy::pieces);
    CHECK(planOf(e).next->lane == BeltLane::centre); // where nobody knows the coldest
}

TEST_CASE("a reading is due two hundred pieces after the last one", "[lots][plan]") {
    ReadingPlanSettings slow;
    slow.every = Duration{1e6};                        // time does not come first here
    const auto plan = planOf(going(100, 1, 79), slow); // piece 21 was read
    REQUIRE(plan.next);
    CHECK(plan.next->why == DueWhy::pieces);
    // It covers up to 21 + 200 = 221: drawn from 217 to 221; 216 − 100 = 116 pieces to go.
    CHECK(plan.next->among == PieceSpan{217, 221});
    CHECK(plan.next->inPieces == 116);
    CHECK_FALSE(plan.next->now);
    CHECK(planOf(going(216, 1, 195), slow).next->now);
    CHECK(planOf(going(215, 1, 194), slow).next->inPieces == 1);
    CHECK(planOf(going(221, 1, 200), slow).next->among == PieceSpan{222, 226}); // overdue: of those to come
}

TEST_CASE("a reading is due sixty running minutes after the last one", "[lots][plan]") {
    auto e = going(80, 1, 59); // 590 s ago at 6 a minute
    e.ranSince = Duration{3000.0};
    const auto due = planOf(e).next;
    REQUIRE(due);
    // 59 pieces in 50 min: in the ten that are left 11.8 more, long before the 141 that piece 221 is away.
    CHECK(due->why == DueWhy::minutes);
    CHECK(due->inRunning == Duration{600.0});
    CHECK_FALSE(due->among);
    CHECK_FALSE(due->now);
    e.ranSince = Duration{3600.0};
    const auto up = planOf(e).next;
    CHECK(up->why == DueWhy::minutes);
    CHECK(up->now);
    CHECK(up->among == PieceSpan{81, 85}); // the piece is drawn from those to come
}

TEST_CASE("where nobody counts the time alone decides and no piece is named", "[lots][plan]") {
    EpisodeSoFar e;
    e.coldest = BeltLane::right;
    auto plan = planOf(e);
    REQUIRE(plan.next);
    CHECK(plan.next->why == DueWhy::first);
    CHECK(plan.next->now);
    CHECK_FALSE(plan.next->among);
    CHECK_FALSE(plan.next->inPieces);
    e.readings = 1;
    e.ranSince = Duration{1200.0};
    plan = planOf(e);
    CHECK(plan.next->why == DueWhy::minutes);
    CHECK(plan.next->inRunning == Duration{2400.0});
    CHECK_FALSE(plan.next->now);
    e.ranSince = Duration{3600.0};
    CHECK(planOf(e).next->now);
    CHECK(planOf(e).missed == 0);
    e.ranSince = Duration{7200.0}; // the next one fell due as well
    CHECK(planOf(e).missed == 1);
}

TEST_CASE("the last reading falls within the last five pieces or the last quarter", "[lots][plan]") {
    // Decisions 5. 600: five. 20: a quarter is 5. 19: 4. 10: 2. 7: 1. 3: 0, at least 1.
    CHECK(lastPiecesOf(600) == PieceSpan{596, 600});
    CHECK(lastPiecesOf(20) == PieceSpan{16, 20});
    CHECK(lastPiecesOf(19) == PieceSpan{16, 19});
    CHECK(lastPiecesOf(10) == PieceSpan{9, 10});
    CHECK(lastPiecesOf(7) == PieceSpan{7, 7});
    CHECK(lastPiecesOf(3) == PieceSpan{3, 3});
    CHECK(lastPiecesOf(1) == PieceSpan{1, 1});
}

TEST_CASE("the end of the run comes before the next two hundred", "[lots][plan]") {
    // Piece 480 was read: 680 lies beyond 600, so the last one is next: 596 to 600, 595 − 500 = 95 to go.
    const auto due = planOf(going(500, 3, 20)).next;
    REQUIRE(due);
    CHECK(due->why == DueWhy::last);
    CHECK(due->among == PieceSpan{596, 600});
    CHECK(due->inPieces == 95);
    CHECK(planOf(going(595, 3, 115)).next->now);
    CHECK(planOf(going(597, 3, 117)).next->among == PieceSpan{598, 600});
}

TEST_CASE("one reading serves where the two hundredth piece is among the last", "[lots][plan]") {
    // Piece 398 was read: 598 is its two hundredth and among the last five.
    const auto due = planOf(going(590, 3, 192)).next;
    REQUIRE(due);
    CHECK(due->why == DueWhy::last);
    const auto after = planOf(going(599, 3, 201)); // 598 passed: both are due, one reading
    CHECK(after.missed == 0);
    CHECK(after.next->why == DueWhy::last);
}

TEST_CASE("after a last reading nothing more is due", "[lots][plan]") {
    CHECK_FALSE(planOf(going(598, 4, 1)).next);
    auto e = going(600, 4, 3);
    e.ended = Duration{0.0};
    CHECK_FALSE(planOf(e).next);
    CHECK(planOf(e).missed == 0);
    e.ended = Duration{1e6};
    CHECK(planOf(e).missed == 0);
}

TEST_CASE("a reading not taken when the next falls due is missed", "[lots][plan]") {
    ReadingPlanSettings slow;
    slow.every = Duration{1e6};
    // Piece 21 read; due at 221, the next at 421.
    CHECK(planOf(going(420, 1, 399), slow).missed == 0);
    CHECK(planOf(going(421, 1, 400), slow).missed == 1);
    CHECK(planOf(going(421, 1, 400), slow).next->now); // one is still due
    CHECK_FALSE(planOf(going(421, 1, 400), slow).lastMissed);
    // 595 have left: the last one falls due (596 is next): 221 and 421 were both missed.
    CHECK(planOf(going(595, 1, 574), slow).missed == 2);
}

TEST_CASE("the first ones are missed when two hundred pieces went unread", "[lots][plan]") {
    CHECK(planOf(going(199, 0, 199)).missed == 0);
    CHECK(planOf(going(200, 0, 200)).missed == 1);
    auto e = going(200, 0, 200);
    e.coldest.reset(); // three were due
    CHECK(planOf(e).missed == 3);
    e = going(250, 1, 200); // left was read at 50; centre, right and the two hundredth: the last one still open
    e.coldest.reset();
    CHECK(planOf(e).missed == 2);
}

TEST_CASE("the last reading is missed a quarter of an hour after the end", "[lots][plan]") {
    auto e = going(600, 3, 100); // piece 500 read
    e.ended = Duration{0.0};
    auto plan = planOf(e);
    REQUIRE(plan.next);
    CHECK(plan.next->why == DueWhy::last);
    CHECK(plan.next->now);
    CHECK(plan.next->among == PieceSpan{596, 600});
    CHECK(plan.missed == 0);
    e.ended = Duration{899.0};
    CHECK(planOf(e).missed == 0);
    e.ended = Duration{900.0};
    plan = planOf(e);
    CHECK(plan.missed == 1);
    CHECK(plan.lastMissed);
    CHECK_FALSE(plan.next);
    e.readAfterEnd = true;
    CHECK(planOf(e).missed == 0);
}

TEST_CASE("a run that ended early is judged by what was made", "[lots][plan]") {
    auto e = going(100, 1, 2); // of 600 planned; piece 98 was read: among the last five of 100
    e.ended = Duration{0.0};
    CHECK_FALSE(planOf(e).next);
    e = going(100, 1, 20); // piece 80 was not
    e.ended = Duration{0.0};
    CHECK(planOf(e).next->why == DueWhy::last);
    CHECK(planOf(e).next->among == PieceSpan{96, 100});
}

TEST_CASE("a run whose number nobody said has a last reading once it has ended", "[lots][plan]") {
    auto e = going(500, 3, 20);
    e.planned.reset();
    CHECK(planOf(e).next->why == DueWhy::pieces);
    e.ended = Duration{60.0};
    CHECK(planOf(e).next->why == DueWhy::last);
    e.made.reset();
    e.piecesSince.reset();
    e.lastRead.reset();
    CHECK(planOf(e).next->why == DueWhy::last); // nobody counts either
    e.ended = Duration{900.0};
    CHECK(planOf(e).missed == 1);
}

TEST_CASE("small runs have no more due readings than pieces", "[lots][plan]") {
    EpisodeSoFar e;
    e.planned = 1;
    e.made = 0;
    e.piecesSince = 0;
    auto due = planOf(e).next; // no belt map: three would be first, but there is one piece
    REQUIRE(due);
    CHECK(due->among == PieceSpan{1, 1});
    e.made = 1;
    e.piecesSince = 1;
    e.ended = Duration{900.0};
    CHECK(planOf(e).missed == 1);
    e.readings = 1;
    e.readingsOfRun = 1;
    e.lastRead = 1;
    CHECK(planOf(e).missed == 0);

    e = {};
    e.planned = 3;
    e.made = 3;
    e.piecesSince = 0;
    e.readings = 2;
    e.readingsOfRun = 2;
    e.lastRead = 2;
    e.ended = Duration{900.0};
    CHECK(planOf(e).missed == 1); // right, which is also the last
}

TEST_CASE("a run too short to load the belt has its first reading at its end", "[lots][plan]") {
    auto e = going(0, 0, 0);
    e.planned = 10; // two dwells are 20 pieces
    const auto due = planOf(e).next;
    REQUIRE(due);
    CHECK(due->among == PieceSpan{10, 10});
    e.made = 10;
    e.piecesSince = 10;
    e.ended = Duration{900.0};
    CHECK(planOf(e).missed == 1); // it would have been the last one too
}

TEST_CASE("a state that another run has proven needs no first reading in this one", "[lots][plan]") {
    auto e = going(0, 0, 0);
    e.readings = 2;
    e.piecesSince = 150; // of the run before
    e.ranSince = Duration{1500.0};
    const auto due = planOf(e).next;
    REQUIRE(due);
    CHECK(due->why == DueWhy::pieces);
    CHECK(due->among == PieceSpan{46, 50}); // 200 − 150
}

TEST_CASE("tightened reading halves both N and T", "[lots][plan]") {
    const auto tight = ReadingPlanSettings{}.tightened();
    CHECK(tight.everyPieces == 100);
    CHECK(tight.every == Duration{1800.0});
    CHECK(planOf(going(50, 1, 29), tight).next->among == PieceSpan{117, 121}); // 21 + 100
    ReadingPlanSettings odd;
    odd.everyPieces = 75;
    CHECK(odd.tightened().everyPieces == 37); // rounded to the side of more readings
    odd.everyPieces = 1;
    CHECK(odd.tightened().everyPieces == 1);
}

TEST_CASE("a plan that cannot be is refused by its cause", "[lots][plan]") {
    auto e = going(0, 0, 0);
    e.planned = 0;
    CHECK(readingPlan(e).error() == PlanFault::noPieces);
    e.planned = -3;
    CHECK(readingPlan(e).error() == PlanFault::noPieces);
    e = going(0, 0, 0);
    e.made = -1;
    CHECK(readingPlan(e).error() == PlanFault::countBelowZero);
    e = going(0, 0, 0);
    e.ranSince = Duration{-1.0};
    CHECK(readingPlan(e).error() == PlanFault::timeBelowZero);
    e.ranSince = Duration{std::numeric_limits<double>::quiet_NaN()};
    CHECK(readingPlan(e).error() == PlanFault::timeBelowZero);
    ReadingPlanSettings none;
    none.everyPieces = 0;
    CHECK(readingPlan(going(0, 0, 0), none).error() == PlanFault::settings);
    none = {};
    none.every = Duration{0.0};
    CHECK(readingPlan(going(0, 0, 0), none).error() == PlanFault::settings);
}

TEST_CASE("a whole run read as the plan says misses nothing, whatever its size", "[lots][plan]") {
    for (int pieces = 1; pieces <= 700; pieces += pieces < 60 ? 1 : 37) {
        for (const bool map : {true, false}) {
            EpisodeSoFar e;
            e.planned = pieces;
            e.inTunnel = 4;
            e.coldest = map ? std::optional{BeltLane::right} : std::nullopt;
            int last = 0;
            for (int made = 0; made <= pieces; ++made) {
                e.made = made;
                e.piecesSince = made - last;
                e.ranSince = Duration{(made - last) * 10.0};
                auto plan = planOf(e);
                INFO(pieces << " pieces, " << made << " made, " << e.readings << " read");
                REQUIRE(plan.missed == 0);
                if (made < pieces && plan.next && plan.next->now) { // the very next piece is read
                    last = made + 1;
                    ++e.readings;
                    ++e.readingsOfRun;
                    e.lastRead = last;
                }
            }
            e.ended = Duration{5000.0};
            CHECK(planOf(e).missed == 0);
            CHECK(e.readingsOfRun >= 1);
            CHECK(e.readingsOfRun <= pieces);
        }
    }
}

TEST_CASE("a whole run that nobody reads misses every reading but never more than its pieces", "[lots][plan]") {
    for (int pieces = 1; pieces <= 1500; pieces += 13) {
        auto e = going(pieces, 0, pieces);
        e.planned = pieces;
        e.ended = Duration{900.0};
        const int missed = planOf(e).missed;
        CHECK(missed >= 1);
        CHECK(missed <= pieces);
    }
    // 600: the first, those at 200 and 400, and the last, which serves for the one at 600 too.
    auto e = going(600, 0, 600);
    e.ended = Duration{900.0};
    CHECK(planOf(e).missed == 4);
}

TEST_CASE("the piece is drawn from all of the range alike and the same word draws the same piece", "[lots][plan]") {
    const PieceSpan among{217, 221};
    std::set<int> drawn;
    for (std::uint64_t word = 0; word < 50; ++word) {
        const int piece = drawPiece(among, word);
        CHECK(among.holds(piece));
        CHECK(piece == drawPiece(among, word));
        drawn.insert(piece);
    }
    CHECK(drawn.size() == 5);
    CHECK(drawPiece({7, 7}, std::numeric_limits<std::uint64_t>::max()) == 7);
    // 2^64 − 1 = 18446744073709551615 ends in 5: a multiple of five, so the first piece.
    CHECK(drawPiece(among, std::numeric_limits<std::uint64_t>::max()) == 217);
}
