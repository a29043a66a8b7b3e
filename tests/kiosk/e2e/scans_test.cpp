#include "tests/kiosk/e2e/support/book_look.hpp"
#include "tests/kiosk/e2e/support/kiosk_process.hpp"
#include "tests/kiosk/e2e/support/rig.hpp"

#include "drivers/protocol/ticket_code.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::tests;

TEST_CASE("bad scans harm nothing: the next good one is ridden for", "[e2e]") {
    Rig rig{20.0};
    KioskProcess kiosk{rig.demoArguments()};
    REQUIRE(eventually([&] { return kiosk.hasOpen(rig.scannerPort()); }));
    const auto before = entriesIn(rig.data());
    REQUIRE(before > 0);

    auto damaged = drivers::encode(drivers::TicketKind::run, 20413, 4);
    damaged.back() = damaged.back() == '0' ? '1' : '0'; // a wrong check sign
    rig.scanWhole(damaged);
    rig.scanWhole(drivers::encode(drivers::TicketKind::run, 99999, 4)); // a good code of no run
    rig.scanWhole("");
    rig.scanWhole(std::string{"\x01\xff\x00\xfe", 4});
    rig.scanWhole(std::string(10'000, 'A')); // as long as a scan may be
    rig.scanWhole(std::string(50'000, 'R')); // longer than any
    CHECK(entriesIn(rig.data()) == before);
    REQUIRE(kiosk.alive());

    const auto probe = ride(rig, kiosk, scenarioWith(294.2), 20413); // cures run 20413 (kiosk/demo/demo_shop.cpp)
    waitForEntry(kiosk, rig, before);
    CHECK(kindsFrom(rig.data(), before + 1) == std::vector<std::string>{"reading.taken"});
    CHECK(newestReading(rig.data()).row.runNumber == 20413);
    CHECK(kiosk.alive());
}
