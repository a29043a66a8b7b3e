#include "analytics/lots/piece_count.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;

namespace {

constexpr double kNan = std::numeric_limits<double>::quiet_NaN();

/// 1.5 m/min with 4 pieces a metre: 6 pieces a minute.
CountKnown running(double minutes) {
    CountKnown known;
    known.ran = {{1.5, Duration{60.0 * minutes}}};
    known.piecesPerMetre = 4.0;
    return known;
}

} // namespace

TEST_CASE("pieces by rate are belt speed times pieces a metre times running time", "[lots][count]") {
    // 1.5 m/min × 4 pieces/m × 10 min = 60 pieces.
    CHECK(countPieces(running(10.0)).value() == PieceCount{60, CountSource::rate});
    // 35 min 20 s: 1.5 × 4 × 35.3333 = 212.0: exactly whole is whole, in spite of thirds.
    CHECK(countPieces(running(35.0 + 1.0 / 3.0)).value().pieces == 212);
    // 10 min 9 s: 60.9: the 61st has not left yet.
    CHECK(countPieces(running(10.15)).value().pieces == 60);
    CHECK(countPieces(running(0.0)).value().pieces == 0);
}

TEST_CASE("times at different speeds add up and a standing belt adds nothing", "[lots][count]") {
    auto known = running(10.0); // 15 m
    known.ran.push_back({0.0, Duration{3600.0}});
    known.ran.push_back({3.0, Duration{300.0}}); // 15 m more: 30 m × 4 = 120 pieces
    CHECK(countPieces(known).value() == PieceCount{120, CountSource::rate});
}

TEST_CASE("a counter's pulses count before anything else and say so", "[lots][count]") {
    auto known = running(10.0);
    known.typed = 50;
    known.counter = 57;
    CHECK(countPieces(known).value() == PieceCount{57, CountSource::counter});
}

TEST_CASE("a number typed counts and the rate goes on from it", "[lots][count]") {
    auto known = running(2.0); // since it was typed: 12 pieces
    known.typed = 200;
    CHECK(countPieces(known).value() == PieceCount{212, CountSource::typed});
    CountKnown alone;
    alone.typed = 200;
    CHECK(countPieces(alone).value() == PieceCount{200, CountSource::typed});
}

TEST_CASE("a count that runs backwards is refused", "[lots][count]") {
    CountKnown known;
    known.before = 212;
    known.counter = 211;
    CHECK(countPieces(known).error() == CountFault::runsBackwards);
    known.counter = 212;
    CHECK(countPieces(known).value().pieces == 212);
    known.counter.reset();
    known.typed = 100;
    CHECK(countPieces(known).error() == CountFault::runsBackwards);
}

TEST_CASE("a rate that says less than was counted before leaves the count where it stands", "[lots][count]") {
    auto known = running(10.0);
    known.before = 75; // by a counter that has fallen silent
    CHECK(countPieces(known).value() == PieceCount{75, CountSource::rate});
}

TEST_CASE("without a figure nothing is counted, and impossible ones are refused", "[lots][count]") {
    CHECK(countPieces({}).error() == CountFault::nothingKnown);
    auto known = running(10.0);
    known.piecesPerMetre.reset();
    CHECK(countPieces(known).error() == CountFault::nothingKnown);
    known = running(10.0);
    known.piecesPerMetre = kNan;
    CHECK(countPieces(known).error() == CountFault::notPossible);
    known = running(-1.0);
    CHECK(countPieces(known).error() == CountFault::notPossible);
    known = running(10.0);
    known.ran.front().metresPerMinute = 1e300;
    CHECK(countPieces(known).error() == CountFault::notPossible);
    CountKnown negative;
    negative.counter = -1;
    CHECK(countPieces(negative).error() == CountFault::negative);
    negative.counter.reset();
    negative.typed = -5;
    CHECK(countPieces(negative).error() == CountFault::negative);
    negative.typed = std::numeric_limits<int>::max();
    CHECK(countPieces(negative).error() == CountFault::notPossible);
}

TEST_CASE("pieces in the tunnel are rounded up", "[lots][count]") {
    // Decisions 5: heated length × pieces a metre, rounded up. 2.44 m × 4 = 9.76: 10. 2.5 × 4 = 10: 10.
    CHECK(piecesInTunnel(2.44, 4.0) == 10);
    CHECK(piecesInTunnel(2.5, 4.0) == 10);
    CHECK(piecesInTunnel(0.1 * 3.0, 10.0) == 3); // 3.0000000000000004 in binary is three
    CHECK_FALSE(piecesInTunnel(std::nullopt, 4.0));
    CHECK_FALSE(piecesInTunnel(2.44, std::nullopt));
    CHECK_FALSE(piecesInTunnel(0.0, 4.0));
    CHECK_FALSE(piecesInTunnel(kNan, 4.0));
    CHECK_FALSE(piecesInTunnel(1e300, 4.0));
}
