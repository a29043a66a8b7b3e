#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

/// What the book says of the dryer, and what readings add to it before the book is asked again.
namespace holdfast::kiosk::shop {
namespace {

using analytics::Word;
using records::ReadingReason;

bool mustBeAnswered(const KeptReading& kept) {
    const auto& verdict = kept.reading.verdict;
    const bool bad = verdict && (verdict->word == Word::underCured || verdict->word == Word::overheated);
    return bad && kept.run && !kept.refused && kept.reading.reason != ReadingReason::setUp;
}

records::ReadingRow rowOf(const KeptReading& kept) {
    records::ReadingRow row;
    row.sequence = kept.sequence;
    row.id = kept.id;
    row.run = kept.run->onFile.plan.run;
    row.runNumber = kept.run->onFile.plan.number;
    row.runTitle = kept.run->onFile.plan.title;
    row.lot = kept.reading.lot.value_or(std::string{});
    row.lotNumber = kept.run->lotNumber;
    row.instrument = kept.reading.instrument;
    row.instrumentName = kept.instrumentName;
    row.corrected = kept.corrected;
    row.position = kept.reading.position;
    row.reason = kept.reading.reason;
    row.word = kept.reading.verdict->word;
    if (const auto& margin = kept.reading.verdict->margin) {
        row.marginLow = margin->low;
        row.marginHigh = margin->high;
    }
    return row;
}

} // namespace

void refreshReason(ProvingState& state) {
    const auto& floor = state.floor;
    auto& next = state.nextReason;
    if (floor.setUp) {
        next = ReadingReason::setUp;
        return;
    }
    next = next == ReadingReason::setUp ? ReadingReason::drawn : next;
    next = next == ReadingReason::drawn && floor.changed ? ReadingReason::afterChange : next;
}

ReadingReason takeReason(ProvingState& state) {
    const auto reason = state.nextReason;
    if (state.floor.setUp) {
        return reason; // proves nothing of the state the dryer will be in
    }
    state.floor.changed = false;
    const bool once = reason == ReadingReason::afterChange || reason == ReadingReason::worry;
    state.nextReason = once ? ReadingReason::drawn : reason;
    return reason;
}

void noteReading(Machine& m, const KeptReading& kept) {
    auto& floor = m.state.floor;
    const auto isIt = [&](const records::ReadingRow& row) { return row.id == kept.id; };
    std::erase_if(floor.unanswered, isIt);
    if (mustBeAnswered(kept) && !isIn(floor.answered, kept.id)) {
        floor.unanswered.push_back(rowOf(kept));
    }
    if (kept.run) {
        std::erase_if(floor.unclaimed, isIt);
    }
    const auto& verdict = kept.reading.verdict;
    if (verdict && verdict->word == Word::cured && !kept.fromSpool && kept.reading.reason != ReadingReason::setUp) {
        floor.notReady = false;
    }
}

void onFloorLoaded(Machine& m, const FloorLoaded& event) {
    auto& floor = m.state.floor;
    floor.dryer = event.dryer;
    floor.unclaimed = event.unclaimed;
    auto& watch = m.state.watch;
    watch.nextBin = std::max(watch.nextBin, event.nextBin);
    watch.settings = event.settings;
    watch.tightened = event.tightened;
    auto unanswered = event.unanswered;
    for (const auto& row : floor.unanswered) {
        if (row.lot.empty()) {
            unanswered.push_back(
                row); // judged by a window card: it holds no lot, and waits as long as the program runs
        }
    }
    floor.unanswered = std::move(unanswered);
    if (floor.dryer && !floor.dryer->stopped) {
        floor.stoppedAt.reset();
    }
    if (event.afterPowerLoss) {
        floor.notReady = true;
        floor.handOver = true;
        floor.inTunnelAtLoss = floor.dryer ? piecesInTunnel(floor.dryer->described) : std::nullopt;
    }
}

} // namespace holdfast::kiosk::shop
