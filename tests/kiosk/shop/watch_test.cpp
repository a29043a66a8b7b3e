#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

/// Decisions 5, from the ticket to the bin. The dryer: 2.5 m heated, 4 pieces a metre, so 10 in the tunnel.
namespace holdfast::kiosk::shop::testing {
namespace {

using analytics::BeltLane;
using analytics::CountSource;
using analytics::DueWhy;
using analytics::PieceSpan;
using records::HoldCause;
using records::HoldChanged;
using records::HoldPlaced;
using records::ReadingMissed;
using records::ReadingReason;
using records::ReadingTaken;

constexpr analytics::Date kToday{
    std::chrono::year_month_day{std::chrono::year{2026}, std::chrono::month{3}, std::chrono::day{2}}};
const std::string kRun = "run-20418";

FloorLoaded dryerAt(double metresPerMinute) {
    records::DryerNow dryer;
    dryer.described.dryer = "dryer";
    dryer.described.heatedLengthMetres = 2.5;
    dryer.described.piecesPerMetre = 4.0;
    dryer.beltMetresPerMinute = metresPerMinute;
    dryer.setPoint = analytics::AuthoredTemperature{340.0, analytics::TemperatureUnit::fahrenheit};
    FloorLoaded loaded;
    loaded.dryer = dryer;
    loaded.nextBin = 7;
    return loaded;
}

std::shared_ptr<const AnnouncedRun> runOfPieces(std::optional<int> pieces, std::int64_t number = 20418) {
    auto run = std::make_shared<AnnouncedRun>(*runOf("standard", "100% cotton", number));
    run->onFile.plan.pieces = pieces;
    return run;
}

/// A dryer whose belt map of today says that the right lane is the coldest; its probe is plugged in.
struct Shop final {
    Floor floor;
    explicit Shop(double metresPerMinute, bool map = true) {
        floor.send(
            InstrumentsLoaded{{probeNamed("P-3"), stripOf280To330F()}, analytics::starterFamilies(), {}, kToday});
        floor.send(dryerAt(metresPerMinute));
        if (map) {
            floor.send(EarlierRidesLoaded{{}, analytics::BeltMap{BeltLane::right, kToday}});
        }
        floor.plug("P-3");
    }
    const RunWatch& watch(const std::string& run = kRun) const { return *watchOf(floor.state(), run); }
    const DuePiece& due(const std::string& run = kRun) const { return *watch(run).due; }
    void typed(int pieces) { floor.send(PiecesTyped{kRun, pieces}); }
    void ride(double peak) {
        floor.play("P-3", rideTo(peak));
        REQUIRE(floor.commitOpen());
    }
    ReadingTaken rideKept(double peak) {
        ride(peak);
        const auto taken = std::get<ReadingTaken>(floor.readingsIn(floor.commits().size() - 1).front());
        floor.commitDone();
        return taken;
    }
    template <class Kind>
    std::vector<Kind> kept(std::size_t commit) const {
        std::vector<Kind> found;
        for (const auto& record : floor.commits().at(commit).records) {
            if (const auto* one = std::get_if<Kind>(&record)) {
                found.push_back(*one);
            }
        }
        return found;
    }
    template <class Kind>
    std::vector<Kind> newest() const {
        return kept<Kind>(floor.commits().size() - 1);
    }
};

// The cure of "standard" is 320 °F = 160 °C (contracts, Starters): 168 °C proves it, 150 °C shows it under-cured.
constexpr double kGood = 168.0;
constexpr double kBad = 150.0;

} // namespace

TEST_CASE("pieces are counted by rate and time without a touch", "[shop][watch]") {
    Shop shop{1.5};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    CHECK(shop.watch().made->source == CountSource::rate);
    shop.floor.wait(600);
    // 1.5 m/min × 4 a metre × 10 min = 60.
    CHECK(shop.watch().made->pieces == 60);
    shop.floor.wait(3000); // 360 by the rate, but the run has 288
    CHECK(shop.watch().made->pieces == 288);
}

TEST_CASE("nothing is counted while the belt stands or the run is being set up", "[shop][watch]") {
    Shop shop{1.5};
    shop.floor.announce(runOfPieces(288));
    shop.floor.send(ActionPressed{ActionCard::setUp});
    shop.floor.wait(300);
    CHECK(shop.watch().made->pieces == 0);
    shop.floor.send(ActionPressed{ActionCard::ready});
    shop.floor.wait(100);
    CHECK(shop.watch().made->pieces == 10);
    shop.floor.send(ActionPressed{ActionCard::feedStopped});
    shop.floor.wait(90); // less than the dwell of 100 s
    CHECK(shop.watch().made->pieces == 10);
    shop.floor.send(ActionPressed{ActionCard::started});
    shop.floor.wait(100);
    CHECK(shop.watch().made->pieces == 20);
}

TEST_CASE("two runs share what lies on a metre of the belt", "[shop][watch]") {
    Shop shop{1.5};
    shop.floor.announce(runOfPieces(288));
    shop.floor.send(ActionPressed{ActionCard::alsoOnBelt});
    shop.floor.announce(runOfPieces(288, 20419));
    shop.floor.wait(600);
    CHECK(shop.watch().made->pieces == 30);
    CHECK(shop.watch("run-20419").made->pieces == 30);
}

TEST_CASE("a number typed counts, and one that runs backwards is refused", "[shop][watch]") {
    Shop shop{1.5};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(100);
    CHECK(shop.watch().made == analytics::PieceCount{100, CountSource::typed});
    shop.floor.wait(60); // six more by the rate
    CHECK(shop.watch().made == analytics::PieceCount{106, CountSource::typed});
    shop.typed(90);
    REQUIRE(shop.floor.state().refusal);
    CHECK(shop.floor.state().refusal->cause == RefusalCause::countRunsBackwards);
    CHECK(shop.floor.state().refusal->text == "90");
    CHECK(shop.floor.state().refusal->number == 106U);
    CHECK(shop.watch().made->pieces == 106);
    shop.typed(-1);
    CHECK(shop.floor.state().refusal->cause == RefusalCause::countUnusable);
    shop.floor.send(PiecesTyped{"another", 5});
    CHECK(shop.floor.state().refusal->cause == RefusalCause::noRunToCount);
    shop.typed(110);
    CHECK_FALSE(shop.floor.state().refusal);
}

TEST_CASE("the piece to be read is drawn and its lane named before it comes", "[shop][watch]") {
    Shop shop{1.5};
    shop.floor.send(FreshIds{{}, {2}});
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(10);
    const auto& due = shop.due();
    CHECK(due.reading.why == DueWhy::first);
    CHECK(due.reading.lane == BeltLane::right); // the map's coldest
    // Two dwells are 20 pieces: one of 21 to 25; 2 mod 5 = 2, the third of them.
    CHECK(due.reading.among == PieceSpan{21, 25});
    CHECK(due.piece == 23);
    CHECK_FALSE(due.reading.now);
    CHECK(dueFirst(shop.floor.state()) == &shop.watch());
    shop.floor.wait(190);
    CHECK(shop.due().reading.now);
    CHECK(shop.due().piece == 23);
}

TEST_CASE("a ride of a due reading is of the piece drawn, where it was due", "[shop][watch]") {
    Shop shop{1.5};
    shop.floor.send(FreshIds{{}, {2}});
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(200);
    const auto taken = shop.rideKept(kGood);
    CHECK(taken.piece == 23);
    CHECK(taken.position == records::BeltPosition::right);
    CHECK(taken.reason == ReadingReason::drawn);
    CHECK(taken.verdict->word == analytics::Word::cured);
    CHECK(shop.watch().lastProven == 23);
    shop.floor.wait(1);
    CHECK(shop.due().reading.why == DueWhy::pieces);
    // 23 + 200 = 223: one of 219 to 223.
    CHECK(shop.due().reading.among == PieceSpan{219, 223});
}

TEST_CASE("without a belt map the first three are left, centre and right", "[shop][watch]") {
    Shop shop{0.0, false};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(50);
    const records::BeltPosition positions[] = {records::BeltPosition::left, records::BeltPosition::centre,
                                               records::BeltPosition::right};
    const double peaks[] = {168.0, 169.0, 166.0};
    for (int i = 0; i < 3; ++i) {
        const auto taken = shop.rideKept(peaks[i]);
        CHECK(taken.position == positions[i]);
        CHECK(taken.reason == ReadingReason::drawn);
        shop.floor.wait(1);
    }
    // Three lanes of one lot are a map: right was the coldest.
    REQUIRE(shop.floor.state().watch.map);
    CHECK(shop.floor.state().watch.map->coldest == BeltLane::right);
    CHECK(shop.due().reading.lane == BeltLane::right);
    CHECK_FALSE(shop.due().reading.now);
}

TEST_CASE("a position that a person chose stands", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(50);
    shop.floor.send(PositionTouched{records::BeltPosition::left});
    CHECK(shop.rideKept(kGood).position == records::BeltPosition::left);
}

TEST_CASE("a ride on an empty belt is kept but proves nothing of the dryer's state", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(5);
    const auto taken = shop.rideKept(kGood);
    CHECK(taken.piece == 6);
    CHECK(taken.reason == ReadingReason::drawn);
    shop.floor.wait(1);
    CHECK(shop.due().reading.why == DueWhy::first);
    CHECK(shop.watch().lastProven == 6); // that one piece was seen
}

TEST_CASE("a ride that nobody asked for has worry as its reason unless a card says it was due", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(50);
    CHECK(shop.rideKept(kGood).reason == ReadingReason::drawn);
    shop.floor.wait(1);
    CHECK(shop.rideKept(kGood).reason == ReadingReason::worry);
    shop.floor.wait(1);
    shop.floor.send(ActionPressed{ActionCard::drawn});
    CHECK(shop.rideKept(kGood).reason == ReadingReason::drawn);
}

TEST_CASE("a bad reading names the pieces to be pulled, their number and a bin in its own commit", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.send(FreshIds{{"reading-1", "lot", "id-1", "id-2", "id-3", "id-4"}, {0, 0, 0, 0}});
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    REQUIRE(shop.rideKept(kGood).piece == 100);
    shop.typed(211);
    shop.ride(kBad);
    const auto taken = shop.newest<ReadingTaken>();
    REQUIRE(taken.size() == 1);
    CHECK(taken.front().piece == 212);
    const auto holds = shop.newest<HoldPlaced>();
    REQUIRE(holds.size() == 1);
    // From after the last proven piece, 100, to the bad one and the 10 behind it: 101 to 222, 122 pieces; what follows
    // belongs to it until one is proven.
    CHECK(holds.front().cause == HoldCause::reading);
    CHECK(holds.front().pieces == records::PieceRange{101, std::nullopt});
    CHECK(holds.front().count == 122);
    CHECK(holds.front().basis == records::CountBasis::typed);
    CHECK(holds.front().bin == 7);
    CHECK(holds.front().lot == *taken.front().lot);
    CHECK_FALSE(holds.front().hold.empty());
    const auto& commit = shop.floor.commits().back();
    CHECK(holds.front().because == commit.ids.at(commit.firstReading));
    CHECK(shownBracket(shop.floor.state()) == nullptr); // nothing is shown before it stands in the book
    shop.floor.commitDone();
    const auto* bracket = shownBracket(shop.floor.state());
    REQUIRE(bracket != nullptr);
    CHECK(bracket->pieces == PieceSpan{101, 222});
    CHECK(bracket->bin == 7);
    CHECK(verdictStays(shop.floor.state()));
}

TEST_CASE("a second bad reading goes into the same bin and a proven piece ends the bracket", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    (void)shop.rideKept(kGood);
    shop.typed(211);
    (void)shop.rideKept(kBad);
    shop.typed(215);
    shop.ride(kBad);
    const auto second = shop.newest<HoldPlaced>();
    const auto grown = shop.newest<HoldChanged>();
    REQUIRE(second.size() == 1);
    REQUIRE(grown.size() == 1);
    CHECK(second.front().bin == 7);
    // Piece 216 is bad: 101 to 226, 126 pieces.
    CHECK(second.front().count == 126);
    CHECK(grown.front().count == 126);
    shop.floor.commitDone();
    shop.floor.send(ActionPressed{ActionCard::hotter});
    shop.floor.commitDone();
    shop.floor.wait(1);
    // 216 pieces were on the belt at the change: the first of the new state is one of 237 to 241.
    shop.typed(236);
    shop.ride(kGood);
    const auto ended = shop.newest<HoldChanged>();
    REQUIRE(ended.size() == 2);
    for (const auto& one : ended) {
        // To before the proven piece 237: 101 to 236, 136 pieces.
        CHECK(one.pieces == records::PieceRange{101, 236});
        CHECK(one.count == 136);
    }
    shop.floor.commitDone();
    shop.typed(245);
    shop.ride(kBad); // another bracket, another bin
    REQUIRE(shop.newest<HoldPlaced>().size() == 1);
    CHECK(shop.newest<HoldPlaced>().front().bin == 8);
    // From after 237 to 246 + 10 = 256: 19 pieces.
    CHECK(shop.newest<HoldPlaced>().front().pieces->first == 238);
    CHECK(shop.newest<HoldPlaced>().front().count == 19);
}

TEST_CASE("the end of the run ends a bracket", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    (void)shop.rideKept(kGood);
    shop.typed(211);
    (void)shop.rideKept(kBad);
    shop.floor.send(KeptElsewhere{{records::RunFinished{kRun, 280, std::nullopt}}});
    const auto ended = shop.newest<HoldChanged>();
    REQUIRE(ended.size() == 1);
    // None proven after it: to the end of the run, 101 to 280, 180 pieces.
    CHECK(ended.front().pieces == records::PieceRange{101, 280});
    CHECK(ended.front().count == 180);
}

TEST_CASE("a decided bracket is left alone by what comes after", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(211);
    shop.ride(kBad);
    const auto hold = shop.newest<HoldPlaced>().front();
    shop.floor.commitDone();
    records::DecisionSigned signedDecision;
    signedDecision.holds = {hold.hold};
    shop.floor.send(KeptElsewhere{{signedDecision}});
    shop.typed(213);
    shop.ride(kBad);
    CHECK(shop.newest<HoldChanged>().empty());
    REQUIRE(shop.newest<HoldPlaced>().size() == 1);
    CHECK(shop.newest<HoldPlaced>().front().bin == 8); // a new cause starts a new hold
}

TEST_CASE("set-up readings hold nothing", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.send(ActionPressed{ActionCard::setUp});
    shop.ride(kBad);
    CHECK(shop.newest<HoldPlaced>().empty());
}

TEST_CASE("where nobody counts a bad reading holds the whole lot", "[shop][watch]") {
    Floor floor;
    floor.plug("P-3");
    floor.announce(runOf("standard", "100% cotton"));
    floor.play("P-3", rideTo(kBad));
    const auto& commit = floor.commits().back();
    const auto* hold = std::get_if<HoldPlaced>(&commit.records.back());
    REQUIRE(hold != nullptr);
    CHECK_FALSE(hold->pieces);
    CHECK_FALSE(hold->count);
    CHECK(hold->bin == 0);
}

TEST_CASE("pieces in the tunnel when the belt stops are a bracket of their own", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    (void)shop.rideKept(kGood);
    shop.typed(212);
    shop.floor.send(ActionPressed{ActionCard::feedStopped});
    const auto holds = shop.newest<HoldPlaced>();
    REQUIRE(holds.size() == 1);
    CHECK(holds.front().cause == HoldCause::beltStopped);
    // The last ten of 212: 203 to 212.
    CHECK(holds.front().pieces == records::PieceRange{203, 212});
    CHECK(holds.front().count == 10);
    CHECK(holds.front().bin == 7);
}

TEST_CASE("a due reading that was not taken when the next fell due is an entry", "[shop][watch]") {
    Shop shop{1.5};
    shop.floor.send(FreshIds{{}, {2}});
    shop.floor.announce(runOfPieces(1000));
    shop.floor.wait(200);
    REQUIRE(shop.rideKept(kGood).piece == 23);
    const auto commits = shop.floor.commits().size();
    // 23 + 200 = 223 falls due, 423 is the next: at 6 pieces a minute the count is 423 after 4230 s.
    while (shop.watch().made->pieces < 422) {
        shop.floor.wait(10);
    }
    CHECK(shop.floor.commits().size() == commits);
    shop.floor.wait(20);
    REQUIRE(shop.floor.commits().size() == commits + 1);
    const auto missed = shop.newest<ReadingMissed>();
    REQUIRE(missed.size() == 1);
    CHECK(missed.front().due == records::DueReadingKind::pieces);
    CHECK(missed.front().lot == "lot-of-20418");
    shop.floor.commitDone();
    shop.floor.wait(600);
    CHECK(shop.floor.commits().size() == commits + 1); // once
    CHECK(shop.due().reading.now);                     // and still one is due
}

TEST_CASE("the last reading is missed a quarter of an hour after the end", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    (void)shop.rideKept(kGood);
    shop.typed(287);
    CHECK(shop.due().reading.why == DueWhy::last);
    CHECK(shop.due().piece == 288);
    CHECK(shop.due().reading.now);
    const auto commits = shop.floor.commits().size();
    shop.floor.send(KeptElsewhere{{records::RunFinished{kRun, 288, std::nullopt}}});
    shop.floor.wait(899);
    CHECK(shop.floor.commits().size() == commits);
    shop.floor.wait(2);
    REQUIRE(shop.floor.commits().size() == commits + 1);
    REQUIRE(shop.newest<ReadingMissed>().size() == 1);
    CHECK(shop.newest<ReadingMissed>().front().due == records::DueReadingKind::last);
    CHECK(watchOf(shop.floor.state(), kRun) == nullptr); // nothing more is watched
}

TEST_CASE("a ticket that was scanned and never ridden misses nothing", "[shop][watch]") {
    Shop shop{1.5};
    shop.floor.announce(runOfPieces(1000));
    shop.floor.wait(9000);
    CHECK(shop.floor.commits().empty());
}

TEST_CASE("a change at the dryer begins the plan anew and the lots know their pieces", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(288));
    shop.floor.wait(1);
    shop.typed(99);
    shop.ride(kGood);
    CHECK(shop.newest<records::LotOpened>().front().firstPiece == 1);
    shop.floor.commitDone();
    shop.typed(150);
    CHECK(shop.due().reading.why == DueWhy::last);
    shop.floor.send(ActionPressed{ActionCard::hotter, std::nullopt, std::nullopt,
                                  analytics::AuthoredTemperature{350.0, analytics::TemperatureUnit::fahrenheit}});
    CHECK(shop.newest<records::LotClosed>().front().lastPiece == 150);
    shop.floor.commitDone();
    shop.floor.wait(1);
    CHECK(shop.due().reading.why == DueWhy::first);
    CHECK(shop.due().reading.among == PieceSpan{171, 175}); // 150 + 20
    shop.typed(171);
    shop.ride(kGood);
    CHECK(shop.newest<records::LotOpened>().front().firstPiece == 151);
}

TEST_CASE("a run in a state that another one proved begins with what is left of it", "[shop][watch]") {
    Shop shop{0.0};
    shop.floor.announce(runOfPieces(500));
    shop.floor.wait(1);
    shop.typed(99);
    REQUIRE(shop.rideKept(kGood).piece == 100);
    shop.typed(249); // 149 pieces since
    shop.floor.announce(runOfPieces(500, 20419));
    shop.floor.wait(1);
    const auto& due = shop.due("run-20419");
    CHECK(due.reading.why == DueWhy::pieces);
    CHECK(due.reading.among == PieceSpan{47, 51}); // 200 − 149
}

TEST_CASE("after two held lots in five the numbers are halved", "[shop][watch]") {
    Shop shop{0.0};
    auto loaded = dryerAt(0.0);
    loaded.tightened = true;
    shop.floor.send(loaded);
    shop.floor.announce(runOfPieces(500));
    shop.floor.wait(1);
    shop.typed(99);
    REQUIRE(shop.rideKept(kGood).piece == 100);
    shop.floor.wait(1);
    CHECK(shop.due().reading.among == PieceSpan{196, 200}); // 100 + 100
}

TEST_CASE("a window card is no run: nothing of it is counted or held", "[shop][watch]") {
    Shop shop{1.5};
    auto card = std::make_shared<AnnouncedRun>(*runOfPieces(288));
    card->onFile.plan.kind = records::PlanKind::windowCard;
    shop.floor.announce(card);
    shop.floor.wait(300);
    CHECK(watchOf(shop.floor.state(), kRun) == nullptr);
    shop.ride(kBad);
    CHECK(shop.newest<HoldPlaced>().empty());
}

} // namespace holdfast::kiosk::shop::testing
