#include "kiosk/shop/deciding/lot_facts.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::deciding {
namespace {

using analytics::PieceSpan;
using analytics::Word;

bool isBad(Word word) noexcept {
    return word == Word::underCured || word == Word::overheated;
}

bool counts(const ReadingFact& reading) noexcept {
    return !reading.struck && !reading.refused && !reading.setUp && reading.word != Word::refused &&
           (reading.couldProve || isBad(reading.word));
}

bool isProvenAgain(const ReadingFact& reading, const std::vector<ReadingFact>& all) {
    return std::any_of(all.begin(), all.end(), [&](const ReadingFact& other) {
        return counts(other) && other.retakeOf == reading.id && other.word == Word::cured;
    });
}

/// A retake's own not-proven counts by the reading it repeats.
bool staysNotProven(const ReadingFact& reading, const LotFacts& facts) {
    return reading.word == Word::notProven && !isProvenAgain(reading, facts.readings);
}

} // namespace

std::vector<std::string> openHoldsOf(const LotFacts& facts) {
    std::vector<std::string> open;
    for (const auto& hold : facts.holds) {
        if (!hold.decided) {
            open.push_back(hold.placed.hold);
        }
    }
    return open;
}

bool isSettled(const ReadingFact& reading, const LotFacts& facts) {
    return std::any_of(facts.holds.begin(), facts.holds.end(), [&](const HoldFact& hold) {
        if (!hold.decided) {
            return false;
        }
        const auto& pieces = hold.placed.pieces;
        const bool inside = pieces && reading.piece && *reading.piece >= pieces->first &&
                            (!pieces->last || *reading.piece <= *pieces->last);
        return inside || (!reading.id.empty() && hold.placed.because == reading.id);
    });
}

analytics::LotAtIssue atIssue(const LotFacts& facts) {
    analytics::LotAtIssue lot;
    lot.standing = facts.standing;
    lot.childrensWear = facts.childrensWear;
    lot.entitledInShop = static_cast<int>(facts.entitled.size());
    for (const auto& reading : facts.readings) {
        if (!counts(reading) || isSettled(reading, facts)) {
            continue;
        }
        lot.underCured = lot.underCured || reading.word == Word::underCured;
        lot.notProven = lot.notProven || staysNotProven(reading, facts);
    }
    const bool failed = std::any_of(facts.tests.begin(), facts.tests.end(), [&](const TestFact& test) {
        const bool settled = std::any_of(facts.holds.begin(), facts.holds.end(), [&](const HoldFact& hold) {
            return hold.decided && hold.placed.because == test.id;
        });
        return test.failed && !settled;
    });
    const auto decidedMisses = std::any_of(facts.holds.begin(), facts.holds.end(), [](const HoldFact& hold) {
        return hold.decided && hold.placed.cause == records::HoldCause::missedReading;
    });
    lot.notProven = lot.notProven || (facts.missed > 0 && !decidedMisses);
    lot.belowLimit = lot.underCured || failed;
    return lot;
}

std::optional<int> piecesOfHold(const records::HoldPlaced& hold, const std::optional<int>& made) {
    if (hold.count) {
        return hold.count;
    }
    if (!hold.pieces) {
        return made;
    }
    const auto last = hold.pieces->last ? hold.pieces->last : made;
    return last && *last >= hold.pieces->first ? std::optional{*last - hold.pieces->first + 1} : std::nullopt;
}

HeldPieces heldPieces(const LotFacts& facts) {
    HeldPieces held;
    bool known = true;
    for (const auto& hold : facts.holds) {
        if (hold.decided) {
            continue;
        }
        if (!hold.placed.pieces) {
            held.wholeLot = true;
            continue;
        }
        const auto first = hold.placed.pieces->first;
        const auto last = hold.placed.pieces->last ? hold.placed.pieces->last : facts.made;
        known = known && last && *last >= first;
        held.spans.push_back({first, last ? std::max(first, *last) : first});
    }
    std::sort(held.spans.begin(), held.spans.end());
    std::vector<PieceSpan> joined;
    for (const auto& span : held.spans) {
        if (!joined.empty() && span.first <= joined.back().last + 1) {
            joined.back().last = std::max(joined.back().last, span.last);
        } else {
            joined.push_back(span);
        }
    }
    if (held.wholeLot) {
        held.spans.clear();
        held.count = facts.made;
        return held;
    }
    held.spans = std::move(joined);
    int count = 0;
    for (const auto& span : held.spans) {
        count += span.count();
    }
    held.count = known ? std::optional{count} : std::nullopt;
    return held;
}

} // namespace holdfast::kiosk::shop::deciding
