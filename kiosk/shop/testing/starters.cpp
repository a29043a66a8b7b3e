#include "kiosk/shop/testing/starters.hpp"

#include "kiosk/shop/testing/asked.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using analytics::Bound;
using analytics::CrackClass;
using analytics::Criterion;
using analytics::Grade;
using analytics::Mark;
using analytics::Quantity;
using analytics::RelativeLength;
using analytics::TestPlace;
using records::MethodDescribed;
using records::TestKind;

constexpr double kCold = 1.0;          ///< hours until a print off the belt is cold through; from memory
constexpr double kConditioned = 4.0;   ///< hours: AATCC 8-2007, 8.1
constexpr double kWashRest = 24.0;     ///< hours; from memory
constexpr double kShrinkLimit = 5.0;   ///< per cent; from memory
constexpr int kHouseCycles = 5;        ///< five at least; common practice
constexpr double kWashLimit = 3.5;     ///< from memory
constexpr double kStainingPress = 4.0; ///< from memory

Grade grade(double number) {
    return *Grade::fromNumber(number);
}

Criterion atLeast(Quantity quantity, Grade limit, TestPlace place = {}) {
    return {quantity, {}, Bound::atLeast, limit, place, false};
}

Criterion isNot(Quantity quantity, TestPlace place = {}, const char* ownName = "") {
    return {quantity, ownName, Bound::is, false, place, false};
}

analytics::AuthoredTemperature celsius(double value) {
    return {value, analytics::TemperatureUnit::celsius};
}

MethodDescribed method(const char* key, TestKind kind, Mark mark, const char* source) {
    MethodDescribed made;
    made.key = key;
    made.kind = kind;
    made.mark = mark;
    made.source = source;
    return made;
}

MethodDescribed stretch(const char* key, std::vector<double> pulls, bool eachLot) {
    auto made = method(key, TestKind::stretch, Mark::fromMemory,
                       "usual in the trade, the pull is set for each cloth; figures from memory");
    made.restHours = kCold;
    made.pullPercent = std::move(pulls);
    TestPlace furthest;
    furthest.elongation = RelativeLength::fromPercent(made.pullPercent.back());
    made.rule = {{{Quantity::crackClass, {}, Bound::atMost, CrackClass::hairline, furthest, false}}};
    made.eachLot = eachLot;
    return made;
}

MethodDescribed rub(const char* key, const char* source) {
    auto made = method(key, TestKind::rub, Mark::standard, source);
    made.restHours = kConditioned;
    made.rule = {{atLeast(Quantity::rubDryGrade, grade(4)), atLeast(Quantity::rubWetGrade, grade(3))}};
    return made;
}

MethodDescribed wash(const char* key, Mark mark, const char* source, records::WashProgramme programme) {
    auto made = method(key, TestKind::wash, mark, source);
    made.restHours = kWashRest;
    TestPlace last;
    last.cycle = programme.cycles;
    made.programme = programme;
    made.rule = {{atLeast(Quantity::changeGrade, grade(kWashLimit), last),
                  atLeast(Quantity::stainingGrade, grade(kWashLimit), last), isNot(Quantity::cracked, last),
                  isNot(Quantity::lifted, last)}};
    return made;
}

void addWashes(std::vector<MethodDescribed>& all) {
    auto house =
        wash("wash-house", Mark::commonPractice,
             "five cycles at least, hot, tumble-dried, is usual in the trade; 60 °C and the limits from memory",
             {celsius(60), std::nullopt, true, kHouseCycles});
    house.eachLot = true;
    all.push_back(house);
    all.push_back(wash("wash-lp1", Mark::fromMemory,
                       "like AATCC LP1, machine wash IV 49 °C, tumble-dried; figures and limits from memory",
                       {celsius(49), std::nullopt, true, kHouseCycles}));
    all.push_back(wash("wash-iso-6330", Mark::fromMemory,
                       "ISO 6330, procedure 4N, tumble-dried; figures and limits from memory",
                       {celsius(40), std::nullopt, true, kHouseCycles}));
    all.push_back(wash("wash-iso-105-c06", Mark::standard,
                       "ISO 105-C06, test A2S: 40 °C, 30 min, 10 steel balls; limits from memory",
                       {celsius(40), 30, false, 1}));
    all.push_back(wash("wash-aatcc-tm61", Mark::standard,
                       "AATCC TM61, test 2A: 45 min, 50 steel balls; 49 °C and limits from memory",
                       {celsius(49), 45, false, 1}));
}

void addBleed(std::vector<MethodDescribed>& all) {
    auto watch = method("bleed-watch", TestKind::bleedWatch, Mark::commonPractice,
                        "white on dyed polyester again after 24 and 72 hours is usual in the trade; limit from memory");
    watch.dueHours = {0.0, 24.0, 72.0};
    TestPlace last;
    last.cycle = 72;
    watch.rule = {{isNot(Quantity::bled, last)}};
    watch.eachLot = true;
    all.push_back(watch);
    auto press = method("bleed-press", TestKind::bleedWatch, Mark::commonPractice,
                        "a warm press against a white swatch is usual in the trade; limit from memory");
    press.restHours = kCold;
    press.rule = {{isNot(Quantity::colourTransferred), atLeast(Quantity::stainingGrade, grade(kStainingPress))}};
    all.push_back(press);
}

MethodDescribed shrink(const char* key, const char* source) {
    auto made = method(key, TestKind::shrink, Mark::standard, source);
    made.restHours = kConditioned;
    const auto limit = RelativeLength::fromPercent(kShrinkLimit);
    made.rule = {{{Quantity::changeLengthwise, {}, Bound::within, limit, {}, false},
                  {Quantity::changeWidthwise, {}, Bound::within, limit, {}, false}}};
    return made;
}

void addOthers(std::vector<MethodDescribed>& all) {
    all.push_back(shrink("shrink-iso", "ISO 5077, marks by ISO 3759; limit from memory"));
    all.push_back(shrink("shrink-aatcc", "AATCC TM135; limit from memory"));
    all.push_back(method("water-drop", TestKind::waterDrop, Mark::commonPractice,
                         "usual in the trade: a drop that stands shows a repellent finish"));
    auto tape = method("tape", TestKind::tape, Mark::commonPractice,
                       "usual in the trade: an over-flashed layer peels from the next");
    tape.restHours = kCold;
    tape.rule = {{isNot(Quantity::peeled, {}, kOneLayer), isNot(Quantity::peeled, {}, kTwoLayers)}};
    all.push_back(tape);
    auto solvent = method("solvent-rub", TestKind::solventRub, Mark::commonPractice,
                          "usual in the trade, for plastisol only; the solvent's own data sheet comes first");
    solvent.chemistries = {analytics::Chemistry::plastisol};
    solvent.restHours = kCold;
    solvent.rule = {{isNot(Quantity::filmSoftened), isNot(Quantity::colourTransferred)}};
    all.push_back(solvent);
    auto split = method("split", TestKind::split, Mark::commonPractice,
                        "usual in the trade: half of a retained print is cured again, then both halves are washed");
    split.restHours = kCold;
    split.rule = {{{Quantity::ownYesNo, kOtherSurvived, Bound::is, true, {}, false}}};
    all.push_back(split);
}

} // namespace

std::vector<MethodDescribed> starterMethods() {
    std::vector<MethodDescribed> all;
    all.push_back(stretch("stretch-jersey", {25.0, 50.0}, true));
    all.push_back(stretch("stretch-sports", {50.0, 100.0}, false));
    all.push_back(rub("rub-iso", "ISO 105-X12, graded by ISO 105-A03; limits from memory"));
    all.push_back(
        rub("rub-aatcc", "AATCC TM8: 10 turns at one a second, wet cloth with 65 % pick-up; limits from memory"));
    addWashes(all);
    addBleed(all);
    addOthers(all);
    return all;
}

std::vector<MethodDescribed> startersFor(const std::vector<MethodDescribed>& inTheBook) {
    return inTheBook.empty() ? starterMethods() : std::vector<MethodDescribed>{};
}

bool isStarter(const std::string& key) {
    const auto all = starterMethods();
    return std::any_of(all.begin(), all.end(), [&](const auto& one) { return one.key == key; });
}

} // namespace holdfast::kiosk::shop
