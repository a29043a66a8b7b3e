#include "kiosk/demo/history/history_story.hpp"

#include <algorithm>

/// What QA wrote down at the bench.
namespace holdfast::kiosk::demo::telling {
namespace {

using analytics::CrackClass;
using analytics::Quantity;
using analytics::RelativeLength;
using analytics::TestPlace;

TestPlace afterCycle(int cycle) {
    TestPlace place;
    place.cycle = cycle;
    return place;
}

std::vector<analytics::TestResult> stretchResults(const TestFact& test) {
    std::vector<analytics::TestResult> results;
    for (const double percent : {25.0, 50.0}) {
        TestPlace place;
        place.elongation = RelativeLength::fromPercent(percent);
        const auto seen = test.cracked && percent > 30.0 ? CrackClass::breaks : CrackClass::noCrack;
        results.push_back({Quantity::crackClass, {}, seen, place});
    }
    results.push_back({Quantity::elongationHeld, {}, RelativeLength::fromPercent(test.cracked ? 25.0 : 50.0), {}});
    return results;
}

std::vector<analytics::TestResult> washResults(const TestFact& test) {
    const auto place = afterCycle(test.cycle);
    return {{Quantity::changeGrade, {}, test.change, place},
            {Quantity::stainingGrade, {}, analytics::Grade::best(), place},
            {Quantity::cracked, {}, test.cracked, place},
            {Quantity::lifted, {}, test.lifted, place},
            {Quantity::fibresStanding, {}, false, place}};
}

records::TestDone doneOf(const Story& story, const TestFact& test) {
    records::TestDone done;
    done.print = story.prints[test.print];
    switch (test.tested) {
    case Tested::stretch:
        done.method = "stretch-jersey";
        done.results = stretchResults(test);
        break;
    case Tested::rub:
        done.method = "rub-iso";
        done.results = {{Quantity::rubDryGrade, {}, analytics::Grade::best(), {}},
                        {Quantity::rubWetGrade, {}, test.change, {}}};
        break;
    case Tested::wash:
        done.method = "wash-house";
        done.cycle = test.cycle;
        done.load = story.loads[*test.load];
        done.results = washResults(test);
        break;
    case Tested::bleedWatch:
        done.method = "bleed-watch";
        done.cycle = test.cycle;
        done.results = {{Quantity::bled, {}, false, afterCycle(test.cycle)},
                        {Quantity::changeGrade, {}, analytics::Grade::best(), afterCycle(test.cycle)}};
        break;
    }
    done.outcome = test.isVoid                       ? records::TestOutcome::inAVoidLoad
                   : test.outcome == Outcome::passed ? records::TestOutcome::passed
                   : test.outcome == Outcome::failed ? records::TestOutcome::failed
                                                     : records::TestOutcome::noted;
    return done;
}

void tellPrints(Story& story, int day) {
    const auto [first, last] = onDay(story.facts.prints, day, [](const PrintFact& one) { return one.named; });
    for (auto i = first; i < last; ++i) {
        const auto& print = story.facts.prints[i];
        auto& lot = story.stories[print.run];
        records::PrintNamed named;
        named.print = story.prints[i];
        named.number = story.nextPrint++;
        named.run = story.runs[print.run];
        named.lot = story.lots[print.run];
        named.piece = print.piece;
        named.printedAt = story.pen.wallOf(print.printed);
        story.pen.put(print.named, named, kMara);
        records::PiecesMoved moved;
        moved.lot = named.lot;
        moved.to = records::PiecePlace::tested;
        moved.count = 1;
        story.pen.put(print.named, moved, kMara);
        lot.tested += 1;
        if (lot.packed) {
            lot.reserve = std::max(0, lot.reserve - 1);
            records::PiecesCounted counted;
            counted.lot = named.lot;
            counted.made = story.facts.runs[print.run].pieces;
            counted.here = lot.reserve;
            story.pen.put(print.named, counted, kMara);
        }
    }
}

void tellLoads(Story& story, int day) {
    const auto [washed, washedEnd] = onDay(story.facts.loads, day, [](const LoadFact& one) { return one.washed; });
    for (auto i = washed; i < washedEnd; ++i) {
        const auto& load = story.facts.loads[i];
        records::LoadWashed entry;
        entry.load = story.loads[i];
        entry.number = load.number;
        entry.machine = load.machine == 0 ? "Washer 1" : "Washer 2";
        entry.programme = "wash-house";
        entry.temperature = analytics::AuthoredTemperature{60.0, analytics::TemperatureUnit::celsius};
        entry.detergent = "D " + std::to_string(12 + dayOf(load.washed) / 20);
        entry.besides = "two white towels";
        entry.goodWitness = "G-" + std::to_string(1 + load.machine);
        entry.weakWitness = "W-" + std::to_string(1 + load.machine);
        for (const auto print : story.printsOfLoad[i]) {
            entry.prints.push_back(story.prints[print]);
        }
        story.pen.put(load.washed, entry, kMara);
    }
    const auto [judged, judgedEnd] = onDay(story.facts.loads, day, [](const LoadFact& one) { return one.judged; });
    for (auto i = judged; i < judgedEnd; ++i) {
        const auto& load = story.facts.loads[i];
        records::LoadJudged entry;
        entry.load = story.loads[i];
        entry.goodGrade = load.good.number();
        entry.weakGrade = load.weak.number();
        entry.goodLow = 4.0;
        entry.weakHigh = 3.0;
        entry.word = load.tooHarsh ? records::LoadWord::tooHarsh : records::LoadWord::valid;
        story.pen.put(load.judged, entry, kMara);
    }
}

/// A failed test holds its lot; the false alarm until its repeats are through.
void tellFailure(Story& story, const TestFact& test, const std::string& id) {
    const auto run = story.facts.prints[test.print].run;
    const auto& planted = story.facts.planted;
    const bool alarm = planted.alarmLoad != 0 && test.print == planted.alarmPrint;
    story.hold(run, test.at, records::HoldCause::test, id, std::nullopt, kMara);
    if (alarm) {
        story.ask(run, Question::complaint, story.morningAfter(test.at, 8));
    } else if (test.tested == Tested::wash) {
        story.ask(run, Question::wash, test.at + 35);
    } else {
        story.ask(run, Question::stretch, story.morningAfter(test.at, 1));
    }
}

void tellTests(Story& story, int day) {
    const auto [first, last] = onDay(story.facts.tests, day, [](const TestFact& one) { return one.at; });
    for (auto i = first; i < last; ++i) {
        const auto& test = story.facts.tests[i];
        const bool scrapped = story.stories[story.facts.prints[test.print].run].scrapped;
        if (!scrapped) {
            const auto id = story.pen.newId(test.at);
            const auto person = test.tested == Tested::wash ? kMara : kNoor;
            story.pen.put(test.at, doneOf(story, test), person, id);
            if (test.outcome == Outcome::failed && !test.isVoid) {
                tellFailure(story, test, id);
            }
        }
        if (story.lastTestOf[test.print] == i) { // it is used up
            const records::PrintChanged changed{story.prints[test.print], std::nullopt, records::PrintEnd::usedUp};
            story.pen.put(test.at + 5, changed, kMara);
        }
    }
}

} // namespace

void tellBench(Story& story, int day) {
    tellPrints(story, day);
    tellLoads(story, day);
    tellTests(story, day);
}

} // namespace holdfast::kiosk::demo::telling
