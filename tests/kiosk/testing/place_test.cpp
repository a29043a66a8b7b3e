// The Tests as sheets, on a real book: what is shown, what is written, what is refused, and what stays typed.
#include "tests/kiosk/testing/support/tests_rig.hpp"

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

TEST_CASE("a print is named with five signs and found by them, typed or scanned", "[testing][places]") {
    TestsRig frame;
    const auto id = frame.name();
    CHECK(frame.asked == std::vector<shop::Right>{shop::Right::logTests});
    const auto number = frame.print(id).named.number;
    const auto signs = shop::printSigns(number);
    CHECK(wasTold(frame, signs));
    CHECK(frame.says("Run 20418"));
    CHECK(frame.says("piece 12"));
    const auto pieces = records::piecesOfLot(frame.shop.db(), frame.print(id).named.lot);
    REQUIRE(pieces);
    CHECK(pieces->tested == 1);
    REQUIRE(frame.place->act("tests.back"));
    REQUIRE(frame.place->enter("tests.field.find", signs)); // as it stands on the print: without the T
    CHECK(frame.says("piece 12"));
    REQUIRE(frame.place->act("tests.back"));
    CHECK(frame.place->scanned({drivers::TicketKind::print, static_cast<std::uint64_t>(number)}, false));
    CHECK(frame.says("piece 12"));
    CHECK_FALSE(frame.place->scanned({drivers::TicketKind::bucket, 1}, true));
}

TEST_CASE("signs that no print has are told, and another print's answer goes away", "[testing][places]") {
    TestsRig frame;
    frame.name();
    CHECK(frame.place->scanned({drivers::TicketKind::print, 4711}, true));
    CHECK(wasTold(frame, shop::printSigns(4711)));
    CHECK_FALSE(frame.says("piece 12"));
    REQUIRE(frame.place->enter("tests.field.find", "0O0O0"));
    CHECK(wasTold(frame, "0O0O0"));
}

TEST_CASE("a retained piece is found in two touches, and named once its time is over", "[testing][places]") {
    TestsRig frame;
    frame.name("A3");
    REQUIRE(frame.place->act("tests.back"));
    REQUIRE(frame.place->act("tests.list.retained")); // the first touch; the place is where one stands
    CHECK(frame.says("A3"));
    const auto row = frame.place->sheet().list.front();
    CHECK_FALSE(row.strong);
    REQUIRE(frame.place->act(row.id.toStdString())); // the second
    CHECK(frame.says("Keep until"));
    frame.after(30 * kDay); // the book's clock stands at 2026-02-25, its time ends on 2026-03-01
    REQUIRE(frame.place->act("tests.list.retained"));
    CHECK(frame.place->sheet().list.front().strong);
    CHECK(frame.says("past its time, 1 Mar"));
}

TEST_CASE("testing before the rest time is refused and everything typed stays", "[testing][places][refusal]") {
    TestsRig frame;
    const auto id = frame.name();
    REQUIRE(frame.place->act("tests.test"));
    CHECK(frame.says("from "));
    REQUIRE(frame.place->act("tests.by.stretch-jersey"));
    REQUIRE(frame.place->act("tests.set.pull.0.no-crack"));
    REQUIRE(frame.place->act("tests.set.pull.1.breaks"));
    REQUIRE(frame.place->enter("tests.field.lengthwise.original", "0"));
    REQUIRE(frame.place->enter("tests.field.note", "thin cloth"));
    const auto before = frame.entries();
    REQUIRE(frame.place->act("tests.save"));
    CHECK(frame.entries() == before);
    CHECK(frame.says("has to rest until"));
    CHECK(frame.says("must be above zero")); // gauge length zero
    CHECK(frame.says("thin cloth"));
    CHECK(frame.place->isWriting());
    frame.after(2 * kDay);
    REQUIRE(frame.place->enter("tests.field.lengthwise.original", ""));
    REQUIRE(frame.place->act("tests.save"));
    CHECK_FALSE(frame.place->isWriting());
    REQUIRE(frame.tests(id).size() == 1);
    CHECK(frame.tests(id).front().done.note == "thin cloth");
    CHECK(frame.tests(id).front().done.outcome == records::TestOutcome::failed);
}

TEST_CASE("a failed test and its hold are one commit, and the hold names the test", "[testing][places][hold]") {
    TestsRig frame;
    const auto id = frame.name();
    frame.after(2 * kDay);
    REQUIRE(frame.place->act("tests.pick.print." + id));
    REQUIRE(frame.place->act("tests.test"));
    REQUIRE(frame.place->act("tests.by.stretch-jersey"));
    REQUIRE(frame.place->act("tests.set.pull.1.powders"));
    const auto before = frame.entries();
    REQUIRE(frame.place->act("tests.save"));
    CHECK(frame.entries() == before + 2);
    const auto holds = records::holdsOfLot(frame.shop.db(), frame.print(id).named.lot);
    REQUIRE(holds);
    REQUIRE(holds->size() == 1);
    CHECK(holds->front().placed.because == frame.tests(id).front().id);
    CHECK(holds->front().placed.bin == 1);
    CHECK(wasTold(frame, "on hold"));
    CHECK(frame.print(id).lotState == records::LotState::onHold);
    const auto page = frame.place->sheet();
    const auto shown = [&](auto is) { return std::any_of(page.blocks.begin(), page.blocks.end(), is); };
    CHECK(shown([](const SheetBlock& block) {
        return block.kind == SheetKinds::Stretch && block.result == QStringLiteral("failed") && block.pulls.size() == 1;
    }));
    CHECK(shown([](const SheetBlock& block) { // the test and the hold, in order of time
        return block.kind == SheetKinds::Trail && block.trail.size() == 2 && block.trail.back().strong;
    }));
}

TEST_CASE("a grade typed off the half steps is refused with its figure", "[testing][places][refusal]") {
    TestsRig frame;
    const auto id = frame.name();
    frame.after(2 * kDay);
    REQUIRE(frame.place->act("tests.pick.print." + id));
    REQUIRE(frame.place->act("tests.test"));
    REQUIRE(frame.place->act("tests.by.rub-iso"));
    REQUIRE(frame.place->act("tests.typed"));
    REQUIRE(frame.place->enter("tests.field.answer.0", "4.3"));
    REQUIRE(frame.place->enter("tests.field.answer.1", "7"));
    REQUIRE(frame.place->act("tests.save"));
    CHECK(frame.says("4.3 is between the steps"));
    CHECK(frame.says("7 is outside the scale"));
    CHECK(frame.tests(id).empty());
    REQUIRE(frame.place->act("tests.typed"));
    REQUIRE(frame.place->act("tests.set.answer.0.4.5"));
    REQUIRE(frame.place->act("tests.set.answer.1.4"));
    REQUIRE(frame.place->act("tests.save"));
    CHECK(frame.tests(id).size() == 1);
}

TEST_CASE("a half-typed form outlives a look at something else", "[testing][places]") {
    TestsRig frame;
    const auto id = frame.name();
    REQUIRE(frame.place->act("tests.new-method"));
    REQUIRE(frame.place->enter("tests.field.name", "sweat patch"));
    REQUIRE(frame.place->act("tests.pick.print." + id));
    CHECK(frame.says("piece 12"));
    CHECK(frame.place->isWriting());
    REQUIRE(frame.place->act("tests.new-load")); // it comes back instead
    CHECK(frame.says("sweat patch"));
    CHECK(wasTold(frame, "still being written"));
    frame.diskFull = true;
    REQUIRE(frame.place->enter("tests.field.steps.0", "wet it"));
    REQUIRE(frame.place->act("tests.save"));
    CHECK(frame.says("sweat patch")); // nothing was written, and nothing is lost
    frame.diskFull = false;
    REQUIRE(frame.place->act("tests.save"));
    CHECK_FALSE(frame.place->isWriting());
    CHECK(frame.asked.back() == shop::Right::describeMethods);
}

TEST_CASE("a method in use is not deleted: it is said why, and what to do instead", "[testing][places][refusal]") {
    TestsRig frame;
    const auto id = frame.name();
    REQUIRE(frame.place->act("tests.pick.print." + id));
    REQUIRE(frame.place->act("tests.test"));
    REQUIRE(frame.place->act("tests.by.water-drop"));
    REQUIRE(frame.place->act("tests.set.answer.0.yes"));
    REQUIRE(frame.place->act("tests.save"));
    REQUIRE(frame.place->act("tests.list.methods"));
    REQUIRE(frame.place->act("tests.pick.method.water-drop"));
    CHECK(frame.says("Set one drop of water"));
    const auto before = frame.entries();
    REQUIRE(frame.place->act("tests.method.delete"));
    CHECK(frame.entries() == before);
    CHECK(wasTold(frame, "is not deleted"));
    REQUIRE(frame.place->act("tests.method.withdraw"));
    CHECK(frame.entries() == before + 1);
    CHECK(frame.says("no longer used"));
    CHECK(frame.tests(id).size() == 1);
}

TEST_CASE("every starter shows its steps, and the solvent rub its cautions", "[testing][places]") {
    for (const auto* code : {"en", "es"}) {
        TestsRig frame;
        frame.speech.language = &wording::Language::ofCode(code);
        frame.place->reload();
        REQUIRE(frame.place->act("tests.list.methods"));
        for (const auto& method : shop::starterMethods()) {
            INFO(code << " " << method.key);
            REQUIRE(frame.place->act("tests.pick.method." + method.key));
            CHECK_FALSE(frame.says("tests."));
            CHECK(wording::methodSteps(method, frame.speech).size() >= 2);
        }
        const auto shop = shop::starterMethods();
        const auto solvent =
            std::find_if(shop.begin(), shop.end(), [](const auto& one) { return one.key == "solvent-rub"; });
        CHECK(wording::methodCautions(*solvent, frame.speech).size() == 2);
    }
}

TEST_CASE("a line of the colour meter fills the figures, shows the patches and the direction",
          "[testing][places][colour]") {
    TestsRig frame;
    const auto id = frame.name();
    REQUIRE(frame.place->act("tests.pick.print." + id));
    REQUIRE(frame.place->act("tests.test"));
    REQUIRE(frame.place->act("tests.by.bleed-watch"));
    REQUIRE(frame.place->enter("tests.field.meter", "L*=94.0 a*=0.0 b*=2.0"));
    REQUIRE(frame.place->act("tests.set.meter.garment"));
    REQUIRE(frame.place->enter("tests.field.meter", "42 58 30"));
    REQUIRE(frame.place->act("tests.set.meter.after"));
    REQUIRE(frame.place->enter("tests.field.meter", "pink"));
    CHECK(frame.says("pink")); // it stays
    REQUIRE(frame.place->enter("tests.field.meter", "91,0;3,6;3,7"));
    bool halves = false;
    for (const auto& block : frame.place->sheet().blocks) {
        if (block.kind == SheetKinds::Halves) {
            halves = true;
            CHECK(block.halves.left.measured());
            CHECK(block.halves.right.measured());
            CHECK(block.halves.gradeNote.contains(QStringLiteral("bleed")));
        }
    }
    CHECK(halves);
    REQUIRE(frame.place->act("tests.save"));
    const auto kept = frame.tests(id);
    REQUIRE(kept.size() == 1);
    CHECK(kept.front().done.before == analytics::Lab{94.0, 0.0, 2.0});
    CHECK(kept.front().done.after == analytics::Lab{91.0, 3.6, 3.7});
}

TEST_CASE("a split test says what the two halves mean", "[testing][places]") {
    TestsRig frame;
    const auto id = frame.name();
    frame.after(2 * kDay);
    REQUIRE(frame.place->act("tests.pick.print." + id));
    REQUIRE(frame.place->act("tests.test"));
    REQUIRE(frame.place->act("tests.by.split"));
    REQUIRE(frame.place->act("tests.set.answer.0.no"));
    REQUIRE(frame.place->act("tests.set.answer.1.yes"));
    REQUIRE(frame.place->act("tests.save"));
    REQUIRE(frame.place->act("tests.pick.test." + frame.tests(id).front().id));
    CHECK(frame.says("the print was under-cured")); // job.md: only the re-cured half survives
}

TEST_CASE("who may not sign writes nothing", "[testing][places]") {
    TestsRig frame;
    frame.signs = false;
    const auto before = frame.entries();
    REQUIRE(frame.place->act("tests.name"));
    REQUIRE(frame.place->enter("tests.field.run", "20418"));
    REQUIRE(frame.place->act("tests.save"));
    CHECK(frame.entries() == before);
    CHECK(frame.place->isWriting());
}

TEST_CASE("a print is cut in two, its label printed, and it is gone once used up", "[testing][places]") {
    TestsRig frame;
    const auto id = frame.name();
    REQUIRE(frame.place->act("tests.label"));
    REQUIRE(frame.printed.size() == 1);
    CHECK(frame.printed.front().what == PrintWish::What::printLabel);
    REQUIRE(frame.place->act("tests.cut"));
    CHECK(frame.says("half of"));
    REQUIRE(frame.place->act("tests.pick.print." + id));
    REQUIRE(frame.place->act("tests.gone"));
    REQUIRE(frame.place->act("tests.end.used-up"));
    CHECK(frame.print(id).ended == records::PrintEnd::usedUp);
    CHECK(frame.says("used up"));
}
