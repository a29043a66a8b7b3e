#include "analytics/lots/lot_standing.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::analytics;

namespace {

constexpr auto proven = DueOutcome::proven;
constexpr auto missed = DueOutcome::missed;

LotEvidence lot(std::vector<DueOutcome> due, bool ended = true) {
    LotEvidence one;
    one.due = std::move(due);
    one.ended = ended;
    return one;
}

} // namespace

TEST_CASE("a lot is set up, open and then cleared by readings that are all proven", "[lots][standing]") {
    CHECK(standingOf(lot({}, false)) == LotStanding::settingUp);
    CHECK(standingOf(lot({proven}, false)) == LotStanding::open);
    CHECK(standingOf(lot({proven, DueOutcome::notProven}, false)) == LotStanding::open); // it may be taken again
    CHECK(standingOf(lot({proven, proven})) == LotStanding::cleared);
}

TEST_CASE("a reading missed, or that stayed not proven, makes a lot unproven", "[lots][standing]") {
    CHECK(standingOf(lot({proven, missed})) == LotStanding::unproven);
    CHECK(standingOf(lot({proven, missed}, false)) == LotStanding::unproven); // at once
    CHECK(standingOf(lot({proven, DueOutcome::stayedNotProven}, false)) == LotStanding::unproven);
    CHECK(standingOf(lot({proven, DueOutcome::notProven})) == LotStanding::unproven); // ended: nothing comes any more
    CHECK(standingOf(lot({})) == LotStanding::unproven);                              // at least one due reading
}

TEST_CASE("an unproven lot is a hold only for children's wear or if the shop says so", "[lots][standing]") {
    auto one = lot({proven, missed});
    CHECK(standingOf(one, {true, false}) == LotStanding::onHold);
    one.childrensWear = true;
    CHECK(standingOf(one) == LotStanding::onHold);
    CHECK(standingOf(one, {false, true}) == LotStanding::onHold); // never released by a rule
}

TEST_CASE("the shop's rule may release unproven lots once they have ended", "[lots][standing]") {
    CHECK(standingOf(lot({proven, missed}), {false, true}) == LotStanding::released);
    CHECK(standingOf(lot({proven, missed}, false), {false, true}) == LotStanding::unproven);
    CHECK(standingOf(lot({proven, missed}), {true, true}) == LotStanding::onHold);
}

TEST_CASE("a cause nobody has decided holds the lot whatever was decided before", "[lots][standing]") {
    auto one = lot({proven, proven});
    one.undecidedCauses = 1;
    CHECK(standingOf(one) == LotStanding::onHold);
    one.decision = LotDecision::released; // for an earlier cause
    CHECK(standingOf(one) == LotStanding::onHold);
    one.undecidedCauses = 0;
    CHECK(standingOf(one) == LotStanding::released);
    one.decision = LotDecision::reRun;
    CHECK(standingOf(one) == LotStanding::reRun);
}

TEST_CASE("scrapped is final", "[lots][standing]") {
    auto one = lot({missed});
    one.decision = LotDecision::scrapped;
    one.undecidedCauses = 3;
    one.childrensWear = true;
    CHECK(standingOf(one, {true, true}) == LotStanding::scrapped);
}

TEST_CASE("the other pieces of a lot on hold may go if every cause has its bracket", "[lots][standing]") {
    CHECK(otherPiecesMayGo(LotStanding::onHold, true));
    CHECK_FALSE(otherPiecesMayGo(LotStanding::onHold, false));
    CHECK_FALSE(otherPiecesMayGo(LotStanding::scrapped, true));
}
