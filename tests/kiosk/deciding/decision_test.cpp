#include "kiosk/shop/deciding/decision.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::shop::deciding;
using kiosk::records::DecisionSigned;
using kiosk::records::DecisionWord;
using kiosk::records::HoldCause;
using kiosk::records::LotOpened;

namespace {

HoldFact hold(const std::string& id, std::optional<kiosk::records::PieceRange> pieces, const std::string& because,
              HoldCause cause = HoldCause::reading) {
    HoldFact fact;
    fact.placed.hold = id;
    fact.placed.lot = "lot-2";
    fact.placed.pieces = pieces;
    fact.placed.because = because;
    fact.placed.cause = cause;
    return fact;
}

ReadingFact reading(const std::string& id, analytics::Word word, int piece) {
    ReadingFact fact;
    fact.id = id;
    fact.word = word;
    fact.piece = piece;
    return fact;
}

/// Piece 112 read cured, piece 120 under-cured: the bracket begins after the last proven piece (decisions 5).
LotFacts heldLot() {
    LotFacts facts;
    facts.lot = "lot-2";
    facts.run = "run-1";
    facts.number = 2;
    facts.standing = analytics::LotStanding::onHold;
    facts.readings = {reading("r1", analytics::Word::cured, 112), reading("r2", analytics::Word::underCured, 120)};
    facts.holds = {hold("h1", kiosk::records::PieceRange{113, 140}, "r2")};
    facts.entitled = {{7}, {9}};
    facts.made = 200;
    facts.reRun.run = "run-1";
    facts.reRun.number = 3;
    facts.reRun.dryer = "dryer-a";
    return facts;
}

DecisionDraft draft(DecisionWord word, std::vector<std::int64_t> signers) {
    DecisionDraft made;
    made.word = word;
    made.reason = "went through again";
    made.holds = {"h1"};
    made.signers = std::move(signers);
    return made;
}

} // namespace

TEST_CASE("a bracket is run again by one signature and becomes the next lot, tied to the old", "[deciding]") {
    const auto list = decisionFrom(draft(DecisionWord::reRun, {7}), heldLot(), {"d1", "lot-3"});
    REQUIRE(list);
    REQUIRE(list->size() == 2); // lot.opened stands before the decision that names it
    const auto& lot = std::get<LotOpened>(list->at(0));
    CHECK(lot.lot == "lot-3");
    CHECK(lot.run == "run-1");
    CHECK(lot.number == 3);
    CHECK(lot.dryer == "dryer-a");
    CHECK(lot.firstPiece == 113); // the bracket's first piece
    const auto& decision = std::get<DecisionSigned>(list->at(1));
    CHECK(decision.reRunLot == "lot-3");
    CHECK(decision.holds == std::vector<std::string>{"h1"});
    CHECK(decision.signers == std::vector<std::int64_t>{7});
    CHECK_FALSE(decision.belowLimit);
}

TEST_CASE("a release below the limit takes two different people where the shop has two", "[deciding]") {
    const auto one = faultsOf(draft(DecisionWord::released, {7}), heldLot());
    CHECK(one == Faults{{Cause::needsSecondEntitledSigner, "", ""}});
    CHECK(takesTwo(draft(DecisionWord::released, {}), heldLot()));
    CHECK(has(faultsOf(draft(DecisionWord::released, {7, 7}), heldLot()), Cause::needsSecondEntitledSigner));
    const auto both = decisionFrom(draft(DecisionWord::released, {7, 9}), heldLot(), {"d1", "lot-3"});
    REQUIRE(both);
    REQUIRE(both->size() == 1);
    const auto& decision = std::get<DecisionSigned>(both->front());
    CHECK(decision.belowLimit);
    CHECK(decision.signers == std::vector<std::int64_t>{7, 9});
}

TEST_CASE("one signature releases below the limit where only one person is entitled", "[deciding]") {
    auto facts = heldLot();
    facts.entitled = {{7}};
    CHECK(decisionFrom(draft(DecisionWord::released, {7}), facts, {"d1", ""}));
}

TEST_CASE("a release by somebody not entitled is refused, alone and as the second", "[deciding]") {
    CHECK(has(faultsOf(draft(DecisionWord::released, {5}), heldLot()), Cause::needsEntitledSigner));
    CHECK(has(faultsOf(draft(DecisionWord::released, {7, 5}), heldLot()), Cause::needsSecondEntitledSigner));
    CHECK(has(faultsOf(draft(DecisionWord::scrapped, {}), heldLot()), Cause::needsEntitledSigner));
}

TEST_CASE("what a signature heals is not told before anybody signs", "[deciding]") {
    CHECK(faultsBeforeSigning(draft(DecisionWord::released, {}), heldLot()).empty());
    auto without = draft(DecisionWord::released, {});
    without.reason = "   ";
    CHECK(faultsBeforeSigning(without, heldLot()) == Faults{{Cause::needsReason, "reason", ""}});
}

TEST_CASE("a decision needs a word, a reason that can be printed, and the holds it ends", "[deciding]") {
    DecisionDraft nothing;
    CHECK(faultsOf(nothing, heldLot()) == Faults{{Cause::noWord, "word", ""}});
    auto odd = draft(DecisionWord::reRun, {7});
    odd.reason = std::string(201, 'a'); // one above the 200 of kLongestText
    CHECK(has(faultsOf(odd, heldLot()), Cause::textTooLong));
    odd.reason = "a\x01";
    CHECK(has(faultsOf(odd, heldLot()), Cause::controlSign));
    auto none = draft(DecisionWord::reRun, {7});
    none.holds.clear();
    CHECK(has(faultsOf(none, heldLot()), Cause::noHoldChosen));
    auto gone = draft(DecisionWord::reRun, {7});
    gone.holds = {"h9"};
    CHECK(has(faultsOf(gone, heldLot()), Cause::holdGone));
    auto decided = heldLot();
    decided.holds.front().decided = true;
    CHECK(has(faultsOf(draft(DecisionWord::reRun, {7}), decided), Cause::holdGone));
}

TEST_CASE("a scrapped lot is final; only its shipped pieces may still be called back", "[deciding]") {
    auto facts = heldLot();
    facts.standing = analytics::LotStanding::scrapped;
    for (const auto word : {DecisionWord::released, DecisionWord::reRun, DecisionWord::scrapped}) {
        CHECK(has(faultsOf(draft(word, {7, 9}), facts), Cause::scrappedIsFinal));
    }
    CHECK(wordsFor(facts).empty());
    facts.shipped = 12;
    CHECK(wordsFor(facts) == std::vector{DecisionWord::recalled});
    CHECK(decisionFrom(draft(DecisionWord::recalled, {7}), facts, {"d1", ""}));
}

TEST_CASE("a recall needs shipped pieces and ends no hold: what comes back is still to be decided", "[deciding]") {
    CHECK(has(faultsOf(draft(DecisionWord::recalled, {7}), heldLot()), Cause::nothingShipped));
    auto facts = heldLot();
    facts.shipped = 60;
    const auto list = decisionFrom(draft(DecisionWord::recalled, {7}), facts, {"d1", ""});
    REQUIRE(list);
    CHECK(std::get<DecisionSigned>(list->front()).holds.empty());
    CHECK(wordsFor(facts).back() == DecisionWord::recalled);
    CHECK(wordsFor(heldLot()).back() == DecisionWord::scrapped);
}

TEST_CASE("children's wear under-cured or not proven is never released", "[deciding]") {
    auto facts = heldLot();
    facts.childrensWear = true;
    auto asked = draft(DecisionWord::released, {7, 9});
    asked.laboratoryReport = "L-2026-118";
    CHECK(has(faultsOf(asked, facts), Cause::childrensWearUnderCured));
    CHECK(wordsFor(facts) == std::vector{DecisionWord::reRun, DecisionWord::scrapped});
    facts.readings.back().word = analytics::Word::notProven;
    CHECK(has(faultsOf(asked, facts), Cause::childrensWearNotProven));
    facts.readings.clear();
    facts.missed = 1;
    CHECK(has(faultsOf(asked, facts), Cause::childrensWearNotProven));
}

TEST_CASE("any release of children's wear takes two people and the laboratory's report", "[deciding]") {
    auto facts = heldLot();
    facts.childrensWear = true;
    facts.readings = {reading("r1", analytics::Word::cured, 112), reading("r2", analytics::Word::overheated, 120)};
    CHECK(faultsOf(draft(DecisionWord::released, {7}), facts) ==
          Faults{{Cause::needsSecondEntitledSigner, "", ""}, {Cause::laboratoryReportMissing, "laboratory", ""}});
    auto asked = draft(DecisionWord::released, {7, 9});
    asked.laboratoryReport = " L-2026-118 ";
    const auto list = decisionFrom(asked, facts, {"d1", ""});
    REQUIRE(list);
    CHECK(std::get<DecisionSigned>(list->front()).laboratoryReport == "L-2026-118");
}

TEST_CASE("overheated is not below the limit: one signature releases it", "[deciding]") {
    auto facts = heldLot();
    facts.readings.back().word = analytics::Word::overheated;
    CHECK_FALSE(takesTwo(draft(DecisionWord::released, {}), facts));
    CHECK(decisionFrom(draft(DecisionWord::released, {7}), facts, {"d1", ""}));
}

TEST_CASE("a failed test is below the limit", "[deciding]") {
    auto facts = heldLot();
    facts.readings = {reading("r1", analytics::Word::cured, 112)};
    facts.holds = {hold("h1", std::nullopt, "t1", HoldCause::test)};
    facts.tests = {{"t1", true}};
    CHECK(atIssue(facts).belowLimit);
    CHECK(takesTwo(draft(DecisionWord::released, {}), facts));
    facts.holds.front().decided = true; // settled before
    CHECK_FALSE(atIssue(facts).belowLimit);
}

TEST_CASE("an unproven lot is released by one signature; children's wear is not", "[deciding]") {
    auto facts = heldLot();
    facts.standing = analytics::LotStanding::unproven;
    facts.holds.clear();
    facts.readings.clear();
    facts.missed = 2;
    auto asked = draft(DecisionWord::released, {7});
    asked.holds.clear();
    CHECK(decisionFrom(asked, facts, {"d1", ""}));
    facts.childrensWear = true;
    CHECK(has(faultsOf(asked, facts), Cause::childrensWearNotProven));
}

TEST_CASE("nothing is decided about a cleared lot, but it may be scrapped", "[deciding]") {
    auto facts = heldLot();
    facts.standing = analytics::LotStanding::cleared;
    facts.holds.clear();
    facts.readings.pop_back();
    CHECK(wordsFor(facts) == std::vector{DecisionWord::scrapped});
    auto asked = draft(DecisionWord::released, {7});
    asked.holds.clear();
    CHECK(has(faultsOf(asked, facts), Cause::nothingToDecide));
    asked.word = DecisionWord::scrapped;
    CHECK(decisionFrom(asked, facts, {"d1", ""}));
}

TEST_CASE("what a decided bracket settled stands no longer against the rest of the lot", "[deciding]") {
    auto facts = heldLot();
    facts.childrensWear = true;
    facts.holds.front().decided = true; // pieces 113 to 140 were run again
    facts.holds.push_back(hold("h2", kiosk::records::PieceRange{180, 190}, "r3"));
    facts.readings.push_back(reading("r3", analytics::Word::overheated, 185));
    CHECK_FALSE(atIssue(facts).underCured);
    CHECK(openHoldsOf(facts) == std::vector<std::string>{"h2"});
    facts.readings.push_back(reading("r4", analytics::Word::underCured, 186)); // inside the open one
    CHECK(atIssue(facts).underCured);
}

TEST_CASE("set-up, struck, refused readings and those that could not prove stand against nothing", "[deciding]") {
    auto facts = heldLot();
    auto& bad = facts.readings.back();
    bad.setUp = true;
    CHECK_FALSE(atIssue(facts).underCured);
    bad.setUp = false;
    bad.struck = true;
    CHECK_FALSE(atIssue(facts).underCured);
    bad.struck = false;
    bad.refused = true;
    CHECK_FALSE(atIssue(facts).underCured);
    bad = reading("r2", analytics::Word::notProven, 120);
    bad.couldProve = false;
    CHECK_FALSE(atIssue(facts).notProven);
    bad.couldProve = true;
    CHECK(atIssue(facts).notProven);
    auto again = reading("r5", analytics::Word::cured, 121);
    again.retakeOf = "r2";
    facts.readings.push_back(again);
    CHECK_FALSE(atIssue(facts).notProven);
}

TEST_CASE("pieces of open brackets are joined and counted once", "[deciding]") {
    auto facts = heldLot();
    // 113–140 is 28 pieces, 141–150 touches it, 180–190 is 11: 28 + 10 + 11 = 49
    facts.holds.push_back(hold("h2", kiosk::records::PieceRange{141, 150}, ""));
    facts.holds.push_back(hold("h3", kiosk::records::PieceRange{180, 190}, ""));
    const auto held = heldPieces(facts);
    CHECK(held.spans == std::vector<analytics::PieceSpan>{{113, 150}, {180, 190}});
    CHECK(held.count == 49);
    facts.holds.push_back(hold("h4", std::nullopt, ""));
    CHECK(heldPieces(facts).wholeLot);
    CHECK(heldPieces(facts).count == 200); // as many as were made
}

TEST_CASE("an open bracket reaches to the last piece that was made", "[deciding]") {
    kiosk::records::HoldPlaced placed;
    placed.pieces = kiosk::records::PieceRange{113, std::nullopt};
    CHECK(piecesOfHold(placed, 140) == 28); // 140 − 113 + 1
    CHECK_FALSE(piecesOfHold(placed, std::nullopt));
    placed.count = 24; // counted
    CHECK(piecesOfHold(placed, 140) == 24);
}

TEST_CASE("reasons given before are offered by how often, in any case of letters", "[deciding]") {
    CHECK(frequentReasons({"Belt too fast", "cold start", "belt too fast", " ", "thick film"}, 2) ==
          std::vector<std::string>{"Belt too fast", "cold start"});
    CHECK(frequentReasons({}, 5).empty());
}
