// What stands on the glass: the kiosk's own objects on real pseudo-terminals, read from the items of its window. The
// words are those of kiosk/wording/languages/en.json; run 20413 and its peak of 294.2 °F those of
// kiosk/demo/demo_shop.cpp.
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/ledger/schema.hpp"
#include "tests/kiosk/e2e/support/book_look.hpp"
#include "tests/kiosk/e2e/support/kiosk_process.hpp"
#include "tests/kiosk/e2e/support/whole_kiosk.hpp"

#include <SQLiteCpp/Database.h>
#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::tests;

namespace {} // namespace

TEST_CASE("a scan and a ride bring the verdict to the Run screen, and it is in the book by then", "[e2e][screen]") {
    ensureScreen();
    Rig rig{kSpeed};
    const WholeKiosk kiosk{rig};
    REQUIRE(eventually([&] { return kiosk.scannerReady(); }));
    const auto before = entriesIn(rig.data());
    REQUIRE(before > 0);
    const auto probe = rig.plugIn(scenarioWith(kPeak));
    rig.scanRun(20413);
    REQUIRE(eventually([&] { return kiosk.shows("Ready"); })); // on Run, without a touch
    CHECK(kiosk.showsPartly("144 red jerseys"));
    REQUIRE(eventually([&] { return kiosk.shows("rising"); }));
    CHECK_FALSE(kiosk.shows("Cured"));
    REQUIRE(eventually([&] { return kiosk.shows("cooling"); }));
    CHECK_FALSE(kiosk.shows("Cured"));
    CHECK(entriesIn(rig.data()) == before);

    std::int64_t whenShown = 0;
    REQUIRE(eventually([&] {
        const bool shown = kiosk.shows("Cured");
        whenShown = shown ? entriesIn(rig.data()) : 0;
        return shown;
    }));
    CHECK(whenShown == before + 1);
    const auto reading = newestReading(rig.data());
    CHECK(reading.row.word == analytics::Word::cured);
    CHECK(reading.row.runNumber == 20413);
    for (const char* other : {"Under-cured", "Overheated", "Not proven", "Not written"}) {
        CHECK_FALSE(kiosk.shows(other));
    }
}

TEST_CASE("a bad scan is answered on the screen with what happened and what to do", "[e2e][screen]") {
    ensureScreen();
    Rig rig{kSpeed};
    const WholeKiosk kiosk{rig};
    REQUIRE(eventually([&] { return kiosk.scannerReady(); }));
    const auto before = entriesIn(rig.data());

    auto damaged = drivers::encode(drivers::TicketKind::run, 20413, 4);
    damaged.back() = damaged.back() == '0' ? '1' : '0';
    rig.scan(damaged);
    REQUIRE(eventually([&] { return kiosk.showsPartly("is damaged: its check sign does not fit."); }));
    CHECK(kiosk.showsPartly(damaged.c_str()));
    CHECK(kiosk.showsPartly("Scan it again, or type the code below the bars."));

    rig.scanRun(99999);
    REQUIRE(eventually([&] { return kiosk.showsPartly("No run with number 99999 is in the book."); }));
    CHECK_FALSE(kiosk.showsPartly("is damaged"));

    rig.scanWhole(std::string(50'000, 'R')); // longer than any scan
    REQUIRE(eventually([&] { return kiosk.showsPartly("What was scanned could not be read."); }));

    rig.scanRun(20413); // a good one clears it
    REQUIRE(eventually([&] { return kiosk.showsPartly("144 red jerseys") && kiosk.shows("No probe"); }));
    CHECK_FALSE(kiosk.showsPartly("could not be read"));
    CHECK(entriesIn(rig.data()) == before);
}

TEST_CASE("a probe that goes away in the tunnel is told at once, and the verdict afterwards is not proven",
          "[e2e][screen]") {
    ensureScreen();
    Rig rig{kSpeed};
    const WholeKiosk kiosk{rig};
    REQUIRE(eventually([&] { return kiosk.scannerReady(); }));
    const auto probe = rig.plugIn(scenarioWith(
        kPeak, {{drivers::TroubleKind::unplugged, seconds(kTopSeconds - 4), seconds(kTopSeconds + 4), 0.0}}));
    rig.scanRun(20413);
    REQUIRE(eventually([&] { return kiosk.shows("Probe lost"); }));
    REQUIRE(eventually([&] { return kiosk.shows("Not proven"); }));
    CHECK(newestReading(rig.data()).row.word == analytics::Word::notProven);
    CHECK_FALSE(kiosk.shows("Cured"));
}

TEST_CASE("a reading half typed waits while another place is looked at, and a card does not hide it", "[e2e][screen]") {
    ensureScreen();
    Rig rig{kSpeed};
    const WholeKiosk kiosk{rig};
    REQUIRE(eventually([&] { return kiosk.scannerReady(); }));
    rig.scanRun(20413);
    REQUIRE(eventually([&] { return kiosk.press("Other reading"); }));
    REQUIRE(eventually([&] { return kiosk.pressWhatBegins("H-7"); }));
    INFO(kiosk.textsShown().join(QLatin1Char{10}).toStdString());
    REQUIRE(eventually([&] { return kiosk.shows("Spot thermometer H-7"); }));
    rig.scan(drivers::encode(drivers::TicketKind::action, 20, 3)); // left
    REQUIRE(eventually([&] { return kiosk.state().hand->position == kiosk::records::BeltPosition::left; }));
    CHECK(kiosk.shows("Spot thermometer H-7"));
    REQUIRE(eventually([&] { return kiosk.press("Inks"); }));
    REQUIRE(eventually([&] { return kiosk.shows("New family"); }));
    const auto probe = rig.plugIn(scenarioWith(kPeak)); // the machine goes on
    REQUIRE(eventually([&] { return kiosk.showsPartly("live"); }));
    CHECK_FALSE(kiosk.shows("Spot thermometer H-7"));
    REQUIRE(kiosk.state().hand);
}

TEST_CASE("a newer program's book is shown, with a sentence that it can only be read", "[e2e][screen]") {
    ensureScreen();
    Rig rig{kSpeed};
    { const WholeKiosk first{rig}; }
    {
        SQLite::Database database{(rig.data() / kiosk::ledger::Book::fileName).string(), SQLite::OPEN_READWRITE};
        database.exec("PRAGMA user_version = " + std::to_string(kiosk::ledger::schemaVersion + 1));
    }
    const WholeKiosk kiosk{rig};
    REQUIRE(eventually([&] { return kiosk.showsPartly("This book was written by a newer Holdfast."); }));
    CHECK(kiosk.showsPartly("Until then the book can be read, not written."));
    REQUIRE(eventually([&] { return kiosk.press("Close"); }));
    REQUIRE(eventually([&] { return kiosk.showsPartly("red jerseys"); })); // what is in it can still be read
    CHECK_FALSE(kiosk.showsPartly("newer Holdfast"));
}
