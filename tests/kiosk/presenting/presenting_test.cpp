// From typed states to finished page states: what may stand where, and what never may.
#include "kiosk/screens/presenting/header_presenter.hpp"
#include "kiosk/screens/presenting/print_presenter.hpp"
#include "kiosk/screens/presenting/run_actions.hpp"
#include "kiosk/screens/presenting/run_band.hpp"
#include "kiosk/screens/presenting/run_presenter.hpp"
#include "kiosk/screens/presenting/scale_presenter.hpp"

#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink_family.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using analytics::Temperature;
using analytics::TemperatureDifference;

namespace {

analytics::InkFamily family(const std::string& name) {
    for (auto& one : analytics::starterFamilies()) {
        if (one.name == name) {
            return one;
        }
    }
    FAIL("no family " << name);
    return {};
}

analytics::Fabric fabric(const std::string& name) {
    for (auto& one : analytics::starterFabrics()) {
        if (one.name == name) {
            return one;
        }
    }
    FAIL("no fabric " << name);
    return {};
}

analytics::RunPlan plan(const std::vector<std::pair<std::string, std::string>>& layers, const std::string& cloth) {
    analytics::RunPlan out;
    for (const auto& [colour, ink] : layers) {
        out.layers.push_back({colour, analytics::pureInk(family(ink)), std::nullopt});
    }
    out.fabric = fabric(cloth);
    return out;
}

shop::ProvingState stateOf(const analytics::RunPlan& layers) {
    auto run = std::make_shared<shop::AnnouncedRun>();
    run->onFile.plan.number = 20413;
    run->onFile.plan.title = "red jerseys";
    run->onFile.plan.pieces = 144;
    run->onFile.plan.fabric = layers.fabric.name;
    run->onFile.layers = layers;
    run->onFile.usable = true;
    shop::ProvingState state;
    state.run = run;
    const auto window = analytics::windowOf(layers);
    REQUIRE(window);
    state.window = *window;
    return state;
}

analytics::Verdict verdict(analytics::Word word, double marginFahrenheit) {
    analytics::Verdict out;
    out.word = word;
    const auto margin = TemperatureDifference::fromFahrenheit(marginFahrenheit);
    out.margin = analytics::MarginRange{margin, margin};
    out.guard = TemperatureDifference::fromFahrenheit(5);
    return out;
}

} // namespace

TEST_CASE("a verdict that is not kept never stands in the band", "[presenting]") {
    auto state = stateOf(plan({{"white", "low-cure"}}, "100% polyester"));
    shop::PendingKeep pending;
    pending.readings.emplace_back();
    pending.key = 1;
    state.pending.push_back(pending);
    const auto band = bandOf(state, {});
    CHECK(band.mark == MarkKind::Blank);
    CHECK(band.word.isEmpty());
    CHECK(band.markNote.isEmpty());
    state.pending.front().overdue = true; // look.md: after 300 ms
    CHECK(bandOf(state, {}).markNote == QStringLiteral("Writing…"));
}

TEST_CASE("what could not be written is not shown as proven and offers to write it again", "[presenting]") {
    auto state = stateOf(plan({{"white", "low-cure"}}, "100% polyester"));
    shop::PendingKeep pending;
    pending.readings.emplace_back();
    pending.status = shop::KeepStatus::failed;
    pending.failure = ledger::Failure{ledger::FailureCode::diskFull, "no room"};
    state.pending.push_back(pending);
    const auto page = runPageOf(state, {}, {}, {});
    CHECK(page.band.mark == MarkKind::NotProven);
    REQUIRE_FALSE(page.actions.isEmpty());
    CHECK(page.actions.front().id == QStringLiteral("retry"));
    REQUIRE(page.advice.size() == 3);
    CHECK(page.advice[1].sentence.contains(QStringLiteral("disk is full")));
}

TEST_CASE("the closed trap shows its culprits on the print and on the scale, and no dots", "[presenting]") {
    // common practice: the classic trap
    const auto trap = plan({{"white", "low-cure"}, {"black", "standard"}, {"yellow", "low-cure"}}, "100% polyester");
    auto state = stateOf(trap);
    const auto page = runPageOf(state, {}, {}, {});
    CHECK(page.band.mark == MarkKind::Closed);
    CHECK(page.band.margin.startsWith(QStringLiteral("20"))); // 320 − 300 °F, contracts Starters
    REQUIRE(page.print.layers.size() == 3);
    CHECK(page.print.layers[0].colour == QStringLiteral("Yellow")); // top film first
    CHECK(page.print.layers[1].culprit);
    CHECK_FALSE(page.print.layers[0].culprit);
    CHECK(page.print.cloth.culprit);
    CHECK(page.waysOutMore.contains(QStringLiteral("bleed watch"))); // decisions 1: beside them, as advice
    CHECK(page.waysOutMore.contains(QStringLiteral("another cloth")));
    CHECK(page.scale.closed);
    REQUIRE(page.scale.bleedCeiling);
    CHECK(page.scale.bleedCeiling->guardShown == 0.0);
    for (const auto& action : page.actions) {
        CHECK(action.id != QStringLiteral("strip"));
    }
}

TEST_CASE("the scale shows the lower ceiling alone, in the shown unit", "[presenting]") {
    const auto layers = plan({{"white", "low-cure"}}, "100% polyester");
    const auto window = analytics::windowOf(layers);
    wording::Speech speech;
    const auto fahrenheit = scaleOf(layers, *window, {}, speech);
    REQUIRE(fahrenheit.bleedCeiling);
    CHECK_FALSE(fahrenheit.hardCeiling);
    CHECK(fahrenheit.bleedCeiling->atShown == Approx(300.0)); // contracts, Starters
    REQUIRE(fahrenheit.cures.size() == 1);
    CHECK(fahrenheit.cures.front().atShown == Approx(285.0));
    speech.figures.unit = analytics::TemperatureUnit::celsius;
    const auto celsius = scaleOf(layers, *window, {}, speech);
    CHECK(celsius.celsius);
    CHECK(celsius.cures.front().atShown == Approx(140.5555556)); // (285 − 32) × 5/9
}

TEST_CASE("the picture of a ride begins five seconds before the heat", "[presenting]") {
    const auto layers = plan({{"white", "low-cure"}}, "100% polyester");
    const auto window = analytics::windowOf(layers);
    std::vector<shop::DrawnSample> drawn;
    for (int i = 0; i < 90; ++i) {
        const double celsius = i < 60 ? 25.0 : 25.0 + 10.0 * (i - 59);
        drawn.push_back({analytics::Duration{static_cast<double>(i)}, Temperature::fromCelsius(celsius), false});
    }
    auto scale = scaleOf(layers, *window, {}, {});
    drawRide(scale, drawn, nullptr, *window, TraceEnd::Running, {});
    REQUIRE_FALSE(scale.trace.isEmpty());
    CHECK(scale.trace.front().seconds == 0.0);
    CHECK(scale.trace.size() == 35); // 60 − 5 … 89
    drawRide(scale, {}, nullptr, *window, TraceEnd::Running, {});
    CHECK(scale.trace.isEmpty());
}

TEST_CASE("the band's note says how sure, and overheated says how far over", "[presenting]") {
    auto state = stateOf(plan({{"white", "low-cure"}}, "100% polyester"));
    state.verdict = verdict(analytics::Word::cured, 6);
    REQUIRE(shop::stageOf(state) == shop::Stage::verdict);
    CHECK(bandOf(state, {}).mark == MarkKind::Cured);
    CHECK(bandOf(state, {}).marginNote.contains(QStringLiteral("±5")));
    state.verdict = verdict(analytics::Word::notProven, -0.3);
    CHECK(bandOf(state, {}).margin.startsWith(QStringLiteral("−0.3")));
    state.verdict = verdict(analytics::Word::overheated, 60);
    state.verdict->upperMargin = TemperatureDifference::fromFahrenheit(-12);
    CHECK(bandOf(state, {}).margin.startsWith(QStringLiteral("+12")));
}

TEST_CASE("text of ten thousand signs, control signs and quotes in names stays text", "[presenting]") {
    auto layers = plan({{"white", "low-cure"}}, "100% polyester");
    auto& colour = layers.layers.front().colour;
    colour.assign(10'000, 'x');
    colour.append("\n\"'<b>{value}\x01");
    layers.fabric.name = "a\"b'\t{limit}<img src=x>";
    auto state = stateOf(layers);
    const auto page = runPageOf(state, {}, {}, {});
    CHECK(page.print.layers.front().colour.size() > 9'000);
    CHECK(page.print.cloth.name.contains(QStringLiteral("{limit}")));
}

TEST_CASE("without a run the page says so and offers to scan one", "[presenting]") {
    const auto page = runPageOf({}, {}, {}, {});
    CHECK(page.band.mark == MarkKind::Blank);
    REQUIRE_FALSE(page.actions.isEmpty());
    CHECK(page.actions.front().id == QStringLiteral("scan"));
    CHECK(page.actions.front().primary);
    const auto header = headerOf(Place::dryer, {}, {}, {});
    CHECK(header.crew.what == QStringLiteral("No crew yet"));
    CHECK(header.probe.what == QStringLiteral("No probe"));
}

TEST_CASE("a page never has two primary actions", "[presenting]") {
    for (const auto word : {analytics::Word::cured, analytics::Word::underCured, analytics::Word::overheated,
                            analytics::Word::notProven}) {
        auto state = stateOf(plan({{"white", "low-cure"}}, "100% polyester"));
        state.verdict = verdict(word, 2);
        int primary = 0;
        for (const auto& action : runPageOf(state, {}, {}, {}).actions) {
            primary += action.primary ? 1 : 0;
        }
        CHECK(primary == 1); // look.md principle 6
    }
}

TEST_CASE("the black button turns the knob that the proposal speaks of", "[presenting]") {
    auto state = stateOf(plan({{"black", "standard"}}, "100% cotton"));
    state.verdict = verdict(analytics::Word::underCured, -17);
    shop::KeptReading kept;
    kept.id = "reading";
    kept.run = state.run;
    kept.reading.verdict = state.verdict;
    kept.reading.lot = "lot";
    state.kept.push_back(kept);
    state.shownReadings = {"reading"};
    records::ReadingRow open;
    open.id = "reading";
    state.floor.unanswered.push_back(open);
    REQUIRE(shop::verdictStays(state));
    const auto primary = [&] { return actionsOf(state, {}).front(); };
    CHECK(primary().id == QStringLiteral("floor.slower"));
    for (const auto& [knob, id] : {std::pair{analytics::TurnKnob::setPointUp, "floor.hotter"},
                                   std::pair{analytics::TurnKnob::setPointDown, "floor.cooler"},
                                   std::pair{analytics::TurnKnob::beltFaster, "floor.faster"}}) {
        analytics::TurnProposal proposal;
        proposal.knob = knob;
        state.turn = proposal;
        CHECK(primary().id == QString::fromLatin1(id));
        CHECK(primary().primary);
    }
}
