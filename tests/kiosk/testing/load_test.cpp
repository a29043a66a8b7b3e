// Wash loads and what their witnesses say.
#include "kiosk/shop/testing/load_draft.hpp"
#include "tests/kiosk/testing/support/facts.hpp"

using namespace holdfast;
using namespace holdfast::testing_test;
using records::LoadWord;
using shop::TestFaultCause;

namespace {

shop::LoadDraft drum() {
    shop::LoadDraft draft;
    draft.machine = "front loader";
    draft.programme = starter("wash-house");
    draft.temperature = "60";
    draft.detergent = "ECE 12";
    draft.prints = {print()};
    return draft;
}

analytics::WitnessLimits usual() {
    return shop::limitsFor({}, {});
}

records::LoadRow judged(std::int64_t number, double good, double weak, bool byInstrument,
                        LoadWord word = LoadWord::valid) {
    auto row = load(number, "print-7", kPrinted + number * kDay, word);
    row.judged->goodGrade = good;
    row.judged->weakGrade = weak;
    row.judged->byInstrument = byInstrument;
    return row;
}

} // namespace

TEST_CASE("a drum holds rested prints of its programme's kind", "[testing][load]") {
    const auto now = kPrinted + kDay;
    const auto made = shop::loadFrom(drum(), "load-1", 118, now);
    REQUIRE(made);
    CHECK(made->number == 118);
    CHECK(made->programme == "wash-house");
    CHECK(made->prints == std::vector<std::string>{"print-7"});
    CHECK(made->temperature->value == 60.0);
    CHECK(onlyFault(shop::loadFrom(drum(), "load-1", 118, now - 1)).cause == TestFaultCause::printNotRested);
    auto gone = drum();
    gone.prints[0].ended = records::PrintEnd::lost;
    CHECK(onlyFault(shop::loadFrom(gone, "load-1", 118, now)).cause == TestFaultCause::printGone);
    auto scrapped = drum();
    scrapped.prints[0].lotState = records::LotState::scrapped;
    CHECK(onlyFault(shop::loadFrom(scrapped, "load-1", 118, now)).cause == TestFaultCause::printGone);
}

TEST_CASE("a drum without machine, programme or prints, or a wash that boils over, is refused",
          "[testing][load][refusal]") {
    const auto now = kPrinted + kDay;
    auto draft = drum();
    draft.machine = " ";
    CHECK(onlyFault(shop::loadFrom(draft, "l", 1, now)).cause == TestFaultCause::machineMissing);
    draft = drum();
    draft.programme.reset();
    CHECK(onlyFault(shop::loadFrom(draft, "l", 1, now)).cause == TestFaultCause::programmeMissing);
    draft = drum();
    draft.prints.clear();
    CHECK(onlyFault(shop::loadFrom(draft, "l", 1, now)).cause == TestFaultCause::drumEmpty);
    draft = drum();
    draft.temperature = "140"; // water boils at 100 °C
    CHECK(onlyFault(shop::loadFrom(draft, "l", 1, now)).cause == TestFaultCause::temperatureUnlikely);
    draft.unit = analytics::TemperatureUnit::fahrenheit; // 140 °F is 60 °C
    CHECK(shop::loadFrom(draft, "l", 1, now));
    draft.temperature = "hot";
    CHECK(onlyFault(shop::loadFrom(draft, "l", 1, now)).cause == TestFaultCause::notANumber);
}

TEST_CASE("a load is valid by both its witnesses and void by either", "[testing][load]") {
    // The shop's limits until a chart stands: good at least 4, weak at most 3, from memory.
    CHECK(shop::judgedFrom({"4.5", "2", false}, "load-1", usual())->judged.word == LoadWord::valid);
    CHECK(shop::judgedFrom({"4", "3", false}, "load-1", usual())->judged.word ==
          LoadWord::valid); // the limit is inside
    CHECK(shop::judgedFrom({"3.5", "2", false}, "load-1", usual())->judged.word == LoadWord::tooHarsh);
    CHECK(shop::judgedFrom({"5", "4", false}, "load-1", usual())->judged.word == LoadWord::tooGentle);
    CHECK(shop::judgedFrom({"2", "5", false}, "load-1", usual())->judged.word == LoadWord::noWitness); // swapped
    CHECK(shop::judgedFrom({"4.5", "", false}, "load-1", usual())->judged.word == LoadWord::noWitness);
    CHECK(shop::judgedFrom({"", "", false}, "load-1", usual())->judged.word == LoadWord::noWitness);
    const auto found = shop::judgedFrom({"4.5", "2", false}, "load-1", usual());
    CHECK(found->judged.goodLow == 4.0);
    CHECK(found->judged.weakHigh == 3.0);
    CHECK_FALSE(found->judged.byInstrument);
}

TEST_CASE("a witness is graded in half steps by eye and by its rating by instrument", "[testing][load][refusal]") {
    CHECK(onlyFault(shop::judgedFrom({"4.37", "2", false}, "load-1", usual())).cause ==
          TestFaultCause::gradeOffHalfSteps);
    CHECK(shop::judgedFrom({"4.37", "2.1", true}, "load-1", usual())->judged.goodGrade == 4.37);
    CHECK(onlyFault(shop::judgedFrom({"5.2", "2", true}, "load-1", usual())).cause ==
          TestFaultCause::witnessGradeOffScale);
    CHECK(onlyFault(shop::judgedFrom({"5.5", "2", false}, "load-1", usual())).cause == TestFaultCause::gradeOffScale);
    CHECK(onlyFault(shop::judgedFrom({"fine", "2", true}, "load-1", usual())).cause == TestFaultCause::notANumber);
}

TEST_CASE("limits are charted from twenty valid loads read by an instrument", "[testing][load]") {
    std::vector<records::LoadRow> earlier;
    for (int i = 1; i <= 20; ++i) {
        earlier.push_back(judged(i, i % 2 == 0 ? 4.6 : 4.4, i % 2 == 0 ? 2.0 : 2.2, true));
    }
    const auto limits = shop::limitsFor(earlier, "load-99");
    CHECK(limits.goodAtLeast.origin == analytics::LimitOrigin::charted);
    // Individuals with moving range (NIST/SEMATECH e-Handbook 6.3.2.2): mean 4.5, every moving range 0.2,
    // 4.5 − 2.66 · 0.2 = 3.968; mean 2.1, 2.1 + 2.66 · 0.2 = 2.632.
    CHECK(limits.goodAtLeast.value == Approx(3.968).margin(5e-4));
    CHECK(limits.weakAtMost.value == Approx(2.632).margin(5e-4));
    earlier.push_back(judged(21, 1.0, 5.0, true, LoadWord::noWitness)); // a void load moves no limit
    CHECK(shop::limitsFor(earlier, "load-99").goodAtLeast.value == limits.goodAtLeast.value);
    CHECK(shop::limitsFor(earlier, "load-20").goodAtLeast.origin == analytics::LimitOrigin::shop); // 19 are too few
    CHECK(shop::judgedFrom({"3.9", "2.1", true}, "load-99", limits)->judged.word == LoadWord::tooHarsh);
}
