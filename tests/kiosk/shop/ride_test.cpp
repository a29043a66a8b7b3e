#include "kiosk/ledger/trace_codec.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

// Limits: standard cures at 320 °F = 160 °C, cotton bears 350 °F = 176.7 °C (starters, contracts.md). A class 1 type K
// probe is good to 1.5 °C there (IEC 60584-1); with its placement the guard stays under 4 °C, so that peaks of 168, 150
// and 160.5 °C are clear cases.
using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
using holdfast::analytics::Word;
namespace records = holdfast::kiosk::records;
namespace ledger = holdfast::kiosk::ledger;

namespace {

Floor floorWithRun() {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton"));
    return floor;
}

const records::ReadingTaken& takenIn(const Floor& floor, std::size_t commit) {
    static records::ReadingTaken taken;
    taken = std::get<records::ReadingTaken>(floor.readingsIn(commit).at(0));
    return taken;
}

} // namespace

TEST_CASE("a scan shows the run's window", "[shop][proving]") {
    Floor floor;
    floor.plug("P-3");
    REQUIRE(floor.stage() == Stage::idle);
    floor.send(ScannedText{"20418"});
    REQUIRE(floor.stage() == Stage::lookingUp);
    REQUIRE(floor.all<LookUpRun>().size() == 1);
    CHECK(floor.all<LookUpRun>()[0].number == 20418);
    floor.send(RunLoaded{20418, runOf("standard", "100% cotton")});
    REQUIRE(floor.stage() == Stage::window);
    REQUIRE(floor.state().window);
    CHECK(floor.state().window->state == holdfast::analytics::WindowState::open);
    CHECK(floor.state().windowInstrument == "P-3");
}

TEST_CASE("a ride starts, is judged and is committed by itself", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", rideTo(168));
    REQUIRE(floor.commits().size() == 1);
    CHECK(floor.stage() == Stage::writing);
    CHECK_FALSE(floor.state().verdict);
    floor.commitDone();
    REQUIRE(floor.stage() == Stage::verdict);
    CHECK(floor.state().verdict->word == Word::cured);
    const auto& taken = takenIn(floor, 0);
    CHECK(*taken.run == "run-20418");
    CHECK(*taken.lot == "lot-of-20418");
    CHECK(taken.instrument == "id-of-P-3");
    CHECK(std::holds_alternative<records::LotOpened>(floor.commits()[0].records.at(0)));
    // the trace is lossless: what stands under the hash is what came, from before the heat
    const auto points = ledger::decodeTrace(floor.commits()[0].trace);
    REQUIRE(points);
    CHECK(points->front().counts == 250);
    const auto& seen = std::get<records::TraceSeen>(taken.evidence);
    CHECK(seen.sha256 == ledger::toHex(ledger::sha256(floor.commits()[0].trace)));
}

TEST_CASE("a ride is judged five seconds after it has fallen 20 degrees, not before", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", {{25, 30}, {168, 48}, {168, 10}, {149, 6}, {149, 20}});
    CHECK(floor.commits().empty());
    floor.play("P-3", {{147.8, 1}, {147.8, 4}});
    CHECK(floor.commits().empty());
    floor.play("P-3", {{147.8, 2}});
    CHECK(floor.commits().size() == 1);
}

TEST_CASE("with a hold a ride is judged only when it is below L - g", "[shop][proving]") {
    // water-based: 320 °F for 90 s (starters, contracts.md)
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("water-based", "100% cotton"));
    floor.play("P-3", {{25, 30}, {185, 53}, {185, 5}, {162, 8}, {162, 100}});
    CHECK(floor.commits().empty()); // 20 °C below its peak, but still curing
    floor.play("P-3", {{150, 4}, {150, 7}});
    CHECK(floor.commits().size() == 1);
}

TEST_CASE("under-cured, not proven and overheated rides say so once they are kept", "[shop][proving]") {
    const auto word = [](double peak) {
        auto floor = floorWithRun();
        floor.play("P-3", rideTo(peak));
        floor.commitDone();
        REQUIRE(floor.state().verdict);
        return floor.state().verdict->word;
    };
    CHECK(word(150) == Word::underCured);
    CHECK(word(160.5) == Word::notProven);
    CHECK(word(185) == Word::overheated);
}

TEST_CASE("writing is said after 300 ms", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", {{25, 30}, {168, 48}, {168, 10}, {140, 9}, {140, 3}});
    REQUIRE(floor.state().pending.size() == 1);
    const auto since = floor.state().pending[0].since;
    floor.send(Tick{since + std::chrono::milliseconds{299}});
    const bool before = floor.now() < since + std::chrono::milliseconds{300} && floor.state().pending[0].overdue;
    CHECK_FALSE(before);
    floor.send(Tick{floor.now() + std::chrono::milliseconds{301}});
    CHECK(floor.state().pending[0].overdue);
}

TEST_CASE("a hand that warms the probe is no ride", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", {{25, 30}, {36, 5}, {36, 10}, {25, 5}, {25, 20}});
    CHECK(floor.commits().empty());
    REQUIRE(floor.all<OpenSpool>().size() == 1);
    REQUIRE(floor.all<DiscardSpool>().size() == 1);
    CHECK(floor.all<DiscardSpool>()[0].spool == floor.all<OpenSpool>()[0].spool);
    CHECK(floor.stage() == Stage::window);
}

TEST_CASE("a ride that never passes 80 degrees is refused and kept", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", rideTo(75));
    REQUIRE(floor.commits().size() == 1);
    CHECK(std::holds_alternative<records::ReadingRefused>(floor.readingsIn(0).at(0)));
    floor.commitDone();
    CHECK(floor.state().verdict->word == Word::refused);
}

TEST_CASE("more heat before 60 degrees makes a correcting entry that judges the whole again", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", {{25, 30}, {168, 48}, {168, 10}, {140, 9}, {140, 6}});
    REQUIRE(floor.commits().size() == 1);
    floor.commitDone();
    REQUIRE(floor.state().verdict->word == Word::cured);
    floor.play("P-3", {{190, 16}, {190, 10}, {45, 48}});
    REQUIRE(floor.commits().size() == 2);
    const auto correction = std::get<records::CorrectionMade>(floor.readingsIn(1).at(0));
    CHECK(correction.corrects == floor.state().kept.at(0).id);
    floor.commitDone();
    CHECK(floor.state().verdict->word == Word::overheated);
    CHECK(floor.state().kept.size() == 1);
    CHECK(floor.state().kept[0].corrected);
}

TEST_CASE("a second ride in the same run is another reading of the same lot", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", rideTo(168));
    floor.commitDone();
    floor.play("P-3", {{25, 60}});
    floor.play("P-3", rideTo(150));
    REQUIRE(floor.commits().size() == 2);
    CHECK(floor.commits()[1].records.size() == 2); // the reading and its hold: the lot is open already
    floor.commitDone();
    CHECK(floor.state().verdict->word == Word::underCured);
    CHECK(floor.state().kept.size() == 2);
}

TEST_CASE("a batch that holds two rides is parted into a reading each", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", {{25, 30}, {168, 48}, {168, 10}, {45, 41}, {30, 10}, {150, 40}, {150, 10}, {45, 35}});
    REQUIRE(floor.commits().size() == 1); // the second waits behind the first
    floor.commitDone();
    REQUIRE(floor.commits().size() == 2);
    floor.commitDone();
    CHECK(floor.state().kept.size() == 2);
}

TEST_CASE("a lost probe's ride goes on by itself when it is back, with the gap in the trace", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", {{25, 30}, {120, 32}});
    REQUIRE(floor.stage() == Stage::recording);
    floor.wait(4);
    CHECK(floor.stage() == Stage::probeLost);
    CHECK(floor.all<SyncSpool>().size() == 1);
    floor.play("P-3", {{168, 14}, {168, 10}, {45, 41}});
    REQUIRE(floor.commits().size() == 1);
    floor.commitDone();
    REQUIRE(floor.state().kept.size() == 1);
    const auto& drawn = floor.state().kept[0].drawn;
    CHECK(std::count_if(drawn.begin(), drawn.end(), [](const auto& one) { return one.breakBefore; }) == 1);
    CHECK(floor.state().verdict->word == Word::cured); // on the way up nothing is hidden that matters
}

TEST_CASE("a probe that stays lost leaves a ride cut off, kept and never cured", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", {{25, 30}, {168, 48}, {168, 10}});
    floor.wait(310);
    REQUIRE(floor.commits().size() == 1);
    floor.commitDone();
    CHECK(floor.state().verdict->word != Word::cured);
    CHECK(std::get<records::TraceSeen>(takenIn(floor, 0).evidence).cutOff);
}

TEST_CASE("a ride stopped by hand is kept and never cured", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", {{25, 30}, {168, 48}, {168, 10}, {160, 3}});
    floor.send(StopPressed{});
    REQUIRE(floor.commits().size() == 1);
    floor.commitDone();
    CHECK(floor.state().verdict->word != Word::cured);
    CHECK(std::get<records::TraceSeen>(takenIn(floor, 0).evidence).stoppedByHand);
    floor.play("P-3", {{170, 10}, {45, 45}}); // still hot: nothing starts before it was cool
    CHECK(floor.commits().size() == 1);
}

TEST_CASE("a ride nobody announced is kept without a run", "[shop][proving]") {
    Floor floor;
    floor.plug("P-3");
    floor.play("P-3", rideTo(168));
    REQUIRE(floor.commits().size() == 1);
    CHECK_FALSE(takenIn(floor, 0).run);
    CHECK_FALSE(takenIn(floor, 0).verdict);
    floor.commitDone();
    REQUIRE(floor.state().unclaimed);
    CHECK_FALSE(floor.state().verdict);
}

TEST_CASE("a run scanned while the ride is on claims it", "[shop][proving]") {
    Floor floor;
    floor.plug("P-3");
    floor.play("P-3", {{25, 30}, {120, 32}});
    floor.announce(runOf("standard", "100% cotton"));
    floor.play("P-3", {{168, 16}, {168, 10}, {45, 41}});
    REQUIRE(floor.commits().size() == 1);
    CHECK(*takenIn(floor, 0).run == "run-20418");
}

TEST_CASE("two probes at once are two recordings, and the run's verdict is the worse", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.plug("P-4");
    floor.playTogether("P-3", rideTo(168), "P-4", rideTo(150));
    while (floor.commitOpen()) {
        floor.commitDone();
    }
    CHECK(floor.commits().size() == 2);
    REQUIRE(floor.state().verdict);
    CHECK(floor.state().verdict->word == Word::underCured);
    CHECK(floor.state().shownReadings.size() == 2);
    REQUIRE(shownReading(floor.state()) != nullptr);
    CHECK(shownReading(floor.state())->instrumentName == "P-4");
}

TEST_CASE("a not-proven reading may be retaken once, and both count", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", rideTo(160.5));
    floor.commitDone();
    REQUIRE(mayRetake(floor.state()));
    floor.send(RetakePressed{});
    floor.play("P-3", {{25, 60}});
    floor.play("P-3", rideTo(170));
    REQUIRE(floor.commits().size() == 2);
    const auto taken = takenIn(floor, 1);
    CHECK(*taken.retakeOf == floor.state().kept[0].id);
    CHECK(taken.reason == records::ReadingReason::retake);
    floor.commitDone();
    CHECK_FALSE(mayRetake(floor.state()));
    floor.send(RetakePressed{});
    REQUIRE(floor.state().refusal);
    CHECK(floor.state().refusal->cause == RefusalCause::retakeUsedUp);
}

TEST_CASE("a retake without a margin does not use the retake up", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", rideTo(160.5));
    floor.commitDone();
    floor.send(RetakePressed{});
    floor.play("P-3", {{25, 60}});
    floor.play("P-3", rideTo(75)); // no pass seen
    floor.commitDone();
    CHECK(floor.state().retakePlanned);
    floor.play("P-3", {{25, 60}});
    floor.play("P-3", rideTo(170));
    CHECK(takenIn(floor, 2).retakeOf);
}

TEST_CASE("a cured reading cannot be retaken", "[shop][proving]") {
    auto floor = floorWithRun();
    floor.play("P-3", rideTo(168));
    floor.commitDone();
    floor.send(RetakePressed{});
    CHECK(floor.state().refusal->cause == RefusalCause::nothingToRetake);
}
