// What the floor's sheets share.
#include "kiosk/screens/presenting/floor/floor_sheets.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"

namespace holdfast::kiosk::screens {

SheetBlock placementChoices(std::optional<analytics::Placement> chosen, const wording::Speech& speech) {
    const auto id = [](analytics::Placement placement) {
        switch (placement) {
        case analytics::Placement::wetInk:
            return "reading.placement.wet";
        case analytics::Placement::tapedOnFilm:
            return "reading.placement.taped";
        case analytics::Placement::inOrUnderCloth:
            break;
        }
        return "reading.placement.cloth";
    };
    return choicesBlock(speech.text("readings.choose-placement"),
                        {{id(analytics::Placement::wetInk), speech.text("readings.placement.wet")},
                         {id(analytics::Placement::tapedOnFilm), speech.text("readings.placement.taped")},
                         {id(analytics::Placement::inOrUnderCloth), speech.text("readings.placement.cloth")}},
                        chosen ? id(*chosen) : "");
}

SheetBlock positionChoices(records::BeltPosition chosen, const wording::Speech& speech) {
    const auto* now = chosen == records::BeltPosition::left    ? "position.left"
                      : chosen == records::BeltPosition::right ? "position.right"
                                                               : "position.centre";
    return choicesBlock(speech.text("strip.where"),
                        {{"position.left", speech.text("strip.left")},
                         {"position.centre", speech.text("strip.centre")},
                         {"position.right", speech.text("strip.right")}},
                        now);
}

std::optional<analytics::Placement> placementOf(const shop::KnownInstrument& instrument,
                                                const std::optional<analytics::Placement>& chosen) {
    if (chosen) {
        return chosen;
    }
    return instrument.calibration ? std::optional{instrument.calibration->instrument().placement} : std::nullopt;
}

SheetField figureField(const std::string& id, const std::string& label, const std::string& value,
                       const FloorTyped& typed, const wording::Speech& speech) {
    auto field = fieldOf(id, label, value, speech.text("readings.figure-hint"), SheetKinds::Number);
    if (const auto bad = typed.find(id); bad != typed.end()) {
        field.value = toQString(bad->second);
        field.fault = toQString(speech.text("readings.fault.no-figure"));
    }
    return field;
}

std::string beltText(double metresPerMinute, const wording::Speech& speech) {
    return speech.text("readings.dryer.belt-value", {{"speed", wording::numberText(metresPerMinute, 1)}});
}

std::string dwellText(const shop::ProvingState& state, const wording::Speech& speech) {
    const auto dwell = state.floor.dryer ? shop::dwellOf(*state.floor.dryer) : std::nullopt;
    return dwell ? speech.text("readings.dryer.dwell", {{"duration", wording::durationText(*dwell)}}) : std::string{};
}

} // namespace holdfast::kiosk::screens
