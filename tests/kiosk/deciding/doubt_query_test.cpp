// A failed check on a real book: what it throws into doubt.
#include "kiosk/shop/deciding/doubt_query.hpp"
#include "tests/kiosk/deciding/deciding_rig.hpp"

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens::testing;
using shop::deciding::CheckFailed;

namespace {

using analytics::AuthoredTemperature;
using analytics::TemperatureUnit;

CheckFailed failed(DecidingRig& rig, double indicated) {
    CheckFailed check;
    check.id = "check-1";
    check.done.instrument = records::testing::sampleReading().instrument;
    check.done.check.date = drivers::localDay({rig.shop.now(), 0});
    check.done.indicated = AuthoredTemperature{indicated, TemperatureUnit::celsius};
    check.done.reference = AuthoredTemperature{100.0, TemperatureUnit::celsius};
    check.at = rig.shop.now();
    return check;
}

} // namespace

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
