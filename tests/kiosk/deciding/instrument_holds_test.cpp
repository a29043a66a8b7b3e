#include "kiosk/shop/deciding/instrument_holds.hpp"
#include "tests/analytics/cure/verdict/ride.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::shop::deciding;
using analytics::LotStanding;
using analytics::Word;
using kiosk::records::CorrectionMade;
using kiosk::records::HoldPlaced;

namespace {

/// A ride to this peak at a cure of 160 °C, kept as cured.
DoubtfulReading cured(const std::string& id, const std::string& lot, std::int64_t at, double peak) {
    DoubtfulReading reading;
    reading.id = id;
    reading.takenAt = at;
    reading.taken.run = "run-1";
    reading.taken.lot = lot;
    reading.taken.evidence = kiosk::records::TraceSeen{};
    analytics::ReadingInDoubt doubt;
    doubt.plan = ride::plan({ride::family(160.0)}, {});
    doubt.evidence = ride::trapezoid(peak);
    reading.taken.verdict = ride::judge(doubt.plan, std::get<analytics::RawTrace>(doubt.evidence));
    reading.doubt = doubt;
    reading.calibration = ride::inDate();
    return reading;
}

InstrumentDoubt doubt(double error) {
    InstrumentDoubt made;
    made.check = "check-1";
    made.found = {ride::celsius(100.0), ride::degrees(error)};
    made.time = {std::int64_t{1000}, 9000};
    made.lots = {{"lot-1", LotStanding::cleared, 200}, {"lot-2", LotStanding::cleared, 90}};
    return made;
}

int nextId = 0;
std::string freshId() {
    return "id-" + std::to_string(++nextId);
}

} // namespace

TEST_CASE("a lot whose reading is no longer cured with the error found goes on hold", "[deciding][instrument]") {
    // Cure 160 °C, g = 2.849 (tests/analytics/lots): 165.5 / 1.02 = 162.2549 is not proven, 168 / 1.02 = 164.7059 is.
    auto asked = doubt(2.0);
    asked.readings = {cured("r1", "lot-1", 2000, 165.5), cured("r2", "lot-1", 3000, 168.0),
                      cured("r3", "lot-2", 4000, 168.0)};
    REQUIRE(asked.readings.front().taken.verdict->word == Word::cured);
    auto holds = instrumentHolds(asked);
    CHECK(holds.looked == 3);
    CHECK(holds.noLongerCured == 1);
    CHECK(holds.lots == std::vector<std::string>{"lot-1"});
    REQUIRE(holds.list.size() == 2);
    const auto& correction = std::get<CorrectionMade>(holds.list.at(0));
    CHECK(correction.corrects == "r1");
    CHECK(correction.check == "check-1");
    CHECK(correction.reading.verdict->word == Word::notProven);
    CHECK(std::get<kiosk::records::TraceSeen>(correction.reading.evidence).sustainedPeak->celsius() ==
          Approx(162.2549).margin(5e-5));
    nextId = 0;
    number(holds, freshId, 21);
    const auto& hold = std::get<HoldPlaced>(holds.list.at(1));
    CHECK(hold.hold == "id-1");
    CHECK(hold.bin == 21);
    CHECK(hold.lot == "lot-1");
    CHECK(hold.cause == kiosk::records::HoldCause::instrument);
    CHECK(hold.because == "check-1");
    CHECK(hold.count == 200);
}

TEST_CASE("only readings since the last good look are asked about", "[deciding][instrument]") {
    auto asked = doubt(2.0);
    asked.readings = {cured("r0", "lot-1", 1000, 165.5), // at the good look itself
                      cured("r1", "lot-1", 9001, 165.5), // after the check
                      cured("r2", "lot-2", 1001, 165.5)};
    const auto holds = instrumentHolds(asked);
    CHECK(holds.looked == 1);
    CHECK(holds.lots == std::vector<std::string>{"lot-2"});
}

TEST_CASE("set-up readings and those that were not cured hold nothing", "[deciding][instrument]") {
    auto asked = doubt(2.0);
    asked.readings = {cured("r1", "lot-1", 2000, 165.5), cured("r2", "lot-1", 2000, 165.5)};
    asked.readings.front().taken.reason = kiosk::records::ReadingReason::setUp;
    asked.readings.back().taken.verdict->word = Word::underCured;
    CHECK(instrumentHolds(asked).looked == 0);
    CHECK(instrumentHolds(asked).list.empty());
}

TEST_CASE("a reading that cannot be judged again holds its lot all the same", "[deciding][instrument]") {
    auto asked = doubt(2.0);
    asked.readings = {cured("r1", "lot-2", 2000, 168.0)};
    asked.readings.front().doubt.reset();
    auto holds = instrumentHolds(asked);
    CHECK(holds.notComputed == 1);
    CHECK(holds.noLongerCured == 0);
    REQUIRE(holds.list.size() == 1); // no correction without a verdict
    CHECK(std::holds_alternative<HoldPlaced>(holds.list.front()));
    // An error of 40 °C at 100 °C is more than a tenth of 373.15 K: broken, not wrong (analytics/lots).
    auto broken = doubt(40.0);
    broken.readings = {cured("r1", "lot-2", 2000, 168.0)};
    CHECK(instrumentHolds(broken).notComputed == 1);
}

TEST_CASE("a scrapped lot is held no more, but its reading is corrected", "[deciding][instrument]") {
    auto asked = doubt(2.0);
    asked.lots.front().standing = LotStanding::scrapped;
    asked.readings = {cured("r1", "lot-1", 2000, 165.5)};
    const auto holds = instrumentHolds(asked);
    CHECK(holds.lots.empty());
    REQUIRE(holds.list.size() == 1);
    CHECK(std::holds_alternative<CorrectionMade>(holds.list.front()));
}

TEST_CASE("a lot with two bad readings is held once", "[deciding][instrument]") {
    auto asked = doubt(6.0); // 165.5 / 1.06 = 156.1321: under-cured
    asked.readings = {cured("r1", "lot-1", 2000, 165.5), cured("r2", "lot-1", 3000, 165.6)};
    const auto holds = instrumentHolds(asked);
    CHECK(holds.noLongerCured == 2);
    CHECK(holds.lots.size() == 1);
    CHECK(holds.list.size() == 3);
}

TEST_CASE("the error is what the corrected instrument read too high at the reference", "[deciding][instrument]") {
    kiosk::records::CheckDone check;
    using analytics::AuthoredTemperature;
    using analytics::TemperatureUnit;
    check.indicated = AuthoredTemperature{102.0, TemperatureUnit::celsius};
    check.reference = AuthoredTemperature{100.0, TemperatureUnit::celsius};
    const auto found = errorFound(check, ride::inDate());
    REQUIRE(found);
    CHECK(found->error.celsius() == Approx(2.0).margin(1e-9));
    CHECK(found->at.celsius() == Approx(100.0).margin(1e-9));
    check.check.passed = true;
    CHECK_FALSE(errorFound(check, ride::inDate()));
    check.check.passed = false;
    check.indicated.reset();
    CHECK_FALSE(errorFound(check, ride::inDate()));
}

TEST_CASE("of several failed checks the one that is off most counts", "[deciding][instrument]") {
    using analytics::AuthoredTemperature;
    using analytics::TemperatureUnit;
    const auto check = [](double indicated, bool passed) {
        kiosk::records::CheckDone done;
        done.check.passed = passed;
        done.indicated = AuthoredTemperature{indicated, TemperatureUnit::celsius};
        done.reference = AuthoredTemperature{100.0, TemperatureUnit::celsius};
        return done;
    };
    CHECK(worstFailed({check(102.0, false), check(97.0, false), check(105.0, true)}) == 1U);
    CHECK_FALSE(worstFailed({check(100.2, true)}));
    CHECK_FALSE(worstFailed({}));
}
