#include "kiosk/screens/presenting/floor/floor_sheets.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/scale_presenter.hpp"
#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/notices.hpp"

namespace holdfast::kiosk::screens {
namespace {

bool isSpot(const shop::HandEntry& hand) {
    return hand.instrument.kind == analytics::InstrumentKind::spot;
}

/// The machine's own refusal, said beside the field it is about instead of after the press.
std::string impossibleText(const std::optional<analytics::AuthoredTemperature>& value, shop::RefusalCause cause,
                           const wording::Speech& speech) {
    if (cause != shop::RefusalCause::valueImpossible || !value || shop::isPossible(*value)) {
        return {};
    }
    return wording::noticeOf(shop::Refusal{cause, shop::typedText(*value), {}}, speech).happened;
}

SheetBlock fields(const shop::HandEntry& hand, const FloorTyped& typed, const wording::Speech& speech) {
    const auto unit = speech.figures.unit;
    const wording::Arguments sign{{"unit", speech.figures.unitSign()}};
    const auto add = [&](const char* id, const char* key, const auto& value, std::vector<SheetField>& list) {
        auto field = figureField(id, speech.text(key, sign), shop::authoredTyped(value, unit), typed, speech);
        if (hand.missing && field.fault.isEmpty()) {
            field.fault = toQString(impossibleText(value, *hand.missing, speech));
        }
        list.push_back(field);
    };
    std::vector<SheetField> list;
    if (isSpot(hand)) {
        add("reading.before", "readings.hand.before", hand.beforeUse, list);
    }
    add("reading.value", isSpot(hand) ? "readings.hand.held" : "readings.hand.surface", hand.value, list);
    return fieldsBlock(list);
}

SheetBlock shotChoices(analytics::ShotPlace place, const wording::Speech& speech) {
    return choicesBlock(speech.text("readings.hand.where"),
                        {{"reading.shot.outfeed", speech.text("readings.hand.outfeed")},
                         {"reading.shot.tunnel", speech.text("readings.hand.tunnel")}},
                        place == analytics::ShotPlace::inTunnelHottest ? "reading.shot.tunnel"
                                                                       : "reading.shot.outfeed");
}

/// Never a verdict: it is headed so, and stands at 40.
void addPreview(SheetPageState& page, const shop::ProvingState& state, const wording::Speech& base) {
    const auto& hand = *state.hand;
    if (!hand.preview) {
        return;
    }
    const auto speech = wording::speechFor(base, state.run->onFile.layers);
    page.blocks.append(textBlock(SheetKinds::Heading, speech.text("strip.would-prove")));
    auto figure = textBlock(SheetKinds::Figure, wording::word(hand.preview->word, speech));
    figure.note = toQString(wording::marginText(hand.preview->margin, speech));
    page.blocks.append(figure);
    if (const auto why = wording::sentences(hand.preview->reasons, kMostPreviewReasons, speech); !why.empty()) {
        page.blocks.append(textBlock(SheetKinds::Sentence, why));
    }
}

} // namespace

void showHandSheet(SheetPageState& page, const shop::ProvingState& state, const FloorTyped& typed,
                   const wording::Speech& speech) {
    const auto& hand = *state.hand;
    page.title = toQString(speech.text(isSpot(hand) ? "readings.hand.spot-title" : "readings.hand.gun-title",
                                       {{"subject", hand.instrument.name}}));
    page.blocks.append(fields(hand, typed, speech));
    if (isSpot(hand)) {
        page.blocks.append(placementChoices(placementOf(hand.instrument, hand.placement), speech));
    } else {
        page.blocks.append(shotChoices(hand.place, speech));
    }
    page.blocks.append(positionChoices(hand.position, speech));
    addPreview(page, state, speech);
    page.blocks.append(
        textBlock(SheetKinds::Note, speech.text(isSpot(hand) ? "readings.hand.spot-note" : "readings.hand.gun-note")));
    page.blocks.append(textBlock(SheetKinds::Note, speech.text("caution.short")));
    page.actions.append(pressOf("reading.keep", speech.text("strip.keep"), true));
    page.actions.append(pressOf("reading.leave", speech.text("strip.leave")));
}

} // namespace holdfast::kiosk::screens
