#include "kiosk/demo/history/history_story.hpp"

#include <algorithm>

namespace holdfast::kiosk::demo::telling {

Story::Story(const HistoryFacts& of, HistoryPen& with) : facts{of}, pen{with} {
    stories.resize(facts.runs.size());
    readingsOf.resize(facts.runs.size());
    missedOf.resize(facts.runs.size());
    decisions.resize(static_cast<std::size_t>(facts.days));
    for (const auto& run : facts.runs) {
        runs.push_back(pen.newId(run.planned));
        lots.push_back(pen.newId(run.begins));
    }
    for (const auto& bucket : facts.buckets) {
        buckets.push_back(pen.newId(bucket.opened));
    }
    for (const auto& print : facts.prints) {
        prints.push_back(pen.newId(print.named));
    }
    for (const auto& load : facts.loads) {
        loads.push_back(pen.newId(load.washed));
    }
    for (const auto& complaint : facts.complaints) {
        complaints.push_back(pen.newId(complaint.received));
    }
    for (std::size_t i = 0; i < facts.readings.size(); ++i) {
        readingsOf[facts.readings[i].run].push_back(i);
    }
    printsOfLoad.resize(facts.loads.size());
    lastTestOf.resize(facts.prints.size());
    for (std::size_t i = 0; i < facts.tests.size(); ++i) {
        const auto& test = facts.tests[i];
        lastTestOf[test.print] = i;
        if (test.load) {
            printsOfLoad[*test.load].push_back(test.print);
        }
    }
    for (std::size_t i = 0; i < facts.missed.size(); ++i) {
        missedOf[facts.missed[i].run].push_back(i);
    }
}

HistoryMinute Story::morningAfter(HistoryMinute at, int workedDays) const {
    constexpr int kMorning = 7 * 60 + 40;
    constexpr int kEvening = 17 * 60 + 30;
    constexpr int kSoon = 20;
    int last = dayOf(at);
    for (int day = last + 1; day < facts.days && workedDays > 0; ++day) {
        const std::chrono::weekday weekday{facts.firstDay + std::chrono::days{day}};
        if (weekday != std::chrono::Saturday && weekday != std::chrono::Sunday) {
            last = day;
            --workedDays;
        }
    }
    return workedDays == 0 ? last * kMinutesADay + kMorning : std::max(at + kSoon, last * kMinutesADay + kEvening);
}

void Story::hold(std::size_t run, HistoryMinute at, records::HoldCause cause, const std::string& because,
                 const std::optional<records::PieceRange>& pieces, std::int64_t person) {
    records::HoldPlaced placed;
    placed.hold = pen.newId(at);
    placed.lot = lots[run];
    placed.cause = cause;
    placed.because = because;
    placed.pieces = pieces;
    placed.count = pieces && pieces->last ? *pieces->last - pieces->first + 1 : facts.runs[run].pieces;
    if (pieces) {
        placed.basis = records::CountBasis::rateAndTime;
    }
    placed.bin = nextBin++;
    stories[run].openHolds.push_back({at, placed.hold, !pieces.has_value()});
    pen.put(at, placed, person);
}

} // namespace holdfast::kiosk::demo::telling
