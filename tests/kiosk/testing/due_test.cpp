// What is due, by when, and what is late.
#include "kiosk/shop/testing/due_week.hpp"
#include "tests/kiosk/testing/support/facts.hpp"

using namespace holdfast;
using namespace holdfast::testing_test;
using shop::DueState;
using shop::DueStep;

namespace {

records::TestRow done(const std::string& method, std::optional<int> cycle,
                      records::TestOutcome outcome = records::TestOutcome::noted,
                      const std::string& print = "print-7") {
    records::TestDone test;
    test.print = print;
    test.method = method;
    test.cycle = cycle;
    test.outcome = outcome;
    return kept(method + (cycle ? std::to_string(*cycle) : ""), test);
}

shop::DueFacts facts(const std::vector<std::string>& methods) {
    shop::DueFacts made;
    made.prints = {print()};
    for (const auto& key : methods) {
        made.methods.push_back(starter(key));
    }
    made.bleedingFabrics = {"100% polyester"};
    return made;
}

drivers::WallTime at(std::int64_t milliseconds) {
    return {milliseconds, 0};
}

} // namespace

TEST_CASE("a stretch test is due once the print has rested, and late the day after", "[testing][due]") {
    const auto all = facts({"stretch-jersey"});
    CHECK(shop::dueTests(all, at(kPrinted + 2 * kHour)).empty());        // tomorrow's
    const auto morning = shop::dueTests(all, at(kPrinted + 22 * kHour)); // Thursday 08:00, rested at 10:00
    REQUIRE(morning.size() == 1);
    CHECK(morning[0].state == DueState::by);
    CHECK(morning[0].at == kPrinted + kDay);
    CHECK(shop::dueTests(all, at(kPrinted + 25 * kHour)).at(0).state == DueState::today);
    const auto late = shop::dueTests(all, at(kPrinted + 2 * kDay)); // Friday
    REQUIRE(late.size() == 1);
    CHECK(late[0].state == DueState::late);
    CHECK(late[0].day == analytics::Date{std::chrono::days{20'741}}); // Thursday 15 October 2026
}

TEST_CASE("what became possible at night is not late at dawn", "[testing][due]") {
    auto all = facts({"stretch-jersey"});
    all.prints[0].named.printedAt = kPrinted + 13 * kHour; // Wednesday 23:00, rested Thursday 23:00
    CHECK(shop::dueTests(all, at(kPrinted + 46 * kHour)).at(0).state == DueState::today); // Friday 08:00
    CHECK(shop::dueTests(all, at(kPrinted + 50 * kHour)).at(0).state == DueState::late);  // Friday 12:00
}

TEST_CASE("one print of a lot owes what every lot owes", "[testing][due]") {
    auto all = facts({"stretch-jersey"});
    const auto now = at(kPrinted + 25 * kHour);
    all.prints.push_back(print(8));
    all.prints.push_back(print(3, "lot-2"));
    CHECK(shop::dueTests(all, now).size() == 2);
    CHECK(std::all_of(all.prints.begin(), all.prints.end(), [](const auto& one) { return one.named.number != 1; }));
    all.tests = {done("stretch-jersey", std::nullopt, records::TestOutcome::passed, "print-8")};
    const auto rest = shop::dueTests(all, now);
    REQUIRE(rest.size() == 1);
    CHECK(rest[0].print == "print-3");
    all.testedLots = {{"lot-2", "stretch-jersey"}}; // by a print that has gone since
    CHECK(shop::dueTests(all, now).empty());
}

TEST_CASE("a retained piece, a half, a scrapped lot and a print that is gone owe nothing", "[testing][due]") {
    const auto now = at(kPrinted + 25 * kHour);
    auto all = facts({"stretch-jersey"});
    all.prints[0].named.retained = records::RetainedPlace{"A3", std::nullopt, false};
    CHECK(shop::dueTests(all, now).empty());
    all = facts({"stretch-jersey"});
    all.prints[0].named.halfOf = "print-1";
    CHECK(shop::dueTests(all, now).empty());
    all = facts({"stretch-jersey"});
    all.prints[0].lotState = records::LotState::scrapped;
    CHECK(shop::dueTests(all, now).empty());
    all = facts({"stretch-jersey"});
    all.prints[0].ended = records::PrintEnd::usedUp;
    CHECK(shop::dueTests(all, now).empty());
}

TEST_CASE("what is only done when asked for is not due by itself", "[testing][due]") {
    CHECK(shop::dueTests(facts({"stretch-sports", "rub-iso", "tape", "water-drop"}), at(kPrinted + 2 * kDay)).empty());
}

TEST_CASE("the looks at the white come at 0, 24 and 72 hours on cloth whose dye migrates", "[testing][due][bleed]") {
    auto all = facts({"bleed-watch"});
    const auto first = shop::dueTests(all, at(kPrinted + kHour));
    REQUIRE(first.size() == 1);
    CHECK(first[0].cycle == 0);
    CHECK(first[0].state == DueState::now);
    all.tests = {done("bleed-watch", 0)};
    CHECK(shop::dueTests(all, at(kPrinted + 2 * kHour)).empty());
    const auto later = shop::dueTests(all, at(kPrinted + 20 * kHour)); // Thursday 06:00, due 10:00
    REQUIRE(later.size() == 1);
    CHECK(later[0].cycle == 24);
    CHECK(later[0].state == DueState::by);
    CHECK(later[0].at == kPrinted + 24 * kHour);
    CHECK(shop::dueTests(all, at(kPrinted + 25 * kHour)).at(0).state == DueState::now);
    CHECK(shop::dueTests(all, at(kPrinted + 2 * kDay)).at(0).state == DueState::late);
    all.tests.push_back(done("bleed-watch", 24));
    CHECK(shop::dueTests(all, at(kPrinted + 3 * kDay)).at(0).cycle == 72);
    all.tests.push_back(done("bleed-watch", 72, records::TestOutcome::passed));
    CHECK(shop::dueTests(all, at(kPrinted + 4 * kDay)).empty());
    all = facts({"bleed-watch"});
    all.bleedingFabrics.clear();
    CHECK(shop::dueTests(all, at(kPrinted + kHour)).empty());
}

TEST_CASE("the next cycle appears by itself until the programme's are done", "[testing][due][wash]") {
    auto all = facts({"wash-house"}); // five cycles
    const auto step = [&](std::int64_t now) {
        const auto due = shop::dueTests(all, at(now));
        REQUIRE(due.size() == 1);
        return due.front();
    };
    auto now = kPrinted + 25 * kHour;
    CHECK(step(now).step == DueStep::putInDrum);
    CHECK(step(now).cycle == 1);
    for (int cycle = 1; cycle <= 5; ++cycle) {
        all.loads.push_back(load(cycle, "print-7", now, std::nullopt));
        const auto waiting = step(now);
        CHECK(waiting.step == DueStep::judgeLoad);
        CHECK(waiting.loadNumber == cycle);
        CHECK(waiting.state == DueState::now);
        all.loads.back() = load(cycle, "print-7", now);
        const auto grading = step(now);
        CHECK(grading.step == DueStep::gradeCycle);
        CHECK(grading.cycle == cycle);
        CHECK(grading.load == "load-" + std::to_string(cycle));
        all.tests.push_back(done("wash-house", cycle));
        if (cycle < 5) {
            const auto next = step(now);
            CHECK(next.step == DueStep::putInDrum);
            CHECK(next.cycle == cycle + 1);
            CHECK(next.state == DueState::today);
            CHECK(step(now + kDay).state == DueState::today); // it has until the day after
            CHECK(step(now + 2 * kDay).state == DueState::late);
        }
        now += kDay;
    }
    CHECK(shop::dueTests(all, at(now)).empty());
}

TEST_CASE("a void load did nothing: its cycle is due again, and a failed wash goes no further",
          "[testing][due][wash]") {
    auto all = facts({"wash-house"});
    const auto now = kPrinted + 25 * kHour;
    all.loads = {load(1, "print-7", now, records::LoadWord::tooGentle)};
    const auto again = shop::dueTests(all, at(now + kHour));
    REQUIRE(again.size() == 1);
    CHECK(again[0].step == DueStep::putInDrum);
    CHECK(again[0].cycle == 1);
    all.loads.push_back(load(2, "print-7", now + 2 * kHour));
    all.tests = {done("wash-house", 1, records::TestOutcome::failed)};
    CHECK(shop::dueTests(all, at(now + 3 * kHour)).empty());
}

TEST_CASE("late ones come first, then what waits, then what has its hour", "[testing][due]") {
    auto all = facts({"stretch-jersey", "bleed-watch", "wash-house"});
    all.tests = {done("bleed-watch", 0)};
    auto fresh = print(9, "lot-9");
    fresh.named.printedAt = kPrinted + kDay + 8 * kHour; // Thursday 18:00: its stretch is due Friday 18:00
    fresh.fabric = "cotton";
    all.prints.push_back(fresh);
    const auto due = shop::dueTests(all, at(kPrinted + 2 * kDay)); // Friday 10:00
    REQUIRE(due.size() >= 4);
    CHECK(due[0].state == DueState::late);
    const auto order = [](DueState state) {
        return state == DueState::late ? 0 : state == DueState::now ? 1 : state == DueState::by ? 2 : 3;
    };
    CHECK(std::is_sorted(due.begin(), due.end(),
                         [&](const auto& one, const auto& other) { return order(one.state) < order(other.state); }));
    CHECK(due.back().print == "print-9");
    CHECK(due.back().state == DueState::by);
}

TEST_CASE("of what is due the owner is told how many, how many late, who is late longest, and what is still to come",
          "[testing][due][briefing]") {
    auto all = facts({"stretch-jersey"}); // each lot's print owes one stretch, 24 h after printing
    for (const auto& [number, days] : {std::pair{8, 0}, {9, 1}, {10, 2}, {11, 3}, {12, 6}}) {
        auto one = print(number, "lot-" + std::to_string(number));
        one.named.printedAt = kPrinted + days * kDay;
        one.runNumber = 20000 + number;
        all.prints.push_back(one);
    }
    const auto now = at(kPrinted + 4 * kDay); // a print may be tested a day later, and has until that day's end
    const auto due = shop::testsDue(all, now, 7);
    CHECK(due.today == 5); // 7 to 11
    CHECK(due.late == 4);  // all of them but 11
    CHECK(due.soon == 1);  // 12, on the seventh day
    REQUIRE(due.latest.size() == 3);
    CHECK(due.latest[0].due.day <= due.latest[1].due.day);
    CHECK(due.latest[1].due.day <= due.latest[2].due.day);
    CHECK(due.latest[2].print == 9);
    CHECK(due.latest[2].run == 20009);
    CHECK(due.latest[2].method.key == "stretch-jersey");
    CHECK_FALSE(due.none());
    CHECK(shop::testsDue(all, now, 0).soon == 0);
    CHECK(shop::testsDue(all, now, 7, 1).latest.size() == 1);
    CHECK(shop::testsDue({}, now, 7).none());
}

TEST_CASE("a load that nobody has judged is late by its own number", "[testing][due][briefing]") {
    auto all = facts({"wash-house"});
    all.loads = {load(3, "print-7", kPrinted + 25 * kHour, std::nullopt)};
    const auto due = shop::testsDue(all, at(kPrinted + 4 * kDay), 7);
    REQUIRE(due.latest.size() == 1);
    CHECK(due.latest[0].print == 0);
    CHECK(due.latest[0].due.loadNumber == 3);
}
