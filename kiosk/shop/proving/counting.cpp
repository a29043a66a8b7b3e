#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>
#include <string>
#include <utility>

/// How many pieces of each run have gone onto the belt: by a counter, a number typed, or belt and time.
namespace holdfast::kiosk::shop {
namespace {

using analytics::Duration;

/// Adds a time at one speed; a speed nobody knows makes the whole count unknown.
void addTime(RunWatch& run, const analytics::BeltRan* span) {
    if (span == nullptr) {
        run.measured = false;
        run.ran.clear();
    } else if (run.measured && !run.ran.empty() && run.ran.back().metresPerMinute == span->metresPerMinute) {
        run.ran.back().running += span->running;
    } else if (run.measured) {
        run.ran.push_back(*span);
    }
}

/// From here on belt and time count.
void leaveCounter(RunWatch& run) {
    run.typed = std::exchange(run.pulsed, std::nullopt);
    run.leftByCounter = true;
    run.ran.clear();
    run.measured = true;
}

} // namespace

bool isRunTicket(const std::shared_ptr<const AnnouncedRun>& run) {
    return run->onFile.plan.kind == records::PlanKind::run;
}

std::optional<double> shareOfMetre(const ProvingState& state) {
    const auto& dryer = state.floor.dryer;
    if (!dryer || !dryer->described.piecesPerMetre || state.belt.empty()) {
        return std::nullopt;
    }
    return *dryer->described.piecesPerMetre / static_cast<double>(state.belt.size());
}

void countRun(ProvingState& state, RunWatch& run) {
    analytics::CountKnown known;
    known.counter = run.pulsed;
    known.typed = run.typed;
    known.ran = run.ran;
    known.piecesPerMetre = run.measured ? shareOfMetre(state) : std::nullopt;
    const int before = run.made ? run.made->pieces : 0;
    known.before = run.made ? std::optional{before} : std::nullopt;
    auto counted = analytics::countPieces(known);
    run.made = counted && (run.measured || run.typed || run.pulsed) ? std::optional{*counted} : std::nullopt;
    if (run.made && run.leftByCounter && run.made->source == analytics::CountSource::typed) {
        run.made->source = analytics::CountSource::rate; // nobody typed anything
    }
    const auto& planned = run.run->onFile.plan.pieces;
    if (run.made && planned && run.made->source == analytics::CountSource::rate) {
        run.made->pieces = std::min(run.made->pieces, std::max(*planned, before)); // a rate knows of no end
    }
    auto& of = stateOf(state, run);
    of.counted = of.counted && run.made.has_value();
    of.pieces += run.made ? std::max(0, run.made->pieces - before) : 0;
}

void addBeltTime(ProvingState& state, Duration time) {
    for (auto& of : state.watch.states) {
        of.ran += time;
    }
    const bool known = state.floor.dryer && state.floor.dryer->beltMetresPerMinute;
    const analytics::BeltRan span{known ? *state.floor.dryer->beltMetresPerMinute : 0.0, time};
    for (const auto& one : state.belt) {
        if (auto* run = isRunTicket(one) ? runWatch(state, one) : nullptr) {
            addTime(*run, known ? &span : nullptr);
            countRun(state, *run);
        }
    }
}

void onPiecesTyped(Machine& m, const PiecesTyped& event) {
    auto& state = m.state;
    const auto id = event.run.empty() && state.run ? state.run->onFile.plan.run : event.run;
    auto* run = isOnBelt(state, id) ? watched(state, id) : nullptr;
    const auto typed = std::to_string(event.pieces);
    if (run == nullptr) {
        m.refuse(RefusalCause::noRunToCount, typed);
        return;
    }
    analytics::CountKnown known;
    known.typed = event.pieces;
    known.before = run->made ? run->made->pieces : run->inBook;
    if (run->made && run->made->source == analytics::CountSource::rate) {
        known.before =
            std::max({run->inBook, run->lastRead.value_or(0), run->typed.value_or(0)}); // a rate may have gone ahead
    }
    const auto counted = analytics::countPieces(known);
    if (!counted) {
        const bool back = counted.error() == analytics::CountFault::runsBackwards;
        m.refuse(back ? RefusalCause::countRunsBackwards : RefusalCause::countUnusable, typed,
                 back ? std::optional{static_cast<std::uint64_t>(*known.before)} : std::nullopt);
        return;
    }
    auto& of = stateOf(state, *run);
    if (run->made) {
        of.pieces = std::max(0, of.pieces + *known.typed - run->made->pieces);
    }
    run->typed = event.pieces;
    run->leftByCounter = false;
    run->pulsed = state.watch.counterLive ? std::optional{event.pieces} : std::nullopt;
    run->ran.clear();
    run->measured = true;
    run->made = analytics::PieceCount{event.pieces, analytics::CountSource::typed};
    planRun(m, *run);
}

void onPiecesPulsed(ProvingState& state, int pieces) {
    const auto runs = std::count_if(state.belt.begin(), state.belt.end(), isRunTicket);
    if (pieces < 1 || state.floor.setUp) {
        return;
    }
    for (const auto& one : state.belt) {
        auto* run = isRunTicket(one) ? runWatch(state, one) : nullptr;
        if (run == nullptr || !run->pulsed) {
            continue;
        }
        if (runs > 1 || pieces > analytics::kMostPieces - *run->pulsed) {
            leaveCounter(*run);
        } else {
            *run->pulsed += pieces;
        }
        countRun(state, *run);
    }
}

void onCounterLink(ProvingState& state, bool live) {
    state.watch.counterLive = live;
    for (auto& run : state.watch.runs) {
        if (!live && run.pulsed) {
            leaveCounter(run);
        }
    }
}

} // namespace holdfast::kiosk::shop
