#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>
#include <utility>

/// What readings mean for the pieces around them: which piece it was, what is to be pulled, what may go.
namespace holdfast::kiosk::shop {
namespace {

using analytics::Word;
using Run = std::shared_ptr<const AnnouncedRun>;

records::BeltPosition positionOf(analytics::BeltLane lane) {
    switch (lane) {
    case analytics::BeltLane::left:
        return records::BeltPosition::left;
    case analytics::BeltLane::right:
        return records::BeltPosition::right;
    case analytics::BeltLane::centre:
        break;
    }
    return records::BeltPosition::centre;
}

analytics::BeltLane laneOf(records::BeltPosition position) {
    switch (position) {
    case records::BeltPosition::left:
        return analytics::BeltLane::left;
    case records::BeltPosition::right:
        return analytics::BeltLane::right;
    case records::BeltPosition::centre:
        break;
    }
    return analytics::BeltLane::centre;
}

records::CountBasis basisOf(analytics::CountSource source) {
    switch (source) {
    case analytics::CountSource::counter:
        return records::CountBasis::counter;
    case analytics::CountSource::typed:
        return records::CountBasis::typed;
    case analytics::CountSource::rate:
        break;
    }
    return records::CountBasis::rateAndTime;
}

bool isBad(const KeptReading& kept) {
    const auto& verdict = kept.reading.verdict;
    return verdict && (verdict->word == Word::underCured || verdict->word == Word::overheated);
}

/// Can hold a lot, or prove its pieces.
bool countsForLot(const KeptReading& kept) {
    return kept.run && kept.reading.lot && kept.reading.verdict && !kept.refused &&
           kept.reading.reason != records::ReadingReason::setUp;
}

/// The belt was loaded for two dwells when this piece went on it, or nobody can say.
bool wasLoaded(const ProvingState& state, const RunWatch& run, const StateWatch& of) {
    const auto room = inTunnelNow(state);
    return of.readings > 0 || !room || !run.made || !of.counted || of.pieces >= 2 * *room;
}

std::string freshId(Machine& m, const std::string& lot) {
    auto& ids = m.state.freshIds;
    if (ids.empty()) {
        return lot + "-hold-" + std::to_string(m.nextNumber()); // nobody gave any: still one of its own
    }
    auto id = std::move(ids.front());
    ids.erase(ids.begin());
    return id;
}

/// The bracket as its facts have it now; false if they say nothing.
bool measure(BinBracket& bracket) {
    auto measured = analytics::bracketOf(bracket.facts);
    if (!measured) {
        return false;
    }
    bracket.known = true;
    bracket.open = measured->open;
    bracket.pieces = measured->pieces;
    return true;
}

records::PieceRange rangeOf(const BinBracket& bracket) {
    return {bracket.pieces.first, bracket.open ? std::optional<int>{} : std::optional{bracket.pieces.last}};
}

records::HoldPlaced placedAs(const BinBracket& bracket, records::HoldCause cause) {
    records::HoldPlaced placed;
    placed.hold = bracket.hold;
    placed.lot = bracket.lot;
    placed.cause = cause;
    placed.because = bracket.reading;
    if (bracket.known) {
        placed.pieces = rangeOf(bracket);
        placed.count = bracket.pieces.count();
        placed.basis = bracket.basis;
    }
    placed.bin = bracket.bin;
    return placed;
}

records::HoldChanged changed(const BinBracket& bracket) {
    return {bracket.hold, rangeOf(bracket), bracket.pieces.count(), bracket.basis};
}

std::int64_t takeBin(FloorWatch& watch) {
    return watch.nextBin > 0 ? watch.nextBin++ : 0;
}

analytics::BracketFacts factsOf(const ProvingState& state, const RunWatch& run, const KeptReading& kept) {
    analytics::BracketFacts facts;
    const int made = run.made ? run.made->pieces : 0;
    facts.badPiece = kept.reading.piece.value_or(std::max(1, made));
    const bool newest = kept.reading.lot == run.run->lotId;
    facts.firstPiece = newest ? std::min(run.firstOfLot, facts.badPiece) : 1;
    if (run.lastProven && *run.lastProven < facts.badPiece) {
        facts.lastProven = run.lastProven;
    }
    facts.made = std::max(made, facts.badPiece);
    facts.planned = run.run->onFile.plan.pieces;
    facts.inTunnel = inTunnelNow(state);
    return facts;
}

/// No piece lies in two bins: a bracket that shares a piece with an undecided one goes into its bin.
void joinWithOthers(PendingKeep& pending, RunWatch& run, BinBracket& bracket) {
    for (auto& other : run.brackets) {
        const bool meets = other.known && bracket.known && other.lot == bracket.lot &&
                           (other.pieces.overlaps(bracket.pieces) || other.open);
        if (!meets) {
            continue;
        }
        const analytics::PieceSpan both{std::min(other.pieces.first, bracket.pieces.first),
                                        std::max(other.pieces.last, bracket.pieces.last)};
        bracket.bin = other.bin;
        bracket.pieces = both;
        other.pieces = both;
        other.open = bracket.open;
        pending.brackets.push_back(changed(other));
    }
}

void holdOne(Machine& m, PendingKeep& pending, std::size_t index) {
    auto& state = m.state;
    auto& kept = pending.readings[index];
    auto* run = runWatch(state, kept.run);
    const auto* before = keptOf(state, kept);
    const auto known = before != nullptr ? before->id : kept.id;
    if (run == nullptr) {
        return;
    }
    const bool held = !known.empty() && std::any_of(run->brackets.begin(), run->brackets.end(),
                                                    [&](const BinBracket& one) { return one.reading == known; });
    const bool twice = std::any_of(pending.holds.begin(), pending.holds.end(), [&](const PlacedHold& one) {
        return one.placed.lot == *kept.reading.lot; // another pass of the same ride
    });
    if (held || twice) {
        return;
    }
    pending.entryIds.resize(pending.readings.size());
    BinBracket bracket;
    bracket.hold = freshId(m, *kept.reading.lot);
    bracket.reading = known;
    if (known.empty()) {
        bracket.reading = pending.entryIds[index] = freshId(m, *kept.reading.lot);
    }
    bracket.lot = *kept.reading.lot;
    if (run->made || kept.reading.piece) {
        bracket.facts = factsOf(state, *run, kept);
        (void)measure(bracket);
        bracket.basis = run->made ? std::optional{basisOf(run->made->source)} : std::nullopt;
    }
    joinWithOthers(pending, *run, bracket);
    bracket.bin = bracket.bin > 0 ? bracket.bin : takeBin(state.watch);
    pending.holds.push_back({index, placedAs(bracket, records::HoldCause::reading)});
    run->brackets.push_back(std::move(bracket));
}

/// A bracket as the book has it, ready to be ended by the next proven piece.
BinBracket resumed(const records::HoldPlaced& hold, const records::RunOnFile& run) {
    BinBracket bracket;
    bracket.hold = hold.hold;
    bracket.lot = hold.lot;
    bracket.reading = hold.because;
    bracket.bin = hold.bin;
    bracket.basis = hold.basis;
    bracket.known = hold.pieces.has_value();
    if (!bracket.known) {
        return bracket;
    }
    const int first = hold.pieces->first;
    bracket.open = !hold.pieces->last;
    bracket.pieces = {first, hold.pieces->last.value_or(first + std::max(1, hold.count.value_or(1)) - 1)};
    bracket.facts.firstPiece = first;
    bracket.facts.badPiece = first;
    for (const auto& row : run.readings) {
        if (row.id == hold.because && row.piece) {
            bracket.facts.badPiece = std::max(first, *row.piece);
        }
    }
    bracket.facts.made = bracket.pieces.last;
    bracket.facts.planned = run.plan.pieces;
    return bracket;
}

/// A proven piece ends the brackets before it.
void endBrackets(RunWatch& run, std::optional<int> proven, std::vector<records::HoldChanged>& changes) {
    for (auto& bracket : run.brackets) {
        if (!bracket.open || !bracket.known || (proven && *proven <= bracket.facts.badPiece)) {
            continue;
        }
        if (proven) {
            bracket.facts.nextProven = proven;
        } else {
            const int made = run.made ? run.made->pieces : bracket.pieces.last;
            bracket.facts.endOfRun = std::max(made, bracket.facts.badPiece);
        }
        const int first = bracket.pieces.first;
        if (measure(bracket)) {
            bracket.pieces.first = std::min(first, bracket.pieces.first); // joined with an earlier one
            changes.push_back(changed(bracket));
        }
    }
}

/// With every lane of one lot ridden the belt has a map.
void noteMap(ProvingState& state, const KeptReading& newest) {
    std::vector<analytics::LanePeak> rides;
    const auto add = [&](const KeptReading& kept) {
        const auto* trace = std::get_if<records::TraceSeen>(&kept.reading.evidence);
        if (countsForLot(kept) && kept.reading.lot == newest.reading.lot && trace != nullptr && trace->sustainedPeak) {
            rides.push_back({laneOf(kept.reading.position), *trace->sustainedPeak, state.watch.today});
        }
    };
    for (const auto& kept : state.kept) {
        add(kept);
    }
    add(newest);
    if (auto map = analytics::beltMapOf(rides)) {
        state.watch.map = map;
    }
}

} // namespace

std::vector<PieceTaken> takePieces(ProvingState& state, const std::vector<Run>& runs) {
    std::vector<PieceTaken> pieces;
    for (const auto& one : runs) {
        auto* run = runWatch(state, one);
        if (run == nullptr) {
            continue;
        }
        PieceTaken taken{one->onFile.plan.run, std::nullopt, wasLoaded(state, *run, stateOf(state, *run))};
        const bool due = run->due && run->due->reading.now && run->due->piece;
        if (due) {
            taken.piece = run->due->piece;
        } else if (run->made) {
            taken.piece = run->made->pieces + 1; // the next one on the belt
        }
        pieces.push_back(std::move(taken));
    }
    return pieces;
}

records::BeltPosition positionDue(const ProvingState& state, records::BeltPosition chosen, bool byPerson) {
    const auto* run = byPerson || state.floor.setUp ? nullptr : dueFirst(state);
    return run != nullptr && run->due->reading.now ? positionOf(run->due->reading.lane) : chosen;
}

records::ReadingReason reasonNow(ProvingState& state) {
    const auto reason = takeReason(state);
    const bool said = std::exchange(state.watch.drawnSaid, false);
    const auto* run = dueFirst(state);
    if (reason != records::ReadingReason::drawn || said || run == nullptr) {
        return reason;
    }
    const auto& due = run->due->reading;
    const bool startsState = due.why == analytics::DueWhy::first || due.why == analytics::DueWhy::position;
    return due.now || startsState ? reason : records::ReadingReason::worry; // nobody had asked for it
}

void notePiece(KeptReading& kept, const std::vector<PieceTaken>& pieces) {
    if (!kept.run) {
        return;
    }
    for (const auto& one : pieces) {
        if (one.run == kept.run->onFile.plan.run) {
            kept.reading.piece = one.piece;
            kept.loaded = one.loaded;
        }
    }
}

void holdWhatIsBad(Machine& m, PendingKeep& pending) {
    for (std::size_t i = 0; i < pending.readings.size(); ++i) {
        const auto& kept = pending.readings[i];
        if (!countsForLot(kept)) {
            continue;
        }
        if (isBad(kept)) {
            holdOne(m, pending, i);
        } else if (kept.reading.verdict->word == Word::cured && kept.reading.piece && !kept.fromSpool) {
            if (auto* run = runWatch(m.state, kept.run)) {
                endBrackets(*run, kept.reading.piece, pending.brackets);
            }
        }
    }
}

void holdTheTunnel(Machine& m, PendingKeep& pending) {
    auto& state = m.state;
    const auto room = inTunnelNow(state);
    for (const auto& one : state.belt) {
        auto* run = runWatch(state, one);
        if (run == nullptr || !run->made) {
            continue; // nobody can say which pieces
        }
        const auto pieces = analytics::tunnelBracket(run->made->pieces, room);
        if (!pieces) {
            continue;
        }
        BinBracket bracket;
        bracket.hold = freshId(m, one->lotId);
        bracket.lot = one->lotId;
        bracket.known = true;
        bracket.open = false;
        bracket.pieces = *pieces;
        bracket.basis = basisOf(run->made->source);
        bracket.bin = takeBin(state.watch);
        pending.holds.push_back({std::nullopt, placedAs(bracket, records::HoldCause::beltStopped)});
        pending.opensFor.push_back(one);
        run->brackets.push_back(std::move(bracket));
    }
}

void closeBrackets(Machine& m, RunWatch& run) {
    PendingKeep pending;
    endBrackets(run, std::nullopt, pending.brackets);
    if (!pending.brackets.empty()) {
        keep(m, std::move(pending));
    }
}

void noteBinTaken(ProvingState& state, std::int64_t bin) {
    state.watch.nextBin = state.watch.nextBin > 0 ? std::max(state.watch.nextBin, bin + 1) : 0;
    for (auto& pending : state.pending) { // not in the book yet; what was sent with it is refused and built anew
        for (auto& hold : pending.holds) {
            if (bin == 0 || hold.placed.bin != bin) {
                continue;
            }
            hold.placed.bin = takeBin(state.watch);
            for (auto& run : state.watch.runs) {
                for (auto& bracket : run.brackets) {
                    bracket.bin = bracket.hold == hold.placed.hold ? hold.placed.bin : bracket.bin;
                }
            }
        }
    }
}

void noteDecided(ProvingState& state, const std::vector<std::string>& holds) {
    for (auto& run : state.watch.runs) {
        std::erase_if(run.brackets, [&](const BinBracket& one) { return isIn(holds, one.hold); });
    }
}

void resume(RunWatch& run) {
    const auto& onFile = run.run->onFile;
    run.inBook = onFile.furthestPiece;
    run.firstOfLot = onFile.furthestOfEarlierLots + 1;
    for (const auto& row : onFile.readings) {
        if (!row.piece || row.refused || row.struck || row.reason == records::ReadingReason::setUp) {
            continue;
        }
        run.lastRead = std::max(run.lastRead.value_or(0), *row.piece);
        if (row.word == Word::cured) {
            run.lastProven = std::max(run.lastProven.value_or(0), *row.piece);
        }
    }
    for (const auto& hold : onFile.openHolds) {
        const bool ofBelt = hold.cause == records::HoldCause::reading || hold.cause == records::HoldCause::beltStopped;
        if (ofBelt) {
            run.brackets.push_back(resumed(hold, onFile));
        }
    }
}

void noteWatched(ProvingState& state, const KeptReading& kept) {
    auto* run = countsForLot(kept) ? runWatch(state, kept.run) : nullptr;
    const bool again = kept.corrected || !kept.reading.retakeOf.value_or(std::string{}).empty();
    if (run == nullptr || kept.fromSpool) {
        return;
    }
    run->underWay = true;
    const auto& piece = kept.reading.piece;
    const bool cured = kept.reading.verdict->word == Word::cured;
    if (cured && piece) {
        run->lastProven = std::max(run->lastProven.value_or(0), *piece);
    }
    const bool counts = kept.reading.verdict->couldProve || isBad(kept);
    if (again || !counts) {
        return;
    }
    noteMap(state, kept);
    if (piece && run->made && run->made->pieces < *piece) { // it was on the belt
        run->typed = run->typed ? std::optional{*run->typed + *piece - run->made->pieces} : run->typed;
        run->made->pieces = *piece;
    }
    run->lastRead = piece ? std::optional{std::max(run->lastRead.value_or(0), *piece)} : run->lastRead;
    run->readAfterEnd = run->readAfterEnd || run->endedAt.has_value();
    if (!kept.loaded) {
        return; // the emptiest belt is the hottest: it proves nothing of the state
    }
    auto& of = stateOf(state, *run);
    ++run->readings;
    ++of.readings;
    run->missedKept = 0;
    of.counted = run->made.has_value();
    of.pieces = run->made && piece ? std::max(0, run->made->pieces - *piece) : 0;
    of.ran = analytics::Duration{std::max(MonotonicTime{0}, state.now - kept.takenAt)};
}

const BinBracket* shownBracket(const ProvingState& state) {
    for (const auto& run : state.watch.runs) {
        for (const auto& bracket : run.brackets) {
            if (isIn(state.shownReadings, bracket.reading)) {
                return &bracket;
            }
        }
    }
    return nullptr;
}

} // namespace holdfast::kiosk::shop
