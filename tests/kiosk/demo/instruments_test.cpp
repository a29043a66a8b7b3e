// The demo's instruments: in date, due soon, expired, and never calibrated.
#include "analytics/metrology/instrument_faults.hpp"
#include "tests/kiosk/demo/support/demo_book.hpp"

#include <catch2/catch.hpp>

#include <map>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::tests;

namespace {

std::map<std::string, analytics::Instrument> byName() {
    const auto all = records::instruments(wholeDemo().reader());
    REQUIRE(all);
    std::map<std::string, analytics::Instrument> names;
    for (const auto& one : *all) {
        names.emplace(one.instrument.name, one.instrument);
    }
    return names;
}

} // namespace

TEST_CASE("the demo has instruments of every kind", "[demo]") {
    std::map<analytics::InstrumentKind, int> kinds;
    for (const auto& [name, instrument] : byName()) {
        ++kinds[instrument.kind];
        INFO(name);
        CHECK(analytics::validate(instrument).empty());
    }
    CHECK(kinds[analytics::InstrumentKind::probe] >= 3);
    CHECK(kinds[analytics::InstrumentKind::spot] >= 1);
    CHECK(kinds[analytics::InstrumentKind::strip] >= 2);
    CHECK(kinds[analytics::InstrumentKind::gun] >= 2);
}

TEST_CASE("of the demo's certificates one has expired, one is due within the week, and two are missing", "[demo]") {
    auto instruments = byName();
    const auto due = [&](const char* name) { return instruments.at(name).certificates.back().due; };
    CHECK(due("P-1") < kToday);
    CHECK(due("P-8") >= kToday);
    CHECK(due("P-8") <= kToday + std::chrono::days{7});
    CHECK(due("P-3") > kToday + std::chrono::days{60});
    CHECK(instruments.at("P-5").certificates.empty());
    CHECK(instruments.at("G-6").certificates.empty());
    CHECK(instruments.at("S-9").strip->expiry < kToday);
    for (const char* name : {"P-3", "P-5", "P-8", "H-7"}) {
        INFO(name);
        CHECK(analytics::Calibration(instruments.at(name), kToday).checkedInDate());
    }
}

TEST_CASE("on every day of the year the demo's probes in use are in date", "[demo]") {
    // The working days before today span another number of days of the calendar: 15 to 17.
    for (const int ahead : {3, 4, 5}) { // Saturday, Sunday, Monday
        FreshBook fresh;
        writeDemo(*fresh.book, {kNoon.millisecondsSinceEpoch + ahead * 86'400'000LL, kNoon.utcOffsetMinutes});
        INFO(ahead);
        CHECK(wordOf(*fresh.book, 20413) == analytics::Word::cured);
        CHECK(wordOf(*fresh.book, 20402) == analytics::Word::cured);
        CHECK(wordOf(*fresh.book, 20399) == analytics::Word::cured);
    }
}
