#include "analytics/fastness/pass_rule.hpp"
#include "tests/analytics/fastness/figures.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <limits>
#include <random>
#include <vector>

using namespace holdfast::analytics;
using namespace holdfast::analytics::testing;

namespace {

// Limits of house rules: common practice.
Criterion asks(Quantity quantity, Bound bound, TestValue limit, std::optional<int> cycle = std::nullopt) {
    Criterion result;
    result.quantity = quantity;
    result.bound = bound;
    result.limit = limit;
    result.place.cycle = cycle;
    return result;
}
TestResult at(int cycle, Quantity quantity, TestValue value) {
    return {quantity, {}, value, {cycle, std::nullopt}};
}
TestResult pulled(double elongation, CrackClass seen) {
    return {Quantity::crackClass, {}, seen, {std::nullopt, percent(elongation)}};
}
TestResult once(Quantity quantity, TestValue value) {
    return {quantity, {}, value, {}};
}
Judgement judged(const std::vector<TestResult>& results, const PassRule& rule) {
    const auto judgement = judge(results, rule);
    REQUIRE(judgement);
    return *judgement;
}
CriterionOutcome outcome(const std::vector<TestResult>& results, const Criterion& criterion) {
    return judged(results, {{criterion}}).findings.at(0).outcome;
}

const PassRule kWash{{asks(Quantity::changeGrade, Bound::atLeast, grade("4"), 5),
                      asks(Quantity::stainingGrade, Bound::atLeast, grade("4"), 5),
                      asks(Quantity::cracked, Bound::is, false, 5), asks(Quantity::lifted, Bound::is, false, 5)}};

std::vector<TestResult> goodWash(int cycle) {
    return {at(cycle, Quantity::changeGrade, grade("4-5")), at(cycle, Quantity::stainingGrade, grade("4")),
            at(cycle, Quantity::cracked, false), at(cycle, Quantity::lifted, false)};
}
std::vector<TestResult> joined(std::vector<TestResult> x, const std::vector<TestResult>& y) {
    x.insert(x.end(), y.begin(), y.end());
    return x;
}

} // namespace

TEST_CASE("a wash that meets every criterion at its cycle passes", "[fastness][rule]") {
    const auto judgement = judged(joined(goodWash(1), goodWash(5)), kWash);
    CHECK(judgement.verdict == TestVerdict::passed);
    REQUIRE(judgement.findings.size() == 4);
    for (std::size_t i = 0; i < 4; ++i) {
        CHECK(judgement.findings[i].criterion == i);
        CHECK(judgement.findings[i].outcome == CriterionOutcome::met);
    }
    CHECK(std::get<Grade>(judgement.findings[1].result->value) == grade("4")); // the limit itself is met
}

TEST_CASE("a wash short of its cycles is not judged, and says what is missing", "[fastness][rule]") {
    const auto judgement = judged(goodWash(3), kWash);
    CHECK(judgement.verdict == TestVerdict::notJudged);
    CHECK(judgement.findings[0].outcome == CriterionOutcome::missing);
    CHECK_FALSE(judgement.findings[0].result);
    CHECK(judged({}, kWash).verdict == TestVerdict::notJudged);
}

TEST_CASE("a third wash that fails fails the rule for five", "[fastness][rule]") {
    auto results = goodWash(3);
    results[0].value = grade("3-4");
    const auto judgement = judged(results, kWash);
    CHECK(judgement.verdict == TestVerdict::failed);
    CHECK(judgement.findings[0].outcome == CriterionOutcome::failed);
    CHECK(std::get<Grade>(judgement.findings[0].result->value) == grade("3-4"));
    CHECK(judgement.findings[0].result->place.cycle == 3);
    CHECK(judgement.findings[1].outcome == CriterionOutcome::missing);
}

TEST_CASE("a cycle beyond the one asked for shows that it was met, never that it failed", "[fastness][rule]") {
    CHECK(judged(goodWash(6), kWash).verdict == TestVerdict::passed);
    auto worn = goodWash(20);
    worn[0].value = grade("2");
    CHECK(judged(worn, kWash).findings[0].outcome == CriterionOutcome::missing);
    CHECK(judged(joined(goodWash(5), worn), kWash).verdict == TestVerdict::passed);
}

TEST_CASE("a criterion for one place only looks nowhere else", "[fastness][rule]") {
    auto shrink = asks(Quantity::changeLengthwise, Bound::within, percent(5), 1);
    shrink.onlyThere = true;
    CHECK(outcome({at(1, Quantity::changeLengthwise, percent(-5.0))}, shrink) == CriterionOutcome::met);
    CHECK(outcome({at(1, Quantity::changeLengthwise, percent(5.1))}, shrink) == CriterionOutcome::failed);
    CHECK(outcome({at(1, Quantity::changeLengthwise, percent(-5.1))}, shrink) == CriterionOutcome::failed);
    CHECK(outcome({at(0, Quantity::changeLengthwise, percent(-9))}, shrink) == CriterionOutcome::missing);
    CHECK(outcome({at(2, Quantity::changeLengthwise, percent(-1))}, shrink) == CriterionOutcome::missing);
}

TEST_CASE("without a place every value has to meet the limit", "[fastness][rule]") {
    const auto dry = asks(Quantity::rubDryGrade, Bound::atLeast, grade("4"));
    CHECK(outcome({once(Quantity::rubDryGrade, grade("4"))}, dry) == CriterionOutcome::met);
    CHECK(outcome({once(Quantity::rubDryGrade, grade("5")), at(3, Quantity::rubDryGrade, grade("3-4"))}, dry) ==
          CriterionOutcome::failed);
    CHECK(outcome({once(Quantity::rubWetGrade, grade("5"))}, dry) == CriterionOutcome::missing);
}

TEST_CASE("rub is judged dry and wet each by its own limit", "[fastness][rule]") {
    // ISO 105-X12 tests both; 4 dry and 3 wet, common practice.
    const PassRule rub{{asks(Quantity::rubDryGrade, Bound::atLeast, grade("4")),
                        asks(Quantity::rubWetGrade, Bound::atLeast, grade("3"))}};
    CHECK(judged({once(Quantity::rubDryGrade, grade("4")), once(Quantity::rubWetGrade, grade("3"))}, rub).verdict ==
          TestVerdict::passed);
    CHECK(judged({once(Quantity::rubDryGrade, grade("3")), once(Quantity::rubWetGrade, grade("3"))}, rub).verdict ==
          TestVerdict::failed);
    CHECK(judged({once(Quantity::rubDryGrade, grade("5"))}, rub).verdict == TestVerdict::notJudged);
}

TEST_CASE("a crack at or below the elongation asked for fails, one above it does not", "[fastness][rule]") {
    auto jersey = asks(Quantity::crackClass, Bound::atMost, CrackClass::hairline);
    jersey.place.elongation = percent(50);
    CHECK(outcome({pulled(50, CrackClass::hairline)}, jersey) == CriterionOutcome::met);
    CHECK(outcome({pulled(60, CrackClass::noCrack)}, jersey) == CriterionOutcome::met);
    CHECK(outcome({pulled(50, CrackClass::breaks)}, jersey) == CriterionOutcome::failed);
    CHECK(outcome({pulled(25, CrackClass::powders), pulled(50, CrackClass::noCrack)}, jersey) ==
          CriterionOutcome::failed);
    CHECK(outcome({pulled(50, CrackClass::noCrack), pulled(75, CrackClass::powders)}, jersey) == CriterionOutcome::met);
    CHECK(outcome({pulled(25, CrackClass::noCrack)}, jersey) == CriterionOutcome::missing);
    CHECK(outcome({once(Quantity::crackClass, CrackClass::noCrack)}, jersey) == CriterionOutcome::missing);
}

TEST_CASE("a pull after washing has both a cycle and an elongation", "[fastness][rule]") {
    auto both = asks(Quantity::crackClass, Bound::atMost, CrackClass::noCrack, 5);
    both.place.elongation = percent(50);
    const auto result = [](int cycle, double elongation, CrackClass seen) {
        return TestResult{Quantity::crackClass, {}, seen, {cycle, percent(elongation)}};
    };
    CHECK(outcome({result(5, 50, CrackClass::noCrack)}, both) == CriterionOutcome::met);
    CHECK(outcome({result(6, 75, CrackClass::noCrack)}, both) == CriterionOutcome::met);
    CHECK(outcome({result(3, 75, CrackClass::noCrack)}, both) == CriterionOutcome::missing); // farther, but too early
    CHECK(outcome({result(3, 75, CrackClass::breaks)}, both) == CriterionOutcome::missing);
    CHECK(outcome({result(3, 25, CrackClass::breaks)}, both) == CriterionOutcome::failed);
    CHECK(outcome({result(5, 25, CrackClass::noCrack)}, both) == CriterionOutcome::missing);
}

TEST_CASE("fibres through an intact film are a false wash-out, not a failure", "[fastness][rule]") {
    auto results = goodWash(5);
    results[0].value = grade("2-3"); // grey with fibres
    CHECK(judged(results, kWash).verdict == TestVerdict::failed);
    results.push_back(at(5, Quantity::fibresStanding, true));
    const auto judgement = judged(results, kWash);
    CHECK(judgement.verdict == TestVerdict::notJudged);
    CHECK(judgement.findings[0].outcome == CriterionOutcome::hiddenByFibres);
    CHECK(std::get<Grade>(judgement.findings[0].result->value) == grade("2-3"));
}

TEST_CASE("a print graded again with its fibres taken off is judged by that", "[fastness][rule]") {
    auto results =
        joined(goodWash(5), {at(5, Quantity::fibresStanding, true), at(5, Quantity::changeGrade, grade("2"))});
    CHECK(judged(results, kWash).verdict == TestVerdict::passed);
    results[0].value = grade("3-4"); // no better than a hidden one
    CHECK(judged(results, kWash).verdict == TestVerdict::notJudged);
    results[0] = at(4, Quantity::changeGrade, grade("5")); // another time
    CHECK(judged(results, kWash).findings[0].outcome == CriterionOutcome::hiddenByFibres);
}

TEST_CASE("fibres excuse nothing where the film was not seen to be whole", "[fastness][rule]") {
    const auto change = asks(Quantity::changeGrade, Bound::atLeast, grade("4"), 5);
    const std::vector<TestResult> grey{at(5, Quantity::changeGrade, grade("2")), at(5, Quantity::fibresStanding, true)};
    CHECK(outcome(grey, change) == CriterionOutcome::failed);
    CHECK(outcome(joined(grey, {at(5, Quantity::lifted, false)}), change) == CriterionOutcome::failed);
    CHECK(outcome(joined(grey, {at(5, Quantity::lifted, false), at(5, Quantity::cracked, true)}), change) ==
          CriterionOutcome::failed);
    CHECK(outcome(joined(grey, {at(3, Quantity::lifted, false), at(3, Quantity::cracked, false)}), change) ==
          CriterionOutcome::failed); // looked at another time
    CHECK(outcome(joined(grey, {at(5, Quantity::lifted, false), at(5, Quantity::cracked, false)}), change) ==
          CriterionOutcome::hiddenByFibres);
}

TEST_CASE("fibres never excuse staining, cracks or a film that lifts", "[fastness][rule]") {
    auto results = joined(goodWash(5), {at(5, Quantity::fibresStanding, true)});
    results[1].value = grade("3");
    CHECK(judged(results, kWash).verdict == TestVerdict::failed);
    results[1].value = grade("4");
    CHECK(judged(results, kWash).verdict == TestVerdict::passed);
    results[3].value = true;
    CHECK(judged(results, kWash).verdict == TestVerdict::failed);
}

TEST_CASE("standing fibres asked for by a rule are a remark and decide nothing", "[fastness][rule]") {
    auto rule = kWash;
    rule.criteria.push_back(asks(Quantity::fibresStanding, Bound::is, false, 5));
    const auto stood = judged(joined(goodWash(5), {at(5, Quantity::fibresStanding, true)}), rule);
    CHECK(stood.verdict == TestVerdict::passed);
    CHECK(stood.findings[4].outcome == CriterionOutcome::remarked);
    CHECK(judged(goodWash(5), rule).verdict == TestVerdict::notJudged); // nobody looked
    const PassRule only{{asks(Quantity::fibresStanding, Bound::is, false)}};
    CHECK(judged({once(Quantity::fibresStanding, true)}, only).verdict == TestVerdict::notJudged);
}

TEST_CASE("of several values that fail the worst is named", "[fastness][rule]") {
    const auto finding = judged({at(1, Quantity::changeGrade, grade("3")), at(2, Quantity::changeGrade, grade("1-2")),
                                 at(3, Quantity::changeGrade, grade("3-4"))},
                                kWash)
                             .findings[0];
    CHECK(finding.result->place.cycle == 2);
    const auto difference = asks(Quantity::colourDifference, Bound::atMost, 2.0);
    const auto worst =
        judged({once(Quantity::colourDifference, 2.5), once(Quantity::colourDifference, 7.0)}, {{difference}})
            .findings[0];
    CHECK(std::get<double>(worst.result->value) == 7.0);
}

TEST_CASE("a number exactly at its limit meets it", "[fastness][rule]") {
    const auto difference = asks(Quantity::colourDifference, Bound::atMost, 0.3);
    CHECK(outcome({once(Quantity::colourDifference, 0.1 + 0.2)}, difference) == CriterionOutcome::met); // decisions 0
    CHECK(outcome({once(Quantity::colourDifference, 0.3001)}, difference) == CriterionOutcome::failed);
    const auto recovers = asks(Quantity::recovery, Bound::atLeast, percent(88));
    CHECK(outcome({once(Quantity::recovery, percent(88))}, recovers) == CriterionOutcome::met);
    CHECK(outcome({once(Quantity::recovery, percent(87.9))}, recovers) == CriterionOutcome::failed);
}

TEST_CASE("methods of the shop's own are told apart by name", "[fastness][rule]") {
    auto folds = asks(Quantity::ownNumber, Bound::atLeast, 20.0);
    folds.ownName = "folds";
    TestResult result = once(Quantity::ownNumber, 25.0);
    result.ownName = "folds";
    CHECK(outcome({result}, folds) == CriterionOutcome::met);
    result.ownName = "twists";
    CHECK(outcome({result}, folds) == CriterionOutcome::missing);
}

TEST_CASE("the order of results and of criteria changes no outcome", "[fastness][rule]") {
    std::mt19937 random{11};
    auto results = joined(joined(goodWash(1), goodWash(3)), goodWash(5));
    results[4].value = grade("3");
    results.push_back(at(3, Quantity::fibresStanding, true));
    const auto first = judged(results, kWash);
    for (int i = 0; i < 50; ++i) {
        std::shuffle(results.begin(), results.end(), random);
        const auto again = judged(results, kWash);
        REQUIRE(again.verdict == first.verdict);
        for (std::size_t k = 0; k < again.findings.size(); ++k)
            REQUIRE(again.findings[k].outcome == first.findings[k].outcome);
    }
}

TEST_CASE("a worse grade never makes a verdict better", "[fastness][rule]") {
    for (std::size_t other = 0; other < Grade::kSteps; ++other) {
        bool failedAbove = false;
        for (std::size_t step = Grade::kSteps; step-- > 0;) {
            auto results = joined(goodWash(5), {at(3, Quantity::changeGrade, Grade::fromStep(step))});
            results[0].value = Grade::fromStep(other);
            const bool failed = judged(results, kWash).verdict == TestVerdict::failed;
            if (failedAbove && !failed)
                FAIL("better with a worse grade");
            failedAbove = failed;
        }
        CHECK(failedAbove);
    }
}

TEST_CASE("results of the wrong kind, without a number or at no place are refused by their row",
          "[fastness][rule][hostile]") {
    const auto fault = [](const TestResult& result) {
        const std::vector<TestResult> results{at(5, Quantity::lifted, false), result};
        const auto judgement = judge(results, kWash);
        REQUIRE_FALSE(judgement);
        CHECK(judgement.error().index == 1);
        return judgement.error().fault;
    };
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(fault(at(5, Quantity::changeGrade, 4.0)) == ResultFault::valueOfAnotherKind);
    CHECK(fault(at(5, Quantity::lifted, grade("4"))) == ResultFault::valueOfAnotherKind);
    CHECK(fault(at(5, Quantity::colourDifference, nan)) == ResultFault::valueNotFinite);
    CHECK(fault(at(5, Quantity::recovery, percent(nan))) == ResultFault::valueNotFinite);
    CHECK(fault(at(-1, Quantity::lifted, false)) == ResultFault::placeInvalid);
    CHECK(fault(pulled(0, CrackClass::noCrack)) == ResultFault::placeInvalid);
    CHECK(fault(once(Quantity::ownYesNo, true)) == ResultFault::nameMissing);
    CHECK(judge({}, PassRule{}).error() == ResultFaultAt{ResultFault::ruleInvalid, 0});
}
