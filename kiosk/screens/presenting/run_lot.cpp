#include "kiosk/screens/presenting/run_lot.hpp"

#include "kiosk/screens/presenting/due_texts.hpp"
#include "kiosk/screens/presenting/shown.hpp"

#include <algorithm>

namespace holdfast::kiosk::screens {

namespace {

QString lotStateWord(records::LotState state, const wording::Speech& speech) {
    switch (state) {
    case records::LotState::settingUp:
        return toQString(speech.text("lot.setting-up"));
    case records::LotState::open:
        return toQString(speech.text("lot.open"));
    case records::LotState::cleared:
        return toQString(speech.text("lot.cleared"));
    case records::LotState::unproven:
        return toQString(speech.text("lot.unproven"));
    case records::LotState::onHold:
        return toQString(speech.text("lot.on-hold"));
    case records::LotState::released:
        return toQString(speech.text("lot.released"));
    case records::LotState::reRun:
        return toQString(speech.text("lot.re-run"));
    case records::LotState::scrapped:
        return toQString(speech.text("lot.scrapped"));
    }
    return {};
}

QString placeWord(records::BeltPosition position, const wording::Speech& speech) {
    switch (position) {
    case records::BeltPosition::left:
        return toQString(speech.text("strip.left"));
    case records::BeltPosition::right:
        return toQString(speech.text("strip.right"));
    case records::BeltPosition::centre:
        break;
    }
    return toQString(speech.text("strip.centre"));
}

/// The lot's state with the readings kept since it was loaded: the worst of both.
records::LotState lotStateNow(const shop::ProvingState& state) {
    auto now = state.run->onFile.lot ? state.run->onFile.lot->state : records::LotState::open;
    if (now == records::LotState::settingUp && !state.kept.empty()) {
        now = records::LotState::open;
    }
    for (const auto& kept : state.kept) {
        if (!kept.reading.verdict || !kept.run || kept.run->lotId != state.run->lotId || kept.refused) {
            continue;
        }
        const auto word = kept.reading.verdict->word;
        if (word == analytics::Word::underCured || word == analytics::Word::overheated) {
            now = records::LotState::onHold;
        }
    }
    return now;
}

/// What comes next of an open lot, what may go of one on hold.
std::string lotNote(const shop::ProvingState& state, records::LotState now, const wording::Speech& speech) {
    const auto* watch = shop::watchOf(state, state.run->onFile.plan.run);
    std::string note = now == records::LotState::open ? speech.text("lot.note.open-so-far") : std::string{};
    const auto add = [&](const std::string& sentence) {
        note += (note.empty() || sentence.empty() ? "" : " ") + sentence;
    };
    if (watch != nullptr && !watch->brackets.empty() && watch->brackets.back().lot == state.run->lotId) {
        add(pullNote(watch->brackets.back(), speech));
    }
    if (watch != nullptr && watch->due) {
        add(dueSentence(*watch, speech));
    }
    return note;
}

} // namespace

LotState lotOf(const shop::ProvingState& state, const wording::Speech& speech) {
    LotState lot;
    if (!state.run) {
        return lot;
    }
    const auto number = std::to_string(state.run->lotNumber);
    lot.readingsHeading = toQString(speech.text("lot.readings", {{"lot", number}}));
    for (const auto& row : state.run->onFile.readings) {
        const analytics::MarginRange margin{row.marginLow, row.marginHigh};
        const bool replaced =
            std::any_of(state.kept.begin(), state.kept.end(), [&row](const auto& kept) { return kept.id == row.id; });
        if (!replaced && !row.refused) {
            lot.readings.append(ReadingRow{row.word ? markOf(*row.word) : MarkKind::NotProven,
                                           placeWord(row.position, speech),
                                           toQString(wording::marginText(margin, speech)), false});
        }
    }
    for (const auto& kept : state.kept) {
        const bool shownNow =
            std::find(state.shownReadings.begin(), state.shownReadings.end(), kept.id) != state.shownReadings.end();
        if (kept.reading.verdict && !kept.refused && kept.run && kept.run->lotId == state.run->lotId) {
            lot.readings.append(ReadingRow{markOf(kept.reading.verdict->word), placeWord(kept.reading.position, speech),
                                           toQString(wording::headMarginText(*kept.reading.verdict, speech)),
                                           shownNow});
        }
    }
    constexpr qsizetype kMostShown = 3;
    if (lot.readings.size() > kMostShown) {
        lot.readings = lot.readings.mid(lot.readings.size() - kMostShown);
    }
    const auto now = lotStateNow(state);
    lot.lotHeading = toQString(speech.text("lot.heading", {{"lot", number}}));
    lot.lotState = lotStateWord(now, speech);
    lot.lotNote = toQString(lotNote(state, now, speech));
    return lot;
}

} // namespace holdfast::kiosk::screens
