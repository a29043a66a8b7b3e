#include "kiosk/demo/history/history_story.hpp"
#include "kiosk/records/lot_state.hpp"

#include <algorithm>
#include <cmath>

/// What was written down at the dryers.
namespace holdfast::kiosk::demo::telling {
namespace {

using analytics::AuthoredTemperature;
using analytics::Word;
using records::FloorAction;

AuthoredTemperature setPointOf(analytics::Temperature t) {
    return {std::round(t.fahrenheit()), analytics::TemperatureUnit::fahrenheit};
}

FloorAction actionOf(Turn turn) {
    switch (turn) {
    case Turn::started:
        return FloorAction::started;
    case Turn::stopped:
        return FloorAction::feedStopped;
    case Turn::hotter:
        return FloorAction::hotter;
    case Turn::cooler:
        return FloorAction::cooler;
    case Turn::beltFaster:
        return FloorAction::beltFaster;
    case Turn::beltSlower:
        return FloorAction::beltSlower;
    case Turn::repaired:
        break;
    }
    return FloorAction::problem;
}

void tellTurns(Story& story, int day) {
    const auto [first, last] = onDay(story.facts.turns, day, [](const TurnFact& one) { return one.at; });
    for (auto i = first; i < last; ++i) {
        const auto& turn = story.facts.turns[i];
        records::ActionTaken action;
        action.dryer = story.dryers[static_cast<std::size_t>(turn.dryer)];
        action.action = actionOf(turn.turn);
        if (turn.turn == Turn::beltFaster || turn.turn == Turn::beltSlower) {
            action.beltMetresPerMinute = turn.beltMetresPerMinute;
        }
        if (turn.turn == Turn::hotter || turn.turn == Turn::cooler) {
            action.setPoint = setPointOf(turn.setPoint);
        }
        story.pen.put(turn.at, action);
    }
}

void tellCrews(Story& story, int day) {
    const bool odd = day % 2 != 0;
    story.pen.put(day * kMinutesADay + 6 * 60 + 25,
                  records::CrewChanged{odd ? std::vector<std::int64_t>{4, 5} : std::vector<std::int64_t>{1, 2}, 0});
    story.pen.put(day * kMinutesADay + 13 * 60 + 5,
                  records::CrewChanged{odd ? std::vector<std::int64_t>{1, 7} : std::vector<std::int64_t>{4, 8},
                                       day % 3 == 0 ? 1 : 0});
}

void tellBuckets(Story& story, int day) {
    for (std::size_t i = 0; i < story.facts.buckets.size(); ++i) {
        const auto& bucket = story.facts.buckets[i];
        if (dayOf(bucket.opened) == day && bucket.parts.empty()) {
            records::BucketOpened opened;
            opened.bucket = story.buckets[i];
            opened.number = bucket.number;
            opened.family = nameOf(bucket.label);
            opened.colour = bucket.colour;
            opened.batch = bucket.batch;
            opened.expiry = story.pen.dateOf(bucket.opened) + std::chrono::days{180};
            story.pen.put(bucket.opened, opened);
        } else if (dayOf(bucket.opened) == day) {
            records::MixMade mix{story.buckets[i], bucket.number, bucket.name, bucket.colour, {}, {}, {}};
            for (const auto& part : bucket.parts) {
                mix.parts.push_back({story.buckets[part.bucket], part.mass});
            }
            story.pen.put(bucket.opened, mix);
        }
        if (dayOf(bucket.closed) == day) {
            const auto why = bucket.why == Emptied::used         ? records::BucketEnd::empty
                             : bucket.why == Emptied::thrownAway ? records::BucketEnd::thrownAway
                                                                 : records::BucketEnd::mislabelled;
            story.pen.put(bucket.closed, records::BucketClosed{story.buckets[i], why});
        }
    }
}

void plan(Story& story, std::size_t which) {
    const auto& run = story.facts.runs[which];
    records::RunPlanned planned;
    planned.run = story.runs[which];
    planned.number = run.number;
    planned.title = run.title;
    planned.customer = run.customer;
    planned.reference = "B-" + std::to_string(run.number - 10'000);
    planned.garmentColour = run.garment;
    planned.clothLot = run.clothLot;
    planned.finish = run.finish == Finish::none ? "" : nameOf(run.finish);
    planned.pieces = run.pieces;
    planned.dryer = story.dryers[static_cast<std::size_t>(run.dryer)];
    planned.fabric = nameOf(run.cloth);
    planned.childrensWear = run.childrensWear;
    for (const auto& layer : run.layers) {
        records::PlannedLayer one;
        one.colour = layer.colour;
        one.ink = nameOf(layer.ink);
        one.parts = {{nameOf(layer.ink), 1.0}};
        one.underbase = layer.underbase;
        if (layer.bucket) {
            const auto& bucket = story.facts.buckets[*layer.bucket];
            one.ink = bucket.name.empty() ? one.ink : bucket.name;
            one.buckets = {bucket.number};
        }
        planned.layers.push_back(std::move(one));
    }
    story.pen.put(run.planned, planned);
}

void openLot(Story& story, std::size_t which) {
    const auto& run = story.facts.runs[which];
    const auto& episode = story.facts.episodes[run.episode];
    records::LotOpened lot;
    lot.lot = story.lots[which];
    lot.run = story.runs[which];
    lot.dryer = story.dryers[static_cast<std::size_t>(run.dryer)];
    lot.firstPiece = 1;
    lot.revisions = story.judge.planOf(run, story.facts)->revisions;
    lot.setPoint = setPointOf(episode.setPoint);
    lot.beltMetresPerMinute = episode.beltMetresPerMinute;
    story.pen.put(run.begins - 4, lot);
}

/// A run while its readings are written.
struct Ridden final {
    std::vector<std::string> ids{}; ///< by their place among the run's readings
    std::vector<analytics::Verdict> verdicts{};
    records::LotOnFile lot{};
};

bool isBad(Word word) {
    return word == Word::underCured || word == Word::overheated;
}

std::optional<std::size_t> placeOf(const std::vector<std::size_t>& places, std::optional<std::size_t> wanted) {
    const auto found = wanted ? std::find(places.begin(), places.end(), *wanted) : places.end();
    return found == places.end() ? std::nullopt : std::optional{static_cast<std::size_t>(found - places.begin())};
}

void noteForDoubt(Story& story, const ReadingFact& fact, const std::string& id, JudgedReading& judged,
                  const JudgedPlan& plan) {
    const auto& instrument = story.facts.instruments[fact.instrument];
    if (instrument.name != std::string{kInstrumentDrift.instrument}) {
        return;
    }
    shop::deciding::DoubtfulReading doubt;
    doubt.id = id;
    doubt.takenAt = story.pen.wallOf(fact.at);
    doubt.taken = judged.taken;
    doubt.doubt = analytics::ReadingInDoubt{plan.plan, std::move(judged.evidence), 1, std::nullopt, {}};
    doubt.calibration = story.judge.calibration(fact.instrument, story.pen.dateOf(fact.at));
    story.doubtful.push_back(std::move(doubt));
}

void ride(Story& story, std::size_t which, Ridden& ridden) {
    const auto& run = story.facts.runs[which];
    const auto plan = story.judge.planOf(run, story.facts);
    const auto& places = story.readingsOf[which];
    for (const auto place : places) {
        const auto& fact = story.facts.readings[place];
        const auto first = placeOf(places, fact.retakeOf);
        auto judged =
            story.judge.judge(fact, run, *plan, story.pen.dateOf(fact.at), first ? &ridden.verdicts[*first] : nullptr);
        auto& taken = judged.taken;
        taken.run = story.runs[which];
        taken.lot = story.lots[which];
        taken.dryer = story.dryers[static_cast<std::size_t>(run.dryer)];
        taken.retakeOf = first ? std::optional{ridden.ids[*first]} : std::nullopt;
        ridden.ids.push_back(story.pen.newId(fact.at));
        const auto& verdict = *taken.verdict;
        ridden.lot.readings.push_back({ridden.ids.back(), verdict.word, false, verdict.couldProve,
                                       fact.asked == Asked::setUp, taken.retakeOf.value_or(""), false, false,
                                       isBad(verdict.word)});
        ridden.verdicts.push_back(verdict);
        if (!judged.trace.empty()) {
            story.pen.putTrace(std::move(judged.trace));
        }
        story.pen.put(fact.at, taken, 0, ridden.ids.back());
        noteForDoubt(story, fact, ridden.ids.back(), judged, *plan);
    }
}

/// From after the last proven piece to before the next (decisions 5).
records::PieceRange bracketOf(const Story& story, std::size_t which, const Ridden& ridden, std::size_t bad) {
    const auto& places = story.readingsOf[which];
    records::PieceRange pieces{1, story.facts.runs[which].pieces};
    for (std::size_t i = 0; i < places.size(); ++i) {
        const int piece = story.facts.readings[places[i]].piece;
        if (ridden.verdicts[i].word != Word::cured || piece == 0) {
            continue;
        }
        if (i < bad) {
            pieces.first = piece + 1;
        } else if (i > bad) {
            pieces.last = std::max(piece - 1, story.facts.readings[places[bad]].piece);
            break;
        }
    }
    return pieces;
}

void answerBad(Story& story, std::size_t which, const Ridden& ridden) {
    const auto& places = story.readingsOf[which];
    for (std::size_t i = 0; i < places.size(); ++i) {
        const auto& fact = story.facts.readings[places[i]];
        if (!isBad(ridden.verdicts[i].word) || fact.asked == Asked::setUp) {
            continue;
        }
        const auto pieces = bracketOf(story, which, ridden, i);
        story.hold(which, fact.at, records::HoldCause::reading, ridden.ids[i], pieces, 0);
        records::ActionTaken pulled;
        pulled.dryer = story.dryers[static_cast<std::size_t>(story.facts.runs[which].dryer)];
        pulled.action = FloorAction::pulled;
        pulled.pieces = *pieces.last - pieces.first + 1;
        pulled.answers = ridden.ids[i];
        story.pen.put(fact.at + 2, pulled);
        auto& bracket = story.stories[which].bracket;
        bracket = bracket ? records::PieceRange{std::min(bracket->first, pieces.first),
                                                std::max(*bracket->last, *pieces.last)}
                          : pieces;
    }
}

void noteMissed(Story& story, std::size_t which) {
    for (const auto place : story.missedOf[which]) {
        const auto& missed = story.facts.missed[place];
        const auto due = missed.last ? records::DueReadingKind::last : records::DueReadingKind::pieces;
        story.pen.put(missed.at, records::ReadingMissed{story.lots[which], due, missed.piece});
    }
}

} // namespace

void tellRun(Story& story, std::size_t which) {
    const auto& run = story.facts.runs[which];
    openLot(story, which);
    Ridden ridden;
    ride(story, which, ridden);
    answerBad(story, which, ridden);
    noteMissed(story, which);
    story.pen.put(run.ends, records::LotClosed{story.lots[which], run.pieces, records::LotEnd::runEnded});
    story.pen.put(run.ends, records::RunFinished{story.runs[which], run.pieces, run.spoiled});
    ridden.lot.closed = true;
    ridden.lot.childrensWear = run.childrensWear;
    ridden.lot.missed = static_cast<int>(story.missedOf[which].size());
    auto& lot = story.stories[which];
    const auto state = records::lotState(ridden.lot);
    lot.unproven = state != records::LotState::cleared;
    story.ask(which, Question::readings, story.morningAfter(run.ends, 1));
}

void tellFloor(Story& story, int day) {
    const auto [planned, plannedEnd] = onDay(story.facts.runs, day, [](const RunFact& one) { return one.planned; });
    for (auto i = planned; i < plannedEnd; ++i) {
        plan(story, i);
    }
    const auto [first, last] = onDay(story.facts.runs, day, [](const RunFact& one) { return one.begins; });
    if (first == last) {
        return;
    }
    tellCrews(story, day);
    tellTurns(story, day);
    tellBuckets(story, day);
    for (auto i = first; i < last; ++i) {
        tellRun(story, i);
    }
}

} // namespace holdfast::kiosk::demo::telling
