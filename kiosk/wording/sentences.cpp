#include "kiosk/wording/sentences.hpp"

#include "analytics/cure/names.hpp"

#include <algorithm>

namespace holdfast::kiosk::wording {

using analytics::Reason;
using analytics::ReasonCode;

namespace {

std::string keyOf(const Reason& reason) {
    std::string key = "reason." + std::string{analytics::nameOf(reason.code)};
    if (reason.code == ReasonCode::stripInterval && !reason.limit) {
        key += ".low-only";
    } else if (reason.code == ReasonCode::stripInterval && !reason.value) {
        key += ".high-only";
    }
    return key;
}

/// Decimals at which value, limit and the two edges of the guard all show on their own side.
Figures figuresFor(const Reason& reason, const Figures& base) {
    Figures figures = base;
    if (reason.value && reason.limit) {
        figures = figures.tellingApart(*reason.value, *reason.limit);
        if (reason.guard) {
            figures = figures.tellingApart(*reason.value, *reason.limit + *reason.guard);
        }
    }
    return figures;
}

void addTemperatures(Arguments& arguments, const Reason& reason, const Figures& figures) {
    if (reason.value) {
        arguments["value"] = figures.temperature(*reason.value);
    }
    if (reason.limit) {
        arguments["limit"] = figures.temperature(*reason.limit);
    }
    if (reason.other) {
        arguments["other"] = figures.temperature(*reason.other);
    }
    if (reason.guard) {
        arguments["guard"] = figures.difference(*reason.guard);
    }
    if (reason.difference) {
        arguments["difference"] = figures.difference(*reason.difference);
    }
    if (reason.limit && reason.guard) {
        arguments["limitPlusGuard"] = figures.temperature(*reason.limit + *reason.guard);
        arguments["limitMinusGuard"] = figures.temperature(*reason.limit - *reason.guard);
    }
}

std::string change(const analytics::LayerChange& item, const Speech& speech) {
    return speech.text("way.change", {{"colour", speech.layer(item.position)}, {"family", item.to}});
}

} // namespace

std::string Speech::layer(std::optional<int> position) const {
    if (!position) {
        return text("layer.any");
    }
    const auto index = static_cast<std::size_t>(*position) - 1;
    if (*position >= 1 && index < layers.size() && !layers[index].empty()) {
        return layers[index];
    }
    return text("layer.nth", {{"count", std::to_string(*position)}});
}

Speech speechFor(Speech speech, const analytics::RunPlan& plan) {
    speech.layers.clear();
    for (const auto& layer : plan.layers) {
        speech.layers.push_back(layer.colour);
    }
    return speech;
}

std::string sentence(const Reason& reason, const Speech& speech) {
    Arguments arguments{{"layer", speech.layer(reason.layer)}, {"subject", reason.subject}};
    addTemperatures(arguments, reason, figuresFor(reason, speech.figures));
    arguments["fall"] = speech.figures.difference(analytics::TraceRules{}.fall);
    if (reason.duration) {
        arguments["duration"] = durationText(*reason.duration);
    }
    if (reason.needed) {
        arguments["needed"] = durationText(*reason.needed);
    }
    if (reason.at) {
        arguments["at"] = durationText(*reason.at);
    }
    if (reason.count) {
        arguments["count"] = std::to_string(*reason.count);
    }
    return speech.text(keyOf(reason), arguments);
}

std::string sentences(const std::vector<analytics::Reason>& reasons, std::size_t most, const Speech& speech) {
    std::vector<std::string> said;
    std::string text;
    for (const auto& reason : reasons) {
        auto one = sentence(reason, speech);
        if (said.size() == most) {
            break;
        }
        if (std::find(said.begin(), said.end(), one) == said.end()) {
            text += (text.empty() ? "" : " ") + one;
            said.push_back(std::move(one));
        }
    }
    return text;
}

std::string sentence(analytics::Remedy remedy, const Speech& speech) {
    const analytics::TraceRules rules;
    return speech.text("do." + std::string{analytics::nameOf(remedy)},
                       {{"coolBelow", speech.figures.temperature(rules.coldStartBelow)}});
}

std::string sentence(analytics::Advice advice, const Speech& speech) {
    return speech.text("advice." + std::string{analytics::nameOf(advice)});
}

std::string sentence(analytics::WindowFault fault, const Speech& speech) {
    return speech.text("window-fault." + std::string{analytics::nameOf(fault)});
}

std::string word(analytics::Word value, const Speech& speech) {
    return speech.text(value == analytics::Word::notProven ? "word.not-proven"
                                                           : "word." + std::string{analytics::nameOf(value)});
}

std::string word(analytics::FlashWord value, const Speech& speech) {
    return speech.text("readings.flash.word." + std::string{analytics::nameOf(value)});
}

namespace {

/// "+4", "−1", "0".
std::string signedNumber(double value, int decimals) {
    const auto text = numberText(value, decimals);
    return value > 0.0 && text != numberText(0.0, decimals) ? "+" + text : text;
}

} // namespace

std::string marginText(const std::optional<analytics::MarginRange>& margin, const Speech& speech) {
    if (!margin || (!margin->low && !margin->high)) {
        return {};
    }
    const auto& figures = speech.figures;
    if (!margin->high) {
        return speech.text("margin.at-least", {{"difference", figures.signedDifference(*margin->low)}});
    }
    if (!margin->low) {
        return speech.text("margin.at-most", {{"difference", figures.signedDifference(*margin->high)}});
    }
    if (*margin->low == *margin->high) {
        return figures.signedDifference(*margin->low);
    }
    return speech.text("margin.between", {{"low", signedNumber(margin->low->in(figures.unit), figures.decimals)},
                                          {"high", figures.signedDifference(*margin->high)}});
}

std::string headMarginText(const analytics::Verdict& verdict, const Speech& speech) {
    const auto zero = analytics::TemperatureDifference{};
    if (verdict.word == analytics::Word::overheated && verdict.upperMargin) {
        return speech.figures.tellingApart(*verdict.upperMargin, zero).signedDifference(-*verdict.upperMargin);
    }
    auto finer = speech;
    if (verdict.margin && verdict.margin->low && verdict.margin->low == verdict.margin->high) {
        finer.figures = finer.figures.tellingApart(*verdict.margin->low, zero);
        finer.figures = finer.figures.tellingApart(*verdict.margin->low, verdict.guard);
    }
    return marginText(verdict.margin, finer);
}

std::string windowText(const analytics::RunWindow& window, const Speech& speech) {
    const auto& figures = speech.figures;
    if (!window.upper) {
        return speech.text("run.window-open-above", {{"lower", figures.temperature(window.lower)}});
    }
    const bool closed = window.state == analytics::WindowState::closed;
    const auto telling = figures.tellingApart(window.lower, *window.upper);
    return speech.text(closed ? "run.window-closed" : "run.window-range",
                       {{"lower", telling.bare(window.lower)},
                        {"upper", closed ? telling.bare(*window.upper) : telling.temperature(*window.upper)}});
}

std::string wayOutTitle(const analytics::WayOut& way, const Speech& speech) {
    std::string title;
    for (const auto& item : way.changes) {
        title += (title.empty() ? "" : ", ") + change(item, speech);
    }
    if (way.instrument) {
        const auto with = speech.text("way.instrument", {{"instrument", *way.instrument}});
        title += title.empty() ? with : ", " + with;
    }
    return speech.text("way.title", {{"title", title}});
}

std::string wayOutDetail(const analytics::WayOut& way, const Speech& speech) {
    const auto& figures = speech.figures;
    std::string detail = way.upper ? speech.text("way.window", {{"lower", figures.bare(way.lower)},
                                                                {"upper", figures.temperature(*way.upper)}})
                                   : speech.text("way.window-open", {{"lower", figures.temperature(way.lower)}});
    return way.bleedProvable ? detail : detail + " · " + speech.text("way.bleed-watch");
}

std::vector<std::string> windowSentences(const analytics::RunPlan& plan, const analytics::RunWindow& window,
                                         const Speech& base) {
    const auto speech = speechFor(base, plan);
    const auto& figures = speech.figures;
    std::vector<std::string> out;
    if (window.state == analytics::WindowState::closed && window.upper) {
        Reason closed{};
        closed.code = ReasonCode::windowClosed;
        closed.value = window.lower;
        closed.limit = window.upper;
        out.push_back(sentence(closed, speech));
    }
    for (const auto& culprit : window.culprits) {
        const bool layer = culprit.kind == analytics::CulpritKind::layer;
        out.push_back(speech.text(layer ? "window.culprit-layer" : "window.culprit-fabric",
                                  {{"subject", layer ? speech.layer(culprit.position) : culprit.name},
                                   {"limit", figures.temperature(culprit.limit)}}));
    }
    if (window.state != analytics::WindowState::closed) {
        out.push_back(speech.text("window.open", {{"window", windowText(window, speech)}}));
    }
    for (const auto& why : window.whyNotProvable) {
        out.push_back(sentence(why, speech));
    }
    for (const auto& name : window.couldProve) {
        out.push_back(speech.text("run.could-prove", {{"subject", name}}));
    }
    if (window.narrow) {
        out.push_back(speech.text("run.narrow"));
    }
    if (window.bleedNotProvable) {
        out.push_back(speech.text("run.bleed-not-provable"));
    }
    for (const int position : window.bleeds) {
        Reason bleeds{};
        bleeds.code = ReasonCode::bleedsAnyway;
        bleeds.layer = position;
        out.push_back(sentence(bleeds, speech));
    }
    return out;
}

} // namespace holdfast::kiosk::wording
