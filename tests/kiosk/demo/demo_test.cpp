// The invented shop of the first start: what each of its runs is there to show.
#include "kiosk/demo/demo_shop.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/stock_queries.hpp"
#include "tests/kiosk/demo/support/demo_book.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <set>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::tests;
using analytics::Word;

namespace {

analytics::Calibration probeOf(const ledger::Book& book) {
    const auto instruments = records::instruments(book.reader());
    REQUIRE(instruments);
    for (const auto& one : *instruments) {
        if (one.instrument.name == demo::kDemoProbe) {
            return analytics::Calibration{one.instrument, kToday};
        }
    }
    FAIL("the demo has no probe");
    return analytics::Calibration{{}, kToday};
}

analytics::RunWindow windowOf(std::int64_t run) {
    const auto probe = probeOf(wholeDemo());
    const auto window = analytics::windowOf(runOf(wholeDemo(), run).layers, &probe);
    REQUIRE(window);
    return *window;
}

records::ReadingTaken inFull(const records::ReadingRow& row) {
    const auto taken = records::readingInFull(wholeDemo().reader(), row.id);
    REQUIRE(taken);
    REQUIRE(*taken);
    return **taken;
}

} // namespace

TEST_CASE("today's runs of the demo show what they are there for", "[demo]") {
    SECTION("cured, under-cured, overheated, and a dropout at the top that is not proven") {
        CHECK(wordOf(wholeDemo(), 20413) == Word::cured);
        CHECK(wordOf(wholeDemo(), 20411) == Word::underCured);
        CHECK(wordOf(wholeDemo(), 20412) == Word::overheated);
        CHECK(wordOf(wholeDemo(), 20416) == Word::notProven);
    }
    SECTION("the classic trap is closed") {
        // common practice: a standard black beside low-cure inks on polyester
        CHECK(windowOf(20414).state == analytics::WindowState::closed);
    }
    SECTION("one run is not provable with the probe that is there, and one only just is") {
        CHECK(windowOf(20415).state == analytics::WindowState::notProvable);
        CHECK_FALSE(windowOf(20415).whyNotProvable.empty());
        CHECK(windowOf(20410).state == analytics::WindowState::open);
        CHECK(windowOf(20410).narrow);
    }
}

TEST_CASE("the demo's closed window was opened by a way out, and then ridden for", "[demo]") {
    const auto run = runOf(wholeDemo(), 20393);
    const auto entries = entriesOf(wholeDemo());
    CHECK(std::count_if(entries.begin(), entries.end(),
                        [](const auto& entry) { return entry.kind == "run.replanned"; }) == 1);
    for (const auto& layer : run.plan.layers) {
        CHECK(layer.ink != "standard"); // it cures at 320 °F, where the polyester bleeds (contracts, Starters)
    }
    CHECK(wordOf(wholeDemo(), 20393) == Word::cured);
}

TEST_CASE("the demo is a shop of three dryers with people, families, buckets and mixes", "[demo]") {
    const auto& reader = wholeDemo().reader();
    const auto dryers = records::dryersNow(reader);
    REQUIRE(dryers);
    CHECK(dryers->size() == 3);
    CHECK(dryers->front().described.name == "North"); // the kiosk stands at the first by name
    for (const auto& dryer : *dryers) {
        INFO(dryer.described.name);
        CHECK(dryer.beltMetresPerMinute);
        CHECK(dryer.setPoint);
        CHECK_FALSE(dryer.stopped);
    }
    const auto people = records::people(reader);
    REQUIRE(people);
    std::set<records::Role> roles;
    for (const auto& person : *people) {
        roles.insert(person.roles.begin(), person.roles.end());
        CHECK_FALSE(person.badge.empty());
    }
    CHECK(people->size() >= 6);
    CHECK(roles.size() == 3);
    const auto buckets = records::buckets(reader, true);
    REQUIRE(buckets);
    const auto closed =
        std::count_if(buckets->begin(), buckets->end(), [](const auto& one) { return one.closed.has_value(); });
    const auto mixes = std::count_if(buckets->begin(), buckets->end(), [](const auto& one) { return one.isMix; });
    CHECK(buckets->size() >= 20);
    CHECK(closed >= 4);
    CHECK(mixes >= 4);
    const auto tree = records::ancestry(reader, 322);
    REQUIRE((tree && *tree));
    REQUIRE_FALSE((*tree)->parts.empty());
    CHECK_FALSE((*tree)->parts.front().parts.empty()); // a mix of mixes
}

TEST_CASE("the demo holds forty recent runs over twelve working days, and some that wait", "[demo]") {
    const auto& reader = wholeDemo().reader();
    const auto finished = records::runsOnFile(reader, records::PlanKind::run, true, 1000);
    const auto open = records::runsOnFile(reader, records::PlanKind::run, false, 1000);
    REQUIRE((finished && open));
    auto all = *finished;
    all.insert(all.end(), open->begin(), open->end());
    const auto read = std::count_if(all.begin(), all.end(), [](const auto& run) { return run.readings > 0; });
    CHECK(read >= 40);
    CHECK(finished->size() >= 35);
    CHECK(static_cast<long>(all.size()) - read >= 5); // planned, not started
    std::set<std::string> dryers;
    for (const auto& run : all) {
        dryers.insert(run.dryer);
    }
    CHECK(dryers.size() == 3);
    std::set<std::int64_t> days;
    for (const auto& row : readingsOf(wholeDemo())) {
        days.insert(row.takenAt / 86'400'000);
        CHECK(row.takenAt < kNoon.millisecondsSinceEpoch);
    }
    CHECK(days.size() == 12);
}

TEST_CASE("every kind of reading and every word stands in the demo", "[demo]") {
    std::set<Word> words;
    std::set<analytics::InstrumentKind> kinds;
    std::set<records::ReadingReason> reasons;
    std::set<records::BeltPosition> positions;
    std::set<analytics::ShotPlace> places;
    int numbered = 0;
    int refused = 0;
    int retakes = 0;
    for (const auto& row : readingsOf(wholeDemo())) {
        positions.insert(row.position);
        if (row.refused) {
            ++refused;
            continue;
        }
        const auto taken = inFull(row);
        words.insert(row.word.value_or(Word::refused));
        reasons.insert(row.reason);
        retakes += taken.retakeOf ? 1 : 0;
        if (const auto* gun = std::get_if<records::GunSeen>(&taken.evidence)) {
            places.insert(gun->place);
        } else if (const auto* strip = std::get_if<records::StripSeen>(&taken.evidence)) {
            numbered += strip->number ? 1 : 0;
            kinds.insert(analytics::InstrumentKind::strip);
        } else {
            const bool trace = std::holds_alternative<records::TraceSeen>(taken.evidence);
            kinds.insert(trace ? analytics::InstrumentKind::probe : analytics::InstrumentKind::spot);
        }
    }
    for (const auto word : {Word::cured, Word::underCured, Word::overheated, Word::notProven}) {
        CHECK(words.count(word) == 1);
    }
    CHECK(kinds.size() == 3);  // probe, strip, spot
    CHECK(places.size() == 2); // a gun in the tunnel and at the outfeed
    CHECK(positions.size() == 3);
    for (const auto reason :
         {records::ReadingReason::drawn, records::ReadingReason::afterChange, records::ReadingReason::setUp,
          records::ReadingReason::retake, records::ReadingReason::worry, records::ReadingReason::map}) {
        INFO(static_cast<int>(reason));
        CHECK(reasons.count(reason) == 1);
    }
    CHECK(numbered >= 2);
    CHECK(refused >= 3); // a strip that was not all light, a spot not reset, a print that fell off
    CHECK(retakes >= 1);
    std::set<analytics::FlashWord> flashes;
    for (const std::int64_t run : {20381, 20409}) {
        const auto noted = records::flashesOf(wholeDemo().reader(), runOf(wholeDemo(), run).plan.run);
        REQUIRE(noted);
        for (const auto& row : *noted) {
            flashes.insert(row.flash.word);
        }
    }
    CHECK(flashes.size() >= 2);
}

TEST_CASE("inks that must be held, mixes and a bucket past its pot life are judged in the demo", "[demo]") {
    for (const std::int64_t held : {20376, 20386, 20402}) { // water-based, discharge, silicone
        INFO(held);
        CHECK(windowOf(held).hold > analytics::Duration{0});
        CHECK(wordOf(wholeDemo(), held) == Word::cured);
    }
    CHECK(wordOf(wholeDemo(), 20403) == Word::cured);           // a mix of mixes, low-cure in standard
    CHECK(windowOf(20403).lower.fahrenheit() == Approx(320.0)); // decisions 1: as demanding as its most demanding part
    CHECK(wordOf(wholeDemo(), 20397) == Word::notProven); // discharge, six hours after it was catalysed, four allowed
}

TEST_CASE("several runs shared a belt, one was taken again, and a ride that nobody announced found its run", "[demo]") {
    const auto rows = readingsOf(wholeDemo());
    const auto of = [&](std::int64_t run) {
        return *std::find_if(rows.begin(), rows.end(), [run](const auto& row) { return row.runNumber == run; });
    };
    CHECK(of(20391).trace == of(20392).trace);
    CHECK_FALSE(of(20391).trace.empty());
    CHECK(of(20384).word == Word::notProven); // within the guard; taken again
    CHECK(std::any_of(rows.begin(), rows.end(), [](const auto& row) {
        return row.runNumber == 20384 && row.reason == records::ReadingReason::retake && row.word == Word::cured;
    }));
    CHECK(of(20388).corrected);
    CHECK(of(20388).word == Word::cured);
    CHECK(of(20382).corrected); // judged by a window card first
    const auto unclaimed = records::unclaimed(wholeDemo().reader(), 100);
    REQUIRE(unclaimed);
    CHECK(unclaimed->size() == 1);
}

TEST_CASE("every bad reading of the demo was answered but the one left for today", "[demo]") {
    const auto unanswered = records::unanswered(wholeDemo().reader());
    REQUIRE(unanswered);
    REQUIRE(unanswered->size() == 1);
    CHECK(unanswered->front().runNumber == 20412);
    int bad = 0;
    for (const auto& row : readingsOf(wholeDemo())) {
        const bool holds = row.word == Word::underCured || row.word == Word::overheated;
        bad += holds && row.reason != records::ReadingReason::setUp && !row.refused ? 1 : 0;
    }
    CHECK(bad >= 6);
}

TEST_CASE("after a bad reading of the demo's past days the same run rode again and was cured", "[demo]") {
    for (const std::int64_t run : {20379, 20395, 20398, 20405, 20406}) {
        INFO(run);
        CHECK(wordOf(wholeDemo(), run) == Word::cured);
        const auto rows = readingsOf(wholeDemo());
        CHECK(std::any_of(rows.begin(), rows.end(), [run](const auto& row) {
            return row.runNumber == run && (row.word == Word::underCured || row.word == Word::overheated);
        }));
    }
}
