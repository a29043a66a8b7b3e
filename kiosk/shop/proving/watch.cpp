#include "analytics/cure/window.hpp"
#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>
#include <utility>

/// Pieces counted and readings due: the reminders come by themselves.
namespace holdfast::kiosk::shop {
namespace {

using analytics::Duration;
using records::DueReadingKind;
using Run = std::shared_ptr<const AnnouncedRun>;

constexpr int kPassedBy = 5; // so many pieces later the drawn one is gone for good, and another is drawn (MEM)

bool beltRuns(const ProvingState& state) {
    return !state.floor.dryer || !state.floor.dryer->stopped;
}

int readingsOnFile(const AnnouncedRun& run) {
    const auto& rows = run.onFile.readings;
    return static_cast<int>(std::count_if(rows.begin(), rows.end(), [](const records::ReadingRow& row) {
        return !row.refused && !row.struck && row.reason != records::ReadingReason::setUp;
    }));
}

analytics::DryerState stateNow(const ProvingState& state, const RunWatch& run) {
    analytics::DryerState now;
    now.dryer = run.run->dryer;
    if (const auto& dryer = state.floor.dryer) {
        now.setPoint = dryer->setPoint ? std::optional{dryer->setPoint->temperature()} : std::nullopt;
        now.beltMetresPerMinute = dryer->beltMetresPerMinute;
    }
    now.requirement = run.asked;
    now.clothWeightClass = run.run->onFile.layers.fabric.name; // no cloth is weighed yet
    return now;
}

analytics::EpisodeSoFar episodeOf(const ProvingState& state, const RunWatch& run, const StateWatch& of) {
    analytics::EpisodeSoFar e;
    e.readings = of.readings;
    e.readingsOfRun = run.readings;
    e.made = run.made ? std::optional{run.made->pieces} : std::nullopt;
    e.planned = run.run->onFile.plan.pieces;
    e.piecesSince = of.counted && run.made ? std::optional{of.pieces} : std::nullopt;
    e.ranSince = of.ran;
    e.lastRead = run.lastRead;
    e.readAfterEnd = run.readAfterEnd;
    const auto& map = state.watch.map;
    if (map && analytics::isInDate(*map, state.watch.today, std::nullopt)) {
        e.coldest = map->coldest;
    }
    e.inTunnel = inTunnelNow(state);
    if (run.endedAt) {
        e.ended = Duration{state.now - *run.endedAt};
    }
    return e;
}

std::uint64_t randomWord(FloorWatch& watch) {
    if (watch.words.empty()) {
        return 0; // nobody gave any
    }
    const auto word = watch.words.back();
    watch.words.pop_back();
    return word;
}

/// The piece drawn before stays as long as it can still be read; else another one is drawn.
void drawFor(FloorWatch& watch, RunWatch& run, const std::optional<analytics::DueReading>& next) {
    const auto before = std::exchange(run.due, std::nullopt);
    if (!next) {
        return;
    }
    DuePiece due{*next, std::nullopt};
    const auto& among = next->among;
    if (among) {
        const int made = run.made ? run.made->pieces : 0;
        const bool drawn = before && before->piece && before->reading.number == next->number;
        const bool justPassed = drawn && *before->piece <= made && made < *before->piece + kPassedBy;
        const bool stays = drawn && (among->holds(*before->piece) || justPassed);
        due.piece = stays ? before->piece : std::optional{analytics::drawPiece(*among, randomWord(watch))};
    }
    run.due = due;
}

DueReadingKind kindOf(const RunWatch& run, bool last, int ofFirsts) {
    if (last) {
        return DueReadingKind::last;
    }
    if (ofFirsts >= 0) {
        return ofFirsts == 0 ? DueReadingKind::first : DueReadingKind::position;
    }
    const bool byTime = run.due && run.due->reading.why == analytics::DueWhy::minutes;
    return byTime || !run.made ? DueReadingKind::minutes : DueReadingKind::pieces;
}

/// Readings that were missed since the last look become entries, once each.
void keepMissed(Machine& m, RunWatch& run, StateWatch& of, const analytics::ReadingPlan& plan, int firsts) {
    if (!run.underWay || plan.missed <= run.missedKept) {
        return;
    }
    PendingKeep pending;
    const int outstanding = std::max(0, firsts - of.readings);
    for (int i = run.missedKept; i < plan.missed; ++i) {
        const int first = i < outstanding ? of.readings + i : -1;
        if (first >= 0 && first < of.firstsMissed) {
            continue; // stands in the book
        }
        of.firstsMissed = std::max(of.firstsMissed, first + 1);
        const bool last = plan.lastMissed && i + 1 == plan.missed;
        const bool drawn = pending.missed.empty() && run.due;
        pending.missed.push_back(
            {run.run->lotId, kindOf(run, last, first), drawn ? run.due->piece : std::optional<int>{}});
        pending.opensFor.push_back(run.run);
    }
    run.missedKept = plan.missed;
    if (!pending.missed.empty()) {
        keep(m, std::move(pending));
    }
}

} // namespace

void planRun(Machine& m, RunWatch& run) {
    auto& state = m.state;
    auto& of = stateOf(state, run);
    const auto episode = episodeOf(state, run, of);
    const auto& shop = state.watch.settings;
    const auto plan = analytics::readingPlan(episode, state.watch.tightened ? shop.tightened() : shop);
    if (!plan) {
        run.due.reset();
        return;
    }
    keepMissed(m, run, of, *plan, episode.coldest ? 1 : analytics::kReadingsWithoutMap);
    drawFor(state.watch, run, run.endedAt ? std::nullopt : plan->next);
}

RunWatch* watched(ProvingState& state, const std::string& run) {
    auto& runs = state.watch.runs;
    const auto found =
        std::find_if(runs.begin(), runs.end(), [&](const RunWatch& one) { return one.run->onFile.plan.run == run; });
    return found == runs.end() ? nullptr : &*found;
}

std::optional<int> inTunnelNow(const ProvingState& state) {
    const auto& dryer = state.floor.dryer;
    return dryer ? analytics::piecesInTunnel(dryer->described.heatedLengthMetres, shareOfMetre(state)) : std::nullopt;
}

StateWatch& stateOf(ProvingState& state, const RunWatch& run) {
    auto& states = state.watch.states;
    const auto now = stateNow(state, run);
    const auto found =
        std::find_if(states.begin(), states.end(), [&](const StateWatch& one) { return one.state == now; });
    if (found != states.end()) {
        return *found;
    }
    StateWatch fresh;
    fresh.state = now;
    fresh.readings = run.readings == 0 ? readingsOnFile(*run.run) : 0; // of its open lot, before this session
    states.push_back(std::move(fresh));
    return states.back();
}

RunWatch* runWatch(ProvingState& state, const Run& run) {
    if (!run || !isRunTicket(run)) {
        return nullptr;
    }
    if (auto* known = watched(state, run->onFile.plan.run)) {
        known->run = known->run->lotNumber > run->lotNumber ? known->run : run;
        return known;
    }
    const auto window = analytics::windowOf(run->onFile.layers);
    if (!window) {
        return nullptr;
    }
    RunWatch fresh;
    fresh.run = run;
    fresh.asked = analytics::requirementOf(*window);
    fresh.underWay = run->onFile.lot || run->onFile.lotsSoFar > 0;
    fresh.measured = !fresh.underWay;
    fresh.ran = {{0.0, Duration{0}}}; // nothing yet, which is known
    if (state.watch.counterLive && !fresh.underWay) {
        fresh.pulsed = 0;
    }
    resume(fresh);
    state.watch.runs.push_back(std::move(fresh));
    countRun(state, state.watch.runs.back());
    return &state.watch.runs.back();
}

void watchRuns(Machine& m) {
    auto& state = m.state;
    auto& watch = state.watch;
    const auto before = watch.at.value_or(state.now);
    watch.at = state.now;
    for (const auto& run : state.belt) {
        (void)runWatch(state, run);
    }
    if (state.now > before && beltRuns(state) && !state.floor.setUp) {
        addBeltTime(state, Duration{state.now - before});
    }
    for (std::size_t i = 0; i < watch.runs.size(); ++i) {
        auto& run = watch.runs[i];
        if (isOnBelt(state, run.run->onFile.plan.run) || run.endedAt) {
            planRun(m, run);
        }
    }
    std::erase_if(watch.runs, [&](const RunWatch& run) {
        return run.endedAt && analytics::atLeast(Duration{state.now - *run.endedAt}, watch.settings.grace);
    });
}

void endStates(ProvingState& state) {
    state.watch.states.clear();
    for (auto& run : state.watch.runs) {
        if (!run.made) {
            continue;
        }
        state.watch.lastOfLot.emplace_back(run.run->lotId, run.made->pieces);
        run.firstOfLot = run.made->pieces + 1;
    }
}

void endWatch(Machine& m, const records::RunFinished& finished) {
    auto* run = watched(m.state, finished.run);
    if (run == nullptr || run->endedAt) {
        return;
    }
    run->endedAt = m.state.now;
    if (finished.made && *finished.made > 0) {
        run->made = analytics::PieceCount{*finished.made, analytics::CountSource::typed};
    }
    closeBrackets(m, *run);
}

const RunWatch* watchOf(const ProvingState& state, const std::string& run) {
    const auto& runs = state.watch.runs;
    const auto found =
        std::find_if(runs.begin(), runs.end(), [&](const RunWatch& one) { return one.run->onFile.plan.run == run; });
    return found == runs.end() ? nullptr : &*found;
}

const RunWatch* dueFirst(const ProvingState& state) {
    const RunWatch* first = nullptr;
    const auto rank = [](const RunWatch& run) {
        const auto& due = run.due->reading;
        return std::pair{!due.now, due.inPieces.value_or(INT32_MAX)};
    };
    for (const auto& one : state.belt) {
        const auto* run = watchOf(state, one->onFile.plan.run);
        if (run != nullptr && run->due && (first == nullptr || rank(*run) < rank(*first))) {
            first = run;
        }
    }
    return first;
}

} // namespace holdfast::kiosk::shop
