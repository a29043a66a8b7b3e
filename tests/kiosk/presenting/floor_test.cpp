// The floor's sheets over the proving machine: what is typed and pressed becomes an event, and what stands there comes
// from the machine alone.
#include "kiosk/screens/presenting/dryer_presenter.hpp"
#include "kiosk/screens/presenting/floor/floor_place.hpp"
#include "kiosk/screens/presenting/header_presenter.hpp"
#include "kiosk/screens/presenting/run_presenter.hpp"
#include "kiosk/screens/presenting/strip_presenter.hpp"
#include "tests/kiosk/shop/support/shop_floor.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using shop::testing::Floor;

namespace {

/// Places and floor as the kiosk puts them together, without a window.
class Sheets final {
public:
    Sheets() {
        m_facts.dryerName = "North";
        FloorNeeds needs;
        needs.floor = [this]() -> const shop::ProvingState& { return floor.state(); };
        needs.facts = [this]() -> const FloorFacts& { return m_facts; };
        needs.speech = [this]() -> const wording::Speech& { return speech; };
        needs.send = [this](const shop::ProvingEvent& event) { floor.send(event); };
        needs.go = [this](const std::string& where) { went.push_back(where); };
        place = std::make_unique<FloorPlace>(needs);
        floor.send(shop::InstrumentsLoaded{{shop::testing::probeNamed("P-3"),
                                            shop::testing::handInstrument("S-1", analytics::InstrumentKind::spot, 11),
                                            shop::testing::handInstrument("G-1", analytics::InstrumentKind::gun, 12),
                                            shop::testing::stripOf280To330F()},
                                           analytics::starterFamilies(),
                                           {}});
    }
    void announce() { floor.announce(shop::testing::runOf("standard", "100% cotton")); }
    void describeDryer() {
        records::DryerNow dryer;
        dryer.described.dryer = "d-1";
        dryer.described.name = "North";
        dryer.described.heatedLengthMetres = 3.0;
        dryer.described.piecesPerMetre = 2.5;
        dryer.beltMetresPerMinute = 4.5;
        dryer.setPoint = analytics::AuthoredTemperature{360, analytics::TemperatureUnit::fahrenheit};
        floor.send(shop::FloorLoaded{dryer, {}, {}, false});
    }
    [[nodiscard]] SheetPageState sheet() const { return place->sheet(); }
    [[nodiscard]] FloorFacts& facts() { return m_facts; }

    Floor floor;
    std::unique_ptr<FloorPlace> place;
    wording::Speech speech;
    std::vector<std::string> went;

private:
    FloorFacts m_facts;
};

bool says(const SheetPageState& page, const QString& text) {
    return std::any_of(page.blocks.begin(), page.blocks.end(), [&](const SheetBlock& block) {
        return block.text.contains(text) || block.note.contains(text) ||
               std::any_of(block.rows.begin(), block.rows.end(), [&](const SheetRow& row) {
                   return row.title.contains(text) || row.value.contains(text) || row.detail.contains(text);
               });
    });
}

QString faultOf(const SheetPageState& page, const QString& field) {
    for (const auto& block : page.blocks) {
        for (const auto& one : block.fields) {
            if (one.id == field) {
                return one.fault;
            }
        }
    }
    return QStringLiteral("no such field");
}

QString chosen(const SheetPageState& page, const QString& prefix) {
    for (const auto& block : page.blocks) {
        if (block.kind == SheetKinds::Choices && !block.actions.isEmpty() &&
            block.actions.front().id.startsWith(prefix)) {
            return block.chosenId;
        }
    }
    return {};
}

} // namespace

TEST_CASE("a spot typed on its sheet is previewed under its own heading and becomes a reading", "[presenting][floor]") {
    Sheets sheets;
    sheets.announce();
    REQUIRE(sheets.place->act("reading.hand.S-1"));
    CHECK_FALSE(says(sheets.sheet(), "This would prove"));
    CHECK(sheets.place->enter("reading.value", "340")); // cure of the standard starter is 320 °F (contracts, Starters)
    CHECK_FALSE(says(sheets.sheet(), "This would prove"));
    CHECK(sheets.place->enter("reading.before", "75"));
    CHECK(says(sheets.sheet(), "This would prove"));
    CHECK(says(sheets.sheet(), "Cured"));
    CHECK(sheets.place->act("reading.placement.taped"));
    CHECK(sheets.floor.state().hand->placement == analytics::Placement::tapedOnFilm);
    CHECK(chosen(sheets.sheet(), "reading.placement.") == "reading.placement.taped");
    CHECK(sheets.place->act("reading.keep"));
    REQUIRE(sheets.floor.stage() == shop::Stage::writing);
    sheets.floor.commitDone();
    REQUIRE(sheets.floor.stage() == shop::Stage::verdict);
    const auto page = runPageOf(sheets.floor.state(), sheets.facts(), {}, {});
    CHECK(page.band.word == "Cured");
    REQUIRE(page.scale.strip); // decisions 4: the peak lies between the held maximum − 1.5 °C and itself
    CHECK(*page.scale.strip->highShown - *page.scale.strip->lowShown == Approx(1.5 * 1.8));
    CHECK_FALSE(page.scale.timed);
}

TEST_CASE("a text that is no figure stays on the sheet with its fault and nothing is kept", "[presenting][floor]") {
    Sheets sheets;
    sheets.announce();
    REQUIRE(sheets.place->act("reading.hand.S-1"));
    sheets.place->enter("reading.before", "75");
    for (const auto* typed : {"abc", "3 20", "1e9", "--4", "320F"}) {
        INFO(typed);
        sheets.place->enter("reading.value", typed);
        CHECK_FALSE(faultOf(sheets.sheet(), "reading.value").isEmpty());
        sheets.place->act("reading.keep");
        CHECK(sheets.floor.stage() == shop::Stage::hand);
        CHECK(sheets.floor.commits().empty());
    }
    sheets.place->enter("reading.value", "4000"); // a figure, but of no print
    CHECK(faultOf(sheets.sheet(), "reading.value").contains("4000"));
    sheets.place->enter("reading.value", "");
    CHECK(faultOf(sheets.sheet(), "reading.value").isEmpty());
    sheets.place->act("reading.keep");
    REQUIRE(sheets.floor.state().refusal);
    CHECK(sheets.floor.state().refusal->cause == shop::RefusalCause::valueMissing);
    CHECK(sheets.floor.stage() == shop::Stage::hand);
}

TEST_CASE("a gun never previews cured, whatever it shows and wherever it is pointed", "[presenting][floor]") {
    Sheets sheets;
    sheets.announce();
    REQUIRE(sheets.place->act("reading.hand.G-1"));
    for (const auto* shot : {"reading.shot.outfeed", "reading.shot.tunnel"}) {
        REQUIRE(sheets.place->act(shot));
        for (int t = 100; t <= 500; t += 10) {
            sheets.place->enter("reading.value", std::to_string(t));
            CHECK_FALSE(says(sheets.sheet(), "Cured"));
        }
    }
    sheets.place->enter("reading.value", "250"); // 70 °F under the cure of the standard starter
    CHECK(says(sheets.sheet(), "Under-cured"));
    sheets.place->act("reading.keep");
    sheets.floor.commitDone();
    const auto page = runPageOf(sheets.floor.state(), sheets.facts(), {}, {});
    REQUIRE(page.scale.gun);
    CHECK(page.scale.gun->atShown == Approx(250));
    CHECK_FALSE(page.scale.peak); // look.md: never a peak ring
}

TEST_CASE("a flash is noted for the layer chosen and never becomes a reading", "[presenting][floor]") {
    Sheets sheets;
    sheets.announce();
    REQUIRE(sheets.place->act("reading.flash"));
    REQUIRE(sheets.floor.stage() == shop::Stage::flash);
    CHECK(sheets.place->act("reading.layer.1"));
    sheets.place->enter("reading.peak", "300"); // gel 280, cure 320 °F (contracts, Starters)
    CHECK(says(sheets.sheet(), "Gelled"));
    CHECK(sheets.place->act("reading.keep"));
    sheets.floor.commitDone();
    CHECK(sheets.floor.stage() == shop::Stage::window);
    for (const auto& record : sheets.floor.commits().at(0).records) {
        CHECK_FALSE(std::holds_alternative<records::ReadingTaken>(record));
    }
    const auto page = runPageOf(sheets.floor.state(), sheets.facts(), {}, {});
    CHECK(std::any_of(page.advice.begin(), page.advice.end(),
                      [](const AdviceSection& one) { return one.sentence.contains("Gelled"); }));
}

TEST_CASE("without a run nothing can be typed, and the refusal says so", "[presenting][floor]") {
    Sheets sheets;
    for (const auto* id : {"reading.hand.S-1", "reading.flash", "reading.strip.S-12"}) {
        sheets.place->act(id);
        REQUIRE(sheets.floor.state().refusal);
        CHECK(sheets.floor.stage() == shop::Stage::idle);
    }
}

TEST_CASE("how the next ride is taken is chosen on its sheet and stands in its reading", "[presenting][floor]") {
    Sheets sheets;
    sheets.announce();
    sheets.floor.plug("P-3");
    sheets.place->act("reading.ride");
    CHECK(chosen(sheets.sheet(), "reading.placement.") == "reading.placement.wet");
    CHECK(sheets.place->act("reading.placement.cloth"));
    CHECK(sheets.place->act("reading.reason.map"));
    sheets.floor.send(shop::PositionTouched{records::BeltPosition::left});
    const auto page = sheets.sheet();
    CHECK(chosen(page, "reading.placement.") == "reading.placement.cloth");
    CHECK(chosen(page, "position.") == "position.left");
    CHECK(chosen(page, "reading.reason.") == "reading.reason.map");
    sheets.floor.play("P-3", shop::testing::rideTo(175));
    const auto taken = std::get<records::ReadingTaken>(sheets.floor.readingsIn(0).at(0));
    CHECK(taken.placement == analytics::Placement::inOrUnderCloth);
    CHECK(taken.position == records::BeltPosition::left);
    CHECK(taken.reason == records::ReadingReason::map);
}

TEST_CASE("a belt speed typed at the dryer is the change it is, once, with its figure", "[presenting][floor]") {
    Sheets sheets;
    sheets.describeDryer();
    CHECK(headerOf(Place::dryer, sheets.floor.state(), sheets.facts(), {})
              .title.how.contains("dwell 40\u00A0s")); // 3 m at 4.5
    sheets.place->act("reading.dryer");
    sheets.place->enter("reading.belt", "4.5");
    CHECK(sheets.floor.commits().empty()); // nothing was turned
    sheets.place->enter("reading.belt", "3.6");
    REQUIRE(sheets.floor.commits().size() == 1);
    const auto action = std::get<records::ActionTaken>(sheets.floor.commits()[0].records.at(0));
    CHECK(action.action == records::FloorAction::beltSlower);
    CHECK(action.beltMetresPerMinute == 3.6);
    CHECK(says(sheets.sheet(), "50\u00A0s")); // 3 m at 3.6 m/min
    sheets.floor.commitDone();
    sheets.place->enter("reading.set-point", "370");
    const auto hotter = std::get<records::ActionTaken>(sheets.floor.commits().at(1).records.at(0));
    CHECK(hotter.action == records::FloorAction::hotter);
    CHECK(hotter.setPoint->value == 370);
    for (const auto* typed : {"0", "-3", "fast", "900"}) {
        sheets.place->enter("reading.belt", typed);
        CHECK_FALSE(faultOf(sheets.sheet(), "reading.belt").isEmpty());
    }
    CHECK(sheets.floor.commits().size() == 2);
}

TEST_CASE("a belt turned without a word of its speed has no dwell any more", "[presenting][floor]") {
    Sheets sheets;
    sheets.describeDryer();
    sheets.floor.send(shop::ActionPressed{shop::ActionCard::beltSlower});
    CHECK_FALSE(headerOf(Place::dryer, sheets.floor.state(), sheets.facts(), {}).title.how.contains("dwell"));
    sheets.place->act("reading.dryer");
    CHECK(says(sheets.sheet(), "not known"));
}

TEST_CASE("all runs of a shared belt stand at the dryer and one can be taken off", "[presenting][floor]") {
    Sheets sheets;
    sheets.describeDryer();
    sheets.announce();
    sheets.floor.send(shop::ActionPressed{shop::ActionCard::alsoOnBelt});
    sheets.place->act("reading.dryer");
    CHECK(says(sheets.sheet(), "Scan the other run"));
    sheets.floor.announce(shop::testing::runOf("low-cure", "100% cotton", 20419));
    REQUIRE(sheets.floor.state().belt.size() == 2);
    CHECK(says(sheets.sheet(), "Run 20418"));
    CHECK(says(sheets.sheet(), "Run 20419"));
    CHECK(says(sheets.sheet(), "320")); // decisions 1: the intersection; standard asks for 320 °F
    const auto dryer = dryerPageOf(sheets.floor.state(), sheets.facts(), {});
    CHECK(dryer.belt.heading.contains("20418"));
    CHECK(dryer.belt.heading.contains("20419"));
    sheets.place->act("reading.off." + sheets.floor.state().belt.back()->onFile.plan.run);
    CHECK(sheets.floor.state().belt.size() == 1);
}

TEST_CASE("after a power loss the hand-over counts the tunnel and the dryer is not ready", "[presenting][floor]") {
    Sheets sheets;
    records::DryerNow dryer;
    dryer.described.dryer = "d-1";
    dryer.described.heatedLengthMetres = 3.0;
    dryer.described.piecesPerMetre = 2.5;
    dryer.beltMetresPerMinute = 4.5;
    sheets.floor.send(shop::FloorLoaded{dryer, {}, {}, true});
    sheets.place->showHandOver();
    const auto page = sheets.sheet();
    CHECK(says(page, "not ready"));
    CHECK(says(page, "8 pieces")); // decisions 5: 3 m × 2.5 a metre, rounded up
    REQUIRE_FALSE(page.actions.isEmpty());
    CHECK(page.actions.front().id == "floor.taken-over");
    const auto due = dryerPageOf(sheets.floor.state(), sheets.facts(), {}).due;
    REQUIRE(due.size() >= 2);
    CHECK(due[0].title.contains("not ready"));
}

TEST_CASE("a strip's half-dark step, its past and how it lay are chosen on its page", "[presenting][floor]") {
    Sheets sheets;
    sheets.announce();
    sheets.place->act("reading.strip." + shop::testing::stripOf280To330F().name);
    REQUIRE(sheets.floor.stage() == shop::Stage::strip);
    sheets.floor.send(shop::StripStepTouched{1});
    sheets.floor.send(shop::StripUnsureTouched{});
    sheets.floor.send(shop::PlacementChosen{analytics::Placement::inOrUnderCloth});
    const auto page = stripPageOf(sheets.floor.state(), {});
    REQUIRE(page.marks.size() == 2);
    CHECK(page.marks[0].chosen);
    CHECK_FALSE(page.marks[1].chosen);
    REQUIRE(page.placements.size() == 3);
    CHECK(page.placements[2].chosen);
}
