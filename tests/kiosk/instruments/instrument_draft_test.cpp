#include "kiosk/shop/instruments/instrument_draft.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop::instruments;
using analytics::InstrumentKind;
using analytics::TemperatureUnit;

namespace {

Surroundings around() {
    Surroundings around;
    around.others = {{"p1", "P-1", "usb:0403:6001:A1"}};
    around.catalogue = {"line-type-k-celsius"};
    return around;
}

InstrumentDraft probe() {
    InstrumentDraft draft;
    draft.unit = TemperatureUnit::celsius;
    draft.name = "P-3";
    draft.type = analytics::ThermocoupleType::k;
    draft.toleranceClass = analytics::ToleranceClass::iecClass1;
    draft.resolution = "0.1";
    draft.rangeLow = "-40";
    draft.rangeHigh = "400";
    draft.catalogue = "line-type-k-celsius";
    draft.address = "socket:1-1.4";
    return draft;
}

InstrumentDraft strips() {
    InstrumentDraft draft;
    draft.unit = TemperatureUnit::fahrenheit;
    draft.name = "S-280";
    draft.kind = InstrumentKind::strip;
    draft.steps = "280 290 300";
    draft.stripTolerance = "2";
    draft.expiry = "2027-06-01";
    draft.packCount = "25";
    draft.batch = "B7";
    return draft;
}

std::vector<FormFault> faultsOf(const InstrumentDraft& draft) {
    const auto made = instrumentFrom(draft, around());
    return made ? std::vector<FormFault>{} : made.error();
}

bool has(const InstrumentDraft& draft, FormCause cause, const std::string& field) {
    const auto faults = faultsOf(draft);
    return std::any_of(faults.begin(), faults.end(),
                       [&](const FormFault& fault) { return fault.cause == cause && fault.field == field; });
}

} // namespace

TEST_CASE("a probe is described as typed and gets its id and number", "[instruments]") {
    const auto made = instrumentFrom(probe(), around());
    REQUIRE(made);
    const auto kept = numbered(*made, "fresh", 17);
    CHECK(kept.instrument == "fresh");
    CHECK(kept.number == 17);
    CHECK(kept.spec.range->high.value == 400.0);
    CHECK(kept.address == "socket:1-1.4");
    CHECK_FALSE(kept.spec.strip);
    CHECK(numbered(kept, "other", 99).number == 17);
    CHECK(numbered(kept, "other", 99).instrument == "fresh");
}

TEST_CASE("strips: steps from one text, the singles numbered first and then the packet", "[instruments]") {
    const auto made = instrumentFrom(strips(), around());
    REQUIRE(made);
    const auto kept = numbered(*made, "fresh", 100);
    REQUIRE(kept.spec.strip);
    CHECK(kept.spec.strip->steps.size() == 3);
    REQUIRE(kept.pack);
    CHECK(kept.pack->firstNumber == 100);
    CHECK(kept.pack->count == 25);
    CHECK(kept.number == 125);
    CHECK(kept.catalogue.empty());
}

TEST_CASE("figures that were not touched stay as they were authored, in the other unit too", "[instruments]") {
    const auto first = instrumentFrom(strips(), around());
    REQUIRE(first);
    auto draft = draftOf(*first, TemperatureUnit::celsius);
    CHECK(draft.steps == "137.7778 143.3333 148.8889"); // (280, 290, 300 − 32)·5/9
    draft.name = "S-281";
    const auto again = instrumentFrom(draft, around());
    REQUIRE(again);
    CHECK(again->spec.strip->steps == first->spec.strip->steps);
    CHECK(again->spec.strip->tolerance == first->spec.strip->tolerance);
    CHECK(again->pack->count == 25);
    draft.stripTolerance = "1.5";
    CHECK(instrumentFrom(draft, around())->spec.strip->tolerance ==
          analytics::AuthoredDifference{1.5, TemperatureUnit::celsius});
}

TEST_CASE("every fault of a description is told at its field", "[instruments]") {
    auto draft = probe();
    draft.name = " p-1 ";
    draft.type.reset();
    draft.resolution = "-1";
    draft.rangeHigh = "-50";
    draft.address = "usb:zz";
    CHECK(has(draft, FormCause::nameTaken, "name"));
    CHECK(has(draft, FormCause::classWithoutType, "class"));
    CHECK(has(draft, FormCause::resolutionInvalid, "resolution"));
    CHECK(has(draft, FormCause::rangeReversed, "range.high"));
    CHECK(has(draft, FormCause::addressUnreadable, "address"));
    CHECK(faultsOf(draft).size() == 5);
    draft = probe();
    draft.name.clear();
    draft.rangeLow.clear();
    draft.catalogue.clear();
    draft.address = "usb:0403:6001:A1";
    CHECK(has(draft, FormCause::nameMissing, "name"));
    CHECK(has(draft, FormCause::rangeIncomplete, "range.low"));
    CHECK(has(draft, FormCause::addressWithoutCatalogue, "address"));
    CHECK(has(draft, FormCause::addressTaken, "address"));
}

TEST_CASE("a class that the standard does not give a type is refused", "[instruments]") {
    auto draft = probe();
    draft.type = analytics::ThermocoupleType::j; // IEC 60584-1 has no class 3 for J
    draft.toleranceClass = analytics::ToleranceClass::iecClass3;
    CHECK(has(draft, FormCause::classNotDefined, "class"));
}

TEST_CASE("strip steps out of order, missing or no numbers are refused", "[instruments]") {
    auto draft = strips();
    draft.steps = "280 300 290";
    CHECK(has(draft, FormCause::stepsOutOfOrder, "steps"));
    draft.steps = "280 warm 300";
    CHECK(has(draft, FormCause::stepNotANumber, "steps"));
    draft.steps = "  ";
    CHECK(has(draft, FormCause::stepsMissing, "steps"));
    draft = strips();
    draft.packCount = "2.5";
    draft.stripTolerance.clear();
    CHECK(has(draft, FormCause::countInvalid, "count"));
    CHECK(has(draft, FormCause::valueMissing, "strip-tolerance"));
}

TEST_CASE("what does not belong to a kind is left out", "[instruments]") {
    auto draft = probe();
    draft.kind = InstrumentKind::gun;
    draft.statedTolerance = "2";
    draft.steps = "280 290";
    const auto made = instrumentFrom(draft, around());
    REQUIRE(made);
    CHECK_FALSE(made->spec.type);
    CHECK_FALSE(made->spec.toleranceClass);
    CHECK_FALSE(made->spec.strip);
    CHECK(made->address.empty());
}
