#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

/// Lots: pieces of a run between changes of the dryer's state (decisions 5).
namespace holdfast::kiosk::shop {
namespace {

using Run = std::shared_ptr<const AnnouncedRun>;

template <class Each>
void forEachRun(const Recording& recording, Each each) {
    if (recording.run) {
        each(recording.run);
    }
    for (const auto& other : recording.others) {
        each(other);
    }
}

/// The run as it was announced with its newest lot, on the belt, under way or on the screen.
Run announcedBefore(const ProvingState& state, const std::string& run) {
    Run newest;
    const auto look = [&](const Run& one) {
        const bool same = one && one->onFile.plan.run == run;
        if (same && (!newest || one->lotNumber > newest->lotNumber)) {
            newest = one;
        }
    };
    for (const auto& one : state.belt) {
        look(one);
    }
    for (const auto& probe : state.probes) {
        if (probe.recording) {
            forEachRun(*probe.recording, look);
        }
        if (probe.ended) {
            forEachRun(*probe.ended, look);
        }
    }
    for (const auto& pending : state.pending) {
        for (const auto& kept : pending.readings) {
            look(kept.run);
        }
    }
    for (const auto& kept : state.kept) {
        look(kept.run);
    }
    return newest;
}

/// Lots with a reading in the book, on its way, or riding.
std::vector<std::string> usedLots(const ProvingState& state) {
    auto lots = state.openedLots;
    const auto add = [&](const std::optional<std::string>& lot) {
        if (lot && !isIn(lots, *lot)) {
            lots.push_back(*lot);
        }
    };
    for (const auto& pending : state.pending) {
        for (const auto& kept : pending.readings) {
            add(kept.reading.lot);
        }
    }
    for (const auto& probe : state.probes) {
        if (probe.recording && probe.recording->isRide) {
            forEachRun(*probe.recording, [&](const Run& run) {
                if (run->onFile.plan.kind == records::PlanKind::run) {
                    add(run->lotId);
                }
            });
        }
    }
    return lots;
}

std::string freshLot(Machine& m, const AnnouncedRun& run, int number) {
    auto& ids = m.state.freshIds;
    if (ids.empty()) {
        return run.lotId + "-" + std::to_string(number); // nobody gave any: still one of its own
    }
    auto id = std::move(ids.front());
    ids.erase(ids.begin());
    return id;
}

Run withLot(const AnnouncedRun& run, std::string lot, int number) {
    auto other = std::make_shared<AnnouncedRun>(run);
    other->lotId = std::move(lot);
    other->lotNumber = number;
    if (other->onFile.lot) {
        other->onFile.lotsSoFar = std::max(other->onFile.lotsSoFar, other->onFile.lot->number);
    }
    other->onFile.lot.reset();
    other->onFile.readings.clear();
    return other;
}

/// Gives the belt and the rides that have not begun another announcement of the same run.
void exchange(ProvingState& state, const Run& before, const Run& after) {
    const auto change = [&](Run& one) { one = one == before ? after : one; };
    change(state.run);
    std::for_each(state.belt.begin(), state.belt.end(), change);
    for (auto& probe : state.probes) {
        if (probe.recording && !probe.recording->isRide) {
            change(probe.recording->run);
            std::for_each(probe.recording->others.begin(), probe.recording->others.end(), change);
        }
    }
}

/// Open in the book since before the dryer was last changed; this session has not seen it.
bool isStale(const ProvingState& state, const AnnouncedRun& run) {
    const auto& lot = run.onFile.lot;
    const auto& dryer = state.floor.dryer;
    return lot && dryer && lot->openedAt < dryer->since && !isIn(state.openedLots, lot->id);
}

} // namespace

std::shared_ptr<const AnnouncedRun> withKnownLot(Machine& m, std::shared_ptr<const AnnouncedRun> run) {
    auto& state = m.state;
    if (!run || run->onFile.plan.kind == records::PlanKind::windowCard) {
        return run;
    }
    const auto before = announcedBefore(state, run->onFile.plan.run);
    const bool knownGoesOn = before && !isIn(state.endedLots, before->lotId);
    if (run->onFile.lot && isStale(state, *run) && !knownGoesOn) {
        const auto stale = run->lotId;
        state.openedLots.push_back(stale);
        state.endedLots.push_back(stale);
        auto fresh =
            std::make_shared<AnnouncedRun>(*withLot(*run, freshLot(m, *run, run->lotNumber + 1), run->lotNumber + 1));
        fresh->staleLot = stale;
        return fresh;
    }
    if (run->onFile.lot && !isIn(state.endedLots, run->lotId)) {
        if (!isIn(state.openedLots, run->lotId)) {
            state.openedLots.push_back(run->lotId);
        }
        return run;
    }
    if (knownGoesOn) {
        auto same = std::make_shared<AnnouncedRun>(*withLot(*run, before->lotId, before->lotNumber));
        same->staleLot = before->staleLot;
        return same;
    }
    const int number = std::max(run->lotNumber + (run->onFile.lot ? 1 : 0), before ? before->lotNumber + 1 : 1);
    const bool ended = isIn(state.endedLots, run->lotId); // open in the book only because its end is on the way
    return withLot(*run, ended ? freshLot(m, *run, number) : run->lotId, number);
}

std::vector<std::string> endLots(Machine& m) {
    auto& state = m.state;
    std::vector<std::string> ended;
    for (const auto& lot : usedLots(state)) {
        if (!isIn(state.endedLots, lot)) {
            state.endedLots.push_back(lot);
            ended.push_back(lot);
        }
    }
    renewLots(m, ended);
    return ended;
}

void renewLots(Machine& m, const std::vector<std::string>& ended) {
    const auto belt = m.state.belt;
    for (const auto& run : belt) {
        if (isIn(ended, run->lotId)) {
            exchange(m.state, run, withLot(*run, freshLot(m, *run, run->lotNumber + 1), run->lotNumber + 1));
        }
    }
}

std::vector<records::Record> lotsToOpen(const ProvingState& state, const PendingKeep& pending) {
    std::vector<records::Record> opened;
    std::vector<std::string> done = state.openedLots;
    std::vector<Run> runs = pending.opensFor;
    for (const auto& kept : pending.readings) {
        if (kept.run && kept.reading.lot) {
            runs.push_back(kept.run);
        }
    }
    for (const auto& run : runs) {
        if (isIn(done, run->lotId)) {
            continue;
        }
        done.push_back(run->lotId);
        const auto& stale = run->staleLot;
        if (stale && !isIn(state.closedLots, *stale)) {
            opened.emplace_back(records::LotClosed{*stale, std::nullopt, records::LotEnd::dryerChanged});
        }
        records::LotOpened lot;
        lot.lot = run->lotId;
        lot.run = run->onFile.plan.run;
        lot.number = run->lotNumber;
        lot.dryer = run->dryer;
        lot.revisions = run->onFile.revisions;
        const auto* watched = watchOf(state, lot.run);
        if (watched != nullptr && watched->made && watched->run->lotId == lot.lot) {
            lot.firstPiece = watched->firstOfLot;
        }
        if (pending.dryer && !isIn(state.endedLots, lot.lot)) {
            lot.setPoint = pending.dryer->setPoint;
            lot.beltMetresPerMinute = pending.dryer->beltMetresPerMinute;
        }
        opened.emplace_back(std::move(lot));
    }
    return opened;
}

std::vector<records::Record> lotsToClose(const ProvingState& state, const PendingKeep& pending) {
    std::vector<std::string> lots;
    for (const auto& kept : pending.readings) {
        const auto& lot = kept.reading.lot; // stands in the book with this commit
        if (lot && isIn(state.endedLots, *lot) && !isIn(lots, *lot)) {
            lots.push_back(*lot);
        }
    }
    for (const auto& run : pending.opensFor) {
        if (isIn(state.endedLots, run->lotId) && !isIn(lots, run->lotId)) {
            lots.push_back(run->lotId);
        }
    }
    for (const auto& lot : pending.endsLots) {
        if (isIn(state.openedLots, lot) && !isIn(lots, lot)) {
            lots.push_back(lot); // one that is still to be opened is closed by what opens it
        }
    }
    std::vector<records::Record> closed;
    for (const auto& lot : lots) {
        if (!isIn(state.closedLots, lot)) {
            const auto& last = state.watch.lastOfLot;
            const auto known =
                std::find_if(last.rbegin(), last.rend(), [&](const auto& one) { return one.first == lot; });
            closed.emplace_back(records::LotClosed{lot, known == last.rend() ? std::optional<int>{} : known->second,
                                                   records::LotEnd::dryerChanged});
        }
    }
    return closed;
}

void noteLots(ProvingState& state, const std::vector<records::Record>& kept) {
    for (const auto& record : kept) {
        if (const auto* opened = std::get_if<records::LotOpened>(&record)) {
            state.openedLots.push_back(opened->lot);
        } else if (const auto* closed = std::get_if<records::LotClosed>(&record)) {
            state.closedLots.push_back(closed->lot);
        }
    }
}

} // namespace holdfast::kiosk::shop
