#include "kiosk/records/lot_state.hpp"

#include <algorithm>

namespace holdfast::kiosk::records {
namespace {

using analytics::DueOutcome;
using analytics::Word;

bool isBad(const ReadingOfLot& reading) {
    return reading.word == Word::underCured || reading.word == Word::overheated;
}

bool counts(const ReadingOfLot& reading) {
    return !reading.struck && !reading.setUp && !reading.refused && reading.word != Word::refused &&
           (reading.couldProve || isBad(reading));
}

bool isProvenAgain(const ReadingOfLot& reading, const std::vector<ReadingOfLot>& all) {
    const auto retake = std::find_if(all.begin(), all.end(), [&](const ReadingOfLot& other) {
        return counts(other) && other.retakeOf == reading.id;
    });
    return retake != all.end() && retake->word == Word::cured;
}

DueOutcome outcomeOf(const ReadingOfLot& reading, const std::vector<ReadingOfLot>& all) {
    if (reading.word == Word::cured || isProvenAgain(reading, all)) {
        return DueOutcome::proven;
    }
    return reading.retakeOf.empty() ? DueOutcome::notProven : DueOutcome::stayedNotProven;
}

LotState stateOf(analytics::LotStanding standing) {
    using analytics::LotStanding;
    switch (standing) {
    case LotStanding::settingUp:
        return LotState::settingUp;
    case LotStanding::open:
        return LotState::open;
    case LotStanding::cleared:
        return LotState::cleared;
    case LotStanding::unproven:
        return LotState::unproven;
    case LotStanding::onHold:
        return LotState::onHold;
    case LotStanding::released:
        return LotState::released;
    case LotStanding::reRun:
        return LotState::reRun;
    case LotStanding::scrapped:
        break;
    }
    return LotState::scrapped;
}

} // namespace

LotState lotState(const LotOnFile& lot) {
    analytics::LotEvidence evidence;
    evidence.undecidedCauses = lot.undecidedCauses;
    evidence.ended = lot.closed;
    evidence.childrensWear = lot.childrensWear;
    evidence.decision = lot.decision;
    for (const auto& reading : lot.readings) {
        if (!counts(reading)) {
            continue;
        }
        if (isBad(reading)) {
            evidence.undecidedCauses += reading.isAnswered ? 0 : 1;
        } else if (!reading.study) {
            evidence.due.push_back(outcomeOf(reading, lot.readings));
        }
    }
    evidence.due.insert(evidence.due.end(), static_cast<std::size_t>(lot.missed), DueOutcome::missed);
    return stateOf(analytics::standingOf(evidence));
}

analytics::LotStanding standingOf(LotState state) noexcept {
    using analytics::LotStanding;
    switch (state) {
    case LotState::settingUp:
        return LotStanding::settingUp;
    case LotState::open:
        return LotStanding::open;
    case LotState::cleared:
        return LotStanding::cleared;
    case LotState::unproven:
        return LotStanding::unproven;
    case LotState::onHold:
        return LotStanding::onHold;
    case LotState::released:
        return LotStanding::released;
    case LotState::reRun:
        return LotStanding::reRun;
    case LotState::scrapped:
        break;
    }
    return LotStanding::scrapped;
}

} // namespace holdfast::kiosk::records
