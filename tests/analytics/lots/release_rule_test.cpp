#include "analytics/lots/release_rule.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;

namespace {

using Refusals = std::vector<DecisionRefusal>;

LotAtIssue held() {
    LotAtIssue lot;
    lot.entitledInShop = 2;
    return lot;
}

LotAtIssue childrens() {
    auto lot = held();
    lot.childrensWear = true;
    return lot;
}

DecisionAsked release(std::vector<Signer> signers = {{1, true}}) {
    DecisionAsked asked;
    asked.reason = "washed five times, no crack";
    asked.signers = std::move(signers);
    return asked;
}

} // namespace

TEST_CASE("a decision with a reason and an entitled signer is allowed", "[lots][release]") {
    CHECK(refusalsOf(release(), held()).empty());
}

TEST_CASE("a decision without a reason or an entitled signer says both at once", "[lots][release]") {
    auto asked = release({{3, false}});
    asked.reason = " \t\n";
    CHECK(refusalsOf(asked, held()) == Refusals{DecisionRefusal::needsReason, DecisionRefusal::needsEntitledSigner});
    asked.signers.clear();
    CHECK(refusalsOf(asked, held()).back() == DecisionRefusal::needsEntitledSigner);
}

TEST_CASE("releasing below the limit needs two where the shop has two", "[lots][release]") {
    auto lot = held();
    lot.belowLimit = true;
    CHECK(needsTwo(LotDecision::released, lot));
    CHECK(refusalsOf(release(), lot) == Refusals{DecisionRefusal::needsSecondEntitledSigner});
    CHECK(refusalsOf(release({{1, true}, {1, true}}), lot) ==
          Refusals{DecisionRefusal::needsSecondEntitledSigner}); // twice the same person
    CHECK(refusalsOf(release({{1, true}, {2, false}}), lot) == Refusals{DecisionRefusal::needsSecondEntitledSigner});
    CHECK(refusalsOf(release({{1, true}, {2, true}}), lot).empty());
    lot.entitledInShop = 1; // a shop of one
    CHECK(refusalsOf(release(), lot).empty());
}

TEST_CASE("re-running and scrapping need one signature", "[lots][release]") {
    auto lot = childrens();
    lot.belowLimit = true;
    lot.underCured = true;
    auto asked = release();
    asked.what = LotDecision::reRun;
    CHECK(refusalsOf(asked, lot).empty());
    asked.what = LotDecision::scrapped;
    CHECK(refusalsOf(asked, lot).empty());
}

TEST_CASE("children's wear is never released under-cured or not proven", "[lots][release]") {
    auto lot = childrens();
    auto asked = release({{1, true}, {2, true}});
    asked.laboratoryReport = "24-1187";
    lot.underCured = true;
    CHECK(refusalsOf(asked, lot) == Refusals{DecisionRefusal::childrensWearUnderCured});
    lot.underCured = false;
    lot.notProven = true;
    CHECK(refusalsOf(asked, lot) == Refusals{DecisionRefusal::childrensWearNotProven});
    lot.notProven = false;
    lot.standing = LotStanding::unproven;
    CHECK(refusalsOf(asked, lot) == Refusals{DecisionRefusal::childrensWearNotProven});
}

TEST_CASE("any release of children's wear needs two people and the laboratory's report", "[lots][release]") {
    CHECK(refusalsOf(release(), childrens()) ==
          Refusals{DecisionRefusal::needsSecondEntitledSigner, DecisionRefusal::laboratoryReportMissing});
    auto asked = release({{1, true}, {2, true}});
    CHECK(refusalsOf(asked, childrens()) == Refusals{DecisionRefusal::laboratoryReportMissing});
    asked.laboratoryReport = "  ";
    CHECK(refusalsOf(asked, childrens()) == Refusals{DecisionRefusal::laboratoryReportMissing});
    asked.laboratoryReport = "24-1187";
    CHECK(refusalsOf(asked, childrens()).empty());
    auto cleared = childrens();
    cleared.standing = LotStanding::cleared;
    CHECK(refusalsOf(asked, cleared).empty());
}

TEST_CASE("an unproven lot is released in one press", "[lots][release]") {
    auto lot = held();
    lot.standing = LotStanding::unproven;
    lot.notProven = true;
    CHECK(refusalsOf(release(), lot).empty());
}

TEST_CASE("a lot that needs no decision takes none but scrapping, and scrapped is final", "[lots][release]") {
    auto lot = held();
    lot.standing = LotStanding::cleared;
    CHECK(refusalsOf(release(), lot) == Refusals{DecisionRefusal::nothingToDecide});
    auto scrap = release();
    scrap.what = LotDecision::scrapped;
    CHECK(refusalsOf(scrap, lot).empty());
    lot.standing = LotStanding::scrapped;
    CHECK(refusalsOf(scrap, lot) == Refusals{DecisionRefusal::scrappedIsFinal});
}
