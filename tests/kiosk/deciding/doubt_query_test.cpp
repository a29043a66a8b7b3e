// A failed check on a real book: what it throws into doubt.
#include "kiosk/ledger/trace_codec.hpp"
#include "kiosk/shop/deciding/doubt_query.hpp"
#include "tests/analytics/cure/verdict/ride.hpp"
#include "tests/kiosk/deciding/deciding_rig.hpp"

#include <cmath>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;
using shop::deciding::CheckFailed;

namespace {

using analytics::AuthoredTemperature;
using analytics::TemperatureUnit;

CheckFailed failed(DecidingRig& rig, double indicated) {
    CheckFailed check;
    check.id = rig.shop.freshId();
    check.done.instrument = records::testing::sampleReading().instrument;
    check.done.check.date = drivers::localDay({rig.shop.now(), 0});
    check.done.check.due = check.done.check.date;
    check.done.indicated = AuthoredTemperature{indicated, TemperatureUnit::celsius};
    check.done.reference = AuthoredTemperature{100.0, TemperatureUnit::celsius};
    check.at = rig.shop.now();
    return check;
}

/// A run of one standard layer on cotton with one cured ride to this peak, its trace in the book; the lot's id.
std::string rideTo(DecidingRig& rig, double peak) {
    records::RunPlanned plan;
    plan.run = rig.shop.freshId();
    plan.number = 30'000 + rig.entries();
    plan.title = "tees";
    plan.fabric = "100% cotton";
    plan.layers = {{"black", "standard", {{"standard", 1.0}}, {}, false}};
    records::LotOpened lot;
    lot.lot = rig.shop.freshId();
    lot.run = plan.run;
    lot.revisions = {{{"standard", 1}}, {"100% cotton", 1}};
    rig.write({plan, lot});
    const auto run = records::runById(rig.shop.db(), plan.run);
    REQUIRE(run);
    REQUIRE((*run)->usable);
    records::ReadingTaken reading;
    reading.run = plan.run;
    reading.lot = lot.lot;
    reading.instrument = "probe-k";
    reading.window = *analytics::windowOf((*run)->layers);
    reading.revisions = lot.revisions;
    for (const auto& layer : reading.window->layers) {
        reading.guards.layers.push_back(layer.cure);
    }
    std::vector<ledger::TracePoint> points;
    for (const auto& sample : ride::trapezoid(peak).samples) {
        points.push_back({sample.at.count(), std::llround(sample.indicated.celsius() * 10.0), 0});
    }
    const auto bytes = ledger::encodeTrace(points);
    records::TraceSeen seen;
    seen.sha256 = ledger::toHex(ledger::sha256(bytes));
    seen.step = {0.1, TemperatureUnit::celsius};
    reading.evidence = seen;
    reading.verdict = analytics::Verdict{};
    reading.verdict->word = analytics::Word::cured;
    Keeping keeping;
    keeping.list = {reading};
    keeping.blobs = {{"trace", bytes}};
    rig.needs.keep(keeping, {});
    return lot.lot;
}

/// A type K probe of IEC 60584-1 class 1 that passed a check the day before.
void describeProbe(DecidingRig& rig) {
    records::InstrumentDescribed probe;
    probe.instrument = "probe-k";
    probe.spec.name = "P-8";
    probe.spec.type = analytics::ThermocoupleType::k;
    probe.spec.toleranceClass = analytics::ToleranceClass::iecClass1;
    probe.spec.resolution = analytics::AuthoredDifference{0.1, TemperatureUnit::celsius};
    records::CheckDone check;
    check.instrument = probe.instrument;
    const auto today = drivers::localDay({rig.shop.now(), 0});
    check.check = {analytics::CheckKind::ice, true, today - std::chrono::days{1}, today + std::chrono::days{30}};
    rig.write({probe, check});
}

} // namespace

TEST_CASE("traces are judged again with the error found, and only what is no longer cured is held",
          "[deciding][instrument]") {
    DecidingRig rig;
    describeProbe(rig);
    const auto doubtful = rideTo(rig, 165.5);
    rideTo(rig, 168.0);
    auto check = failed(rig, 102.0);
    check.done.instrument = "probe-k";
    const auto doubt = shop::deciding::instrumentDoubt(rig.shop.book(), check);
    REQUIRE(doubt);
    REQUIRE(*doubt);
    for (const auto& reading : (*doubt)->readings) {
        CHECK(shop::deciding::planThen(rig.shop.db(), reading.taken));
        REQUIRE(reading.doubt);
        CHECK(std::get<analytics::RawTrace>(reading.doubt->evidence).samples.size() > 100);
        const auto again = analytics::recompute(*reading.doubt, (*doubt)->found, *reading.calibration);
        CHECK((again ? 99 : static_cast<int>(again.error())) == 99);
    }
    const auto holds = shop::deciding::holdsOfFailedCheck(rig.shop.book().folder(), check);
    REQUIRE(holds);
    CHECK(holds->looked == 2);
    CHECK(holds->notComputed == 0);
    // Cure 160 °C, u² = 1.5²/3 + 1.5² + 0.1²/12, g = 2.849 (decisions 2): 165.5 / 1.02 = 162.25 is below 162.849,
    // 168 / 1.02 = 164.71 is not.
    CHECK(holds->noLongerCured == 1);
    CHECK(holds->lots == std::vector<std::string>{doubtful});
    // An error found of nothing leaves both cured.
    check.done.indicated = AuthoredTemperature{100.0, TemperatureUnit::celsius};
    CHECK(shop::deciding::holdsOfFailedCheck(rig.shop.book().folder(), check)->noLongerCured == 0);
    // Kept with the check, the corrections and the hold stand in the book.
    auto kept = *holds;
    shop::deciding::number(kept, rig.needs.newId, 1);
    Keeping keeping;
    keeping.list = {check.done};
    keeping.ids = {check.id};
    keeping.list.insert(keeping.list.end(), kept.list.begin(), kept.list.end());
    rig.needs.keep(keeping, {});
    const auto open = records::openHolds(rig.shop.db());
    REQUIRE(open);
    REQUIRE(open->size() == 1);
    CHECK(open->front().placed.cause == records::HoldCause::instrument);
    CHECK(rig.shop.rebuildsTheSame());
}

TEST_CASE("a failed check asks about every cured reading since the last good look", "[deciding][instrument]") {
    DecidingRig rig;
    rig.read(analytics::Word::cured, 20);
    rig.read(analytics::Word::notProven, 40);
    const auto doubt = shop::deciding::instrumentDoubt(rig.shop.book(), failed(rig, 103.0));
    REQUIRE(doubt);
    REQUIRE(*doubt);
    REQUIRE((*doubt)->readings.size() == 1);
    CHECK((*doubt)->found.error.celsius() == Approx(3.0).margin(1e-9));
    CHECK((*doubt)->lots.size() == 1);
    // The sample's trace stands in no blob: it cannot be judged again, and its lot is held all the same.
    const auto holds = shop::deciding::instrumentHolds(**doubt);
    CHECK(holds.notComputed == 1);
    CHECK(holds.lots == std::vector<std::string>{rig.lot()});
}

TEST_CASE("a passed check asks nothing", "[deciding][instrument]") {
    DecidingRig rig;
    rig.read(analytics::Word::cured, 20);
    auto check = failed(rig, 100.1);
    check.done.check.passed = true;
    const auto doubt = shop::deciding::instrumentDoubt(rig.shop.book(), check);
    REQUIRE(doubt);
    CHECK_FALSE(*doubt);
}
