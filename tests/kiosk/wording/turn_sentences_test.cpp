#include "kiosk/wording/turn_sentences.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::analytics;
using namespace holdfast::kiosk;

namespace {

TurnProposal slower() {
    TurnProposal turn;
    turn.knob = TurnKnob::beltSlower;
    turn.beltFactor = 0.87;
    turn.predicted = Temperature::fromFahrenheit(333);
    turn.predictedLow = Temperature::fromFahrenheit(328);
    turn.predictedHigh = Temperature::fromFahrenheit(338);
    turn.rideAgainAfter = Duration{150};
    return turn;
}

bool complete(const std::string& text) {
    return text.find('[') == std::string::npos && text.find('{') == std::string::npos && text.back() == '.';
}

} // namespace

TEST_CASE("an order turns one thing, by a speed if the belt's is known, else by a share", "[wording][turn]") {
    const wording::Speech speech;
    auto turn = slower();
    CHECK(wording::turnOrder(turn, speech).find("slower by 13 %") != std::string::npos); // 1 − 0.87, by hand
    turn.beltMetresPerMinute = 3.92;
    CHECK(wording::turnOrder(turn, speech).find("to 3.9 m/min") != std::string::npos);
    CHECK(wording::turnOrder(turn, speech).find("nothing else") !=
          std::string::npos); // screens.md: one thing at a time
    CHECK(wording::turnOutlook(turn, speech).find("328–338") != std::string::npos);
}

TEST_CASE("every knob, caution, assumption and lack of a proposal is a full sentence", "[wording][turn]") {
    const wording::Speech speech;
    for (const auto knob : {TurnKnob::beltSlower, TurnKnob::beltFaster, TurnKnob::setPointUp, TurnKnob::setPointDown}) {
        auto turn = slower();
        turn.knob = knob;
        turn.setPointChange = TemperatureDifference::fromFahrenheit(12);
        CHECK(complete(wording::turnOrder(turn, speech)));
        turn.setPoint = Temperature::fromFahrenheit(372);
        turn.beltMetresPerMinute = 4.0;
        CHECK(complete(wording::turnOrder(turn, speech)));
    }
    auto turn = slower();
    turn.dwell = DwellDisagreement{Duration{40}, Duration{60}};
    for (int i = 0; i <= static_cast<int>(TurnCaution::dataSheetGoverns); ++i) {
        turn.cautions.push_back(static_cast<TurnCaution>(i));
    }
    for (int i = 0; i <= static_cast<int>(TurnAssumption::loadStaysAsIs); ++i) {
        turn.assumptions.push_back(static_cast<TurnAssumption>(i));
    }
    for (const auto& line : wording::turnCautions(turn, speech)) {
        INFO(line);
        CHECK(complete(line));
    }
    for (int i = 0; i <= static_cast<int>(NoTurn::badInput); ++i) {
        CHECK(complete(wording::sentence(static_cast<NoTurn>(i), speech)));
    }
}
