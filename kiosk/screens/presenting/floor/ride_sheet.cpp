#include "kiosk/screens/presenting/floor/floor_sheets.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"

namespace holdfast::kiosk::screens {
namespace {

using records::ReadingReason;

std::string reasonKey(ReadingReason reason) {
    switch (reason) {
    case ReadingReason::drawn:
        return "drawn";
    case ReadingReason::afterChange:
        return "after-change";
    case ReadingReason::setUp:
        return "set-up";
    case ReadingReason::retake:
        return "retake";
    case ReadingReason::worry:
        return "worry";
    case ReadingReason::map:
        return "map";
    case ReadingReason::study:
        break;
    }
    return "study";
}

SheetBlock reasonChoices(ReadingReason now, const wording::Speech& speech) {
    std::vector<Choice> choices;
    for (const auto reason :
         {ReadingReason::drawn, ReadingReason::worry, ReadingReason::map, ReadingReason::study, ReadingReason::setUp}) {
        choices.push_back({"reading.reason." + reasonKey(reason), speech.text("readings.reason." + reasonKey(reason))});
    }
    return choicesBlock(speech.text("readings.choose-reason"), choices, "reading.reason." + reasonKey(now));
}

} // namespace

void showRideSheet(SheetPageState& page, const shop::ProvingState& state, const wording::Speech& speech) {
    page.title = toQString(speech.text("readings.ride.title"));
    const auto* probe = shop::shownProbe(state);
    if (probe == nullptr || !probe->known) {
        page.blocks.append(textBlock(SheetKinds::Lead, speech.text("readings.ride.no-probe")));
        page.blocks.append(textBlock(SheetKinds::Sentence, speech.text("readings.ride.no-probe-do")));
    } else {
        page.blocks.append(placementChoices(placementOf(*probe->known, probe->placement), speech));
        page.blocks.append(positionChoices(probe->position, speech));
    }
    page.blocks.append(reasonChoices(state.retakePlanned ? ReadingReason::retake : state.nextReason, speech));
    if (state.retakePlanned || state.nextReason == ReadingReason::afterChange) {
        page.blocks.append(
            textBlock(SheetKinds::Sentence,
                      speech.text(state.retakePlanned ? "readings.ride.is-retake" : "readings.ride.is-after-change")));
    } else if (state.floor.setUp) {
        page.blocks.append(textBlock(SheetKinds::Sentence, speech.text("readings.dryer.set-up")));
    }
    page.blocks.append(textBlock(SheetKinds::Note, speech.text("caution.short")));
    page.actions.append(pressOf("run", speech.text("readings.to-run"), true));
}

} // namespace holdfast::kiosk::screens
