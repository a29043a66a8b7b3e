// What each planted failure leaves among the facts: where it lies, what else it meets, and that it is all there is.
#include "kiosk/demo/history/history_model.hpp"
#include "tests/kiosk/demo/support/whole_history.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <cmath>
#include <set>
#include <string>

using namespace holdfast;
using namespace holdfast::kiosk::demo;
using analytics::TemperatureDifference;
using analytics::Word;

namespace {

struct Mean final {
    double sum = 0.0;
    int count = 0;
    void add(TemperatureDifference value) {
        sum += value.celsius();
        ++count;
    }
    [[nodiscard]] double value() const { return sum / count; }
};

/// Of drawn readings at a dryer in those days.
Mean marginAt(DemoDryer dryer, const DaysBack& days) {
    const auto& facts = whole();
    Mean mean;
    for (const auto& reading : facts.readings) {
        const bool bad = reading.word == Word::underCured || reading.word == Word::overheated;
        if (facts.runs[reading.run].dryer == dryer && days.holds(facts.daysBack(reading.at)) && !bad) {
            mean.add(reading.trueMargin);
        }
    }
    REQUIRE(mean.count > 50);
    return mean;
}

std::vector<TurnFact> turnsOf(DemoDryer dryer, Turn what) {
    std::vector<TurnFact> found;
    for (const auto& turn : whole().turns) {
        if (turn.dryer == dryer && turn.turn == what) {
            found.push_back(turn);
        }
    }
    return found;
}

bool failedWash(std::size_t print) {
    const auto& tests = whole().tests;
    return std::any_of(tests.begin(), tests.end(), [&](const TestFact& test) {
        return test.print == print && test.tested == Tested::wash && test.outcome == Outcome::failed;
    });
}

} // namespace

TEST_CASE("the planted failures lie apart from each other and before the twelve days", "[demo][history]") {
    const std::array all{kHeatLoss.days, kInstrumentDrift.days, kMislabelledBucket.days, kBeltChange.days,
                         kFalseAlarm.days};
    for (std::size_t i = 0; i < all.size(); ++i) {
        CHECK(all[i].from > all[i].until);
        CHECK(all[i].until > 0);
        CHECK(all[i].from < whole().days);
        CHECK((i == 0 || all[i - 1].until > all[i].from));
    }
}

TEST_CASE("North loses heat week by week until its elements are changed", "[demo][history]") {
    const auto& days = kHeatLoss.days;
    const auto before = marginAt(kHeatLoss.dryer, {days.from + 40, days.from}).value();
    const auto first = marginAt(kHeatLoss.dryer, {days.from, days.from - 20}).value();
    const auto last = marginAt(kHeatLoss.dryer, {days.until + 20, days.until}).value();
    const auto after = marginAt(kHeatLoss.dryer, {days.until, days.until - 40}).value();
    CHECK(first < before + 0.3);
    CHECK(last < before - 0.75 * kHeatLoss.inAll.magnitude().celsius());
    CHECK(after == Approx(before).margin(0.7)); // a mean of about sixty episodes each, 0.9 °C apart
    const auto repaired = turnsOf(kHeatLoss.dryer, Turn::repaired);
    REQUIRE(repaired.size() == 1);
    const int back = whole().daysBack(repaired.front().at);
    CHECK(back <= days.until);
    CHECK(back > days.until - 4); // the first worked day after it
    const auto other = marginAt(DemoDryer::south, {days.until + 20, days.until}).value();
    CHECK(other > last + 1.5);
}

TEST_CASE("a mislabelled pail went into a mix that was printed on two dryers, and its prints wash out",
          "[demo][history]") {
    const auto& facts = whole();
    const auto byNumber = [&](std::int64_t number) {
        return std::find_if(facts.buckets.begin(), facts.buckets.end(),
                            [&](const auto& bucket) { return bucket.number == number; });
    };
    const auto pail = byNumber(facts.planted.pail);
    const auto mix = byNumber(facts.planted.mix);
    REQUIRE((pail != facts.buckets.end() && mix != facts.buckets.end()));
    CHECK(pail->label == Ink::lowCure);
    CHECK(pail->holds == Ink::standard);
    CHECK(pail->why == Emptied::mislabelled);
    CHECK(mix->why == Emptied::mislabelled);
    REQUIRE(mix->parts.size() == 2);
    CHECK(mix->parts[0].bucket == static_cast<std::size_t>(pail - facts.buckets.begin()));
    CHECK(facts.buckets[mix->parts[1].bucket].holds == Ink::lowCure); // the other part is sound
    std::set<DemoDryer> dryers;
    std::set<std::size_t> poured{facts.planted.poured.begin(), facts.planted.poured.end()};
    for (const auto run : poured) {
        dryers.insert(facts.runs[run].dryer);
        CHECK(kMislabelledBucket.days.holds(facts.daysBack(facts.runs[run].begins)));
    }
    CHECK(dryers.size() == 2);
    CHECK(poured.size() >= 10);
    int tested = 0;
    int failed = 0;
    int others = 0;
    int othersFailed = 0;
    for (std::size_t i = 0; i < facts.prints.size(); ++i) {
        const auto run = facts.prints[i].run;
        if (poured.count(run) != 0) {
            ++tested;
            failed += failedWash(i) ? 1 : 0;
        } else if (kMislabelledBucket.days.holds(facts.daysBack(facts.runs[run].begins))) {
            ++others;
            othersFailed += failedWash(i) ? 1 : 0;
        }
    }
    CHECK(tested >= 5);
    CHECK(failed == tested); // 19.4 °C short: see washOutChance
    CHECK(others >= 10);
    CHECK(othersFailed <= 2);
    int read = 0;
    int cured = 0;
    for (const auto& reading : facts.readings) {
        if (poured.count(reading.run) != 0 && reading.asked == Asked::drawn) {
            ++read;
            cured += reading.word == Word::cured ? 1 : 0;
        }
    }
    CHECK(cured > 0.9 * read); // for the label
}

TEST_CASE("West's belt was turned faster on a day that is written down, and back on another", "[demo][history]") {
    const auto faster = turnsOf(kBeltChange.dryer, Turn::beltFaster);
    const auto slower = turnsOf(kBeltChange.dryer, Turn::beltSlower);
    REQUIRE(faster.size() == 1);
    REQUIRE(slower.size() == 1);
    CHECK(kBeltChange.days.from - whole().daysBack(faster.front().at) < 4);
    CHECK(kBeltChange.days.until - whole().daysBack(slower.front().at) < 4);
    CHECK(faster.front().beltMetresPerMinute == kBeltChange.fastMetresPerMinute);
    CHECK(slower.front().beltMetresPerMinute == kBeltChange.slowMetresPerMinute);
    const auto& days = kBeltChange.days;
    const auto before = marginAt(kBeltChange.dryer, {days.from + 40, days.from}).value();
    const auto during = marginAt(kBeltChange.dryer, days).value();
    const auto after = marginAt(kBeltChange.dryer, {days.until, days.until - 40}).value();
    CHECK(during - before == Approx(kBeltChange.shift.celsius()).margin(0.8)); // means of thirty episodes each
    CHECK(after == Approx(before).margin(0.8));
}

TEST_CASE("South's probe reads more and more too high until a check finds it", "[demo][history]") {
    const auto& facts = whole();
    const auto isDrifting = [&](const ReadingFact& reading) {
        return facts.instruments[reading.instrument].name == std::string{kInstrumentDrift.instrument};
    };
    Mean early;
    Mean late;
    Mean others;
    std::set<DemoDryer> dryers;
    int failedDay = -1;
    std::vector<int> passedWhileDrifting;
    for (const auto& check : facts.checks) {
        const int back = facts.daysBack(check.at);
        const bool own = facts.instruments[check.instrument].name == std::string{kInstrumentDrift.instrument};
        if (!check.passed) {
            CHECK(own);
            CHECK(failedDay == -1); // one alone
            failedDay = dayOf(check.at);
        } else if (own && back < kInstrumentDrift.days.from && back >= kInstrumentDrift.days.until) {
            passedWhileDrifting.push_back(back);
        }
    }
    REQUIRE(failedDay >= 0);
    CHECK(facts.days - failedDay >= kInstrumentDrift.days.until);
    CHECK(facts.days - failedDay < kInstrumentDrift.days.until + 4);
    CHECK(passedWhileDrifting.size() == 1);
    for (const auto& reading : facts.readings) {
        const int back = facts.daysBack(reading.at);
        if (back > kInstrumentDrift.days.from || dayOf(reading.at) >= failedDay || reading.lastDark ||
            reading.word == Word::notProven || reading.retakeOf) {
            CHECK_FALSE((dayOf(reading.at) == failedDay && isDrifting(reading)));
            continue;
        }
        if (isDrifting(reading)) {
            (back > kInstrumentDrift.days.from - 10 ? early : late).add(reading.seen - reading.trueMargin);
            dryers.insert(facts.runs[reading.run].dryer);
        } else {
            others.add(reading.seen - reading.trueMargin);
        }
    }
    CHECK(early.value() < 0.5);
    CHECK(late.value() > 1.0);
    CHECK(std::abs(others.value()) < 0.1);
    CHECK(dryers.size() == 2); // it was lent to another dryer now and then
}

TEST_CASE("one print failed in a good load, and two more of its lot pass", "[demo][history]") {
    const auto& facts = whole();
    const auto& planted = facts.planted;
    REQUIRE(planted.alarmLoad > 0);
    const auto load = std::find_if(facts.loads.begin(), facts.loads.end(),
                                   [&](const auto& one) { return one.number == planted.alarmLoad; });
    REQUIRE(load != facts.loads.end());
    CHECK_FALSE(load->tooHarsh);
    const auto place = static_cast<std::size_t>(load - facts.loads.begin());
    int inLoad = 0;
    for (const auto& test : facts.tests) {
        if (test.load == place) {
            ++inLoad;
            CHECK((test.outcome == Outcome::failed) == (test.print == planted.alarmPrint));
        }
    }
    CHECK(inLoad >= 4);
    int repeats = 0;
    for (std::size_t i = 0; i < facts.prints.size(); ++i) {
        if (facts.prints[i].repeat) {
            ++repeats;
            CHECK(facts.prints[i].run == planted.alarmRun);
            CHECK_FALSE(failedWash(i));
        }
    }
    CHECK(repeats == 2);
    CHECK(facts.prints[planted.alarmPrint].trueMargin > TemperatureDifference::fromCelsius(5.0)); // it was sound
}

TEST_CASE("what is planted is there on whatever day of the week the demo is started", "[demo][history]") {
    for (int later = 1; later <= 7; ++later) {
        HistoryPlan plan;
        plan.end += std::chrono::days{later};
        INFO(later);
        const auto facts = historyOf(plan);
        CHECK(facts.planted.mix > facts.planted.pail);
        CHECK(facts.planted.poured.size() >= 8);
        CHECK(facts.planted.alarmLoad > 0);
        const auto count = [&](Turn what) {
            return std::count_if(facts.turns.begin(), facts.turns.end(),
                                 [&](const TurnFact& one) { return one.turn == what; });
        };
        CHECK(count(Turn::repaired) == 1);
        CHECK(count(Turn::beltFaster) == 1);
        CHECK(count(Turn::beltSlower) == 1);
        CHECK(std::count_if(facts.checks.begin(), facts.checks.end(), [](const auto& one) { return !one.passed; }) ==
              1);
        CHECK(std::count_if(facts.prints.begin(), facts.prints.end(), [](const auto& one) { return one.repeat; }) == 2);
        CHECK(facts.buckets.size() <= 300);
    }
}
