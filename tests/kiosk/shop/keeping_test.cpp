#include "kiosk/ledger/trace_codec.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
using holdfast::analytics::Word;
namespace records = holdfast::kiosk::records;
namespace ledger = holdfast::kiosk::ledger;

namespace {

Floor floorAfterRide(double peak) {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton"));
    floor.play("P-3", rideTo(peak));
    return floor;
}

} // namespace

TEST_CASE("a full disk keeps the reading, says so, and one press tries again", "[shop][proving]") {
    const auto code = GENERATE(ledger::FailureCode::diskFull, ledger::FailureCode::folderReadOnly);
    auto floor = floorAfterRide(168);
    floor.commitFails(code);
    REQUIRE(floor.stage() == Stage::notKept);
    CHECK_FALSE(floor.state().verdict);
    REQUIRE(floor.state().pending.size() == 1);
    CHECK(floor.state().pending[0].failure->code == code);
    CHECK(floor.all<DiscardSpool>().empty()); // the spool is still there
    floor.send(RetryPressed{});
    REQUIRE(floor.stage() == Stage::writing);
    floor.commitDone();
    REQUIRE(floor.stage() == Stage::verdict);
    CHECK(floor.state().verdict->word == Word::cured);
    CHECK(floor.all<Commit>().size() == 2);
    CHECK(floor.all<Commit>()[0].key == floor.all<Commit>()[1].key);
}

TEST_CASE("a ride that ends while another could not be written waits behind it", "[shop][proving]") {
    auto floor = floorAfterRide(168);
    floor.commitFails(ledger::FailureCode::diskFull);
    floor.play("P-3", {{25, 60}});
    floor.play("P-3", rideTo(150));
    CHECK(floor.commits().size() == 1);
    CHECK(floor.state().pending.size() == 2);
    CHECK(floor.stage() == Stage::notKept);
    floor.send(RetryPressed{});
    floor.commitDone();
    REQUIRE(floor.commits().size() == 2);
    // the first opened the lot, so the second does not
    CHECK(floor.commits()[1].records.size() == 2); // the reading and its hold
    floor.commitDone();
    CHECK(floor.state().kept.size() == 2);
    CHECK(floor.state().verdict->word == Word::underCured);
}

TEST_CASE("the spool holds all that the commit holds, and the commit makes it redundant", "[shop][proving]") {
    auto floor = floorAfterRide(168);
    REQUIRE(floor.commits().size() == 1);
    REQUIRE(floor.commits()[0].spools.size() == 1);
    const auto samples = floor.spooled(floor.commits()[0].spools[0]);
    const auto points = ledger::decodeTrace(floor.commits()[0].trace);
    REQUIRE(points);
    // the batch in which the ride was judged goes into the book, no longer into the spool
    REQUIRE(samples.size() + 5 >= points->size());
    for (std::size_t i = 0; i < samples.size(); ++i) {
        REQUIRE((*points)[i].microseconds == samples[i].at.count());
        REQUIRE((*points)[i].counts == samples[i].counts);
    }
}

TEST_CASE("a spool that cannot be written is tried again, and the ride is kept all the same", "[shop][proving]") {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton"));
    floor.play("P-3", {{25, 30}, {100, 25}});
    const auto first = floor.all<OpenSpool>().at(0).spool;
    floor.send(SpoolFailed{first, {ledger::FailureCode::diskFull, "made up"}});
    REQUIRE(floor.state().probes[0].recording);
    CHECK(floor.state().probes[0].recording->spoolTrouble == SpoolTrouble::diskFull);
    floor.play("P-3", {{120, 7}});
    REQUIRE(floor.all<OpenSpool>().size() == 2);
    CHECK(floor.all<OpenSpool>()[1].samples.size() > floor.all<OpenSpool>()[0].samples.size());
    floor.play("P-3", {{168, 16}, {168, 10}, {45, 41}});
    REQUIRE(floor.commits().size() == 1);
    CHECK(floor.commits()[0].spools.size() == 2);
    floor.commitDone();
    CHECK(floor.state().verdict->word == Word::cured);
}

TEST_CASE("a spool found at start becomes a reading cut off, never cured", "[shop][proving]") {
    auto before = floorAfterRide(168);
    const auto samples = before.spooled(before.commits()[0].spools[0]);
    Floor floor;
    floor.send(SpoolFound{"left.spool",
                          "P-3",
                          {kStep, holdfast::drivers::ReadingUnit::celsius},
                          samples,
                          runOf("standard", "100% cotton"),
                          std::nullopt,
                          records::BeltPosition::left});
    REQUIRE(floor.commits().size() == 1);
    CHECK(floor.commits()[0].spoolFile == "left.spool");
    const auto taken = std::get<records::ReadingTaken>(floor.readingsIn(0).at(0));
    CHECK(std::get<records::TraceSeen>(taken.evidence).cutOff);
    CHECK(taken.verdict->word != Word::cured);
    CHECK(taken.position == records::BeltPosition::left);
    floor.commitDone();
    REQUIRE(floor.state().kept.size() == 1);
    CHECK(floor.state().kept[0].fromSpool);
    CHECK_FALSE(floor.state().verdict); // it is no answer to a ride of now
}

TEST_CASE("a spool of a ride that was kept once corrects it", "[shop][proving]") {
    auto before = floorAfterRide(185);
    Floor floor;
    floor.send(SpoolFound{"left.spool",
                          "P-3",
                          {kStep, holdfast::drivers::ReadingUnit::celsius},
                          before.spooled(before.commits()[0].spools[0]),
                          runOf("standard", "100% cotton"),
                          std::string{"entry-7"},
                          records::BeltPosition::centre});
    const auto correction = std::get<records::CorrectionMade>(floor.readingsIn(0).at(0));
    CHECK(correction.corrects == "entry-7");
}

TEST_CASE("an answer to some other commit changes nothing", "[shop][proving]") {
    auto floor = floorAfterRide(168);
    floor.send(Committed{999, {"x"}, {1}});
    CHECK_FALSE(floor.state().verdict);
    CHECK(floor.state().pending.size() == 1);
}

TEST_CASE("a ride that starts hot asks for the unit, and the answer corrects it", "[shop][proving]") {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton"));
    floor.place("P-3", 52);
    floor.play("P-3", {{52, 70}, {168, 39}, {168, 10}, {45, 41}});
    REQUIRE(floor.commits().size() == 1);
    floor.commitDone();
    CHECK(floor.state().verdict->word == Word::notProven);
    REQUIRE(floor.state().unitAsked);
    floor.send(UnitAnswered{holdfast::analytics::TemperatureUnit::celsius});
    REQUIRE(floor.commits().size() == 2);
    CHECK(std::holds_alternative<records::CorrectionMade>(floor.readingsIn(1).at(0)));
    floor.commitDone();
    CHECK(floor.state().verdict->word == Word::cured); // 60 °C is cold enough once the unit is sure (decisions 3.7)
}

TEST_CASE("several rides in one recording are parted into a reading each", "[shop][proving]") {
    auto before = floorAfterRide(168);
    auto samples = before.spooled(before.commits()[0].spools[0]);
    const auto second = samples;
    while (samples.back().counts > 450) { // down to 45 °C at 3 °C/s
        auto cooler = samples.back();
        cooler.at += std::chrono::milliseconds{200};
        cooler.counts -= 6;
        samples.push_back(cooler);
    }
    const auto shift = samples.back().at + std::chrono::seconds{2} - second.front().at;
    for (auto sample : second) {
        sample.at += shift;
        samples.push_back(sample);
    }
    Floor floor;
    floor.send(SpoolFound{"left.spool",
                          "P-3",
                          {kStep, holdfast::drivers::ReadingUnit::celsius},
                          samples,
                          runOf("standard", "100% cotton"),
                          std::nullopt,
                          records::BeltPosition::centre});
    const auto readings = floor.readingsIn(0);
    REQUIRE(readings.size() == 2);
    const auto passOf = [&](std::size_t i) {
        return std::get<records::TraceSeen>(std::get<records::ReadingTaken>(readings[i]).evidence).pass;
    };
    CHECK(passOf(0) == 1);
    CHECK(passOf(1) == 2);
    floor.commitDone();
    CHECK(floor.state().kept.size() == 2);
}
