#include "analytics/lots/bracket.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;

namespace {

/// 288 pieces planned, 10 in the tunnel; piece 100 was proven, piece 212 is bad.
BracketFacts facts() {
    BracketFacts facts;
    facts.badPiece = 212;
    facts.lastProven = 100;
    facts.made = 212;
    facts.planned = 288;
    facts.inTunnel = 10;
    return facts;
}

} // namespace

TEST_CASE("a bracket reaches from after the last proven piece to before the next proven one", "[lots][bracket]") {
    auto one = facts();
    one.nextProven = 240;
    // 101 to 239: 239 − 100 = 139 pieces; 239 is beyond 212 + 10 = 222.
    const auto bracket = bracketOf(one).value();
    CHECK(bracket.pieces == PieceSpan{101, 239});
    CHECK(bracket.pieces.count() == 139);
    CHECK_FALSE(bracket.open);
}

TEST_CASE("a bracket reaches at least to the bad piece and the tunnel behind it", "[lots][bracket]") {
    auto one = facts();
    one.nextProven = 215; // a proven piece that was in the tunnel together with the bad one
    // 212 + 10 = 222 is later than 214.
    CHECK(bracketOf(one).value().pieces == PieceSpan{101, 222});
}

TEST_CASE("with no proven piece before it a bracket begins with the lot", "[lots][bracket]") {
    auto one = facts();
    one.lastProven.reset();
    one.nextProven = 240;
    CHECK(bracketOf(one).value().pieces == PieceSpan{1, 239});
    one.firstPiece = 151; // the lot was opened by a change at the dryer after piece 150
    CHECK(bracketOf(one).value().pieces == PieceSpan{151, 239});
}

TEST_CASE("with no proven piece after it a bracket goes to the end of the run", "[lots][bracket]") {
    auto one = facts();
    one.endOfRun = 288;
    // 288 − 100 = 188 pieces.
    const auto bracket = bracketOf(one).value();
    CHECK(bracket.pieces == PieceSpan{101, 288});
    CHECK(bracket.pieces.count() == 188);
    CHECK_FALSE(bracket.open);
}

TEST_CASE("while the run goes on a bracket is open and reaches to what stands in the tunnel", "[lots][bracket]") {
    const auto bracket = bracketOf(facts()).value();
    // Pull 101 to 222 now: 212 + 10.
    CHECK(bracket.pieces == PieceSpan{101, 222});
    CHECK(bracket.open);
    auto later = facts();
    later.made = 240; // the reading was slow: 240 have left
    CHECK(bracketOf(later).value().pieces == PieceSpan{101, 240});
}

TEST_CASE("a bracket does not reach beyond the run", "[lots][bracket]") {
    auto one = facts();
    one.badPiece = 284;
    one.made = 284; // 284 + 10 = 294 is beyond 288
    CHECK(bracketOf(one).value().pieces == PieceSpan{101, 288});
    one.endOfRun = 286; // ended two short
    CHECK(bracketOf(one).value().pieces == PieceSpan{101, 286});
    one.endOfRun.reset();
    one.planned = 280; // more were made than planned: the plan does not shorten it
    one.made = 290;
    CHECK(bracketOf(one).value().pieces == PieceSpan{101, 290});
}

TEST_CASE("with an unknown tunnel and count a bracket still holds the bad piece", "[lots][bracket]") {
    BracketFacts one;
    one.badPiece = 7;
    const auto bracket = bracketOf(one).value();
    CHECK(bracket.pieces == PieceSpan{1, 7});
    CHECK(bracket.open);
}

TEST_CASE("facts that contradict each other are refused", "[lots][bracket]") {
    auto one = facts();
    one.lastProven = 212;
    CHECK(bracketOf(one).error() == BracketFault::provenOutOfOrder);
    one = facts();
    one.nextProven = 212;
    CHECK(bracketOf(one).error() == BracketFault::provenOutOfOrder);
    one = facts();
    one.endOfRun = 200;
    CHECK(bracketOf(one).error() == BracketFault::pieceNotInRun);
    one = facts();
    one.badPiece = 0;
    one.lastProven.reset();
    CHECK(bracketOf(one).error() == BracketFault::pieceNotInRun);
    one = facts();
    one.inTunnel = -1;
    CHECK(bracketOf(one).error() == BracketFault::countBelowZero);
}

TEST_CASE("every bracket holds its bad piece and no proven one outside the tunnel's reach", "[lots][bracket]") {
    for (int proven = 0; proven < 30; proven += 7) {
        for (int bad = proven + 1; bad <= 40; bad += 3) {
            for (int next = bad + 1; next <= 60; next += 5) {
                BracketFacts one;
                one.badPiece = bad;
                one.lastProven = proven > 0 ? std::optional{proven} : std::nullopt;
                one.nextProven = next;
                one.planned = 60;
                one.inTunnel = 4;
                const auto pieces = bracketOf(one).value().pieces;
                CHECK(pieces.holds(bad));
                CHECK_FALSE(pieces.holds(proven));
                CHECK(pieces.holds(next) == (next <= bad + 4));
                CHECK(pieces.last <= 60);
            }
        }
    }
}

TEST_CASE("pieces in the tunnel when the belt stops are a bracket of their own", "[lots][bracket]") {
    // 212 went onto the belt, 10 stand inside: 203 to 212.
    CHECK(tunnelBracket(212, 10) == PieceSpan{203, 212});
    CHECK(tunnelBracket(6, 10) == PieceSpan{1, 6}); // the tunnel was not yet full
    CHECK_FALSE(tunnelBracket(0, 10));
    CHECK_FALSE(tunnelBracket(212, std::nullopt));
    CHECK_FALSE(tunnelBracket(212, 0));
    CHECK_FALSE(tunnelBracket(-1, 10));
}

TEST_CASE("set-up pieces are waste or a bracket", "[lots][bracket]") {
    CHECK(setUpPieces(1, 6, SetUpUse::waste) == SetUpPieces{6, std::nullopt});
    CHECK(setUpPieces(1, 6, SetUpUse::bracket) == SetUpPieces{0, PieceSpan{1, 6}});
    CHECK(setUpPieces(1, 0, SetUpUse::bracket) == SetUpPieces{});
    CHECK(setUpPieces(1, -3, SetUpUse::waste) == SetUpPieces{});
}

TEST_CASE("undecided brackets that share a piece become one under the number labelled first", "[lots][bracket]") {
    const auto joined = joinBrackets({{8, {201, 260}, false}, {7, {101, 222}, false}, {9, {250, 270}, false}});
    REQUIRE(joined.brackets.size() == 1);
    CHECK(joined.brackets.front() == NumberedBracket{7, {101, 270}, false});
    using Moved = std::vector<std::pair<std::int64_t, std::int64_t>>;
    CHECK(joined.movedIntoBin == Moved{{8, 7}, {9, 7}});
}

TEST_CASE("a bin that took another one is itself emptied into the first", "[lots][bracket]") {
    const auto joined = joinBrackets({{9, {10, 20}, false}, {8, {15, 30}, false}, {7, {25, 40}, false}});
    REQUIRE(joined.brackets.size() == 1);
    CHECK(joined.brackets.front() == NumberedBracket{7, {10, 40}, false});
    using Moved = std::vector<std::pair<std::int64_t, std::int64_t>>;
    CHECK(joined.movedIntoBin == Moved{{9, 7}, {8, 7}});
}

TEST_CASE("brackets that only touch, and decided ones, stay apart", "[lots][bracket]") {
    CHECK(joinBrackets({{7, {101, 222}, false}, {8, {223, 240}, false}}).brackets.size() == 2);
    const auto joined = joinBrackets({{7, {101, 222}, true}, {8, {201, 240}, false}, {9, {230, 250}, false}});
    REQUIRE(joined.brackets.size() == 2);
    CHECK(joined.brackets[0] == NumberedBracket{7, {101, 222}, true});
    CHECK(joined.brackets[1] == NumberedBracket{8, {201, 250}, false});
    CHECK(joinBrackets({}).brackets.empty());
}
