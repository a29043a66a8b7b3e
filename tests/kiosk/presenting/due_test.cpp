// Readings due and pieces to be pulled, as they stand on the pages without a touch.
#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/screens/presenting/dryer_presenter.hpp"
#include "kiosk/screens/presenting/floor/floor_place.hpp"
#include "kiosk/screens/presenting/header_presenter.hpp"
#include "kiosk/screens/presenting/run_presenter.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;

namespace {

constexpr analytics::Date kToday{std::chrono::year{2026} / 3 / 2};

/// 2.5 m heated, 4 pieces a metre: 10 in the tunnel. The belt does not move, so a number typed stands. The belt map
/// says that the left lane is the coldest.
struct Kiosk final {
    shop::testing::Floor floor;
    FloorFacts facts;
    wording::Speech speech;

    Kiosk() {
        floor.send(
            shop::InstrumentsLoaded{{shop::testing::probeNamed("P-3")}, analytics::starterFamilies(), {}, kToday});
        records::DryerNow dryer;
        dryer.described.dryer = "dryer";
        dryer.described.heatedLengthMetres = 2.5;
        dryer.described.piecesPerMetre = 4.0;
        dryer.beltMetresPerMinute = 0.0;
        shop::FloorLoaded loaded;
        loaded.dryer = dryer;
        loaded.nextBin = 7;
        floor.send(loaded);
        floor.send(shop::EarlierRidesLoaded{{}, analytics::BeltMap{analytics::BeltLane::left, kToday}});
        floor.send(shop::FreshIds{{}, {0, 0, 0, 0}}); // the first piece of each range is drawn
        floor.plug("P-3");
        auto run = std::make_shared<shop::AnnouncedRun>(*shop::testing::runOf("standard", "100% cotton"));
        run->onFile.plan.pieces = 288;
        run->onFile.plan.title = "red jerseys";
        floor.announce(run);
        floor.wait(1);
    }
    void typed(int pieces) { floor.send(shop::PiecesTyped{{}, pieces}); }
    void ride(double peak) {
        floor.play("P-3", shop::testing::rideTo(peak));
        floor.commitDone();
        floor.wait(1);
    }
    [[nodiscard]] HeaderCell due() const { return headerOf(Place::run, floor.state(), facts, speech).due; }
    [[nodiscard]] RunPageState page() const { return runPageOf(floor.state(), facts, {}, speech); }
};

} // namespace

TEST_CASE("the head names the next reading, when it comes and where, by itself", "[presenting][due]") {
    Kiosk kiosk;
    CHECK(kiosk.due().what == "Next reading");
    CHECK(kiosk.due().how == "in 20 pieces, left"); // two dwells of ten
    kiosk.typed(19);
    CHECK(kiosk.due().how == "in 1 piece, left");
    kiosk.typed(20);
    CHECK(kiosk.due().what == "Reading due");
    CHECK(kiosk.due().how == "piece 21, left");
}

TEST_CASE("the dryer's list says which piece of which run is to be read", "[presenting][due]") {
    Kiosk kiosk;
    kiosk.typed(20);
    const auto rows = dryerPageOf(kiosk.floor.state(), kiosk.facts, kiosk.speech).due;
    REQUIRE(rows.size() == 1);
    CHECK(rows.front().title == "Reading, piece 21, left");
    CHECK(rows.front().detail == "run 20418, red jerseys");
    CHECK(rows.front().when == "now");
    CHECK(rows.front().next);
    CHECK(rows.front().id == "run");
}

TEST_CASE("the run page names piece and lane before the ride and after it", "[presenting][due]") {
    Kiosk kiosk;
    kiosk.typed(20);
    CHECK(kiosk.page().advice.front().sentence.endsWith("Due now: piece 21, left."));
    kiosk.ride(168);
    // 288 pieces: the next 200 end at 221; the last five are 284 to 288. First of 217 to 221.
    CHECK(kiosk.page().lot.lotNote.endsWith("Next: piece 217, left, in 195 pieces."));
}

TEST_CASE("after the last reading the head says that none is left", "[presenting][due]") {
    Kiosk kiosk;
    kiosk.typed(286);
    kiosk.ride(168);
    CHECK(kiosk.due().what == "Nothing due");
    CHECK(kiosk.due().how == "no reading is left of this run");
}

TEST_CASE("a bad reading says which pieces to pull, how many, and their bin, with its label one press away",
          "[presenting][due]") {
    Kiosk kiosk;
    kiosk.typed(99);
    kiosk.ride(168); // piece 100 is proven
    kiosk.typed(211);
    kiosk.ride(150); // piece 212 is under-cured
    const auto page = kiosk.page();
    const auto bin = QString::fromStdString(drivers::encode(drivers::TicketKind::bin, 7, 4));
    const auto doNow = page.advice.front().sentence;
    // 101 to 212 + 10 = 222, 122 pieces.
    CHECK(doNow.contains("Pull pieces 101 to 222: 122 pieces, into bin " + bin + ". The others may go."));
    CHECK(doNow.contains("Those that follow belong to them until one is proven."));
    CHECK(page.lot.lotNote.contains("Bin " + bin + " holds pieces 101 to 222; the others may go."));
    const auto label = std::find_if(page.actions.begin(), page.actions.end(),
                                    [](const ActionState& one) { return one.id == QLatin1String("bin.label"); });
    REQUIRE(label != page.actions.end());
    CHECK_FALSE(label->primary);
    CHECK(label->label == "Print bin label");
}

TEST_CASE("the same stands there in Spanish", "[presenting][due]") {
    Kiosk kiosk;
    kiosk.speech.language = &wording::Language::ofCode("es");
    kiosk.typed(20);
    CHECK(kiosk.due().how == "pieza 21, izquierda");
    kiosk.ride(150);
    CHECK(kiosk.page().advice.front().sentence.contains("Aparte las piezas 1 a 31: 31 piezas"));
}

TEST_CASE("pieces typed at the dryer count, and a number that runs backwards stays there", "[presenting][due]") {
    Kiosk kiosk;
    FloorNeeds needs;
    needs.floor = [&]() -> const shop::ProvingState& { return kiosk.floor.state(); };
    needs.facts = [&]() -> const FloorFacts& { return kiosk.facts; };
    needs.speech = [&]() -> const wording::Speech& { return kiosk.speech; };
    needs.send = [&](const shop::ProvingEvent& event) { kiosk.floor.send(event); };
    needs.go = [](const std::string&) {};
    FloorPlace place{needs};
    place.showDryer();
    CHECK(place.enter("reading.made", "120"));
    CHECK(shop::watchOf(kiosk.floor.state(), "run-20418")->made->pieces == 120);
    CHECK(place.enter("reading.made", "90"));
    REQUIRE(kiosk.floor.state().refusal);
    CHECK(kiosk.floor.state().refusal->cause == shop::RefusalCause::countRunsBackwards);
    CHECK(shop::watchOf(kiosk.floor.state(), "run-20418")->made->pieces == 120);
    bool stays = false;
    bool counted = false;
    for (const auto& block : place.sheet().blocks) {
        for (const auto& field : block.fields) {
            stays = stays || (field.id == QLatin1String("reading.made") && field.value == "90");
        }
        for (const auto& row : block.rows) {
            counted = counted || row.value == "120, from the number typed";
        }
    }
    CHECK(stays);
    CHECK(counted);
}
