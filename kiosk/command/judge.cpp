#include "kiosk/command/judge.hpp"

#include "analytics/cure/verdict.hpp"
#include "kiosk/command/judge_input.hpp"
#include "kiosk/command/judge_trace.hpp"
#include "kiosk/command/typed_values.hpp"
#include "kiosk/records/verdict_json.hpp"
#include "kiosk/wording/sentences.hpp"

#include <algorithm>
#include <ostream>

namespace holdfast::kiosk::command {

using analytics::Verdict;
using analytics::Word;

namespace {

constexpr int kCured = 0;
constexpr int kJudgedNothing = 2;
constexpr int kNotCured = 3;

using Verdicts = tl::expected<std::vector<Verdict>, CommandFault>;

bool sameTemperature(analytics::Temperature a, analytics::Temperature b) {
    return (a - b).magnitude() < analytics::TemperatureDifference::fromCelsius(0.01);
}

/// Of a named strip the step may not be there.
std::optional<std::size_t> stepIndex(const analytics::StripSteps& strip,
                                     const std::optional<analytics::Temperature>& step) {
    for (std::size_t i = 0; step && i < strip.steps.size(); ++i) {
        if (sameTemperature(strip.steps[i], *step)) {
            return i;
        }
    }
    return std::nullopt;
}

Verdicts judgeStripOption(const JudgeOptions& options, const JudgeInput& input) {
    const auto spec = stripFrom(*options.strip);
    if (!spec) {
        return tl::unexpected(CommandFault{"strip-unreadable", {{"text", *options.strip}}});
    }
    const auto& steps = *input.instrument->instrument().strip;
    analytics::StripReading reading;
    reading.lastDark = stepIndex(steps, spec->lastDark);
    reading.firstLight = stepIndex(steps, spec->firstLight);
    if ((spec->lastDark && !reading.lastDark) || (spec->firstLight && !reading.firstLight)) {
        Verdict refused;
        refused.word = Word::refused;
        analytics::Reason unknown;
        unknown.code = analytics::ReasonCode::stripUnknownStep;
        unknown.value = spec->lastDark && !reading.lastDark ? spec->lastDark : spec->firstLight;
        refused.reasons.push_back(unknown);
        return std::vector<Verdict>{refused};
    }
    return std::vector<Verdict>{analytics::judgeStrip(input.plan, reading, *input.instrument)};
}

Verdicts judgeSpotOption(const JudgeOptions& options, const JudgeInput& input) {
    const auto held = temperatureFrom(*options.spot);
    if (!held) {
        return tl::unexpected(CommandFault{"spot-unreadable", {{"text", *options.spot}}});
    }
    // The command line has no second figure for the value after reset: it is taken as reset at room temperature.
    const analytics::SpotReading reading{*held, analytics::Temperature::fromCelsius(20.0)};
    return std::vector<Verdict>{analytics::judgeSpot(input.plan, reading, *input.instrument)};
}

Verdicts judgeSurfaceOption(const JudgeOptions& options, const JudgeInput& input) {
    std::string text = *options.surface;
    analytics::SurfaceReading reading;
    constexpr std::string_view kTunnel = ":tunnel";
    if (text.size() > kTunnel.size() && text.ends_with(kTunnel)) {
        reading.place = analytics::ShotPlace::inTunnelHottest;
        text.resize(text.size() - kTunnel.size());
    }
    const auto surface = temperatureFrom(text);
    if (!surface) {
        return tl::unexpected(CommandFault{"surface-unreadable", {{"text", *options.surface}}});
    }
    reading.surface = *surface;
    return std::vector<Verdict>{analytics::judgeSurface(input.plan, reading, *input.instrument)};
}

Verdicts judgeTraceOption(const JudgeOptions& options, const JudgeInput& input) {
    auto trace = rawTraceFrom(*options.trace, *input.instrument);
    if (!trace) {
        return tl::unexpected(trace.error());
    }
    return analytics::judgeRecording(input.plan, *trace, *input.instrument);
}

Verdicts verdictsFor(const JudgeOptions& options, const JudgeInput& input) {
    if (options.strip) {
        return judgeStripOption(options, input);
    }
    if (options.spot) {
        return judgeSpotOption(options, input);
    }
    if (options.surface) {
        return judgeSurfaceOption(options, input);
    }
    return options.trace ? judgeTraceOption(options, input) : Verdicts{};
}

std::string assumption(const JudgeInput& input) {
    if (!input.instrument) {
        return "command.assumed-none";
    }
    switch (input.instrument->instrument().kind) {
    case analytics::InstrumentKind::probe:
        return "command.assumed-probe";
    case analytics::InstrumentKind::spot:
        return "command.assumed-spot";
    case analytics::InstrumentKind::strip:
        return "command.assumed-strip";
    case analytics::InstrumentKind::gun:
        break;
    }
    return "command.assumed-gun";
}

void printVerdict(const Verdict& verdict, const wording::Speech& speech, std::ostream& out) {
    const auto margin = wording::marginText(verdict.margin, speech);
    out << wording::word(verdict.word, speech) << (margin.empty() ? "" : "  " + margin) << '\n';
    for (const auto& reason : verdict.reasons) {
        out << wording::sentence(reason, speech) << '\n';
    }
    for (const auto& remedy : verdict.remedies) {
        out << wording::sentence(remedy, speech) << '\n';
    }
    for (const auto& layer : verdict.layers) {
        const auto layerMargin = wording::marginText(layer.margin, speech);
        out << speech.text("command.layer",
                           {{"count", std::to_string(layer.position)},
                            {"layer", speech.layer(layer.position)},
                            {"word", wording::word(layer.word, speech)},
                            {"margin", layerMargin.empty() ? std::string{}
                                                           : speech.text("command.margin", {{"margin", layerMargin}})}})
            << '\n';
    }
}

void printWindow(const JudgeInput& input, const analytics::RunWindow& window, const wording::Speech& speech,
                 std::ostream& out) {
    for (const auto& sentence : wording::windowSentences(input.plan, window, speech)) {
        out << sentence << '\n';
    }
    for (std::size_t i = 0; i < window.waysOut.size(); ++i) {
        out << (i == 0 ? speech.text("section.ways-out") + "\n" : "")
            << speech.text("command.way", {{"count", std::to_string(i + 1)},
                                           {"title", wording::wayOutTitle(window.waysOut[i], speech)},
                                           {"detail", wording::wayOutDetail(window.waysOut[i], speech)}})
            << '\n';
    }
    if (window.waysOutLeftOut > 0) {
        out << speech.text("way.left-out", {{"count", std::to_string(window.waysOutLeftOut)}}) << '\n';
    }
}

/// Without a reading: every key of a verdict, what only a reading tells being null; the reasons are those for which
/// this instrument cannot prove the window.
records::Json windowAlone(const JudgeInput& input, const analytics::RunWindow& window, const records::TextOf& textOf) {
    Verdict none;
    none.reasons = window.whyNotProvable;
    for (std::size_t i = 0; i < window.layers.size(); ++i) {
        const auto& asked = window.layers[i];
        const auto& name = input.plan.layers[i].ink.requirement.name;
        none.layers.push_back({asked.position, asked.colour, name, Word::notProven, std::nullopt, asked.cure});
        if (asked.position == window.lowerLayer) {
            none.guard = asked.cure.guard;
        }
    }
    auto json = records::verdictJson(none, &window, textOf);
    json["verdict"] = nullptr;
    for (auto& layer : json["layers"]) {
        layer["verdict"] = nullptr;
    }
    return json;
}

records::Json jsonOf(const std::vector<Verdict>& verdicts, const analytics::RunWindow& window, const JudgeInput& input,
                     const wording::Speech& speech) {
    const auto textOf = [&speech](const analytics::Reason& reason) { return wording::sentence(reason, speech); };
    records::Json json;
    if (verdicts.empty()) {
        json = windowAlone(input, window, textOf);
    } else {
        const auto whole = verdicts.size() == 1 ? verdicts.front() : analytics::joinReadings(verdicts);
        json = records::verdictJson(whole, &window, textOf);
    }
    if (verdicts.size() > 1) {
        json["passes"] = records::Json::array();
        for (const auto& verdict : verdicts) {
            json["passes"].push_back(records::verdictJson(verdict, nullptr, textOf));
        }
    }
    if (input.assumed || !input.instrument) {
        json["assumed"] = speech.text(assumption(input));
    }
    return json;
}

int exitStatus(const std::vector<Verdict>& verdicts, const analytics::RunWindow& window) {
    if (verdicts.empty()) {
        return window.state == analytics::WindowState::open ? kCured : kNotCured;
    }
    const bool cured = std::all_of(verdicts.begin(), verdicts.end(),
                                   [](const Verdict& verdict) { return verdict.word == Word::cured; });
    return cured ? kCured : kNotCured;
}

} // namespace

int runJudge(const JudgeOptions& options, std::ostream& out, std::ostream& err) {
    const auto& language = wording::Language::english();
    const auto input = judgeInputFrom(options);
    if (!input) {
        err << input.error().sentence(language) << '\n';
        return kJudgedNothing;
    }
    wording::Speech speech;
    speech.figures.unit =
        options.fahrenheit ? analytics::TemperatureUnit::fahrenheit : analytics::TemperatureUnit::celsius;
    speech = wording::speechFor(speech, input->plan);

    const analytics::Calibration* instrument = input->instrument ? &*input->instrument : nullptr;
    analytics::Choices choices{input->stock.families, {}};
    for (const auto& known : input->stock.instruments) {
        choices.instruments.emplace_back(known, input->today);
    }
    const auto window = analytics::windowWithWaysOut(input->plan, instrument, choices);
    if (!window) {
        std::string list;
        for (const auto fault : window.error()) {
            list += (list.empty() ? "" : " ") + wording::sentence(fault, speech);
        }
        err << CommandFault{"plan-faulty", {{"list", list}}}.sentence(language) << '\n';
        return kJudgedNothing;
    }
    const auto verdicts = verdictsFor(options, *input);
    if (!verdicts) {
        err << verdicts.error().sentence(language) << '\n';
        return kJudgedNothing;
    }
    if (options.json) {
        out << jsonOf(*verdicts, *window, *input, speech).dump(2) << '\n';
    } else {
        for (const auto& verdict : *verdicts) {
            printVerdict(verdict, speech, out);
        }
        printWindow(*input, *window, speech, out);
        if (input->assumed || !input->instrument) {
            out << speech.text(assumption(*input)) << '\n';
        }
    }
    return exitStatus(*verdicts, *window);
}

} // namespace holdfast::kiosk::command
