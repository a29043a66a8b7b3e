#include "kiosk/screens/presenting/run_actions.hpp"

#include "kiosk/screens/presenting/shown.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

namespace {

ActionState action(const char* id, const char* key, const wording::Speech& speech, bool primary = false) {
    ActionState out;
    out.id = QString::fromLatin1(id);
    out.label = toQString(speech.text(std::string{"action."} + key));
    out.primary = primary;
    return out;
}

/// The knob that "Do now" speaks of comes first and is the black one; without a proposal, the likelier.
std::vector<std::string> knobsOf(const shop::ProvingState& state) {
    const bool proposed = state.turn && state.turn->has_value();
    const auto knob = proposed                                             ? (*state.turn)->knob
                      : state.verdict->word == analytics::Word::overheated ? analytics::TurnKnob::beltFaster
                                                                           : analytics::TurnKnob::beltSlower;
    switch (knob) {
    case analytics::TurnKnob::beltSlower:
        return {"slower", "hotter"};
    case analytics::TurnKnob::beltFaster:
        return {"faster", "cooler"};
    case analytics::TurnKnob::setPointUp:
        return {"hotter", "slower"};
    case analytics::TurnKnob::setPointDown:
        break;
    }
    return {"cooler", "faster"};
}

/// What can be said to have been done about a bad verdict.
void addAnswers(QList<ActionState>& actions, const shop::ProvingState& state, const wording::Speech& speech) {
    bool first = true;
    for (const auto& knob : knobsOf(state)) {
        actions.append(action(("floor." + knob).c_str(), ("floor-" + knob).c_str(), speech, first));
        first = false;
    }
    actions.append(action("floor.pulled", "floor-pulled", speech));
    if (const auto* bracket = shop::shownBracket(state); bracket != nullptr && bracket->bin > 0) {
        ActionState label;
        label.id = QStringLiteral("bin.label");
        label.label = toQString(speech.text("readings.pull.label"));
        label.shortLabel = toQString(speech.text("readings.pull.label-short"));
        actions.append(label);
    }
    actions.append(action("floor.problem", "floor-problem", speech));
}

} // namespace

QList<ActionState> actionsOf(const shop::ProvingState& state, const wording::Speech& speech) {
    QList<ActionState> actions;
    const auto stage = shop::stageOf(state);
    if (stage == shop::Stage::notKept) {
        actions.append(action("retry", "retry", speech, true));
    } else if (stage == shop::Stage::recording) {
        actions.append(action("stop", "stop", speech));
        actions.append(action("strip", "strip", speech));
    } else if (stage == shop::Stage::probeLost) {
        actions.append(action("strip", "read-strip", speech, true));
        actions.append(action("stop", "stop", speech));
    } else if (stage == shop::Stage::verdict && state.unitAsked) {
        actions.append(action("unit.celsius", "unit-celsius", speech));
        actions.append(action("unit.fahrenheit", "unit-fahrenheit", speech));
    } else if (stage == shop::Stage::verdict && state.verdict) {
        const bool cured = state.verdict->word == analytics::Word::cured;
        if (shop::verdictStays(state)) {
            addAnswers(actions, state, speech);
        } else if (cured) {
            actions.append(action("next", "next-run", speech, true));
        } else if (shop::mayRetake(state)) {
            actions.append(action("retake", "retake", speech, true));
        } else {
            actions.append(action("again", "send-again", speech, true));
        }
        if (!shop::verdictStays(state)) {
            actions.append(action("strip", "strip", speech));
            actions.append(action("reading.open", "other-reading", speech));
            if (!cured) {
                actions.append(action("next", "next-run", speech));
            }
        }
    } else if (stage != shop::Stage::writing) {
        actions.append(action("scan", state.run ? "another-run" : "scan-a-run", speech, !state.run));
        const bool closed = state.window && state.window->state == analytics::WindowState::closed;
        if (state.run && !closed) {
            actions.append(action("strip", "strip", speech));
        }
        if (state.run) {
            actions.append(action("reading.open", "other-reading", speech));
        }
    }
    if (stage == shop::Stage::verdict) {
        actions.append(action("why", "why", speech));
    }
    actions.append(action("dryer", "home", speech));
    return actions;
}

} // namespace holdfast::kiosk::screens
