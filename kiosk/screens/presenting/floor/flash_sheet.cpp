#include "kiosk/screens/presenting/floor/floor_sheets.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/screens/presenting/print_presenter.hpp"
#include "kiosk/shop/typed/typed.hpp"
#include "kiosk/wording/notices.hpp"

namespace holdfast::kiosk::screens {
namespace {

SheetBlock layerChoices(const shop::FlashEntry& flash, const wording::Speech& speech) {
    std::vector<Choice> choices;
    for (std::size_t i = 0; i < speech.layers.size(); ++i) {
        const auto position = static_cast<int>(i) + 1;
        choices.push_back(
            {"reading.layer." + std::to_string(position), withLargeFirst(speech.layer(position)).toStdString()});
    }
    return choicesBlock(speech.text("readings.flash.layer"), choices,
                        flash.layer ? "reading.layer." + std::to_string(*flash.layer) : std::string{});
}

void addFlashPreview(SheetPageState& page, const shop::FlashEntry& flash, const wording::Speech& speech) {
    page.blocks.append(textBlock(SheetKinds::Heading, speech.text("readings.flash.would-say")));
    page.blocks.append(textBlock(SheetKinds::Figure, wording::word(flash.preview->word, speech)));
    const auto& reasons = flash.preview->reasons;
    page.blocks.append(textBlock(SheetKinds::Sentence, wording::sentences(reasons, reasons.size(), speech)));
}

} // namespace

void showFlashSheet(SheetPageState& page, const shop::ProvingState& state, const FloorTyped& typed,
                    const wording::Speech& base) {
    const auto& flash = *state.flash;
    const auto speech = state.run ? wording::speechFor(base, state.run->onFile.layers) : base;
    page.title = toQString(speech.text("readings.flash.title", {{"subject", flash.instrument.name}}));
    page.blocks.append(layerChoices(flash, speech));
    auto field = figureField("reading.peak", speech.text("readings.flash.peak", {{"unit", speech.figures.unitSign()}}),
                             shop::authoredTyped(flash.peak, speech.figures.unit), typed, speech);
    const bool impossible = flash.missing == shop::RefusalCause::valueImpossible;
    if (impossible && field.fault.isEmpty()) {
        field.fault = toQString(
            wording::noticeOf(shop::Refusal{*flash.missing, shop::typedText(*flash.peak), {}}, speech).happened);
    }
    page.blocks.append(fieldsBlock({field}));
    if (flash.preview) {
        addFlashPreview(page, flash, speech);
    } else if (flash.missing == shop::RefusalCause::flashDoesNotApply) {
        const wording::Arguments layer{{"text", speech.layer(flash.layer)}};
        page.blocks.append(
            textBlock(SheetKinds::Sentence, speech.text("refusal.flash-does-not-apply.happened", layer)));
    }
    page.blocks.append(textBlock(SheetKinds::Note, speech.text("readings.flash.note")));
    page.blocks.append(textBlock(SheetKinds::Note, speech.text("readings.flash.caution")));
    page.actions.append(pressOf("reading.keep", speech.text("readings.flash.keep"), true));
    page.actions.append(pressOf("reading.leave", speech.text("strip.leave")));
}

} // namespace holdfast::kiosk::screens
