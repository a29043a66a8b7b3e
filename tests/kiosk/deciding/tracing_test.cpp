#include "kiosk/shop/tracing/trace_page.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::tracing;
using records::TestKind;
using records::TestOutcome;

namespace {

records::ReadingRow readingRow(const std::string& id, analytics::Word word, std::int64_t at) {
    records::ReadingRow row;
    row.id = id;
    row.lot = "lot-1";
    row.lotNumber = 1;
    row.word = word;
    row.takenAt = at;
    return row;
}

records::TestRow test(const std::string& method, TestOutcome outcome, std::int64_t at, std::int64_t person) {
    records::TestRow row;
    row.done.print = "p1";
    row.done.method = method;
    row.done.outcome = outcome;
    row.at = at;
    row.person = person;
    return row;
}

records::MethodDescribed method(const std::string& key, TestKind kind, bool eachLot) {
    records::MethodDescribed made;
    made.key = key;
    made.kind = kind;
    made.eachLot = eachLot;
    return made;
}

/// One lot of 200 plastisol pieces: a cured reading, an under-cured one, print p1 stretched and washed three times of
/// five, one piece kept.
TraceFacts facts() {
    TraceFacts made;
    made.plan.run = "run-1";
    LotTraced lot;
    lot.lot.id = "lot-1";
    lot.lot.number = 1;
    lot.pieces.made = 200;
    made.lots = {lot};
    made.readings = {readingRow("r1", analytics::Word::cured, 1000),
                     readingRow("r2", analytics::Word::underCured, 2000)};
    records::PrintRow print;
    print.named.print = "p1";
    print.named.number = 31;
    print.named.lot = "lot-1";
    print.lotNumber = 1;
    print.chemistries = {analytics::Chemistry::plastisol};
    print.named.retained = records::RetainedPlace{"shelf 2", std::nullopt, false};
    made.prints = {print};
    made.methods = {method("stretch", TestKind::stretch, true), method("wash-house", TestKind::wash, true)};
    made.methods.back().programme = records::WashProgramme{};
    made.tests = {test("stretch", TestOutcome::passed, 3000, 7)};
    auto wash = test("wash-house", TestOutcome::noted, 4000, 7);
    wash.done.cycle = 3;
    made.tests.push_back(wash);
    return made;
}

bool hasGap(const std::vector<NotTested>& gaps, Gap gap, TestKind kind = TestKind::own) {
    return std::any_of(gaps.begin(), gaps.end(), [&](const NotTested& one) {
        return one.gap == gap && (kind == TestKind::own || one.kind == kind);
    });
}

} // namespace

TEST_CASE("what happened stands in the order of time, failures among it", "[tracing]") {
    auto made = facts();
    records::HoldRow hold;
    hold.at = 2500;
    hold.placed.lot = "lot-1";
    made.lots.front().holds = {hold};
    records::DecisionRow decision;
    decision.at = 5000;
    decision.signedAs.signers = {9};
    made.lots.front().decisions = {decision};
    const auto page = tracePage(made);
    REQUIRE(page.trail.size() == 6); // two readings, two tests, a hold, a decision
    CHECK(std::is_sorted(page.trail.begin(), page.trail.end(),
                         [](const auto& one, const auto& other) { return one.at < other.at; }));
    CHECK(std::holds_alternative<records::ReadingRow>(page.trail.at(1).what));
    CHECK(std::holds_alternative<records::HoldRow>(page.trail.at(2).what));
    CHECK(std::holds_alternative<records::DecisionRow>(page.trail.at(5).what));
    CHECK(page.trail.at(2).lot == 1);
}

TEST_CASE("readings are counted by what they said; struck and refused ones apart", "[tracing]") {
    auto made = facts();
    made.readings.push_back(readingRow("r3", analytics::Word::overheated, 2100));
    made.readings.push_back(readingRow("r4", analytics::Word::notProven, 2200));
    made.readings.push_back(readingRow("r5", analytics::Word::underCured, 2300));
    made.readings.back().struck = records::StruckCause::probeFellOut;
    made.readings.push_back(readingRow("r6", analytics::Word::refused, 2400));
    made.readings.back().refused = true;
    const auto counts = tracePage(made).counts;
    CHECK(counts.readings == 4);
    CHECK(counts.cured == 1);
    CHECK(counts.bad == 2);
    CHECK(counts.notProven == 1);
    CHECK(counts.struck == 1);
    CHECK(counts.refused == 1);
}

TEST_CASE("everybody who put a name to it is named once with what they did", "[tracing]") {
    auto made = facts();
    records::DecisionRow decision;
    decision.signedAs.signers = {7, 9};
    made.lots.front().decisions = {decision};
    records::FindingSigned finding;
    finding.signers = {9};
    made.lots.front().findings = {finding};
    made.tests.push_back(test("rub", TestOutcome::passed, 6000, 0)); // nobody's name
    made.crews = {{{3, 7}, 1}, {{3}, 2}};
    const auto page = tracePage(made);
    CHECK(page.people == std::vector<PersonTraced>{{3, {Deed::stood}},
                                                   {7, {Deed::stood, Deed::tested, Deed::decided}},
                                                   {9, {Deed::decided, Deed::found}}});
    CHECK(page.unnamed == 2);
}

TEST_CASE("makers' batches come out of the tree, each once, mixes with their parts under them", "[tracing]") {
    records::BucketTree pail;
    pail.bucket.number = 71;
    pail.bucket.batch = "B-5";
    pail.share = 0.25;
    auto other = pail;
    other.bucket.number = 72;
    other.bucket.batch = "B-6";
    other.share = 0.75;
    records::BucketTree mix;
    mix.bucket.number = 80;
    mix.bucket.isMix = true;
    mix.parts = {pail, other};
    auto made = facts();
    made.buckets = {{1, "white", mix}, {2, "black", pail}};
    const auto page = tracePage(made);
    REQUIRE(page.batches.size() == 4);
    CHECK(page.batches.at(0).colour == "white");
    CHECK(page.batches.at(1).depth == 1);
    CHECK(page.batches.at(1).colour.empty());
    CHECK(page.batches.at(2).share == Approx(0.75));
    CHECK(page.batches.at(3).layer == 2);
    CHECK(page.makersBatches == std::vector<std::string>{"B-5", "B-6"});
}

TEST_CASE("what was not tested is said: kinds, owed methods, cycles still to come", "[tracing]") {
    const auto gaps = tracePage(facts()).notTested;
    CHECK_FALSE(hasGap(gaps, Gap::kindNever, TestKind::stretch)); // passed
    CHECK(hasGap(gaps, Gap::kindNever, TestKind::rub));
    CHECK(hasGap(gaps, Gap::kindNever, TestKind::wash)); // a noted cycle is no test
    CHECK(hasGap(gaps, Gap::kindNever, TestKind::shrink));
    CHECK(hasGap(gaps, Gap::kindNever, TestKind::solventRub));       // all plastisol
    CHECK_FALSE(hasGap(gaps, Gap::kindNever, TestKind::bleedWatch)); // none is due
    CHECK(hasGap(gaps, Gap::methodMissing, TestKind::wash));
    CHECK_FALSE(hasGap(gaps, Gap::methodMissing, TestKind::stretch));
    const auto cycles =
        std::find_if(gaps.begin(), gaps.end(), [](const auto& gap) { return gap.gap == Gap::cyclesMissing; });
    REQUIRE(cycles != gaps.end());
    CHECK(cycles->done == 3);
    CHECK(cycles->count == 5); // five at least (job.md, "How prints are tested")
    CHECK(cycles->print == 31);
    CHECK_FALSE(hasGap(gaps, Gap::noRetainedPiece));
    CHECK_FALSE(hasGap(gaps, Gap::chemicalContent));
}

TEST_CASE("a test in a void load was none, and a bleed watch is owed where one is due", "[tracing]") {
    auto made = facts();
    made.tests.front().done.outcome = TestOutcome::inAVoidLoad;
    made.tests.back().done.outcome = TestOutcome::inAVoidLoad;
    made.bleedWatchDue = true;
    const auto gaps = notTested(made);
    CHECK(hasGap(gaps, Gap::kindNever, TestKind::stretch));
    CHECK(hasGap(gaps, Gap::kindNever, TestKind::bleedWatch));
    CHECK_FALSE(hasGap(gaps, Gap::cyclesMissing)); // a void cycle is none
    CHECK(tracePage(made).counts.voidTests == 2);
}

TEST_CASE("solvent rub is not missed on an ink that it would spoil", "[tracing]") {
    auto made = facts();
    made.prints.front().chemistries.push_back(analytics::Chemistry::waterBased); // plastisol only (job.md)
    CHECK_FALSE(hasGap(notTested(made), Gap::kindNever, TestKind::solventRub));
}

TEST_CASE("a lot without a reading that counts and missed readings are named", "[tracing]") {
    auto made = facts();
    made.readings.pop_back();
    made.readings.front().reason = records::ReadingReason::setUp;
    made.lots.front().missed.resize(2);
    const auto gaps = notTested(made);
    CHECK(gaps.front() == NotTested{Gap::noReading, 1});
    CHECK(gaps.at(1).gap == Gap::readingMissed);
    CHECK(gaps.at(1).count == 2);
}

TEST_CASE("children's wear always says that its chemistry was not tested here", "[tracing]") {
    auto made = facts();
    made.plan.childrensWear = true;
    made.prints.front().ended = records::PrintEnd::usedUp;
    const auto gaps = notTested(made);
    CHECK(gaps.back().gap == Gap::chemicalContent);
    CHECK(hasGap(gaps, Gap::noRetainedPiece)); // the only one is used up
}

TEST_CASE("cartons are counted once and corrected moves not at all", "[tracing]") {
    auto made = facts();
    records::MoveRow first;
    first.moved = {"lot-1", records::PiecePlace::shipped, 60, std::nullopt, "Kestrel", {"C-1", "C-2"}, std::nullopt};
    auto second = first;
    first.corrected = true;
    first.moved.cartons = {"C-9"};
    made.lots.front().moves = {first, second};
    made.lots.front().pieces.shipped = 60;
    const auto counts = tracePage(made).counts;
    CHECK(counts.cartons == 2);
    CHECK(counts.shipped == 60);
}
