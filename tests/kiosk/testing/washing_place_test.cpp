// Washing as sheets, on a real book: drums, witnesses, cycles and what they do to a lot.
#include "tests/kiosk/testing/support/tests_rig.hpp"

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

TEST_CASE("due cycles come by themselves: drum, witnesses, grade, and the next", "[testing][places][wash]") {
    TestsRig frame;
    const auto id = frame.name();
    frame.after(kDay + kHour);
    const auto drum = idOfDue(*frame.place, QStringLiteral("Wash 1"));
    REQUIRE_FALSE(drum.empty());
    CHECK(frame.says("put it in the drum"));
    REQUIRE(frame.place->act(drum)); // the print is in the drum already
    REQUIRE(frame.place->enter("tests.field.machine", "front loader"));
    REQUIRE(frame.place->act("tests.save"));
    const auto judge = idOfDue(*frame.place, QStringLiteral("Judge load 1"));
    REQUIRE_FALSE(judge.empty());
    REQUIRE(frame.place->act(judge));
    REQUIRE(frame.place->enter("tests.field.good-grade", "4.5"));
    REQUIRE(frame.place->enter("tests.field.weak-grade", "2"));
    REQUIRE(frame.place->act("tests.save"));
    CHECK(wasTold(frame, "The load is valid"));
    const auto grade = idOfDue(*frame.place, QStringLiteral("Wash 1"));
    REQUIRE(frame.place->act(grade));
    for (const auto& block : frame.place->sheet().blocks) {
        if (block.kind == SheetKinds::GradeChart) {
            CHECK(block.chart.dueCycle == 1);
            CHECK(block.chart.limit == 3.5);
        }
    }
    REQUIRE(frame.place->act("tests.set.answer.0.4"));
    REQUIRE(frame.place->act("tests.set.answer.1.4"));
    REQUIRE(frame.place->act("tests.set.answer.2.no"));
    REQUIRE(frame.place->act("tests.set.answer.3.no"));
    REQUIRE(frame.place->act("tests.save"));
    CHECK(frame.tests(id).size() == 1);
    CHECK_FALSE(idOfDue(*frame.place, QStringLiteral("Wash 2")).empty());
    frame.after(3 * kDay);
    CHECK(frame.says("late, "));
}

TEST_CASE("a failed third wash holds the lot; a void load holds nothing", "[testing][places][wash]") {
    TestsRig frame;
    const auto id = frame.name();
    frame.after(kDay + kHour);
    frame.wash(id, "2", "1"); // even the good witness changed too much
    CHECK(wasTold(frame, "too much"));
    frame.grade(id, "1");
    CHECK(wasTold(frame, "counts for nothing"));
    CHECK(frame.print(id).lotState != records::LotState::onHold);
    for (int cycle = 1; cycle <= 3; ++cycle) {
        frame.after(kHour);
        frame.wash(id, "4.5", "2");
        frame.grade(id, cycle == 3 ? "3" : "4");
        const auto newest = frame.tests(id).back().done;
        CHECK(newest.cycle == cycle);
        CHECK((newest.outcome == records::TestOutcome::failed) == (cycle == 3));
    }
    CHECK(frame.print(id).lotState == records::LotState::onHold);
    CHECK(idOfDue(*frame.place, QStringLiteral("Wash 4")).empty());
}

TEST_CASE("a test is put right by a new entry; what it said before is one press away",
          "[testing][places][correction]") {
    TestsRig frame;
    const auto id = frame.name();
    frame.after(kDay + kHour);
    frame.wash(id, "4.5", "2");
    frame.grade(id, "2");
    CHECK(frame.print(id).lotState == records::LotState::onHold);
    const auto test = frame.tests(id).front().id;
    REQUIRE(frame.place->act("tests.pick.test." + test));
    REQUIRE(frame.place->act("tests.put-right"));
    REQUIRE(frame.place->act("tests.set.answer.0.4.5"));
    REQUIRE(frame.place->act("tests.save"));
    REQUIRE(frame.tests(id).size() == 1);
    CHECK(frame.tests(id).front().versions == 2);
    CHECK(frame.print(id).lotState != records::LotState::onHold);
    REQUIRE(frame.place->act("tests.pick.test." + test));
    const auto shown = allText(frame.place->sheet());
    CHECK(shown.find("change in colour\n4.5") != std::string::npos);
    CHECK(shown.find("change in colour\n2") == std::string::npos);
    REQUIRE(frame.place->act("tests.versions"));
    CHECK(allText(frame.place->sheet()).find("change in colour\n2") != std::string::npos);
}

TEST_CASE("a load's witnesses may be looked at again", "[testing][places][load]") {
    TestsRig frame;
    const auto id = frame.name();
    frame.after(kDay + kHour);
    const auto load = frame.wash(id, "2", "1");
    REQUIRE(frame.place->act("tests.pick.load." + load));
    REQUIRE(frame.place->act("tests.judge"));
    REQUIRE(frame.place->act("tests.set.good.4.5"));
    REQUIRE(frame.place->act("tests.set.weak.2"));
    REQUIRE(frame.place->act("tests.save"));
    const auto row = records::loadById(frame.shop.db(), load);
    REQUIRE(row);
    CHECK((*row)->judged->word == records::LoadWord::valid);
}

TEST_CASE("a print that has not rested is not washed", "[testing][places][load][refusal]") {
    TestsRig frame;
    const auto id = frame.name();
    REQUIRE(frame.place->act("tests.new-load"));
    CHECK(frame.place->scanned({drivers::TicketKind::print, static_cast<std::uint64_t>(frame.print(id).named.number)},
                               true));
    REQUIRE(frame.place->enter("tests.field.machine", "front loader"));
    REQUIRE(frame.place->enter("tests.field.temperature", "900"));
    REQUIRE(frame.place->act("tests.save"));
    CHECK(frame.says("has to rest until"));
    CHECK(frame.says("No machine washes at 900"));
    CHECK(frame.says("front loader"));
    const auto loads = records::loads(frame.shop.db(), 1);
    CHECK(loads->empty());
}
