#include "kiosk/screens/presenting/run_advice.hpp"

#include "kiosk/screens/presenting/due_texts.hpp"
#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/wording/notices.hpp"
#include "kiosk/wording/turn_sentences.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

namespace {

AdviceSection section(const std::string& heading, const std::string& sentence, AdviceWeight weight,
                      const wording::Speech& speech) {
    return {toQString(speech.text(heading)), toQString(sentence), weight};
}

QList<AdviceSection> doWhyKept(const std::string& doNow, const std::string& why, const std::string& kept,
                               const wording::Speech& speech) {
    QList<AdviceSection> list{section("section.do-now", doNow, AdviceWeight::Lead, speech)};
    if (!why.empty()) {
        list.append(section("section.why", why, AdviceWeight::Text, speech));
    }
    if (!kept.empty()) {
        list.append(section("section.kept", kept, AdviceWeight::Text, speech));
    }
    return list;
}

std::string reasonsText(const analytics::Verdict& verdict, bool all, const wording::Speech& speech) {
    return wording::sentences(verdict.reasons, all ? verdict.reasons.size() : 1, speech);
}

/// The proposal, where turning is what the verdict asks for.
const analytics::TurnProposal* turnOf(const shop::ProvingState& state) {
    return state.turn && state.turn->has_value() ? &**state.turn : nullptr;
}

bool asksForTurning(const analytics::Verdict& verdict) {
    return !verdict.remedies.empty() && (verdict.remedies.front() == analytics::Remedy::sendProbeHotter ||
                                         verdict.remedies.front() == analytics::Remedy::sendProbeCooler);
}

std::string turnText(const shop::ProvingState& state, const analytics::Verdict& verdict,
                     const wording::Speech& speech) {
    if (const auto* turn = turnOf(state)) {
        return wording::turnOrder(*turn, speech);
    }
    const bool wayOutFirst = state.turn && (state.turn->error() == analytics::NoTurn::noSettingDoes ||
                                            state.turn->error() == analytics::NoTurn::windowClosed);
    return wayOutFirst ? wording::sentence(state.turn->error(), speech)
                       : wording::sentence(verdict.remedies.front(), speech);
}

std::string doNowText(const shop::ProvingState& state, const analytics::Verdict& verdict,
                      const wording::Speech& speech) {
    const bool bad = verdict.word == analytics::Word::underCured || verdict.word == analytics::Word::overheated;
    const auto* bracket = bad ? shop::shownBracket(state) : nullptr;
    std::string text = bracket != nullptr ? pullOrder(*bracket, speech)
                       : bad              ? speech.text("do.pull-pieces")
                                          : std::string{};
    if (!verdict.remedies.empty()) {
        text +=
            (text.empty() ? "" : " ") + (asksForTurning(verdict) ? turnText(state, verdict, speech)
                                                                 : wording::sentence(verdict.remedies.front(), speech));
    } else if (text.empty()) {
        text = speech.text(shop::mayRetake(state) ? "do.send-probe-again" : "do.nothing");
    }
    return text;
}

QList<AdviceSection> verdictAdvice(const shop::ProvingState& state, const RunView& view,
                                   const wording::Speech& speech) {
    const auto& verdict = *state.verdict;
    const bool nothingWrong = verdict.word == analytics::Word::cured && !verdict.bleedNotRuledOut;
    if (nothingWrong && !view.why) {
        return {};
    }
    const auto* turn = asksForTurning(verdict) ? turnOf(state) : nullptr;
    if (view.why) {
        auto why = reasonsText(verdict, true, speech);
        for (const auto& line : turn != nullptr ? wording::turnCautions(*turn, speech) : std::vector<std::string>{}) {
            why += " " + line;
        }
        return {section("section.why", why, AdviceWeight::Text, speech)};
    }
    const auto* reading = shop::shownReading(state);
    const bool trace = reading != nullptr && reading->recording != 0;
    if (state.unitAsked) {
        return doWhyKept(speech.text("do.answer-unit"), reasonsText(verdict, false, speech),
                         speech.text("kept.reading"), speech);
    }
    auto why = reasonsText(verdict, false, speech);
    if (turn != nullptr) {
        const auto cautions = wording::turnCautions(*turn, speech);
        why += " " + wording::turnOutlook(*turn, speech) + (cautions.empty() ? "" : " " + cautions.front());
    }
    return doWhyKept(doNowText(state, verdict, speech), why,
                     speech.text(trace ? "kept.reading" : "kept.reading-no-trace"), speech);
}

QList<AdviceSection> ridingAdvice(const shop::ProvingState& state, const wording::Speech& speech) {
    QList<AdviceSection> list{
        section("section.nothing-to-do", speech.text("run.ends-by-itself"), AdviceWeight::Lead, speech)};
    const auto* probe = shop::shownProbe(state);
    if (probe != nullptr && probe->recording) {
        const auto& drawn = probe->recording->drawn;
        if (!drawn.empty()) {
            const auto hottest =
                std::max_element(drawn.begin(), drawn.end(), [](const auto& a, const auto& b) { return a.t < b.t; });
            list.append(section("section.so-far",
                                speech.text("run.hottest-so-far", {{"value", speech.figures.temperature(hottest->t)}}),
                                AdviceWeight::Text, speech));
        }
        if (probe->recording->spoolTrouble != shop::SpoolTrouble::none) {
            list.append(section("section.kept", speech.text("kept.in-memory-only"), AdviceWeight::Text, speech));
        }
    }
    if (!state.run) {
        list.append(section("section.why", speech.text("run.whose-ride"), AdviceWeight::Text, speech));
    }
    return list;
}

QList<AdviceSection> lostAdvice(const shop::ProvingState& state, const wording::Speech& speech) {
    const auto* probe = shop::shownProbe(state);
    const auto trouble =
        probe != nullptr && probe->trouble != shop::ProbeTrouble::none ? probe->trouble : shop::ProbeTrouble::silent;
    const auto notice = wording::noticeOf(trouble, speech);
    return doWhyKept(notice.toDo + " " + speech.text("do.or-strip"), notice.happened, notice.kept, speech);
}

std::string flashText(const shop::LastFlash& flash, const wording::Speech& base) {
    const auto speech = flash.run ? wording::speechFor(base, flash.run->onFile.layers) : base;
    return speech.text("readings.flash.noted",
                       {{"layer", withLargeFirst(speech.layer(flash.note.position)).toStdString()},
                        {"word", wording::word(flash.note.word, speech)}}) +
           " " + wording::sentences(flash.note.reasons, flash.note.reasons.size(), speech);
}

/// What holds for the next reading whatever it will say.
void addStanding(QList<AdviceSection>& list, const shop::ProvingState& state, const wording::Speech& speech) {
    if (state.lastFlash && state.lastFlash->kept) {
        list.append(section("section.flash", flashText(*state.lastFlash, speech), AdviceWeight::Text, speech));
    }
    std::string standing;
    const auto add = [&](const std::string& sentence) { standing += (standing.empty() ? "" : " ") + sentence; };
    if (state.floor.notReady) {
        add(speech.text("readings.dryer.not-ready-do"));
    }
    if (state.floor.setUp) {
        add(speech.text("readings.dryer.set-up"));
    }
    if (state.belt.size() > 1 && state.beltWindow) {
        add(speech.text("readings.dryer.together", {{"window", wording::windowText(*state.beltWindow, speech)}}));
    }
    if (!standing.empty()) {
        list.append(section("section.holds-now", standing, AdviceWeight::Text, speech));
    }
}

QList<AdviceSection> troubledAdvice(const shop::ProvingState& state, const wording::Speech& speech) {
    if (!state.run && state.unclaimed) {
        return doWhyKept(speech.text("run.claim-ride"), {}, speech.text("kept.reading"), speech);
    }
    if (!state.run) {
        return doWhyKept(speech.text("dryer.scan"), {}, {}, speech);
    }
    const auto* probe = shop::shownProbe(state);
    const auto trouble = probe != nullptr ? probe->trouble : shop::ProbeTrouble::absent;
    if (trouble != shop::ProbeTrouble::none) {
        const auto notice = wording::noticeOf(trouble, speech);
        return doWhyKept(notice.toDo + " " + speech.text("do.or-strip"), notice.happened, {}, speech);
    }
    if (state.window && state.window->state == analytics::WindowState::notProvable) {
        const auto& reasons = state.window->whyNotProvable;
        const auto why = wording::sentences(reasons, reasons.size(), speech);
        std::string doNow = speech.text("run.not-provable");
        if (!state.window->couldProve.empty()) {
            doNow = speech.text("run.could-prove", {{"subject", state.window->couldProve.front()}});
        }
        return doWhyKept(doNow, why, {}, speech);
    }
    auto doNow = speech.text(state.retakePlanned ? "run.retake-now" : "run.send-the-probe");
    if (const auto* watch = shop::dueFirst(state); watch != nullptr && !state.retakePlanned && !state.floor.setUp) {
        doNow += " " + dueSentence(*watch, speech);
    }
    auto list = doWhyKept(doNow, {}, {}, speech);
    if (state.window && state.window->narrow) {
        list.append(section("section.why", speech.text("run.narrow"), AdviceWeight::Text, speech));
    } else if (state.window && state.window->bleedNotProvable) {
        list.append(section("section.why", speech.text("run.bleed-not-provable"), AdviceWeight::Text, speech));
    }
    return list;
}

QList<AdviceSection> waitingAdvice(const shop::ProvingState& state, const wording::Speech& speech) {
    auto list = troubledAdvice(state, speech);
    addStanding(list, state, speech);
    return list;
}

} // namespace

QList<AdviceSection> adviceOf(const shop::ProvingState& state, const RunView& view, const wording::Speech& speech) {
    switch (shop::stageOf(state)) {
    case shop::Stage::recording:
        return ridingAdvice(state, speech);
    case shop::Stage::probeLost:
        return lostAdvice(state, speech);
    case shop::Stage::writing:
        return {section("section.nothing-to-do", speech.text("run.being-written"), AdviceWeight::Lead, speech)};
    case shop::Stage::notKept: {
        const auto& pending = state.pending.front();
        const auto notice =
            wording::noticeOf(pending.failure.value_or(ledger::Failure{ledger::FailureCode::inputOutput, {}}),
                              wording::Kept::reading, speech);
        return doWhyKept(notice.toDo, notice.happened, notice.kept, speech);
    }
    case shop::Stage::verdict:
        return state.verdict ? verdictAdvice(state, view, speech) : QList<AdviceSection>{};
    default:
        return waitingAdvice(state, speech);
    }
}

} // namespace holdfast::kiosk::screens
