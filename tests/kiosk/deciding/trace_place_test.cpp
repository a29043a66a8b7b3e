// The auditor's page on a real book.
#include "tests/kiosk/deciding/deciding_rig.hpp"

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

TEST_CASE("two touches lead from a clue to everything about the run", "[deciding][trace]") {
    DecidingRig rig;
    rig.bracket();
    rig.made(200);
    rig.shipped(60, "Kestrel", {"C-77"});
    auto& trace = *rig.places.trace;
    CHECK(shows(trace, "Scan a ticket"));
    trace.enter("trace.clue", "C-77"); // first touch: the field; second: its enter
    CHECK(shows(trace, "Run 20418"));
    CHECK(shows(trace, "2 readings: 1 under-cured or overheated."));
    CHECK(shows(trace, "60 pieces shipped in 1 carton."));
    CHECK(shows(trace, "On hold: a reading"));
    CHECK(shows(trace, "60 shipped to Kestrel"));
    CHECK(shows(trace, "No piece is kept."));
    CHECK(shows(trace, "Not tested: wash."));
    CHECK(shows(trace, "Head at entry"));
    trace.act("trace.certificate");
    CHECK(rig.printed.back().what == PrintWish::What::certificate);
    CHECK(rig.printed.back().number == 20418);
}

TEST_CASE("a ticket or a bin is a clue while the page stands on the screen, and only then", "[deciding][trace]") {
    DecidingRig rig;
    rig.bracket();
    auto& trace = *rig.places.trace;
    CHECK_FALSE(trace.scanned({drivers::TicketKind::run, 20418}, false));
    CHECK(trace.scanned({drivers::TicketKind::run, 20418}, true));
    CHECK(shows(trace, "2 readings"));
    trace.act("trace.back");
    CHECK(trace.scanned({drivers::TicketKind::bin, 14}, true));
    CHECK(shows(trace, "2 readings"));
    CHECK(trace.scanned({drivers::TicketKind::bin, 99}, true));
    CHECK(shows(trace, "Nothing in the book fits"));
    CHECK_FALSE(trace.scanned({drivers::TicketKind::person, 1}, true));
}

TEST_CASE("a clue that fits nothing says so and stays", "[deciding][trace]") {
    DecidingRig rig;
    auto& trace = *rig.places.trace;
    trace.enter("trace.clue", "no such order");
    CHECK(shows(trace, "Nothing in the book fits \xE2\x80\x9Cno such order\xE2\x80\x9D."));
    trace.enter("trace.clue", "");
    CHECK(shows(trace, "Scan a ticket"));
}

TEST_CASE("a reading opens from the page, a lot leads to Holds", "[deciding][trace]") {
    DecidingRig rig;
    const auto bad = rig.bracket();
    auto& trace = *rig.places.trace;
    trace.showRun(rig.run());
    CHECK(trace.act("trace.reading." + bad));
    CHECK(shows(trace, "Reading of"));
    trace.act("holds.back");
    CHECK(trace.act("trace.lot." + rig.lot()));
    CHECK(rig.went.back() == "holds");
    CHECK(shows(*rig.places.holds, "Pull pieces 113"));
}

TEST_CASE("children's wear says what was not tested and never says safe", "[deciding][trace]") {
    DecidingRig rig{true};
    rig.places.trace->showRun(rig.run());
    CHECK(shows(*rig.places.trace, "an accredited laboratory's work"));
    CHECK(everything(*rig.places.trace).find("safe") == std::string::npos);
}
