#include "kiosk/screens/presenting/run_presenter.hpp"

#include "kiosk/screens/presenting/print_presenter.hpp"
#include "kiosk/screens/presenting/run_actions.hpp"
#include "kiosk/screens/presenting/run_advice.hpp"
#include "kiosk/screens/presenting/run_band.hpp"
#include "kiosk/screens/presenting/run_lot.hpp"
#include "kiosk/screens/presenting/scale_presenter.hpp"
#include "kiosk/screens/presenting/shown.hpp"

namespace holdfast::kiosk::screens {

namespace {

void drawReading(HeatScaleState& scale, const shop::ProvingState& state, const wording::Speech& speech) {
    const auto stage = shop::stageOf(state);
    const auto* probe = shop::shownProbe(state);
    if ((stage == shop::Stage::recording || stage == shop::Stage::probeLost) && probe != nullptr && probe->recording) {
        const auto end = stage == shop::Stage::probeLost ? TraceEnd::Lost : TraceEnd::Running;
        drawRide(scale, probe->recording->drawn, nullptr, *state.window, end, speech);
        return;
    }
    const auto* reading = stage == shop::Stage::verdict ? shop::shownReading(state) : nullptr;
    if (reading == nullptr || !reading->reading.verdict) {
        return;
    }
    if (reading->drawn.empty()) {
        drawShown(scale, reading->reading, speech);
    } else {
        drawRide(scale, reading->drawn, &*reading->reading.verdict, *state.window, TraceEnd::Complete, speech);
    }
}

void addWaysOut(RunPageState& page, const analytics::RunWindow& window, const wording::Speech& speech) {
    constexpr std::size_t kMostShown = 4;
    page.waysOutHeading = toQString(speech.text("section.ways-out"));
    for (std::size_t i = 0; i < window.waysOut.size() && i < kMostShown; ++i) {
        page.waysOut.append(WayOutState{QStringLiteral("way.%1").arg(i),
                                        toQString(wording::wayOutTitle(window.waysOut[i], speech)),
                                        toQString(wording::wayOutDetail(window.waysOut[i], speech))});
    }
    const auto shownWays = static_cast<std::size_t>(page.waysOut.size());
    const auto more = window.waysOut.size() - shownWays + static_cast<std::size_t>(window.waysOutLeftOut);
    std::string beside;
    if (more > 0) {
        beside = speech.text("way.left-out", {{"count", std::to_string(more)}});
    }
    for (const auto advice : window.advice) {
        beside += (beside.empty() ? "" : " ") + wording::sentence(advice, speech);
    }
    page.waysOutMore = toQString(beside);
}

} // namespace

RunPageState runPageOf(const shop::ProvingState& state, const FloorFacts&, const RunView& view,
                       const wording::Speech& base) {
    RunPageState page;
    const auto speech = state.run ? wording::speechFor(base, state.run->onFile.layers) : base;
    const auto stage = shop::stageOf(state);
    page.band = bandOf(state, speech);
    if (state.run && state.window) {
        const auto& plan = state.run->onFile.layers;
        const auto* verdict = stage == shop::Stage::verdict && state.verdict ? &*state.verdict : nullptr;
        page.print = printOf(plan, *state.window, verdict, speech);
        page.scale = scaleOf(plan, *state.window, state.windowInstrument, speech);
        drawReading(page.scale, state, speech);
        const bool closed = state.window->state == analytics::WindowState::closed;
        if (closed && stage != shop::Stage::verdict && stage != shop::Stage::recording) {
            addWaysOut(page, *state.window, speech);
        }
    }
    page.advice = adviceOf(state, view, speech);
    page.lot = lotOf(state, speech);
    page.caution = toQString(speech.text("caution.short"));
    page.actions = actionsOf(state, speech);
    return page;
}

} // namespace holdfast::kiosk::screens
