#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
namespace records = holdfast::kiosk::records;

namespace {

/// A run with one cured reading in its lot.
Floor floorWithLot() {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton"));
    floor.play("P-3", rideTo(175));
    floor.commitDone();
    return floor;
}

std::string lotOf(const Floor& floor) {
    return *std::get<records::ReadingTaken>(floor.readingsIn(0).at(0)).lot;
}

std::vector<records::Record> finishing(const Floor& floor) {
    return {records::LotClosed{lotOf(floor), std::nullopt, records::LotEnd::runEnded},
            records::RunFinished{floor.state().kept.at(0).run->onFile.plan.run, 36, std::nullopt}};
}

bool closes(const Commit& commit, const std::string& lot) {
    return std::any_of(commit.records.begin(), commit.records.end(), [&](const records::Record& record) {
        const auto* closed = std::get_if<records::LotClosed>(&record);
        return closed != nullptr && closed->lot == lot;
    });
}

} // namespace

TEST_CASE("a lot that a finished run closed is not closed again by a change at the dryer", "[shop][lots]") {
    auto floor = floorWithLot();
    floor.send(KeptElsewhere{finishing(floor)});
    floor.send(ActionPressed{ActionCard::beltSlower});
    REQUIRE(floor.commits().size() == 2);
    CHECK_FALSE(closes(floor.commits()[1], lotOf(floor)));
}

TEST_CASE("a finished run leaves the belt, and the next ride is nobody's", "[shop][lots]") {
    auto floor = floorWithLot();
    floor.send(KeptElsewhere{finishing(floor)});
    CHECK_FALSE(floor.state().run);
    CHECK(floor.state().belt.empty());
    CHECK_FALSE(floor.state().window);
    floor.play("P-3", rideTo(175));
    const auto taken = std::get<records::ReadingTaken>(floor.readingsIn(1).at(0));
    CHECK_FALSE(taken.run); // kept as "whose was this?"
}

TEST_CASE("one of two runs is finished: the other stays on the belt alone", "[shop][lots]") {
    auto floor = floorWithLot();
    floor.send(ActionPressed{ActionCard::alsoOnBelt});
    floor.announce(runOf("low-cure", "100% cotton", 20419));
    REQUIRE(floor.state().belt.size() == 2);
    floor.send(KeptElsewhere{finishing(floor)});
    REQUIRE(floor.state().belt.size() == 1);
    CHECK(floor.state().run->onFile.plan.number == 20419);
}

TEST_CASE("a ride that is on is kept whatever is finished meanwhile", "[shop][lots]") {
    Floor floor;
    floor.plug("P-3");
    const auto run = runOf("standard", "100% cotton");
    floor.announce(run);
    floor.play("P-3", {{25, 10}, {175, 50}});
    REQUIRE(floor.stage() == Stage::recording);
    floor.send(
        KeptElsewhere{{records::RunFinished{run->onFile.plan.run, 36, std::nullopt}}}); // its lot was never opened
    floor.play("P-3", {{45, 45}, {45, 10}});
    REQUIRE(floor.commits().size() == 1);
    const auto taken = std::get<records::ReadingTaken>(floor.readingsIn(0).at(0));
    CHECK_FALSE(taken.run);
    for (const auto& record : floor.commits()[0].records) {
        CHECK_FALSE(std::holds_alternative<records::LotOpened>(record)); // the book would refuse it
    }
}

TEST_CASE("a finished run is ridden for the lot that goes through again", "[shop][lots]") {
    Floor floor;
    floor.send(InstrumentsLoaded{{probeNamed("P-3")}, holdfast::analytics::starterFamilies(), {}});
    floor.plug("P-3");
    auto again = std::make_shared<AnnouncedRun>(*runOf("standard", "100% cotton"));
    again->onFile.finished = records::RunFinished{again->onFile.plan.run, 36, std::nullopt};
    records::LotRow lot;
    lot.id = again->lotId;
    lot.run = again->onFile.plan.run;
    lot.number = 2;
    again->onFile.lot = lot;
    floor.send(ScannedText{"20418"});
    floor.send(RunLoaded{20418, again});
    CHECK_FALSE(floor.state().refusal);
    floor.play("P-3", rideTo(168));
    REQUIRE(floor.commits().size() == 1);
    CHECK(std::get<records::ReadingTaken>(floor.readingsIn(0).at(0)).lot == lot.id);
    for (const auto& record : floor.commits()[0].records) {
        CHECK_FALSE(std::holds_alternative<records::LotOpened>(record)); // it stands in the book already
    }
}

TEST_CASE("the ticket of a finished run is refused with its number", "[shop][lots]") {
    Floor floor;
    auto finished = std::make_shared<AnnouncedRun>(*runOf("standard", "100% cotton"));
    finished->onFile.finished = records::RunFinished{finished->onFile.plan.run, 36, std::nullopt};
    floor.send(ScannedText{"20418"});
    floor.send(RunLoaded{20418, finished});
    REQUIRE(floor.state().refusal);
    CHECK(floor.state().refusal->cause == RefusalCause::runFinished);
    CHECK_FALSE(floor.state().run);
}

TEST_CASE("a plan changed under the belt is asked for anew", "[shop][lots]") {
    auto floor = floorWithLot();
    records::RunReplanned again;
    again.plan = floor.state().run->onFile.plan;
    floor.send(KeptElsewhere{{records::LotClosed{lotOf(floor), std::nullopt, records::LotEnd::newRevision}, again}});
    const auto asked = floor.all<LookUpRun>();
    REQUIRE_FALSE(asked.empty());
    CHECK(asked.back().number == 20418);
}

TEST_CASE("a window card changed under the belt is asked for as a card", "[shop][lots]") {
    Floor floor;
    auto card = std::make_shared<AnnouncedRun>(*runOf("standard", "100% cotton", 3));
    card->onFile.plan.kind = records::PlanKind::windowCard;
    floor.send(ScannedText{"3"});
    floor.send(RunLoaded{3, card});
    REQUIRE(floor.state().run);
    records::RunReplanned again;
    again.plan = card->onFile.plan;
    floor.send(KeptElsewhere{{again}});
    REQUIRE_FALSE(floor.all<LookUpRun>().empty());
    CHECK(floor.all<LookUpRun>().back().windowCard);
}

TEST_CASE("a change that the book refused because a lot had just been closed is put together anew", "[shop][lots]") {
    auto floor = floorWithLot();
    floor.send(ActionPressed{ActionCard::beltSlower}); // on its way while the run is being finished
    REQUIRE(closes(floor.commits().at(1), lotOf(floor)));
    floor.send(KeptElsewhere{finishing(floor)});
    floor.commitFails(holdfast::kiosk::ledger::FailureCode::refused);
    REQUIRE(floor.stage() == Stage::notKept);
    floor.send(RetryPressed{});
    const auto sent = floor.all<Commit>();
    REQUIRE(sent.size() == 3);
    CHECK_FALSE(closes(sent[2], lotOf(floor)));
    floor.commitDone();
    CHECK(floor.state().pending.empty());
}
