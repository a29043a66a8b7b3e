#include "kiosk/records/lot_state.hpp"

#include <algorithm>

namespace holdfast::kiosk::records {

using analytics::Word;

LotState lotState(const std::vector<ReadingOfLot>& readings, bool closed) {
    std::vector<const ReadingOfLot*> counting;
    for (const auto& reading : readings) {
        const bool bad = reading.word == Word::underCured || reading.word == Word::overheated;
        if (!reading.struck && !reading.setUp && !reading.refused && reading.word != Word::refused &&
            (reading.couldProve || bad)) {
            counting.push_back(&reading);
        }
    }
    if (counting.empty()) {
        return closed ? LotState::unproven : LotState::settingUp;
    }
    bool proven = true;
    bool beyondRetake = false;
    for (const auto* reading : counting) {
        if (reading->word == Word::underCured || reading->word == Word::overheated) {
            return LotState::onHold;
        }
        const auto retake = std::find_if(counting.begin(), counting.end(),
                                         [&](const auto* other) { return other->retakeOf == reading->id; });
        const bool settled = retake != counting.end() && (*retake)->word == Word::cured;
        if (reading->word == Word::notProven && !settled) {
            proven = false;
            beyondRetake = beyondRetake || !reading->retakeOf.empty();
        }
    }
    if (!proven) {
        return closed || beyondRetake ? LotState::unproven : LotState::open;
    }
    return closed ? LotState::cleared : LotState::open;
}

} // namespace holdfast::kiosk::records
