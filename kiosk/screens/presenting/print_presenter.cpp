#include "kiosk/screens/presenting/print_presenter.hpp"

#include "kiosk/screens/presenting/shown.hpp"

namespace holdfast::kiosk::screens {

namespace {

QString layerDetail(const analytics::Layer& layer, const wording::Speech& speech) {
    const auto& need = layer.ink.requirement;
    wording::Arguments arguments{{"family", layer.ink.name}, {"cure", speech.figures.temperature(need.cure)}};
    if (need.hold.count() > 0.0) {
        arguments["hold"] = wording::durationText(need.hold);
        return toQString(speech.text("run.layer-detail-hold", arguments));
    }
    return toQString(speech.text("run.layer-detail", arguments));
}

MarkKind layerMark(int position, const analytics::Verdict* verdict) {
    if (verdict == nullptr) {
        return MarkKind::Blank;
    }
    // When only the cloth was too hot every layer still wears the buckled mark.
    if (verdict->word == analytics::Word::overheated) {
        return MarkKind::Overheated;
    }
    for (const auto& layer : verdict->layers) {
        if (layer.position == position) {
            return markOf(layer.word);
        }
    }
    return markOf(verdict->word);
}

bool isCulprit(const analytics::RunWindow& window, analytics::CulpritKind kind, std::optional<int> position) {
    for (const auto& culprit : window.culprits) {
        if (culprit.kind == kind && (kind == analytics::CulpritKind::fabric || culprit.position == position)) {
            return true;
        }
    }
    return false;
}

QString clothDetail(const analytics::RunWindow& window, const analytics::Fabric& fabric,
                    const wording::Speech& speech) {
    std::optional<analytics::Temperature> bears = fabric.hardCeiling;
    if (window.upperBleed && (!bears || window.upperBleed->limit < *bears)) {
        bears = window.upperBleed->limit;
    }
    return bears ? toQString(speech.text("run.bears", {{"limit", speech.figures.temperature(*bears)}}))
                 : toQString(speech.text("run.bears-anything"));
}

} // namespace

PrintState printOf(const analytics::RunPlan& plan, const analytics::RunWindow& window,
                   const analytics::Verdict* verdict, const wording::Speech& base) {
    const auto speech = wording::speechFor(base, plan);
    const bool closed = window.state == analytics::WindowState::closed;
    PrintState print;
    print.heading = toQString(speech.text(closed ? "run.print-as-it-would-lie" : "run.print-as-it-lies"));
    for (auto position = static_cast<int>(plan.layers.size()); position >= 1; --position) {
        const auto& layer = plan.layers[static_cast<std::size_t>(position) - 1];
        const bool culprit = closed && isCulprit(window, analytics::CulpritKind::layer, position);
        print.layers.append(LayerState{withLargeFirst(speech.layer(position)), layerDetail(layer, speech),
                                       culprit ? MarkKind::Closed : layerMark(position, verdict), culprit});
    }
    print.cloth = ClothState{withLargeFirst(plan.fabric.name), clothDetail(window, plan.fabric, speech),
                             closed && isCulprit(window, analytics::CulpritKind::fabric, std::nullopt)};
    const bool held = !closed && window.hold.count() > 0.0;
    print.windowHeading =
        toQString(held ? speech.text("run.window-hold", {{"duration", wording::durationText(window.hold)}})
                       : speech.text(closed ? "run.no-window" : "run.window"));
    print.windowText = toQString(wording::windowText(window, speech));
    return print;
}

} // namespace holdfast::kiosk::screens
