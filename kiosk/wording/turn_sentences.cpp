#include "kiosk/wording/turn_sentences.hpp"

#include "analytics/cure/ride/ride_names.hpp"

#include <cmath>

namespace holdfast::kiosk::wording {
namespace {

std::string key(const char* group, std::string_view name) {
    return std::string{"readings.turn."} + group + "." + std::string{name};
}

bool turnsBelt(analytics::TurnKnob knob) {
    return knob == analytics::TurnKnob::beltSlower || knob == analytics::TurnKnob::beltFaster;
}

std::string order(const analytics::TurnProposal& turn, const Speech& speech) {
    const std::string name{analytics::nameOf(turn.knob)};
    if (turnsBelt(turn.knob)) {
        const auto percent = numberText(std::abs(1.0 - turn.beltFactor) * 100.0, 0);
        return turn.beltMetresPerMinute
                   ? speech.text(key("to", name), {{"speed", numberText(*turn.beltMetresPerMinute, 1)}})
                   : speech.text(key("by", name), {{"percent", percent}});
    }
    return turn.setPoint ? speech.text(key("to", name), {{"setPoint", speech.figures.temperature(*turn.setPoint)}})
                         : speech.text(key("by", name), {{"change", speech.figures.difference(turn.setPointChange)}});
}

} // namespace

std::string turnOrder(const analytics::TurnProposal& turn, const Speech& speech) {
    return order(turn, speech) + " " +
           speech.text("readings.turn.ride-after", {{"after", waitText(turn.rideAgainAfter)}});
}

std::string turnOutlook(const analytics::TurnProposal& turn, const Speech& speech) {
    const auto peak = speech.figures.temperature(turn.predicted);
    const auto low = speech.figures.bare(turn.predictedLow);
    if (low == speech.figures.bare(turn.predictedHigh)) {
        return speech.text("readings.turn.outlook-sure", {{"peak", peak}});
    }
    return speech.text("readings.turn.outlook",
                       {{"peak", peak}, {"low", low}, {"high", speech.figures.temperature(turn.predictedHigh)}});
}

std::vector<std::string> turnCautions(const analytics::TurnProposal& turn, const Speech& speech) {
    std::vector<std::string> lines;
    for (const auto caution : turn.cautions) {
        Arguments times;
        if (turn.dwell) {
            times = {{"belt", durationText(turn.dwell->fromBelt)}, {"trace", durationText(turn.dwell->fromTrace)}};
        }
        lines.push_back(speech.text(key("caution", analytics::nameOf(caution)), times));
    }
    for (const auto assumption : turn.assumptions) {
        lines.push_back(speech.text(key("assumes", analytics::nameOf(assumption))));
    }
    return lines;
}

std::string sentence(analytics::NoTurn why, const Speech& speech) {
    return speech.text(key("none", analytics::nameOf(why)));
}

} // namespace holdfast::kiosk::wording
