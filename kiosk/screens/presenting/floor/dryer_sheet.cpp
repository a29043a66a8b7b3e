#include "kiosk/screens/presenting/due_texts.hpp"
#include "kiosk/screens/presenting/floor/floor_sheets.hpp"
#include "kiosk/screens/presenting/header_presenter.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/shop/typed/typed.hpp"

namespace holdfast::kiosk::screens {
namespace {

/// What keeps the dryer from being as it should: first, and large.
void addStanding(SheetPageState& page, const shop::ProvingState& state, const wording::Speech& speech) {
    const auto& floor = state.floor;
    const auto lead = [&](const char* key, const char* what) {
        page.blocks.append(textBlock(SheetKinds::Lead, speech.text(key)));
        page.blocks.append(textBlock(SheetKinds::Sentence, speech.text(what)));
    };
    if (floor.notReady) {
        lead("readings.dryer.not-ready", "readings.dryer.not-ready-do");
    }
    if (floor.dryer && floor.dryer->stopped) {
        lead("readings.dryer.stands", "readings.dryer.stands-do");
    }
    if (floor.setUp) {
        lead("readings.dryer.in-set-up", "readings.dryer.set-up");
    }
    if (state.alsoOnBelt) {
        lead("readings.dryer.also", "readings.dryer.also-do");
    }
}

SheetBlock figures(const shop::ProvingState& state, const FloorTyped& typed, const wording::Speech& speech) {
    std::vector<SheetField> list;
    const auto& dryer = state.floor.dryer;
    if (dryer) {
        const auto belt = dryer->beltMetresPerMinute;
        list.push_back(figureField("reading.belt", speech.text("readings.dryer.belt"),
                                   belt ? shop::numberTyped(*belt) : std::string{}, typed, speech));
        list.push_back(figureField(
            "reading.set-point", speech.text("readings.dryer.set-point", {{"unit", speech.figures.unitSign()}}),
            dryer->setPoint ? speech.figures.bare(dryer->setPoint->temperature()) : std::string{}, typed, speech));
    }
    if (state.run && shop::watchOf(state, state.run->onFile.plan.run) != nullptr) {
        auto made = figureField("reading.made", speech.text("readings.count.made"), {}, typed, speech);
        const auto bad = typed.find("reading.made");
        if (bad != typed.end() && shop::numberFrom(bad->second)) {
            made.fault = toQString(speech.text("readings.fault.count"));
        }
        list.push_back(made);
    }
    list.push_back(figureField("reading.pulled", speech.text("readings.dryer.pulled"), {}, typed, speech));
    return fieldsBlock(list);
}

SheetBlock facts(const records::DryerNow& dryer, const wording::Speech& speech) {
    std::vector<SheetRow> rows;
    if (const auto dwell = shop::dwellOf(dryer)) {
        rows.push_back(factRow(speech.text("readings.dryer.dwell-fact"), wording::durationText(*dwell)));
    } else {
        rows.push_back(factRow(speech.text("readings.dryer.dwell-fact"), speech.text("readings.dryer.dwell-unknown")));
    }
    if (dryer.described.heatedLengthMetres) {
        rows.push_back(factRow(speech.text("readings.dryer.heated"),
                               speech.text("readings.dryer.metres",
                                           {{"length", shop::numberTyped(*dryer.described.heatedLengthMetres)}})));
    }
    if (const auto pieces = shop::piecesInTunnel(dryer.described)) {
        rows.push_back(factRow(speech.text("readings.dryer.in-tunnel"), std::to_string(*pieces)));
    }
    return rowsBlock(SheetKinds::Facts, rows);
}

void addBelt(SheetPageState& page, const shop::ProvingState& state, const wording::Speech& speech) {
    if (state.belt.empty()) {
        return;
    }
    page.blocks.append(textBlock(SheetKinds::Heading, speech.text("readings.dryer.on-belt")));
    const bool shared = state.belt.size() > 1;
    std::vector<SheetRow> rows;
    for (const auto& run : state.belt) {
        const auto& plan = run->onFile.plan;
        auto row =
            factRow(speech.text("dryer.run", {{"run", plan.number > 0 ? std::to_string(plan.number) : plan.title}}),
                    shared ? speech.text("readings.dryer.take-off") : std::string{}, whatIsPrinted(plan, speech));
        row.id = shared ? toQString("reading.off." + plan.run) : QString{};
        rows.push_back(row);
        if (const auto* watch = shop::watchOf(state, plan.run)) {
            rows.push_back(factRow(speech.text("readings.count.made"), countText(*watch, speech)));
        }
    }
    page.blocks.append(rowsBlock(SheetKinds::Rows, rows));
    if (state.beltWindow) {
        page.blocks.append(
            textBlock(SheetKinds::Sentence, speech.text("readings.dryer.together",
                                                        {{"window", wording::windowText(*state.beltWindow, speech)}})));
    }
}

SheetBlock presses(const shop::ProvingState& state, const wording::Speech& speech) {
    const bool stands = state.floor.dryer && state.floor.dryer->stopped;
    return pressBlock({pressOf("floor.slower", speech.text("action.floor-slower")),
                       pressOf("floor.faster", speech.text("action.floor-faster")),
                       pressOf("floor.hotter", speech.text("action.floor-hotter")),
                       pressOf("floor.cooler", speech.text("action.floor-cooler")),
                       stands ? pressOf("floor.started", speech.text("action.floor-started"))
                              : pressOf("floor.stopped", speech.text("action.floor-stopped")),
                       pressOf("floor.pulled", speech.text("action.floor-pulled")),
                       pressOf("floor.problem", speech.text("action.floor-problem")),
                       pressOf("floor.wipe", speech.text("action.floor-wipe")),
                       state.floor.setUp ? pressOf("floor.ready", speech.text("readings.dryer.ready"))
                                         : pressOf("floor.set-up", speech.text("readings.dryer.begin-set-up"))});
}

} // namespace

void showDryerSheet(SheetPageState& page, const shop::ProvingState& state, const FloorFacts& facts_,
                    const FloorTyped& typed, const wording::Speech& speech) {
    page.title = toQString(facts_.dryerName);
    addStanding(page, state, speech);
    if (state.floor.dryer) {
        page.blocks.append(facts(*state.floor.dryer, speech));
    }
    addBelt(page, state, speech);
    page.blocks.append(textBlock(SheetKinds::Heading, speech.text("readings.dryer.what-was-done")));
    page.blocks.append(presses(state, speech));
    page.blocks.append(figures(state, typed, speech));
    page.blocks.append(textBlock(SheetKinds::Note, speech.text("readings.dryer.one-thing")));
    page.blocks.append(textBlock(SheetKinds::Note, speech.text("caution.short")));
    page.actions.append(pressOf("floor.also", speech.text("readings.dryer.share"), false));
    page.actions.append(pressOf("dryer", speech.text("action.home"), true));
}

} // namespace holdfast::kiosk::screens
