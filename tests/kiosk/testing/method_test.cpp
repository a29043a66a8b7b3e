// Methods of the shop's own, with their own pass rule.
#include "kiosk/shop/testing/method_draft.hpp"
#include "tests/kiosk/testing/support/facts.hpp"

using namespace holdfast;
using namespace holdfast::testing_test;
using analytics::Bound;
using analytics::Quantity;
using shop::TestFaultCause;

namespace {

shop::MethodDraft own() {
    shop::MethodDraft draft;
    draft.name = "sweat patch";
    draft.steps = {"wet it", "", "wait an hour"};
    draft.rule = {{Quantity::ownGrade, "halo", Bound::atLeast, "4", "", "", false},
                  {Quantity::ownYesNo, "smells", Bound::is, "no", "", "", false},
                  {Quantity::ownNumber, "ring, mm", Bound::atMost, "2.5", "", "", false}};
    return draft;
}

} // namespace

TEST_CASE("a method of the shop's own is judged by its own rule without any code", "[testing][method]") {
    const auto method = shop::methodFrom(own(), {}, "key-1");
    REQUIRE(method);
    CHECK(method->key == "key-1");
    CHECK(method->revision == 1);
    CHECK(method->steps == std::vector<std::string>{"wet it", "wait an hour"});
    auto draft = shop::draftFor("print-7", *method);
    REQUIRE(draft.answers.size() == 3);
    answer(draft, Quantity::ownGrade, "4.5", "halo");
    answer(draft, Quantity::ownYesNo, "no", "smells");
    answer(draft, Quantity::ownNumber, "2.5", "ring, mm");
    const auto context = contextAt(kPrinted + kDay);
    CHECK(shop::testFrom(draft, context)->done.outcome == records::TestOutcome::passed);
    answer(draft, Quantity::ownNumber, "2.6", "ring, mm");
    const auto failed = shop::testFrom(draft, context);
    CHECK(failed->done.outcome == records::TestOutcome::failed);
    CHECK(failed->hold);
}

TEST_CASE("a method is changed by a new revision, and read back as it was typed", "[testing][method]") {
    const auto first = shop::methodFrom(own(), {}, "key-1");
    REQUIRE(first);
    auto again = shop::draftOf(*first, analytics::TemperatureUnit::celsius);
    CHECK(again.rule[0].limit == "4");
    CHECK(again.rule[2].limit == "2.5");
    again.name = "sweat patch, long";
    const auto second = shop::methodFrom(again, {}, "unused");
    REQUIRE(second);
    CHECK(second->key == "key-1");
    CHECK(second->revision == 2);
    for (const auto& starterMethod : shop::starterMethods()) { // every starter survives being opened and kept
        INFO(starterMethod.key);
        auto draft = shop::draftOf(starterMethod, analytics::TemperatureUnit::fahrenheit);
        auto kept = shop::methodFrom(draft, {}, "unused");
        REQUIRE(kept);
        CHECK(kept->revision == 2);
        CHECK(kept->dueHours == starterMethod.dueHours);
        CHECK(kept->pullPercent == starterMethod.pullPercent);
        CHECK(kept->rule.has_value() == starterMethod.rule.has_value());
        if (kept->rule) {
            REQUIRE(kept->rule->criteria.size() == starterMethod.rule->criteria.size());
            for (std::size_t i = 0; i < kept->rule->criteria.size(); ++i) {
                CHECK(kept->rule->criteria[i].limit == starterMethod.rule->criteria[i].limit);
                CHECK(kept->rule->criteria[i].place == starterMethod.rule->criteria[i].place);
            }
        }
        if (kept->programme) {
            CHECK(kept->programme->temperature == starterMethod.programme->temperature); // as authored
        }
    }
}

TEST_CASE("what cannot be a method is refused at its field, all at once", "[testing][method][refusal]") {
    const auto fault = [](const shop::MethodDraft& draft) { return onlyFault(shop::methodFrom(draft, {"Tape"}, "k")); };
    auto draft = own();
    draft.name = "tape"; // in any case of letters
    CHECK(fault(draft).cause == TestFaultCause::nameTaken);
    draft = own();
    draft.name.clear();
    CHECK(fault(draft).cause == TestFaultCause::nameMissing);
    draft = own();
    draft.steps = {"  "};
    CHECK(fault(draft).cause == TestFaultCause::stepsMissing);
    draft = own();
    draft.rule[0].ownName.clear();
    CHECK(fault(draft).cause == TestFaultCause::quantityNameMissing);
    CHECK(fault(draft).field == "rule.0.name");
    draft = own();
    draft.rule[0].limit = "4.2";
    CHECK(fault(draft).cause == TestFaultCause::gradeOffHalfSteps);
    draft = own();
    draft.rule[2].limit = "some";
    CHECK(fault(draft).cause == TestFaultCause::limitUnreadable);
    draft = own();
    draft.rule[1].bound = Bound::atLeast;
    CHECK(fault(draft).cause == TestFaultCause::boundUnfit);
    draft = own();
    draft.rule[0].cycle = "-2";
    CHECK(fault(draft).cause == TestFaultCause::placeUnfit);
    draft = own();
    draft.due = "24, 0";
    CHECK(fault(draft).cause == TestFaultCause::hoursNotAscending);
    draft = own();
    draft.kind = records::TestKind::wash;
    draft.cycles = "0";
    CHECK(fault(draft).cause == TestFaultCause::cyclesNotPositive);
    draft.cycles = "5";
    draft.temperature = "300";
    CHECK(fault(draft).cause == TestFaultCause::temperatureUnlikely);
    draft = own();
    draft.kind = records::TestKind::stretch;
    draft.pulls = "50, 25";
    CHECK(fault(draft).cause == TestFaultCause::pullsNotAscending);
    draft.pulls = "0, 25";
    CHECK(fault(draft).cause == TestFaultCause::pullsNotAscending);
}

TEST_CASE("a method in use is not deleted, but may be used no more", "[testing][method][refusal]") {
    const auto method = shop::methodFrom(own(), {}, "key-1");
    REQUIRE(method);
    const auto refused = onlyFault(shop::deleted(*method, true));
    CHECK(refused.cause == TestFaultCause::methodInUse);
    CHECK(refused.text == "sweat patch");
    CHECK(shop::deleted(*method, false)->withdrawn);
    CHECK(onlyFault(shop::deleted(starter("tape"), false)).cause == TestFaultCause::methodOfProgram);
    CHECK(shop::withdrawn(*method).revision == 2);
    CHECK_FALSE(shop::usedAgain(shop::withdrawn(*method)).withdrawn);
}
