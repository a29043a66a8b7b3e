#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/shop/proving/action_card.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::shop;
using namespace holdfast::kiosk::shop::testing;
using holdfast::drivers::TicketKind;
namespace drivers = holdfast::drivers;
namespace records = holdfast::kiosk::records;

namespace {

RefusalCause causeOf(const std::string& text) {
    Floor floor;
    floor.send(ScannedText{text});
    REQUIRE(floor.state().refusal);
    CHECK(floor.all<ShowRefusal>().size() == 1);
    for (const char sign : floor.state().refusal->text) {
        CHECK(sign >= ' ');
        CHECK(sign <= '~');
    }
    CHECK(floor.state().refusal->text.size() <= 40);
    return floor.state().refusal->cause;
}

} // namespace

TEST_CASE("a run's ticket and a window card are looked up by the number in their code", "[shop][scan]") {
    Floor floor;
    floor.send(ScannedText{drivers::encode(TicketKind::run, 20418, 4)});
    floor.send(ScannedText{drivers::encode(TicketKind::window, 7, 3)});
    const auto asked = floor.all<LookUpRun>();
    REQUIRE(asked.size() == 2);
    CHECK(asked[0].number == 20418);
    CHECK_FALSE(asked[0].windowCard);
    CHECK(asked[1].number == 7);
    CHECK(asked[1].windowCard);
}

TEST_CASE("garbage is refused with a cause and nothing else changes", "[shop][scan]") {
    CHECK(causeOf("") == RefusalCause::unreadableScan);
    CHECK(causeOf(std::string(10'001, 'A')) == RefusalCause::unreadableScan);
    CHECK(causeOf(std::string(10'000, 'A')) == RefusalCause::notATicket);
    CHECK(causeOf(std::string("R20\x00\x07", 5)) == RefusalCause::unreadableScan);
    CHECK(causeOf("\xff\xfe") == RefusalCause::unreadableScan);
    CHECK(causeOf("'; DROP TABLE runs; --") == RefusalCause::notATicket);
    CHECK(causeOf("\"quoted\" 'text' {}[]") == RefusalCause::notATicket);
    CHECK(causeOf("R") == RefusalCause::notATicket);
}

TEST_CASE("a damaged ticket is told from an unknown one", "[shop][scan]") {
    auto ticket = drivers::encode(TicketKind::run, 20418, 4);
    ticket[1] = ticket[1] == '3' ? '4' : '3';
    CHECK(causeOf(ticket) == RefusalCause::ticketDamaged);
    CHECK(causeOf(drivers::encode(TicketKind::bucket, 5, 3)) == RefusalCause::ticketOfOtherKind);
    CHECK(causeOf(drivers::encode(TicketKind::action, 99, 3)) == RefusalCause::unknownAction);
    CHECK(causeOf(drivers::encode(TicketKind::instrument, 99, 3)) == RefusalCause::instrumentNotFound);
    Floor floor;
    floor.send(ScannedText{"20418"});
    floor.send(RunNotFound{20418});
    CHECK(floor.state().refusal->cause == RefusalCause::runNotFound);
    CHECK(floor.state().refusal->number == 20418u);
    CHECK(floor.stage() == Stage::idle);
}

TEST_CASE("the answer to an earlier scan does not replace a later one", "[shop][scan]") {
    Floor floor;
    floor.send(ScannedText{"1"});
    floor.send(ScannedText{"2"});
    floor.send(RunLoaded{1, runOf("standard", "100% cotton", 1)});
    CHECK_FALSE(floor.state().run);
    floor.send(RunLoaded{2, runOf("standard", "100% cotton", 2)});
    REQUIRE(floor.state().run);
    CHECK(floor.state().run->onFile.plan.number == 2);
}

TEST_CASE("a run whose plan has no window is refused", "[shop][scan]") {
    Floor floor;
    auto run = std::make_shared<AnnouncedRun>(*runOf("standard", "100% cotton"));
    run->onFile.usable = false;
    floor.send(ScannedText{"20418"});
    floor.send(RunLoaded{20418, run});
    CHECK(floor.state().refusal->cause == RefusalCause::runUnusable);
}

TEST_CASE("scanning another ticket during a ride leaves the ride with its run", "[shop][scan]") {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton", 1));
    floor.play("P-3", {{25, 30}, {120, 32}});
    floor.announce(runOf("standard", "100% cotton", 2));
    floor.play("P-3", {{168, 16}, {168, 10}, {45, 41}});
    REQUIRE(floor.commits().size() == 1);
    CHECK(*std::get<records::ReadingTaken>(floor.readingsIn(0).at(0)).run == "run-1");
}

TEST_CASE("every state of a link has its own cause", "[shop][proving]") {
    using drivers::LinkFault;
    using drivers::LinkState;
    const auto trouble = [](LinkState state, LinkFault fault) {
        Floor floor;
        drivers::LinkStatus status;
        status.state = state;
        status.cause = fault;
        floor.send(LinkChanged{"P-3", status, {kStep, drivers::ReadingUnit::celsius}});
        return floor.state().probes.at(0).trouble;
    };
    CHECK(trouble(LinkState::absent, LinkFault::none) == ProbeTrouble::absent);
    CHECK(trouble(LinkState::opening, LinkFault::portBusy) == ProbeTrouble::portBusy);
    CHECK(trouble(LinkState::opening, LinkFault::permission) == ProbeTrouble::permission);
    CHECK(trouble(LinkState::identifying, LinkFault::none) == ProbeTrouble::identifying);
    CHECK(trouble(LinkState::identifying, LinkFault::garbled) == ProbeTrouble::garbled);
    CHECK(trouble(LinkState::identifying, LinkFault::wrongBaud) == ProbeTrouble::wrongBaud);
    CHECK(trouble(LinkState::identifying, LinkFault::wrongDevice) == ProbeTrouble::wrongDevice);
    CHECK(trouble(LinkState::lost, LinkFault::unplugged) == ProbeTrouble::unplugged);
    CHECK(trouble(LinkState::lost, LinkFault::silent) == ProbeTrouble::silent);
    CHECK(trouble(LinkState::lost, LinkFault::wrongUnit) == ProbeTrouble::wrongUnit);
    CHECK(trouble(LinkState::ready, LinkFault::none) == ProbeTrouble::none);
}

TEST_CASE("what the instrument doubts or cannot be is a cause, never a value", "[shop][proving]") {
    const auto trouble = [](double celsius, drivers::SampleFlag flags) {
        Floor floor;
        floor.plug("P-3");
        const auto counts = static_cast<std::int64_t>(celsius / kStep);
        floor.send(SamplesArrived{"P-3", {{MonotonicTime{1'000'000}, counts, flags}}});
        CHECK_FALSE(floor.state().probes.at(0).value);
        return floor.state().probes.at(0).trouble;
    };
    CHECK(trouble(0, drivers::SampleFlag::openCircuit) == ProbeTrouble::openCircuit);
    CHECK(trouble(400, drivers::SampleFlag::outOfRange) == ProbeTrouble::outOfRange);
    CHECK(trouble(0, drivers::SampleFlag::instrumentFault) == ProbeTrouble::instrumentFault);
    CHECK(trouble(0, drivers::SampleFlag::unreadable) == ProbeTrouble::unreadable);
    CHECK(trouble(900, drivers::SampleFlag::none) == ProbeTrouble::impossibleTemperature);
    CHECK(trouble(-150, drivers::SampleFlag::none) == ProbeTrouble::impossibleTemperature);
}

TEST_CASE("a probe nobody described proves nothing, but is recorded", "[shop][proving]") {
    Floor floor;
    floor.plug("stranger");
    CHECK(floor.state().probes.at(0).trouble == ProbeTrouble::notDescribed);
    floor.announce(runOf("standard", "100% cotton"));
    floor.play("stranger", rideTo(168));
    REQUIRE(floor.commits().size() == 1);
    floor.commitDone();
    CHECK(floor.state().verdict->word == holdfast::analytics::Word::notProven);
}

TEST_CASE("action cards do what buttons do", "[shop][scan]") {
    const auto card = [](ActionCard action) {
        return ScannedText{drivers::encode(TicketKind::action, static_cast<std::uint64_t>(action), 3)};
    };
    Floor floor;
    floor.plug("P-3");
    floor.send(card(ActionCard::stop));
    CHECK(floor.state().refusal->cause == RefusalCause::nothingToStop);
    floor.send(card(ActionCard::setUp));
    CHECK_FALSE(floor.state().refusal);
    CHECK(floor.state().nextReason == records::ReadingReason::setUp);
    floor.send(card(ActionCard::ready));
    CHECK(floor.state().nextReason == records::ReadingReason::drawn);
    floor.send(card(ActionCard::right));
    CHECK(floor.state().probes[0].position == records::BeltPosition::right);
}
