#include "kiosk/demo/history/history_story.hpp"

#include <algorithm>

/// What was decided about lots, and where their pieces went.
namespace holdfast::kiosk::demo::telling {
namespace {

using records::DecisionWord;
using records::PiecePlace;

constexpr int kPiecesACarton = 24;
constexpr int kKeptForDays = 120;
constexpr int kAlarmReserve = 2; ///< pieces that QA held back of the lot of the false alarm

/// The same for the same run, whatever happened before.
std::uint64_t drawOf(const Story& story, std::size_t run, std::uint64_t outOf) {
    return Chance{static_cast<std::uint64_t>(story.facts.runs[run].number)}.bits() % outOf;
}

void sign(Story& story, std::size_t run, HistoryMinute at, DecisionWord word, const char* reason,
          std::vector<std::int64_t> signers, bool belowLimit = false, const std::string& reRunLot = {}) {
    auto& lot = story.stories[run];
    records::DecisionSigned decision;
    decision.decision = story.pen.newId(at);
    decision.lot = story.lots[run];
    for (const auto& hold : lot.openHolds) {
        if (hold.at < at) {
            decision.holds.push_back(hold.id);
        }
    }
    decision.word = word;
    decision.reason = reason;
    decision.belowLimit = belowLimit;
    decision.signers = std::move(signers);
    decision.reRunLot = reRunLot.empty() ? std::nullopt : std::optional{reRunLot};
    const auto person = decision.signers.front();
    story.pen.put(at, decision, person);
    if (word != DecisionWord::recalled) {
        std::erase_if(lot.openHolds, [at](const OpenHold& hold) { return hold.at < at; });
        lot.bracket.reset();
    }
}

void move(Story& story, std::size_t run, HistoryMinute at, PiecePlace to, int count, std::int64_t person) {
    if (count <= 0) {
        return;
    }
    records::PiecesMoved moved;
    moved.lot = story.lots[run];
    moved.to = to;
    moved.count = count;
    if (to == PiecePlace::shipped) {
        const auto& of = story.facts.runs[run];
        moved.day = story.pen.dateOf(at);
        moved.customer = of.customer;
        for (int carton = 0; carton * kPiecesACarton < count; ++carton) {
            moved.cartons.push_back("C-" + std::to_string(of.number) + "-" + std::to_string(carton + 1));
        }
    }
    story.pen.put(at, moved, person);
}

/// What is held in brackets first, then the rest of the lot.
void scrapAll(Story& story, std::size_t run, HistoryMinute at, const char* reason) {
    auto& lot = story.stories[run];
    const bool inBrackets = !lot.openHolds.empty() && std::none_of(lot.openHolds.begin(), lot.openHolds.end(),
                                                                   [](const OpenHold& hold) { return hold.whole; });
    sign(story, run, at, DecisionWord::scrapped, reason, {kNoor});
    if (inBrackets) {
        sign(story, run, at + 1, DecisionWord::scrapped, reason, {kNoor});
    }
    lot.scrapped = true;
}

/// The held pieces go through the dryer again, as a lot of their own that is ridden once.
void reRun(Story& story, std::size_t run, HistoryMinute at, const char* reason) {
    const auto& of = story.facts.runs[run];
    auto& lot = story.stories[run];
    const auto pieces = lot.bracket.value_or(records::PieceRange{1, of.pieces});
    const auto plan = story.judge.planOf(of, story.facts);
    records::LotOpened again;
    again.lot = story.pen.newId(at);
    again.run = story.runs[run];
    again.number = ++lot.lots;
    again.dryer = story.dryers[static_cast<std::size_t>(of.dryer)];
    again.firstPiece = pieces.first;
    again.revisions = plan->revisions;
    story.pen.put(at, again, kNoor);
    sign(story, run, at, DecisionWord::reRun, reason, {kNoor}, false, again.lot);
    constexpr int kLater = 35;
    constexpr auto kAimed = analytics::TemperatureDifference::fromCelsius(6.0);
    ReadingFact fact;
    fact.run = run;
    fact.at = at + kLater;
    fact.piece = pieces.first;
    fact.seen = kAimed; // the shop's own probe, whatever the dryer's is worth today
    auto judged = story.judge.judge(fact, of, *plan, story.pen.dateOf(fact.at), nullptr);
    judged.taken.run = again.run;
    judged.taken.lot = again.lot;
    judged.taken.dryer = again.dryer;
    story.pen.putTrace(std::move(judged.trace));
    story.pen.put(fact.at, judged.taken);
    story.pen.put(fact.at + kLater,
                  records::LotClosed{again.lot, pieces.last.value_or(of.pieces), records::LotEnd::runEnded});
}

void decideReadings(Story& story, std::size_t run, HistoryMinute at) {
    auto& lot = story.stories[run];
    const auto& of = story.facts.runs[run];
    if (of.childrensWear && (lot.unproven || !lot.openHolds.empty())) {
        scrapAll(story, run, at, "children's wear: not proven, not shipped");
        return;
    }
    const bool held = !lot.openHolds.empty();
    if (held) {
        const auto draw = drawOf(story, run, 20);
        const bool part =
            lot.bracket && lot.bracket->first > 1 &&
            std::none_of(lot.openHolds.begin(), lot.openHolds.end(), [](const OpenHold& hold) { return hold.whole; });
        if (part && draw < 9) {
            lot.lost += *lot.bracket->last - lot.bracket->first + 1;
            sign(story, run, at, DecisionWord::scrapped, "the bracket is thrown away", {kNoor});
        } else if (draw < 17) {
            reRun(story, run, at, "through the dryer again, slower");
            return;
        } else {
            sign(story, run, at, DecisionWord::released, "the customer knows and takes it as it is", {kNoor, kOwner},
                 true);
            return;
        }
    }
    if (lot.unproven) {
        sign(story, run, held ? at + 3 : at, DecisionWord::released,
             story.missedOf[run].empty() ? "the readings around it are good"
                                         : "a reading was missed, the others are good",
             {drawOf(story, run, 2) == 0 ? kMara : kNoor});
    }
}

void decide(Story& story, const Decision& decision) {
    auto& lot = story.stories[decision.run];
    const auto run = decision.run;
    const auto at = decision.at;
    if (lot.scrapped) {
        return;
    }
    if (decision.question == Question::readings) {
        decideReadings(story, run, at);
        return;
    }
    if (lot.openHolds.empty()) {
        return;
    }
    const bool poured = std::binary_search(story.facts.planted.poured.begin(), story.facts.planted.poured.end(), run);
    switch (decision.question) {
    case Question::stretch:
        reRun(story, run, at, "it cracked when it was pulled: through the dryer again");
        break;
    case Question::wash:
    case Question::theirFault:
        sign(story, run, at, DecisionWord::recalled, "the print comes off in the wash", {kNoor});
        story.ask(run, Question::afterRecall, story.morningAfter(at, 5));
        break;
    case Question::afterRecall:
        if (poured || drawOf(story, run, 2) == 0) {
            scrapAll(story, run, at, "came back and is thrown away");
        } else {
            sign(story, run, at, DecisionWord::released, "the customer keeps it at half the price", {kNoor, kOwner},
                 true);
        }
        break;
    case Question::instrument:
        sign(story, run, at, DecisionWord::released, "the probe read too high; strips and washed pieces are good",
             {kNoor});
        break;
    case Question::complaint:
        sign(story, run, at, DecisionWord::released, "our retained piece washed five times is good", {kNoor});
        break;
    case Question::readings:
        break;
    }
}

/// The afternoon of the worked day after: counted, spoiled ones thrown away, the rest in cartons.
void pack(Story& story, std::size_t run, HistoryMinute at) {
    auto& lot = story.stories[run];
    const auto& of = story.facts.runs[run];
    lot.packed = true;
    const int spoiled = std::min(of.spoiled, of.pieces - lot.lost - lot.tested - lot.retained);
    const int left = of.pieces - lot.lost - spoiled - lot.tested - lot.retained;
    const bool keeps = story.facts.planted.alarmLoad != 0 && run == story.facts.planted.alarmRun;
    lot.reserve = keeps ? kAlarmReserve : 0;
    records::PiecesCounted counted;
    counted.lot = story.lots[run];
    counted.made = of.pieces;
    counted.here = lot.reserve;
    story.pen.put(at, counted, kPacker);
    move(story, run, at, PiecePlace::scrapped, lot.lost + spoiled + (lot.scrapped ? left : 0), kPacker);
    if (!lot.scrapped) {
        move(story, run, at, PiecePlace::shipped, left - lot.reserve, kPacker);
    }
}

/// A piece of every run, for four months.
void retain(Story& story, std::size_t run, HistoryMinute at) {
    const auto& of = story.facts.runs[run];
    if (of.pieces < 3) {
        return;
    }
    constexpr int kEndsSoon = 60; // days: what would run out in the weeks that follow is kept for longer
    const int day = dayOf(at) + kKeptForDays;
    const bool soon = day >= story.facts.days && day < story.facts.days + kEndsSoon;
    records::PrintNamed named;
    named.print = story.pen.newId(at);
    named.number = story.nextPrint++;
    named.run = story.runs[run];
    named.lot = story.lots[run];
    named.piece = 5;
    named.printedAt = story.pen.wallOf(of.begins + 4);
    const auto until = story.pen.dateOf(at) + std::chrono::days{kKeptForDays + (soon ? kEndsSoon : 0)};
    named.retained =
        records::RetainedPlace{std::string{"DEFG"}.substr(static_cast<std::size_t>(dayOf(at) / 90) % 4, 1) + " " +
                                   std::to_string(1 + dayOf(at) / 15 % 6),
                               until, false};
    story.pen.put(at, named, kMara);
    move(story, run, at, PiecePlace::retained, 1, kMara);
    story.stories[run].retained += 1;
    if (day < story.facts.days) {
        story.pen.put(at + kKeptForDays * kMinutesADay,
                      records::PrintChanged{named.print, std::nullopt, records::PrintEnd::thrownAway}, kMara);
    }
}

} // namespace

void tellRetained(Story& story, int day) {
    const auto [first, last] = onDay(story.facts.runs, day, [](const RunFact& one) { return one.begins; });
    for (auto i = first; i < last; ++i) {
        retain(story, i, story.facts.runs[i].ends + 15);
    }
}

void tellDecisions(Story& story, int day) {
    auto& due = story.decisions[static_cast<std::size_t>(day)];
    for (std::size_t i = 0; i < due.size(); ++i) { // deciding may ask for more on the same day
        const auto decision = due[i];
        decide(story, decision);
        if (decision.question == Question::readings && !story.stories[decision.run].packed) {
            pack(story, decision.run, std::max(decision.at + 10, day * kMinutesADay + 15 * 60 + 30));
        }
    }
    due.clear();
}

} // namespace holdfast::kiosk::demo::telling
