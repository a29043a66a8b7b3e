#include "analytics/fastness/pass_rule.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;

namespace {

Criterion criterion(Quantity quantity, Bound bound, TestValue limit) {
    Criterion result;
    result.quantity = quantity;
    result.bound = bound;
    result.limit = limit;
    return result;
}
std::vector<RuleFaultAt> faults(const Criterion& criterion) {
    return faultsOf(PassRule{{criterion}});
}

} // namespace

TEST_CASE("a rule of every kind of criterion can be used", "[fastness][rule]") {
    const PassRule rule{{criterion(Quantity::changeGrade, Bound::atLeast, Grade::fromStep(6)),
                         criterion(Quantity::crackClass, Bound::atMost, CrackClass::hairline),
                         criterion(Quantity::changeLengthwise, Bound::within, RelativeLength::fromPercent(5)),
                         criterion(Quantity::recovery, Bound::atLeast, RelativeLength::fromPercent(85)),
                         criterion(Quantity::colourDifference, Bound::atMost, 2.0),
                         criterion(Quantity::lifted, Bound::is, false),
                         criterion(Quantity::fibresStanding, Bound::is, false)}};
    CHECK(faultsOf(rule).empty());
}

TEST_CASE("a rule without a criterion judges nothing and is refused", "[fastness][rule][hostile]") {
    CHECK(faultsOf({}) == std::vector<RuleFaultAt>{{RuleFault::noCriterion, 0}});
}

TEST_CASE("a limit has to be of its quantity's kind", "[fastness][rule][hostile]") {
    const auto wrong = [](Quantity quantity, Bound bound, TestValue limit) {
        return faults(criterion(quantity, bound, limit)) ==
               std::vector<RuleFaultAt>{{RuleFault::limitOfAnotherKind, 0}};
    };
    CHECK(wrong(Quantity::changeGrade, Bound::atLeast, 4.0));
    CHECK(wrong(Quantity::crackClass, Bound::atMost, false));
    CHECK(wrong(Quantity::recovery, Bound::atLeast, 85.0));
    CHECK(wrong(Quantity::colourDifference, Bound::atMost, Grade::best()));
    CHECK(wrong(Quantity::lifted, Bound::is, 0.0));
}

TEST_CASE("a bound has to suit its quantity", "[fastness][rule][hostile]") {
    const auto wrong = [](Quantity quantity, Bound bound, TestValue limit) {
        return faults(criterion(quantity, bound, limit)) ==
               std::vector<RuleFaultAt>{{RuleFault::boundOfAnotherKind, 0}};
    };
    CHECK(wrong(Quantity::lifted, Bound::atLeast, true));
    CHECK(wrong(Quantity::changeGrade, Bound::is, Grade::best()));
    CHECK(wrong(Quantity::changeGrade, Bound::within, Grade::best()));
    CHECK(wrong(Quantity::crackClass, Bound::atLeast, CrackClass::hairline)); // would ask for cracks
    CHECK(wrong(Quantity::recovery, Bound::is, RelativeLength::fromPercent(85)));
}

TEST_CASE("limits and places that cannot be are refused", "[fastness][rule][hostile]") {
    const double nan = std::numeric_limits<double>::quiet_NaN();
    CHECK(faults(criterion(Quantity::colourDifference, Bound::atMost, nan)) ==
          std::vector<RuleFaultAt>{{RuleFault::limitNotFinite, 0}});
    auto early = criterion(Quantity::changeGrade, Bound::atLeast, Grade::best());
    early.place.cycle = -1;
    CHECK(faults(early) == std::vector<RuleFaultAt>{{RuleFault::placeInvalid, 0}});
    early.place.cycle = 0;
    CHECK(faults(early).empty());
    early.place.elongation = RelativeLength::fromPercent(0);
    CHECK(faults(early) == std::vector<RuleFaultAt>{{RuleFault::placeInvalid, 0}});
    early.place.elongation = RelativeLength::fromPercent(nan);
    CHECK(faults(early) == std::vector<RuleFaultAt>{{RuleFault::placeInvalid, 0}});
}

TEST_CASE("a quantity of the shop's own needs a name", "[fastness][rule][hostile]") {
    auto own = criterion(Quantity::ownNumber, Bound::atMost, 3.0);
    CHECK(faults(own) == std::vector<RuleFaultAt>{{RuleFault::nameMissing, 0}});
    own.ownName = "folds before it cracks";
    CHECK(faults(own).empty());
    CHECK(isOwn(Quantity::ownGrade));
    CHECK(isOwn(Quantity::ownYesNo));
    CHECK_FALSE(isOwn(Quantity::lifted));
}

TEST_CASE("all that is wrong with a rule is said at once, each with its criterion", "[fastness][rule][hostile]") {
    auto late = criterion(Quantity::lifted, Bound::atMost, 1.0);
    late.place.cycle = -2;
    const PassRule rule{{criterion(Quantity::changeGrade, Bound::atLeast, Grade::best()), late}};
    CHECK(faultsOf(rule) == std::vector<RuleFaultAt>{{RuleFault::limitOfAnotherKind, 1},
                                                     {RuleFault::boundOfAnotherKind, 1},
                                                     {RuleFault::placeInvalid, 1}});
}
