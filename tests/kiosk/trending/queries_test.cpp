// What trends are made of, read from a real small book.
#include "kiosk/records/trend_queries.hpp"
#include "kiosk/shop/trending/suspects.hpp"
#include "tests/kiosk/records/support/lot_book.hpp"

using namespace holdfast::kiosk::records;
using namespace holdfast::kiosk::records::testing;
namespace a = holdfast::analytics;

namespace {

TrendFacts factsOf(const LotShop& lot, const TrendRange& range = {}) {
    const auto facts = trendFacts(lot.shop.db(), range);
    REQUIRE(facts);
    return *facts;
}

} // namespace

TEST_CASE("an empty book has no facts, and says so without a fault", "[trending][records]") {
    const Shop shop;
    const auto facts = trendFacts(shop.db());
    REQUIRE(facts);
    CHECK(facts->lots.empty());
    CHECK(facts->readings.empty());
    CHECK(facts->firstAt == 0);
}

TEST_CASE("a lot stands with its run, readings, tests, holds and pieces", "[trending][records]") {
    LotShop lot;
    const auto good = lot.shop.read(a::Word::cured);
    const auto bad = lot.shop.read(a::Word::underCured, ReadingReason::worry);
    lot.print();
    lot.load("w1", 1);
    REQUIRE(lot.say(lot.test(TestOutcome::failed, 5, "w1"), kFirst));
    REQUIRE(lot.say(LotShop::hold("h1", HoldCause::reading, bad, PieceRange{1, 10})));
    REQUIRE(lot.say(ReadingMissed{kLot, DueReadingKind::last, 90}));
    lot.close();
    PiecesMoved moved{kLot, PiecePlace::shipped, 96, {}, "school", {"C1", "C2"}};
    REQUIRE(lot.say(moved));
    ComplaintTaken complaint{"c1", 7, "school"};
    complaint.lot = kLot;
    complaint.run = kRun;
    REQUIRE(lot.say(complaint));
    FindingSigned finding;
    finding.complaint = "c1";
    finding.cause = "belt-too-fast";
    finding.signers = {12};
    REQUIRE(lot.say(finding));

    const auto facts = factsOf(lot);
    REQUIRE(facts.lots.size() == 1);
    REQUIRE(facts.runs.size() == 1);
    CHECK(facts.lots[0].id == kLot);
    CHECK(facts.lots[0].run == 0);
    CHECK(facts.lots[0].closed);
    CHECK(facts.lots[0].state == LotState::onHold);
    CHECK(facts.lots[0].shipped == 96);
    CHECK(facts.runs[0].number == 20418);
    CHECK_FALSE(facts.runs[0].families.empty());
    CHECK(std::is_sorted(facts.runs[0].families.begin(), facts.runs[0].families.end()));
    REQUIRE(facts.readings.size() == 2);
    CHECK(facts.readings[0].id == good);
    CHECK(facts.readings[0].lot == 0);
    CHECK(facts.readings[0].margin.low.has_value());
    CHECK(facts.readings[1].reason == ReadingReason::worry);
    CHECK(facts.readings[1].word == a::Word::underCured);
    REQUIRE(facts.tests.size() == 1);
    CHECK(facts.tests[0].kind == TestKind::wash);
    CHECK(facts.tests[0].counts == TestOutcome::failed);
    CHECK(facts.tests[0].cycle == 5);
    CHECK(facts.tests[0].load == 0);
    REQUIRE(facts.holds.size() == 1);
    CHECK(facts.holds[0].because == bad);
    CHECK_FALSE(facts.holds[0].decided);
    CHECK(facts.missed.size() == 1);
    REQUIRE(facts.shipments.size() == 1);
    CHECK(facts.shipments[0].cartons.size() == 2);
    REQUIRE(facts.complaints.size() == 1);
    CHECK(facts.complaints[0].closed);
    CHECK(facts.complaints[0].lot == 0);
    REQUIRE(facts.findings.size() == 1);
    CHECK(facts.findings[0].complaint == 0);
    CHECK(facts.findings[0].at > 0);
}

TEST_CASE("struck readings and void loads count for nothing", "[trending][records]") {
    LotShop lot;
    const auto struck = lot.shop.read(a::Word::underCured);
    REQUIRE(lot.say(ReadingStruck{struck, StruckCause::probeFellOut}));
    lot.print();
    lot.load("w1", 1);
    REQUIRE(lot.say(lot.test(TestOutcome::failed, 5, "w1"), kFirst));
    REQUIRE(lot.say(LotShop::judged("w1", LoadWord::tooHarsh)));
    const auto facts = factsOf(lot);
    CHECK(facts.readings.empty());
    REQUIRE(facts.tests.size() == 1);
    CHECK(facts.tests[0].counts == TestOutcome::inAVoidLoad);
}

TEST_CASE("a decision stands with its hold", "[trending][records]") {
    LotShop lot;
    const auto bad = lot.shop.read(a::Word::underCured);
    REQUIRE(lot.say(LotShop::hold("h1", HoldCause::reading, bad, PieceRange{1, 10})));
    lot.close();
    auto decision = LotShop::decision("d1", DecisionWord::released, {"h1"});
    decision.belowLimit = true;
    REQUIRE(lot.say(decision));
    const auto facts = factsOf(lot);
    REQUIRE(facts.holds.size() == 1);
    CHECK(facts.holds[0].decided == DecisionWord::released);
    CHECK(facts.holds[0].belowLimit);
}

TEST_CASE("a bucket stands with every bucket mixed into it", "[trending][records]") {
    LotShop lot;
    for (std::int64_t number = 1; number <= 3; ++number) {
        BucketOpened pail;
        pail.bucket = "b" + std::to_string(number);
        pail.number = number;
        pail.family = "low-cure";
        REQUIRE(lot.say(pail));
    }
    MixMade mix{"m4", 4, "sunset", "orange", {{"b1", 2.0}, {"b2", 1.0}, {"b3", 0.0}}};
    REQUIRE(lot.say(mix));
    MixMade more{"m5", 5, "dusk", "brown", {{"m4", 1.0}, {"b3", 1.0}}};
    REQUIRE(lot.say(more));
    const auto facts = factsOf(lot);
    REQUIRE(facts.buckets.size() == 5);
    CHECK(facts.buckets[3].within == std::vector<FactIndex>{0, 1, 3}); // no mass is no part
    CHECK(facts.buckets[4].within == std::vector<FactIndex>{0, 1, 2, 3, 4});
    CHECK(facts.buckets[4].isMix);
    CHECK(facts.events.size() >= 5); // opened
}

TEST_CASE("only lots opened in the time asked for are given, with what is theirs", "[trending][records]") {
    LotShop lot;
    const auto good = lot.shop.read(a::Word::cured);
    const auto now = lot.shop.now();
    CHECK(factsOf(lot, {INT64_MIN, 0}).lots.empty());
    CHECK(factsOf(lot, {INT64_MIN, 0}).readings.empty());
    CHECK(factsOf(lot, {now + 1, INT64_MAX}).lots.empty());
    CHECK(factsOf(lot, {0, now + 1}).readings.size() == 1);
}
