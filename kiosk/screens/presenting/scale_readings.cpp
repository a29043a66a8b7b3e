// Readings that are no trace, on the large scale and in lists: a strip's interval, a spot, a gun's shot.
#include "kiosk/screens/presenting/scale_presenter.hpp"
#include "kiosk/screens/presenting/shown.hpp"

#include <variant>

namespace holdfast::kiosk::screens {

using analytics::Temperature;

namespace {

CeilingLine bareCeiling(const analytics::GuardedLimit& limit, const wording::Speech& speech) {
    return {
        shown(limit.limit, speech), shown(limit.guard, speech), toQString(speech.figures.bare(limit.limit)), {}, false};
}

/// As the instrument indicated it, corrected as on that day.
Temperature corrected(const analytics::AuthoredTemperature& typed, const records::ReadingTaken& reading) {
    const auto t = typed.temperature();
    return reading.calibration ? t + reading.calibration->correction : t;
}

} // namespace

HeatScaleState smallScale(const records::ReadingTaken& reading, const wording::Speech& speech) {
    HeatScaleState scale;
    scale.celsius = speech.figures.unit == analytics::TemperatureUnit::celsius;
    const auto addCure = [&](const analytics::GuardedLimit& cure) {
        scale.cures.append(CureLine{shown(cure.limit, speech), shown(cure.guard, speech), {}, {}, false});
    };
    if (reading.window) {
        for (const auto& layer : reading.window->layers) {
            addCure(layer.cure);
        }
        if (reading.window->layers.empty() &&
            reading.verdict) { // as read from the book, which keeps them with the verdict
            for (const auto& layer : reading.verdict->layers) {
                addCure(layer.limit);
            }
        }
        if (reading.window->upperHard) {
            scale.hardCeiling = bareCeiling(*reading.window->upperHard, speech);
        }
        if (reading.window->upperBleed) {
            scale.bleedCeiling = bareCeiling(*reading.window->upperBleed, speech);
        }
    }
    if (!reading.verdict) {
        return scale;
    }
    scale.verdict = markOf(reading.verdict->word);
    if (const auto* trace = std::get_if<records::TraceSeen>(&reading.evidence); trace && trace->sustainedPeak) {
        PeakNote note;
        note.atShown = shown(*trace->sustainedPeak, speech);
        scale.peak = note;
    }
    drawShown(scale, reading, speech);
    return scale;
}

void drawStrip(HeatScaleState& scale, std::optional<Temperature> low, std::optional<Temperature> high,
               analytics::Word word, const wording::Speech& speech) {
    StripInterval interval;
    if (low) {
        interval.lowShown = shown(*low, speech);
    }
    if (high) {
        interval.highShown = shown(*high, speech);
    }
    const auto& figures = speech.figures;
    if (low && high) {
        interval.text = toQString(figures.bare(*low) + "–" + figures.bare(*high));
    } else if (low) {
        interval.text = toQString("≥ " + figures.bare(*low));
    } else if (high) {
        interval.text = toQString("≤ " + figures.bare(*high));
    }
    scale.timed = false;
    scale.strip = interval;
    scale.verdict = markOf(word);
}

void drawShown(HeatScaleState& scale, const records::ReadingTaken& reading, const wording::Speech& speech) {
    const auto& verdict = *reading.verdict;
    if (std::holds_alternative<records::StripSeen>(reading.evidence)) {
        for (const auto& reason : verdict.reasons) {
            if (reason.code == analytics::ReasonCode::stripInterval) {
                drawStrip(scale, reason.value, reason.limit, verdict.word, speech);
                return;
            }
        }
    } else if (const auto* spot = std::get_if<records::SpotSeen>(&reading.evidence)) {
        // The film's peak lies between what stands for it and the held maximum itself (decisions 4).
        const auto held = corrected(spot->held, reading);
        drawStrip(scale, held - analytics::SpotReading{}.abovePeak, held, verdict.word, speech);
        scale.strip->text = toQString(speech.figures.temperature(held));
    } else if (const auto* gun = std::get_if<records::GunSeen>(&reading.evidence)) {
        const auto surface = corrected(gun->surface, reading);
        scale.timed = false;
        scale.gun = GunBar{shown(surface, speech),
                           toQString(speech.text("scale.at-most", {{"value", speech.figures.bare(surface)}}))};
        scale.verdict = markOf(verdict.word);
    }
}

} // namespace holdfast::kiosk::screens
