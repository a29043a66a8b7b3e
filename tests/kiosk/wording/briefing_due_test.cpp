// What the briefing says of tests that are due.
#include "kiosk/wording/briefing_sentences.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk;

namespace {

using Lines = std::vector<std::string>;

shop::TestsDue due() {
    shop::TestsDue due;
    due.today = 5;
    due.late = 2;
    due.soon = 3;
    shop::NamedDue print;
    print.print = 7;
    print.run = 20391;
    print.method.kind = records::TestKind::wash;
    print.due.cycle = 5;
    print.due.day = std::chrono::sys_days{std::chrono::year{2026} / 11 / 24};
    shop::NamedDue load;
    load.due.loadNumber = 31;
    load.due.day = std::chrono::sys_days{std::chrono::year{2026} / 11 / 25};
    due.latest = {print, load};
    return due;
}

} // namespace

TEST_CASE("the briefing counts the tests due, names the latest and says what is still to come", "[wording][briefing]") {
    const wording::Speech speech;
    const auto lines = wording::briefingTestsDue(due(), speech);
    REQUIRE(lines.size() == 4);
    CHECK(lines[0] == "5 tests of prints due, 2 of them late");
    CHECK_THAT(lines[1], Catch::EndsWith("of run 20391: Wash 5 was due 2026-11-24"));
    CHECK(lines[2] == "Load 31: its witnesses were to be looked at by 2026-11-25");
    CHECK(lines[3] == "3 more tests of prints will be due");

    auto one = due();
    one.today = one.late = one.soon = 1;
    one.latest.clear();
    CHECK(wording::briefingTestsDue(one, speech) ==
          Lines{"1 test of a print due, and it is late", "1 more test of a print will be due"});
    one.late = 0;
    CHECK(wording::briefingTestsDue(one, speech).front() == "1 test of a print due, and not late");
    CHECK(wording::briefingTestsDue({}, speech).empty());
}

TEST_CASE("tests due stand before instruments due, and nothing is due only if neither is", "[wording][briefing]") {
    const wording::Speech speech;
    wording::BriefingDue both;
    both.items = {{records::DueKind::checkDue, 0, "P-3", std::nullopt}};
    both.tests = due();
    const auto said = wording::briefingSaid({}, {}, both, speech).due;
    REQUIRE(said.size() == 5);
    CHECK(said.back() == "P-3: check due now");
    both.items.clear();
    CHECK(wording::briefingSaid({}, {}, both, speech).due.size() == 4);
    CHECK(wording::briefingSaid({}, {}, {}, speech).due == Lines{"Nothing is due."});
}

TEST_CASE("the briefing's tests are said in Spanish as well", "[wording][briefing]") {
    wording::Speech speech;
    speech.language = &wording::Language::spanish();
    const auto lines = wording::briefingTestsDue(due(), speech);
    REQUIRE(lines.size() == 4);
    CHECK(lines[0] == "5 pruebas de estampados pendientes, 2 con retraso");
    CHECK_THAT(lines[1], Catch::EndsWith("vencía el 2026-11-24"));
}
