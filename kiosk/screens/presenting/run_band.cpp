#include "kiosk/screens/presenting/run_band.hpp"

#include "kiosk/screens/presenting/shown.hpp"

namespace holdfast::kiosk::screens {

namespace {

analytics::Duration between(drivers::MonotonicTime from, drivers::MonotonicTime to) {
    return analytics::Duration{static_cast<double>((to - from).count()) / 1e6};
}

/// What the figure of a verdict means: which limit it is measured from and how sure it is.
std::string marginNote(const analytics::Verdict& verdict, const wording::Speech& speech) {
    const wording::Arguments guard{{"guard", speech.figures.bareDifference(verdict.guard)}};
    switch (verdict.word) {
    case analytics::Word::cured:
        return speech.text(verdict.bleedNotRuledOut ? "band.bleed-not-ruled-out" : "band.over-cure", guard);
    case analytics::Word::underCured:
        return speech.text("band.under-cure", guard);
    case analytics::Word::overheated:
        return speech.text("band.over-ceiling", guard);
    case analytics::Word::notProven:
    case analytics::Word::refused:
        break;
    }
    if (!verdict.margin || !verdict.margin->low || !verdict.margin->high) {
        return {};
    }
    return speech.text(verdict.margin->low->celsius() >= 0.0 ? "band.too-near" : "band.under-too-near", guard);
}

BandState verdictBand(const analytics::Verdict& verdict, const wording::Speech& speech) {
    BandState band;
    band.mark = markOf(verdict.word);
    band.word = toQString(wording::word(verdict.word, speech));
    band.margin = toQString(wording::headMarginText(verdict, speech));
    band.marginNote = toQString(marginNote(verdict, speech));
    return band;
}

BandState closedBand(const analytics::RunWindow& window, const wording::Speech& speech) {
    BandState band;
    band.mark = MarkKind::Closed;
    band.word = toQString(speech.text("word.window-closed"));
    if (window.upper && window.lower > *window.upper) {
        band.margin = toQString(speech.figures.difference(window.lower - *window.upper));
        band.marginNote = toQString(speech.text("band.too-hot-for-cloth"));
    }
    return band;
}

BandState ridingBand(const shop::ProvingState& state, const shop::Probe& probe, const wording::Speech& speech) {
    BandState band;
    if (probe.value) {
        band.liveFigure = toQString(speech.figures.temperature(*probe.value));
    }
    const bool rising = probe.recording && probe.recording->stage == shop::RideStage::riding;
    band.status = toQString(speech.text(rising ? "band.rising" : "band.cooling"));
    if (state.window && probe.value && *probe.value < state.window->lower) {
        band.marginNote =
            rising ? toQString(speech.text(
                         "band.to-go", {{"difference", speech.figures.difference(state.window->lower - *probe.value)}}))
                   : toQString(speech.text("band.ends-by-itself"));
    } else if (state.window) {
        band.marginNote = toQString(speech.text("band.above-cure-line"));
    }
    return band;
}

BandState lostBand(const shop::ProvingState& state, const shop::Probe& probe, const wording::Speech& speech) {
    BandState band;
    band.mark = MarkKind::NotProven;
    band.word = toQString(speech.text("word.probe-lost"));
    if (probe.recording) {
        const auto since = wording::durationText(between(probe.recording->lastValidAt, state.now));
        band.status = toQString(speech.text("band.no-answer", {{"duration", since}}));
        if (!probe.recording->drawn.empty()) {
            band.marginNote = toQString(speech.text(
                "band.trace-kept", {{"duration", wording::durationText(probe.recording->drawn.back().at)}}));
        }
    }
    return band;
}

BandState waitingBand(const shop::ProvingState& state, const wording::Speech& speech) {
    BandState band;
    const auto* probe = shop::shownProbe(state);
    const bool ready = probe != nullptr && probe->trouble == shop::ProbeTrouble::none && !probe->lost;
    band.word = toQString(speech.text(!state.run && state.unclaimed ? "word.whose"
                                      : !state.run                  ? "word.blank"
                                      : ready                       ? "word.ready"
                                                                    : "word.no-probe"));
    if (ready && probe->value) {
        band.status = toQString(speech.figures.temperature(*probe->value));
        band.marginNote = toQString(speech.text("band.probe-now", {{"subject", probe->name}}));
    }
    return band;
}

} // namespace

BandState bandOf(const shop::ProvingState& state, const wording::Speech& speech) {
    const auto* probe = shop::shownProbe(state);
    switch (shop::stageOf(state)) {
    case shop::Stage::recording:
        return probe != nullptr ? ridingBand(state, *probe, speech) : waitingBand(state, speech);
    case shop::Stage::probeLost:
        return probe != nullptr ? lostBand(state, *probe, speech) : waitingBand(state, speech);
    case shop::Stage::writing: {
        BandState band;
        const bool overdue = !state.pending.empty() && state.pending.front().overdue;
        band.markNote = overdue ? toQString(speech.text("band.writing")) : QString{};
        return band;
    }
    case shop::Stage::notKept: {
        BandState band;
        band.mark = MarkKind::NotProven;
        band.word = toQString(speech.text("word.not-written"));
        return band;
    }
    case shop::Stage::verdict:
        if (state.verdict) {
            return verdictBand(*state.verdict, speech);
        }
        break;
    default:
        break;
    }
    if (state.window && state.window->state == analytics::WindowState::closed) {
        return closedBand(*state.window, speech);
    }
    return waitingBand(state, speech);
}

} // namespace holdfast::kiosk::screens
