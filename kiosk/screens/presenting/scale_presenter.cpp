#include "kiosk/screens/presenting/scale_presenter.hpp"

#include "kiosk/screens/presenting/shown.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

using analytics::Temperature;

namespace {

bool isLayerCulprit(const analytics::RunWindow& window, int position) {
    return std::any_of(window.culprits.begin(), window.culprits.end(), [position](const analytics::Culprit& culprit) {
        return culprit.kind == analytics::CulpritKind::layer && culprit.position == position;
    });
}

bool isFabricCulprit(const analytics::RunWindow& window) {
    return std::any_of(window.culprits.begin(), window.culprits.end(), [](const analytics::Culprit& culprit) {
        return culprit.kind == analytics::CulpritKind::fabric;
    });
}

std::string joined(const std::vector<std::string>& names) {
    std::string out;
    for (const auto& name : names) {
        out += (out.empty() ? "" : ", ") + name;
    }
    return out;
}

/// One line for each different cure temperature (within the decision's tolerance).
struct CureGroup final {
    Temperature at = Temperature::fromCelsius(0);
    analytics::TemperatureDifference guard;
    std::vector<std::string> inks;
    std::vector<std::string> colours;
    bool culprit = false;
};

void addOnce(std::vector<std::string>& names, const std::string& name) {
    if (std::find(names.begin(), names.end(), name) == names.end()) {
        names.push_back(name);
    }
}

std::vector<CureGroup> cureGroups(const analytics::RunPlan& plan, const analytics::RunWindow& window,
                                  const wording::Speech& speech) {
    std::vector<CureGroup> groups;
    for (const auto& layer : window.layers) {
        auto group = std::find_if(groups.begin(), groups.end(), [&layer](const CureGroup& candidate) {
            return (candidate.at - layer.cure.limit).magnitude() < analytics::TemperatureDifference::fromCelsius(1e-6);
        });
        if (group == groups.end()) {
            groups.push_back({layer.cure.limit, layer.cure.guard, {}, {}, false});
            group = groups.end() - 1;
        }
        group->guard = std::max(group->guard, layer.cure.guard);
        group->culprit = group->culprit || isLayerCulprit(window, layer.position);
        addOnce(group->inks, plan.layers.at(static_cast<std::size_t>(layer.position) - 1).ink.name);
        addOnce(group->colours, speech.layer(layer.position));
    }
    return groups;
}

QString cureWord(const CureGroup& group, bool closed, const wording::Speech& speech) {
    if (closed && group.culprit) {
        return toQString(speech.text(
            "scale.needs", {{"subject", joined(group.colours)}, {"limit", speech.figures.temperature(group.at)}}));
    }
    if (closed) {
        return toQString(joined(group.colours) + ": " + speech.figures.bare(group.at));
    }
    return toQString(speech.text("scale.cure", {{"subject", joined(group.inks)}}));
}

CeilingLine ceilingLine(const analytics::GuardedLimit& limit, const std::string& word, bool culprit,
                        const wording::Speech& speech) {
    return {shown(limit.limit, speech), shown(limit.guard, speech), toQString(speech.figures.bare(limit.limit)),
            toQString(word), culprit};
}

void addCeilings(HeatScaleState& scale, const analytics::RunPlan& plan, const analytics::RunWindow& window,
                 const wording::Speech& speech) {
    const bool closed = window.state == analytics::WindowState::closed;
    const bool fabricCulprit = isFabricCulprit(window);
    const bool bleedIsLower =
        window.upperBleed && (!window.upperHard || window.upperBleed->limit < window.upperHard->limit);
    // The lower ceiling is the answer; a higher one would only press the window together.
    if (window.upperHard && !bleedIsLower) {
        const bool culprit = closed && fabricCulprit && !window.upperHardLayer;
        const std::string subject = window.upperHardLayer ? speech.layer(window.upperHardLayer) : plan.fabric.name;
        const auto word =
            culprit ? speech.text("scale.cloth-bears", {{"limit", speech.figures.temperature(window.upperHard->limit)}})
                    : speech.text("scale.too-hot-for", {{"subject", subject}});
        scale.hardCeiling = ceilingLine(*window.upperHard, word, culprit, speech);
    }
    if (bleedIsLower) {
        const bool culprit = closed && fabricCulprit;
        const auto word = culprit ? speech.text("scale.cloth-bears",
                                                {{"limit", speech.figures.temperature(window.upperBleed->limit)}})
                                  : speech.text("scale.too-hot-for", {{"subject", plan.fabric.name}});
        scale.bleedCeiling = ceilingLine(*window.upperBleed, word, culprit, speech);
    }
}

void addGelAimRoom(HeatScaleState& scale, const analytics::RunPlan& plan, const analytics::RunWindow& window,
                   const wording::Speech& speech) {
    std::optional<Temperature> gel;
    for (const auto& layer : plan.layers) {
        if (layer.ink.requirement.gel) {
            const auto low = layer.ink.requirement.gel->low;
            gel = gel ? std::min(*gel, low) : low;
        }
    }
    if (gel) {
        scale.gel =
            ScaleNote{shown(*gel, speech), toQString(speech.figures.bare(*gel)), toQString(speech.text("scale.gel"))};
    }
    if (window.aim) {
        scale.aim = ScaleNote{shown(*window.aim, speech), toQString(speech.figures.bare(*window.aim)),
                              toQString(speech.text("scale.aim"))};
    }
    const auto room = speech.figures.unit == analytics::TemperatureUnit::celsius ? Temperature::fromCelsius(20.0)
                                                                                 : Temperature::fromFahrenheit(70.0);
    scale.room = ScaleNote{shown(room, speech), toQString(speech.figures.bare(room)), {}};
}

/// Time at or above `level` along the joined lines, and where the trace first and last lies there.
struct OverSpan final {
    double seconds = 0.0;
    double from = 0.0;
    double to = 0.0;
};

OverSpan spanOver(const std::vector<shop::DrawnSample>& drawn, Temperature level) {
    OverSpan span;
    bool any = false;
    for (std::size_t i = 1; i < drawn.size(); ++i) {
        const auto &a = drawn[i - 1], &b = drawn[i];
        if (b.breakBefore || (a.t < level && b.t < level)) {
            continue;
        }
        double from = a.at.count(), to = b.at.count();
        const double rise = (b.t - a.t).celsius();
        if (a.t < level) {
            from += (to - from) * (level - a.t).celsius() / rise;
        } else if (b.t < level) {
            to = from + (to - from) * (level - a.t).celsius() / rise;
        }
        span.seconds += to - from;
        span.from = any ? span.from : from;
        span.to = to;
        any = true;
    }
    return span;
}

PeakNote peakNote(const std::vector<shop::DrawnSample>& drawn, const analytics::PeakAt& peak, Temperature lower,
                  const wording::Speech& speech) {
    PeakNote note;
    note.seconds = peak.at.count();
    note.atShown = shown(peak.t, speech);
    note.text = toQString(speech.figures.tellingApart(peak.t, lower).temperature(peak.t));
    const auto over = spanOver(drawn, lower);
    if (over.seconds > 0.0) {
        note.secondsOverText = toQString(wording::durationText(analytics::Duration{over.seconds}));
        note.secondsOverFrom = over.from;
        note.secondsOverTo = over.to;
    }
    return note;
}

} // namespace

HeatScaleState scaleOf(const analytics::RunPlan& plan, const analytics::RunWindow& window,
                       const std::string& instrument, const wording::Speech& base) {
    const auto speech = wording::speechFor(base, plan);
    HeatScaleState scale;
    scale.celsius = speech.figures.unit == analytics::TemperatureUnit::celsius;
    scale.closed = window.state == analytics::WindowState::closed;
    for (const auto& group : cureGroups(plan, window, speech)) {
        scale.cures.append(CureLine{shown(group.at, speech), scale.closed ? 0.0 : shown(group.guard, speech),
                                    toQString(speech.figures.bare(group.at)), cureWord(group, scale.closed, speech),
                                    scale.closed && group.culprit});
    }
    addCeilings(scale, plan, window, speech);
    if (scale.closed) { // decisions 1: g = 0 if closed
        (scale.bleedCeiling ? scale.bleedCeiling : scale.hardCeiling)->guardShown = 0.0;
    }
    addGelAimRoom(scale, plan, window, speech);
    if (!instrument.empty() && !scale.closed) {
        scale.windowNote = toQString(speech.text("scale.dots", {{"subject", instrument}}));
    }
    std::string spoken;
    for (const auto& line : wording::windowSentences(plan, window, speech)) {
        spoken += (spoken.empty() ? "" : " ") + line;
    }
    scale.spoken = toQString(spoken);
    return scale;
}

namespace {

/// The pre-roll is kept but not drawn: the picture begins five seconds before the heat.
std::size_t firstDrawn(const std::vector<shop::DrawnSample>& drawn) {
    constexpr auto kWarm = analytics::TemperatureDifference::fromCelsius(5.0);
    constexpr analytics::Duration kBefore{5.0};
    std::size_t warm = 0;
    while (warm < drawn.size() && drawn[warm].t < drawn.front().t + kWarm) {
        ++warm;
    }
    if (warm == drawn.size()) {
        return 0;
    }
    std::size_t first = warm;
    while (first > 0 && drawn[warm].at - drawn[first - 1].at <= kBefore) {
        --first;
    }
    return first;
}

} // namespace

void drawRide(HeatScaleState& scale, const std::vector<shop::DrawnSample>& all, const analytics::Verdict* verdict,
              const analytics::RunWindow& window, TraceEnd end, const wording::Speech& speech) {
    scale.trace.clear();
    scale.peak.reset();
    scale.traceEnd = end;
    if (all.empty()) {
        return;
    }
    std::vector<shop::DrawnSample> drawn{all.begin() + static_cast<std::ptrdiff_t>(firstDrawn(all)), all.end()};
    const auto begin = drawn.front().at;
    scale.trace.reserve(static_cast<qsizetype>(drawn.size()));
    for (auto& sample : drawn) {
        sample.at -= begin;
        scale.trace.append(TracePoint{sample.at.count(), shown(sample.t, speech), sample.breakBefore});
    }
    if (verdict != nullptr) {
        scale.verdict = markOf(verdict->word);
        if (verdict->sustained) {
            auto peak = *verdict->sustained;
            peak.at -= begin;
            scale.peak = peakNote(drawn, peak, window.lower, speech);
        }
    }
}

} // namespace holdfast::kiosk::screens
