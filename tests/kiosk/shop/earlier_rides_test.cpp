#include "kiosk/shop/proving/earlier_rides.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::shop;
using holdfast::analytics::AuthoredTemperature;
using holdfast::analytics::TemperatureUnit;
using holdfast::kiosk::shop::testing::fahrenheit;
namespace records = holdfast::kiosk::records;

namespace {

records::ActionRow row(std::int64_t at, records::FloorAction action, std::optional<AuthoredTemperature> setPoint = {}) {
    records::ActionRow one;
    one.at = at;
    one.action.action = action;
    one.action.setPoint = setPoint;
    return one;
}

} // namespace

TEST_CASE("the set-point of an earlier ride is the one last said before it, or not known", "[shop][turn]") {
    using records::FloorAction;
    records::DryerNow now;
    now.setPoint = fahrenheit(380);
    now.since = 100;
    const std::vector<records::ActionRow> newestFirst{row(900, FloorAction::hotter, fahrenheit(380)),
                                                      row(700, FloorAction::beltSlower), row(600, FloorAction::hotter),
                                                      row(300, FloorAction::cooler, fahrenheit(350))};
    CHECK(setPointAt(newestFirst, now, 950)->value == 380);
    CHECK(setPointAt(newestFirst, now, 900)->value == 380);
    CHECK_FALSE(setPointAt(newestFirst, now, 750)); // hotter at 600, and nobody said to what
    CHECK(setPointAt(newestFirst, now, 400)->value == 350);
    CHECK(setPointAt({}, now, 150)->value == 380); // never turned since it was described
    CHECK_FALSE(setPointAt({}, now, 50));          // before that
}

TEST_CASE("a ride without a trace, or not cured, says nothing about the usual", "[shop][turn]") {
    TraceLoaded strip;
    strip.taken.evidence = records::StripSeen{};
    CHECK_FALSE(usualRideOf(strip, fahrenheit(380)));
    TraceLoaded cold;
    cold.taken.evidence = records::TraceSeen{};
    cold.taken.verdict = holdfast::analytics::Verdict{};
    cold.taken.verdict->word = holdfast::analytics::Word::underCured;
    CHECK_FALSE(usualRideOf(cold, fahrenheit(380)));
    TraceLoaded empty;
    empty.taken.evidence = records::TraceSeen{};
    empty.taken.verdict = holdfast::analytics::Verdict{};
    empty.taken.verdict->word = holdfast::analytics::Word::cured;
    CHECK_FALSE(usualRideOf(empty, fahrenheit(380)));
}
