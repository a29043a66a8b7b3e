#include "analytics/lots/lot_standing.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

LotStanding decided(LotDecision decision) noexcept {
    switch (decision) {
    case LotDecision::released:
        return LotStanding::released;
    case LotDecision::reRun:
        return LotStanding::reRun;
    case LotDecision::scrapped:
        break;
    }
    return LotStanding::scrapped;
}

LotStanding unproven(const LotEvidence& lot, const UnprovenRule& rule) noexcept {
    if (lot.childrensWear || rule.holds) {
        return LotStanding::onHold;
    }
    return rule.releases && lot.ended ? LotStanding::released : LotStanding::unproven;
}

} // namespace

LotStanding standingOf(const LotEvidence& lot, const UnprovenRule& rule) {
    if (lot.decision == LotDecision::scrapped) {
        return LotStanding::scrapped;
    }
    if (lot.undecidedCauses > 0) {
        return LotStanding::onHold;
    }
    if (lot.decision) {
        return decided(*lot.decision);
    }
    const auto any = [&](DueOutcome outcome) { return std::count(lot.due.begin(), lot.due.end(), outcome) > 0; };
    const bool lacks = any(DueOutcome::missed) || any(DueOutcome::stayedNotProven);
    if (lacks || (lot.ended && (lot.due.empty() || any(DueOutcome::notProven)))) {
        return unproven(lot, rule);
    }
    if (lot.ended) {
        return LotStanding::cleared;
    }
    return lot.due.empty() ? LotStanding::settingUp : LotStanding::open;
}

bool otherPiecesMayGo(LotStanding standing, bool everyCauseHasABracket) noexcept {
    return standing == LotStanding::onHold && everyCauseHasABracket;
}

} // namespace holdfast::analytics
