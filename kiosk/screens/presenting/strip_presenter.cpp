#include "kiosk/screens/presenting/strip_presenter.hpp"

#include "kiosk/screens/presenting/floor/floor_sheets.hpp"
#include "kiosk/screens/presenting/scale_presenter.hpp"
#include "kiosk/screens/presenting/shown.hpp"

namespace holdfast::kiosk::screens {

namespace {

StepKind kindOf(std::optional<int> lastDark, int step) {
    if (!lastDark) {
        return StepKind::Unknown;
    }
    if (step == *lastDark) {
        return StepKind::LastDark;
    }
    return step < *lastDark ? StepKind::Dark : StepKind::Light;
}

QString wordOf(StepKind kind, bool unsure, const wording::Speech& speech) {
    if (unsure) {
        return toQString(speech.text("strip.unsure"));
    }
    switch (kind) {
    case StepKind::Dark:
        return toQString(speech.text("strip.dark"));
    case StepKind::LastDark:
        return toQString(speech.text("strip.last-dark"));
    case StepKind::Light:
        return toQString(speech.text("strip.light"));
    case StepKind::Unknown:
        break;
    }
    return {};
}

QList<StripStepState> stepsOf(const shop::StripEntry& entry, const std::vector<analytics::Temperature>& steps,
                              const wording::Speech& speech) {
    QList<StripStepState> list;
    const bool allLight = entry.lastDark && *entry.lastDark < 0;
    list.append(StripStepState{QStringLiteral("step.-1"), toQString(speech.text("strip.all-light")), QString{},
                               allLight ? StepKind::LastDark : StepKind::Light, false});
    for (int i = 0; i < static_cast<int>(steps.size()); ++i) {
        const auto kind = kindOf(entry.lastDark, i);
        const bool unsure = entry.nextUnsure && entry.lastDark && i == *entry.lastDark + 1;
        list.append(StripStepState{QStringLiteral("step.%1").arg(i),
                                   toQString(speech.figures.bare(steps[static_cast<std::size_t>(i)])),
                                   wordOf(kind, unsure, speech), kind, true});
    }
    return list;
}

std::string titleOf(const shop::StripEntry& entry, const std::vector<analytics::Temperature>& steps,
                    const wording::Speech& speech) {
    if (!entry.lastDark) {
        return speech.text("strip.title-none");
    }
    if (*entry.lastDark < 0) {
        return speech.text("strip.title-all-light");
    }
    const auto& step = steps.at(static_cast<std::size_t>(*entry.lastDark));
    return speech.text("strip.title", {{"step", speech.figures.temperature(step)}});
}

StripPreview previewOf(const analytics::Verdict& verdict, const wording::Speech& speech) {
    StripPreview preview;
    preview.heading = toQString(speech.text("strip.would-prove"));
    preview.mark = markOf(verdict.word);
    preview.word = toQString(wording::word(verdict.word, speech));
    preview.margin = toQString(wording::marginText(verdict.margin, speech));
    preview.sentence = toQString(wording::sentences(verdict.reasons, kMostPreviewReasons, speech));
    preview.note = toQString(speech.text("strip.shows-peak"));
    return preview;
}

ActionState keepAction(const shop::StripEntry& entry, const wording::Speech& speech) {
    ActionState keep;
    if (!entry.lastDark) {
        keep.label = toQString(speech.text("strip.nothing-yet"));
        return keep;
    }
    keep.id = QStringLiteral("strip.keep");
    keep.label = toQString(speech.text("strip.keep"));
    keep.hint = toQString(speech.text("strip.keep-how"));
    keep.primary = true;
    return keep;
}

QList<ChoiceState> positionsOf(records::BeltPosition now, const wording::Speech& speech) {
    QList<ChoiceState> list;
    list.append(
        {QStringLiteral("position.left"), toQString(speech.text("strip.left")), now == records::BeltPosition::left});
    list.append({QStringLiteral("position.centre"), toQString(speech.text("strip.centre")),
                 now == records::BeltPosition::centre});
    list.append(
        {QStringLiteral("position.right"), toQString(speech.text("strip.right")), now == records::BeltPosition::right});
    return list;
}

QList<ChoiceState> marksOf(const shop::StripEntry& entry, const wording::Speech& speech) {
    return {{QStringLiteral("strip.unsure"), toQString(speech.text("strip.next-half-dark")), entry.nextUnsure},
            {QStringLiteral("strip.used"), toQString(speech.text("strip.dark-before")),
             entry.usedBefore || !entry.allLightBefore}};
}

QList<ChoiceState> placementsOf(const shop::StripEntry& entry, const wording::Speech& speech) {
    using analytics::Placement;
    const auto now = placementOf(entry.strip, entry.placement);
    return {{QStringLiteral("strip.wet"), toQString(speech.text("readings.placement.wet")), now == Placement::wetInk},
            {QStringLiteral("strip.taped"), toQString(speech.text("readings.placement.taped")),
             now == Placement::tapedOnFilm},
            {QStringLiteral("strip.cloth"), toQString(speech.text("readings.placement.cloth")),
             now == Placement::inOrUnderCloth}};
}

} // namespace

StripPageState stripPageOf(const shop::ProvingState& state, const wording::Speech& base) {
    StripPageState page;
    if (!state.strip || !state.run || !state.window || !state.strip->strip.calibration ||
        !state.strip->strip.calibration->instrument().strip) {
        return page;
    }
    const auto& entry = *state.strip;
    const auto speech = wording::speechFor(base, state.run->onFile.layers);
    const auto& steps = entry.strip.calibration->instrument().strip->steps;
    page.title = toQString(titleOf(entry, steps, speech));
    page.progress = {{QStringLiteral("1"), toQString(speech.text("strip.progress-strip")), false},
                     {QStringLiteral("2"), toQString(speech.text("strip.progress-step")), !entry.lastDark},
                     {QStringLiteral("3"), toQString(speech.text("strip.progress-keep")), entry.lastDark.has_value()}};
    page.steps = stepsOf(entry, steps, speech);
    page.scale = scaleOf(state.run->onFile.layers, *state.window, {}, speech);
    page.scale.timed = false;
    if (entry.preview) {
        page.preview = previewOf(*entry.preview, speech);
        for (const auto& reason : entry.preview->reasons) {
            if (reason.code == analytics::ReasonCode::stripInterval) {
                drawStrip(page.scale, reason.value, reason.limit, entry.preview->word, speech);
            }
        }
    }
    page.positionsHeading = toQString(speech.text("strip.where"));
    page.positions = positionsOf(entry.position, speech);
    page.marks = marksOf(entry, speech);
    page.placements = placementsOf(entry, speech);
    page.keep = keepAction(entry, speech);
    page.footNote = toQString(speech.text("strip.hint"));
    page.leave.id = QStringLiteral("strip.leave");
    page.leave.label = toQString(speech.text("strip.leave"));
    return page;
}

} // namespace holdfast::kiosk::screens
