// Entering tests: what is refused, what is judged, what it does to the lot.
#include "tests/kiosk/testing/support/facts.hpp"

using namespace holdfast;
using namespace holdfast::testing_test;
using analytics::Quantity;
using records::TestOutcome;
using shop::TestFaultCause;

namespace {

constexpr std::int64_t kRested = kPrinted + kDay;

shop::TestDraft washOf(int cycle, const std::string& colour, const std::string& stain) {
    auto draft = shop::draftFor("print-7", starter("wash-house"));
    draft.cycle = std::to_string(cycle);
    draft.load = "load-" + std::to_string(cycle);
    answer(draft, Quantity::changeGrade, colour);
    answer(draft, Quantity::stainingGrade, stain);
    answer(draft, Quantity::cracked, "no");
    answer(draft, Quantity::lifted, "no");
    return draft;
}

/// Washed so many times, one load a day, graded 4 and 4 after each but the last.
shop::TestContext washed(int loads) {
    auto context = contextAt(kRested + (loads + 1) * kDay);
    for (int i = 1; i <= loads; ++i) {
        context.loads.push_back(load(i, "print-7", kRested + i * kDay));
    }
    for (int i = 1; i < loads; ++i) {
        const auto made = shop::testFrom(washOf(i, "4", "4"), context);
        REQUIRE(made);
        context.tests.push_back(kept("test-" + std::to_string(i), made->done));
    }
    return context;
}

shop::TestDraft stretch() {
    auto draft = shop::draftFor("print-7", starter("stretch-jersey"));
    draft.pulls[0].seen = "no-crack";
    draft.pulls[1].seen = "hairline";
    return draft;
}

} // namespace

TEST_CASE("lengths of a pull give elongation, growth and recovery", "[testing][stretch]") {
    auto draft = stretch();
    draft.pulls.resize(1);
    draft.lengthwise = {"250", "312.5", "257.5"};
    const auto made = shop::testFrom(draft, contextAt(kRested));
    REQUIRE(made);
    // Terms of ASTM D3107 (stretch 100 (B − A)/A, growth 100 (C − A)/A, recovery 100 (B − C)/(B − A)): 25, 3 and 88 %.
    for (const auto& result : made->done.results) {
        if (result.quantity == Quantity::recovery) {
            CHECK(std::get<analytics::RelativeLength>(result.value).percent() == Approx(88.0).margin(1e-9));
        } else if (result.quantity == Quantity::growth) {
            CHECK(std::get<analytics::RelativeLength>(result.value).percent() == Approx(3.0).margin(1e-9));
        } else if (result.quantity == Quantity::crackClass) {
            REQUIRE(result.place.elongation);
            CHECK(result.place.elongation->percent() == Approx(25.0).margin(1e-9));
        } else if (result.quantity == Quantity::elongationHeld) {
            CHECK(std::get<analytics::RelativeLength>(result.value).percent() == Approx(25.0).margin(1e-9));
        }
    }
    CHECK(made->done.results.size() == 4);
    CHECK(made->done.outcome == TestOutcome::noted); // the method asks for 50 %, and nobody pulled that far
    CHECK_FALSE(made->hold);
}

TEST_CASE("a hairline at 50 % passes, breaks there fail and put the lot on hold", "[testing][stretch][hold]") {
    const auto passed = shop::testFrom(stretch(), contextAt(kRested));
    REQUIRE(passed);
    CHECK(passed->done.outcome == TestOutcome::passed);
    auto draft = stretch();
    draft.pulls[1].seen = "breaks";
    auto context = contextAt(kRested);
    context.pieces = 144;
    const auto failed = shop::testFrom(draft, context);
    REQUIRE(failed);
    CHECK(failed->done.outcome == TestOutcome::failed);
    REQUIRE(failed->hold);
    CHECK(failed->hold->cause == records::HoldCause::test);
    CHECK(failed->hold->because == "test-new");
    CHECK(failed->hold->hold == "hold-new");
    CHECK(failed->hold->lot == "lot-1");
    CHECK(failed->hold->bin == 12);
    CHECK(failed->hold->count == 144);
    CHECK_FALSE(failed->hold->pieces); // the whole lot
    CHECK_FALSE(failed->recall);
}

TEST_CASE("a failed test of a lot that went out is a recall to decide", "[testing][hold]") {
    auto draft = stretch();
    draft.pulls[1].seen = "powders";
    auto context = contextAt(kRested);
    context.shipped = true;
    const auto made = shop::testFrom(draft, context);
    REQUIRE(made);
    CHECK(made->hold);
    CHECK(made->recall);
}

TEST_CASE("lengths that cannot be are refused where they stand", "[testing][stretch][refusal]") {
    const auto fault = [](const std::string& original, const std::string& stretched, const std::string& relaxed) {
        auto draft = stretch();
        draft.lengthwise = {original, stretched, relaxed};
        return onlyFault(shop::testFrom(draft, contextAt(kRested)));
    };
    const auto zero = fault("0", "300", "");
    CHECK(zero.cause == TestFaultCause::gaugeNotPositive);
    CHECK(zero.field == "lengthwise.original");
    CHECK(fault("-250", "300", "").cause == TestFaultCause::gaugeNotPositive);
    CHECK(fault("0", "", "").cause == TestFaultCause::gaugeNotPositive);
    CHECK(fault("", "300", "").cause == TestFaultCause::gaugeMissing);
    const auto shorter = fault("250", "240", "");
    CHECK(shorter.cause == TestFaultCause::stretchedBelowOriginal);
    CHECK(shorter.field == "lengthwise.stretched");
    CHECK(fault("250", "300", "310").cause == TestFaultCause::relaxedAboveStretched);
    CHECK(fault("250", "250", "").cause == TestFaultCause::nothingStretched);
    CHECK(fault("250", "wide", "").cause == TestFaultCause::notANumber);
}

TEST_CASE("a pull needs to be one and to have been looked at", "[testing][stretch][refusal]") {
    auto draft = stretch();
    draft.pulls[0].percent = "0";
    CHECK(onlyFault(shop::testFrom(draft, contextAt(kRested))).cause == TestFaultCause::pullNotPositive);
    draft = stretch();
    draft.pulls[0].seen.clear();
    draft.pulls[1].seen.clear();
    CHECK(onlyFault(shop::testFrom(draft, contextAt(kRested))).cause == TestFaultCause::answerMissing);
    draft = stretch();
    draft.pulls[0].seen = "shattered";
    const auto unknown = onlyFault(shop::testFrom(draft, contextAt(kRested)));
    CHECK(unknown.cause == TestFaultCause::wordUnknown);
    CHECK(unknown.text == "shattered");
}

TEST_CASE("the change of size has its sign: shorter is negative", "[testing][shrink]") {
    auto draft = shop::draftFor("print-7", starter("shrink-iso"));
    draft.lengthwise = {"350.0", "", "336.0"};
    draft.widthwise = {"350", "", "353.5"};
    const auto made = shop::testFrom(draft, contextAt(kRested));
    REQUIRE(made);
    // ISO 5077, 100 (xt − x0)/x0: −4.0 % and +1.0 %.
    for (const auto& result : made->done.results) {
        const double percent = std::get<analytics::RelativeLength>(result.value).percent();
        CHECK(percent == Approx(result.quantity == Quantity::changeLengthwise ? -4.0 : 1.0).margin(1e-9));
    }
    CHECK(made->done.results.size() == 2);
    CHECK(made->done.outcome == TestOutcome::passed);
    draft.widthwise = {"250", "", "235"};
    CHECK(shop::testFrom(draft, contextAt(kRested))->done.outcome == TestOutcome::failed); // −6 % of ±5 %
    draft.widthwise = {};
    CHECK(onlyFault(shop::testFrom(draft, contextAt(kRested))).field == "widthwise.original");
    draft.widthwise = {"0", "", "240"};
    CHECK(onlyFault(shop::testFrom(draft, contextAt(kRested))).cause == TestFaultCause::gaugeNotPositive);
    draft.widthwise = {"250", "", "0"};
    CHECK(onlyFault(shop::testFrom(draft, contextAt(kRested))).cause == TestFaultCause::lengthNotPositive);
}

TEST_CASE("grades outside the scale and off the half steps are refused by name", "[testing][refusal]") {
    const auto fault = [](const std::string& typed) {
        auto draft = shop::draftFor("print-7", starter("rub-iso"));
        answer(draft, Quantity::rubDryGrade, typed);
        answer(draft, Quantity::rubWetGrade, "4");
        return onlyFault(shop::testFrom(draft, contextAt(kRested)));
    };
    CHECK(fault("5.5").cause == TestFaultCause::gradeOffScale); // ISO 105-A02 and A03: 1 to 5 in half steps
    CHECK(fault("0").cause == TestFaultCause::gradeOffScale);
    CHECK(fault("-3").cause == TestFaultCause::gradeOffScale);
    CHECK(fault("4.3").cause == TestFaultCause::gradeOffHalfSteps);
    CHECK(fault("4.3").field == "answer.0");
    CHECK(fault("4.3").text == "4.3");
    CHECK(fault("5-4").cause == TestFaultCause::gradeOffHalfSteps);
    CHECK(fault("good").cause == TestFaultCause::gradeUnreadable);
    CHECK(fault("").cause == TestFaultCause::answerMissing);
}

TEST_CASE("colours that no surface has are refused", "[testing][colour][refusal]") {
    const auto fault = [](const shop::LabDraft& after) {
        auto draft = washOf(0, "5", "5");
        draft.before = {"52.1", "4.2", "-3.0"};
        draft.after = after;
        return onlyFault(shop::testFrom(draft, contextAt(kRested)));
    };
    CHECK(fault({"101", "0", "0"}).cause == TestFaultCause::lightnessImpossible); // L* goes from 0 to 100
    CHECK(fault({"-1", "0", "0"}).field == "after.l");
    CHECK(fault({"50", "200", "0"}).cause == TestFaultCause::colourImpossible); // ICC.1:2022, 6.3.4.2: −128 to 127
    CHECK(fault({"50", "0", "-129"}).field == "after.b");
    CHECK(fault({"50", "0", ""}).cause == TestFaultCause::labIncomplete);
    CHECK(fault({"50", "0", ""}).field == "after.b");
    CHECK(fault({"bright", "0", "0"}).cause == TestFaultCause::notANumber);
}

TEST_CASE("no test counts before the ink's and the method's rest", "[testing][rest][refusal]") {
    const auto early = onlyFault(shop::testFrom(stretch(), contextAt(kRested - 1)));
    CHECK(early.cause == TestFaultCause::beforeRest);
    CHECK(early.at == kRested); // 24 h: job.md, from memory
    auto context = contextAt(kPrinted + kHour - 1);
    context.print.restHours = 0.0;
    const auto warm = onlyFault(shop::testFrom(stretch(), context));
    CHECK(warm.at == kPrinted + kHour); // stretch when cold
    context.now = kPrinted + kHour;
    CHECK(shop::testFrom(stretch(), context));
}

TEST_CASE("a solvent rub is for plastisol only", "[testing][refusal]") {
    auto draft = shop::draftFor("print-7", starter("solvent-rub"));
    answer(draft, Quantity::colourTransferred, "no");
    answer(draft, Quantity::filmSoftened, "no");
    auto context = contextAt(kRested);
    CHECK(shop::testFrom(draft, context)->done.outcome == TestOutcome::passed);
    context.print.chemistries = {analytics::Chemistry::plastisol, analytics::Chemistry::waterBased};
    const auto other = onlyFault(shop::testFrom(draft, context));
    CHECK(other.cause == TestFaultCause::notForChemistry);
    CHECK(other.chemistries == context.print.chemistries);
    context.print.chemistries.clear();
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::chemistryUnknown);
}

TEST_CASE("nothing is tested of a scrapped lot, a print that is gone, or by a method no longer used",
          "[testing][refusal]") {
    auto context = contextAt(kRested);
    context.lotScrapped = true;
    CHECK(onlyFault(shop::testFrom(stretch(), context)).cause == TestFaultCause::lotScrapped);
    context = contextAt(kRested);
    context.print.ended = records::PrintEnd::usedUp;
    CHECK(onlyFault(shop::testFrom(stretch(), context)).cause == TestFaultCause::printEnded);
    auto draft = stretch();
    draft.method.withdrawn = true;
    CHECK(onlyFault(shop::testFrom(draft, contextAt(kRested))).cause == TestFaultCause::methodWithdrawn);
    draft.corrects = "test-old"; // what was written wrong before may still be put right
    CHECK(shop::testFrom(draft, contextAt(kRested)));
}

TEST_CASE("every fault comes at once and none is thrown away", "[testing][refusal]") {
    auto draft = washOf(1, "9", "4.3");
    draft.cycle = "two";
    draft.before = {"500", "", ""};
    const auto made = shop::testFrom(draft, contextAt(kPrinted));
    REQUIRE_FALSE(made);
    CHECK(has(made.error(), TestFaultCause::beforeRest, ""));
    CHECK(has(made.error(), TestFaultCause::notANumber, "cycle"));
    CHECK(has(made.error(), TestFaultCause::gradeOffScale, "answer.0"));
    CHECK(has(made.error(), TestFaultCause::gradeOffHalfSteps, "answer.1"));
    CHECK(has(made.error(), TestFaultCause::labIncomplete, "before.a"));
}

TEST_CASE("a wash is noted until its last cycle, and a cycle below the limit fails at once", "[testing][wash]") {
    CHECK(shop::testFrom(washOf(1, "4", "4"), washed(1))->done.outcome == TestOutcome::noted);
    CHECK(shop::testFrom(washOf(5, "4", "3.5"), washed(5))->done.outcome == TestOutcome::passed);
    const auto failed = shop::testFrom(washOf(3, "3", "4"), washed(3)); // the limit is 3.5
    REQUIRE(failed);
    CHECK(failed->done.outcome == TestOutcome::failed);
    CHECK(failed->hold);
}

TEST_CASE("a failed third wash is not won back by the fourth, and makes no second hold", "[testing][wash][hold]") {
    auto context = washed(3);
    const auto third = shop::testFrom(washOf(3, "3", "4"), context);
    REQUIRE(third);
    context.tests.push_back(kept("test-3", third->done));
    records::HoldRow hold;
    hold.placed = *third->hold;
    hold.placed.because = "test-3";
    context.holds.push_back(hold);
    context.loads.push_back(load(4, "print-7", kRested + 4 * kDay));
    context.now += kDay;
    const auto fourth = shop::testFrom(washOf(4, "4", "4"), context);
    REQUIRE(fourth);
    CHECK(fourth->done.outcome == TestOutcome::failed);
    CHECK(fourth->heldAlready);
    CHECK_FALSE(fourth->hold);
    context.holds.front().decision = "decision-1"; // released: what fails after it is a new cause
    CHECK(shop::testFrom(washOf(4, "4", "4"), context)->hold);
}

TEST_CASE("cycles come in order and once", "[testing][wash][refusal]") {
    auto context = washed(3);
    const auto twice = onlyFault(shop::testFrom(washOf(2, "4", "4"), context));
    CHECK(twice.cause == TestFaultCause::cycleTwice);
    CHECK(twice.number == 2);
    auto draft = washOf(3, "4", "4");
    draft.cycle = "5";
    const auto ahead = onlyFault(shop::testFrom(draft, context));
    CHECK(ahead.cause == TestFaultCause::cycleOrder);
    CHECK(ahead.number == 3);                   // its third load
    context.tests.erase(context.tests.begin()); // cycle 1 was never looked at, and cannot be any more
    const auto late = onlyFault(shop::testFrom(washOf(1, "4", "4"), context));
    CHECK(late.cause == TestFaultCause::cycleOrder);
    CHECK(late.number == 3);
    draft.cycle = "-1";
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::cycleUnlikely);
    draft.cycle = "2.5";
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::notWhole);
    draft.cycle = "";
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::cycleMissing);
}

TEST_CASE("a wash belongs to a judged load of its programme that the rested print was in", "[testing][wash][refusal]") {
    auto context = washed(1);
    auto draft = washOf(1, "4", "4");
    draft.load.reset();
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::loadMissing);
    draft.load = "load-99";
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::notInLoad);
    draft = washOf(1, "4", "4");
    context.loads.front().judged.reset();
    const auto waiting = onlyFault(shop::testFrom(draft, context));
    CHECK(waiting.cause == TestFaultCause::loadNotJudged);
    CHECK(waiting.number == 1);
    context.loads = {load(1, "print-7", kRested + kDay, records::LoadWord::valid, "wash-lp1")};
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::loadOfAnotherMethod);
    context.loads = {load(1, "print-7", kRested - kHour)};
    const auto fresh = onlyFault(shop::testFrom(draft, context));
    CHECK(fresh.cause == TestFaultCause::loadBeforeRest);
    CHECK(fresh.at == kRested);
}

TEST_CASE("a void load holds nothing and its cycle is done again", "[testing][wash][load]") {
    auto context = contextAt(kRested + 3 * kDay);
    context.loads = {load(1, "print-7", kRested + kDay, records::LoadWord::tooHarsh),
                     load(2, "print-7", kRested + 2 * kDay)};
    const auto voided = shop::testFrom(washOf(1, "1", "1"), context);
    REQUIRE(voided);
    CHECK(voided->done.outcome == TestOutcome::inAVoidLoad);
    CHECK_FALSE(voided->hold);
    context.tests.push_back(kept("test-void", voided->done));
    auto again = washOf(1, "4", "4");
    again.load = "load-2";
    const auto made = shop::testFrom(again, context);
    REQUIRE(made);
    CHECK(made->done.outcome == TestOutcome::noted); // what the void load gave is not judged with it
}

TEST_CASE("fibres that stand through an intact film hide a low grade and fail nothing", "[testing][wash]") {
    auto draft = washOf(1, "2", "4");
    answer(draft, Quantity::fibresStanding, "yes");
    const auto made = shop::testFrom(draft, washed(1));
    REQUIRE(made);
    CHECK(made->done.outcome == TestOutcome::noted);
    CHECK_FALSE(made->hold);
    answer(draft, Quantity::lifted, "yes");
    CHECK(shop::testFrom(draft, washed(1))->done.outcome == TestOutcome::failed);
}

TEST_CASE("the white is looked at as printed, after 24 and 72 hours, never earlier", "[testing][bleed]") {
    auto draft = shop::draftFor("print-7", starter("bleed-watch"));
    draft.cycle = "0";
    draft.before = {"94.0", "-0.5", "2.1"};
    auto context = contextAt(kPrinted + kHour / 2); // the ink has not rested, and the white may be looked at
    const auto fresh = shop::testFrom(draft, context);
    REQUIRE(fresh);
    CHECK(fresh->done.outcome == TestOutcome::noted);
    context.tests.push_back(kept("test-0", fresh->done));
    draft.cycle = "24";
    answer(draft, Quantity::bled, "no");
    const auto early = onlyFault(shop::testFrom(draft, context));
    CHECK(early.cause == TestFaultCause::beforeItsHour);
    CHECK(early.at == kPrinted + 24 * kHour);
    draft.cycle = "48";
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::hourNotAsked);
    draft.cycle = "72";
    context.now = kPrinted + 72 * kHour;
    const auto last = shop::testFrom(draft, context);
    REQUIRE(last);
    CHECK(last->done.outcome == TestOutcome::passed);
    answer(draft, Quantity::bled, "yes");
    CHECK(shop::testFrom(draft, context)->hold);
    context.tests.push_back(kept("test-72", last->done));
    draft.cycle = "24";
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::cycleOrder);
    draft.cycle = "0";
    CHECK(onlyFault(shop::testFrom(draft, context)).cause == TestFaultCause::cycleTwice);
}

TEST_CASE("a test is put right by a new version of it", "[testing][correction]") {
    auto context = washed(2);
    const auto wrong = shop::testFrom(washOf(2, "2", "4"), context);
    REQUIRE(wrong);
    REQUIRE(wrong->hold);
    const auto row = kept("test-2", wrong->done);
    context.tests.push_back(row);
    records::HoldRow hold;
    hold.placed = *wrong->hold;
    hold.placed.because = "test-2";
    context.holds.push_back(hold);
    auto draft = shop::draftOf(row, starter("wash-house"));
    CHECK(draft.answers[0].typed == "2");
    CHECK(draft.load == "load-2");
    answer(draft, Quantity::changeGrade, "4.5");
    const auto right = shop::testFrom(draft, context);
    REQUIRE(right);
    CHECK(right->done.corrects == "test-2");
    CHECK(right->done.outcome == TestOutcome::noted);
    CHECK(right->holdLifts);
    CHECK_FALSE(right->hold);
    answer(draft, Quantity::changeGrade, "1"); // still failing: its own hold stands for it
    const auto stillWrong = shop::testFrom(draft, context);
    CHECK(stillWrong->heldAlready);
    CHECK_FALSE(stillWrong->hold);
    context.holds.clear();
    CHECK(shop::testFrom(draft, context)->hold->because == "test-2"); // the test's first entry
}

TEST_CASE("a water drop that stands is noted, and an empty form is nothing", "[testing]") {
    auto draft = shop::draftFor("print-7", starter("water-drop"));
    CHECK(onlyFault(shop::testFrom(draft, contextAt(kPrinted))).cause == TestFaultCause::nothingEntered);
    answer(draft, Quantity::waterStands, "yes");
    const auto made = shop::testFrom(draft, contextAt(kPrinted));
    REQUIRE(made);
    CHECK(made->done.outcome == TestOutcome::noted);
    answer(draft, Quantity::waterStands, "perhaps");
    CHECK(onlyFault(shop::testFrom(draft, contextAt(kPrinted))).cause == TestFaultCause::wordUnknown);
}

TEST_CASE("tape is judged on one layer and on two, a split test by the half as printed", "[testing]") {
    auto tape = shop::draftFor("print-7", starter("tape"));
    answer(tape, Quantity::peeled, "no", shop::kOneLayer);
    answer(tape, Quantity::peeled, "yes", shop::kTwoLayers);
    CHECK(shop::testFrom(tape, contextAt(kRested))->done.outcome == TestOutcome::failed);
    answer(tape, Quantity::peeled, "no", shop::kTwoLayers);
    CHECK(shop::testFrom(tape, contextAt(kRested))->done.outcome == TestOutcome::passed);
    auto split = shop::draftFor("print-7", starter("split"));
    answer(split, Quantity::ownYesNo, "no", shop::kOtherSurvived);
    answer(split, Quantity::ownYesNo, "yes", shop::kReCuredSurvived);
    CHECK(shop::testFrom(split, contextAt(kRested))->done.outcome == TestOutcome::failed);
}

TEST_CASE("the starters are complete: marked, sourced, and with rules that can be used", "[testing][starters]") {
    const auto all = shop::starterMethods();
    CHECK(all.size() == 17);
    for (const auto& one : all) {
        INFO(one.key);
        CHECK_FALSE(one.source.empty());
        CHECK(one.name.empty()); // the language names it
        CHECK(one.mark != analytics::Mark::dataSheet);
        if (one.rule) {
            CHECK(analytics::faultsOf(*one.rule).empty());
        }
        CHECK((one.kind == records::TestKind::wash) == one.programme.has_value());
    }
    CHECK(starter("wash-iso-105-c06").programme->minutes == 30);                    // ISO 105-C06 A2S: 40 °C, 30 min
    CHECK(starter("wash-iso-105-c06").programme->temperature->value == 40);         // ISO 105-C06 A2S
    CHECK(starter("wash-aatcc-tm61").programme->minutes == 45);                     // AATCC TM61-2010: 45 min
    CHECK(starter("bleed-watch").dueHours == std::vector<double>{0.0, 24.0, 72.0}); // job.md
    CHECK(starter("solvent-rub").chemistries == std::vector{analytics::Chemistry::plastisol});
    CHECK(shop::startersFor({}).size() == 17);
    CHECK(shop::startersFor({starter("tape")}).empty());
}
