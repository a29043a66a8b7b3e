#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>
#include <charconv>
#include <utility>

/// What is done at the dryer: one scan or press is an entry.
namespace holdfast::kiosk::shop {
namespace {

using records::FloorAction;

constexpr MonotonicTime kCountedOnceFor{2'000'000};  // the same action, scanned and pressed (MEM)
constexpr MonotonicTime kPiecesAskedFor{10'000'000}; // then `pulled` goes without its number (MEM)
constexpr MonotonicTime kWipeFor{20'000'000};        // screens.md
constexpr int kMostPieces = 9999;

std::optional<FloorAction> floorAction(ActionCard card) {
    switch (card) {
    case ActionCard::beltSlower:
        return FloorAction::beltSlower;
    case ActionCard::beltFaster:
        return FloorAction::beltFaster;
    case ActionCard::hotter:
        return FloorAction::hotter;
    case ActionCard::cooler:
        return FloorAction::cooler;
    case ActionCard::feedStopped:
        return FloorAction::feedStopped;
    case ActionCard::started:
        return FloorAction::started;
    case ActionCard::pulled:
        return FloorAction::pulled;
    case ActionCard::problem:
        return FloorAction::problem;
    case ActionCard::takenOver:
        return FloorAction::takenOver;
    default:
        return std::nullopt;
    }
}

bool turnsTheDryer(FloorAction action) {
    return action == FloorAction::beltSlower || action == FloorAction::beltFaster || action == FloorAction::hotter ||
           action == FloorAction::cooler;
}

bool saysWhatWasDone(FloorAction action) {
    return action != FloorAction::started && action != FloorAction::takenOver;
}

/// It stood longer than one dwell, or nobody knows how long (decisions 5).
bool stoodTooLong(const ProvingState& state) {
    const auto& floor = state.floor;
    if (!floor.stoppedAt) {
        return floor.dryer && floor.dryer->stopped; // since before the program started
    }
    const auto dwell = floor.dryer ? dwellOf(*floor.dryer) : std::nullopt;
    return !dwell || analytics::Duration{state.now - *floor.stoppedAt} > *dwell;
}

/// The floor as it is from now on; the book says the same once the entry is kept.
void turn(FloorState& floor, const records::ActionTaken& action, MonotonicTime now) {
    if (action.action == FloorAction::feedStopped && !floor.stoppedAt) {
        floor.stoppedAt = now;
    } else if (action.action == FloorAction::started) {
        floor.stoppedAt.reset();
    } else if (action.action == FloorAction::takenOver) {
        floor.handOver = false;
    }
    if (!floor.dryer) {
        return;
    }
    floor.dryer->stopped =
        action.action == FloorAction::feedStopped || (floor.dryer->stopped && action.action != FloorAction::started);
    // Turned without a word of the figure: nobody knows it any more.
    const bool turnsBelt = action.action == FloorAction::beltSlower || action.action == FloorAction::beltFaster;
    const bool turnsAir = action.action == FloorAction::hotter || action.action == FloorAction::cooler;
    if (action.beltMetresPerMinute || turnsBelt) {
        floor.dryer->beltMetresPerMinute = action.beltMetresPerMinute;
    }
    if (action.setPoint || turnsAir) {
        floor.dryer->setPoint = action.setPoint;
    }
}

std::vector<std::string> waitingForAnswer(const ProvingState& state) {
    std::vector<std::string> ids;
    for (const auto& row : state.floor.unanswered) {
        if (!isBeingAnswered(state, row.id)) {
            ids.push_back(row.id);
        }
    }
    return ids;
}

void take(Machine& m, records::ActionTaken action) {
    auto& state = m.state;
    auto& floor = state.floor;
    action.dryer = floor.dryer ? floor.dryer->described.dryer : state.run ? state.run->dryer : std::string{};
    if (action.action == FloorAction::feedStopped && floor.dryer) {
        action.pieces = piecesInTunnel(floor.dryer->described);
    }
    PendingKeep pending;
    if (action.action == FloorAction::feedStopped && !floor.stoppedAt) {
        holdTheTunnel(m, pending);
    }
    const auto waiting = saysWhatWasDone(action.action) ? waitingForAnswer(state) : std::vector<std::string>{};
    for (const auto& id : waiting) {
        pending.actions.push_back(action);
        pending.actions.back().answers = id;
    }
    if (pending.actions.empty()) {
        pending.actions.push_back(action);
    }
    const bool another = turnsTheDryer(action.action) || (action.action == FloorAction::started && stoodTooLong(state));
    turn(floor, action, state.now);
    if (another) {
        endStates(state);
        pending.endsLots = endLots(m);
        floor.changed = true;
        refreshReason(state);
    }
    floor.lastAction = ShownAction{pending.actions.front(), state.now, false, another};
    keep(m, std::move(pending));
}

void onFloorAction(Machine& m, FloorAction kind, const ActionPressed& said) {
    auto& floor = m.state.floor;
    records::ActionTaken action;
    action.action = kind;
    action.beltMetresPerMinute = said.beltMetresPerMinute;
    action.setPoint = said.setPoint;
    if (kind == FloorAction::pulled) {
        if (said.pieces && (*said.pieces < 1 || *said.pieces > kMostPieces)) {
            m.refuse(RefusalCause::numberUnusable, std::to_string(*said.pieces));
            return;
        }
        action.pieces = said.pieces;
    }
    const auto& last = floor.lastAction;
    const bool same = last && last->action.action == kind &&
                      (last->action.pieces == action.pieces || kind != FloorAction::pulled) &&
                      last->action.beltMetresPerMinute == action.beltMetresPerMinute;
    if (same && m.state.now - last->at < kCountedOnceFor) {
        return;
    }
    if (kind == FloorAction::pulled && !action.pieces) {
        floor.piecesAskedUntil = m.state.now + kPiecesAskedFor;
        floor.lastAction = ShownAction{action, m.state.now, false, false};
        return;
    }
    take(m, action);
}

} // namespace

void onActionPressed(Machine& m, const ActionPressed& event) {
    auto& state = m.state;
    if (event.card == ActionCard::pulled && event.pieces) {
        state.floor.piecesAskedUntil.reset(); // this is its number
    } else if (event.card != ActionCard::pulled) {
        settlePieces(m);
    }
    if (const auto action = floorAction(event.card)) {
        onFloorAction(m, *action, event);
        return;
    }
    switch (event.card) {
    case ActionCard::setUp:
        state.floor.setUp = true;
        return refreshReason(state);
    case ActionCard::ready:
        state.floor.setUp = false;
        return refreshReason(state);
    case ActionCard::wipe:
        state.floor.wipeUntil = state.now + kWipeFor;
        return;
    case ActionCard::alsoOnBelt:
        state.alsoOnBelt = true;
        return;
    case ActionCard::worry:
        state.nextReason = records::ReadingReason::worry;
        return;
    case ActionCard::drawn:
        state.watch.drawnSaid = true;
        state.nextReason = records::ReadingReason::drawn;
        return;
    default:
        onCard(m, event.card);
    }
}

bool onTypedPieces(Machine& m, const std::string& digits) {
    if (!m.state.floor.piecesAskedUntil) {
        return false;
    }
    int pieces = 0;
    const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), pieces);
    if (error != std::errc{} || end != digits.data() + digits.size() || pieces < 1 || pieces > kMostPieces) {
        m.refuse(RefusalCause::numberUnusable, digits);
        return true;
    }
    onActionPressed(m, {ActionCard::pulled, pieces});
    return true;
}

void settlePieces(Machine& m) {
    if (std::exchange(m.state.floor.piecesAskedUntil, std::nullopt)) {
        records::ActionTaken pulled;
        pulled.action = FloorAction::pulled;
        take(m, pulled);
    }
}

void watchFloor(Machine& m) {
    auto& floor = m.state.floor;
    if (floor.piecesAskedUntil && m.state.now >= *floor.piecesAskedUntil) {
        settlePieces(m);
    }
    if (floor.wipeUntil && m.state.now >= *floor.wipeUntil) {
        floor.wipeUntil.reset();
    }
}

void onActionKept(Machine& m, const PendingKeep& pending) {
    auto& state = m.state;
    auto& floor = state.floor;
    for (const auto& action : pending.actions) {
        if (action.answers) {
            floor.answered.push_back(*action.answers);
            std::erase_if(floor.unanswered, [&](const auto& row) { return row.id == *action.answers; });
        }
    }
    const bool isLast = std::none_of(state.pending.begin(), state.pending.end(),
                                     [](const PendingKeep& one) { return !one.actions.empty(); });
    if (floor.lastAction && isLast && !floor.piecesAskedUntil) {
        floor.lastAction->kept = true;
    }
    const auto shown = shownRun(state);
    if (state.verdict && shown && !isOnBelt(state, shown->onFile.plan.run) && !verdictStays(state)) {
        clearVerdict(m); // another ticket waits already
        state.together.clear();
    }
}

} // namespace holdfast::kiosk::shop
