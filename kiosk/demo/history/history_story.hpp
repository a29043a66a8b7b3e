#pragma once

#include "kiosk/demo/history/history_judge.hpp"
#include "kiosk/demo/history/history_pen.hpp"
#include "kiosk/shop/deciding/instrument_holds.hpp"

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <vector>

/// What is known of the history while it is written down, and who writes which part of a day.
namespace holdfast::kiosk::demo::telling {

/// People by their numbers: see demo_people.cpp.
inline constexpr std::int64_t kMara = 2;
inline constexpr std::int64_t kOwner = 3;
inline constexpr std::int64_t kPacker = 4;
inline constexpr std::int64_t kNoor = 6;

/// Why somebody has to decide about a lot.
enum class Question { readings, stretch, wash, afterRecall, instrument, complaint, theirFault };

struct Decision final {
    std::size_t run = 0;
    Question question = Question::readings;
    HistoryMinute at = 0;
};

/// A run's lot as it stands.
struct OpenHold final {
    HistoryMinute at = 0;
    std::string id{};
    bool whole = true; ///< of the lot, not of a bracket
};
struct LotStory final {
    std::vector<OpenHold> openHolds{};
    std::optional<records::PieceRange> bracket{}; ///< of the held pieces, if they are not all
    bool unproven = false;
    bool scrapped = false; ///< the whole
    bool packed = false;
    int lots = 1;
    int tested = 0;
    int retained = 0;
    int lost = 0;    ///< pieces scrapped
    int reserve = 0; ///< kept back when it was packed
};

struct Story final {
    Story(const HistoryFacts& of, HistoryPen& with);

    const HistoryFacts& facts;
    HistoryPen& pen;
    HistoryJudge judge{};
    std::array<std::string, 3> dryers{};
    std::vector<std::string> runs{}; ///< ids, by their place among the facts; so are those below
    std::vector<std::string> lots{};
    std::vector<std::string> buckets{};
    std::vector<std::string> prints{};
    std::vector<std::string> loads{};
    std::vector<std::string> complaints{};
    std::vector<records::InstrumentDescribed> instruments{};
    std::vector<LotStory> stories{};                    ///< by run
    std::vector<std::vector<Decision>> decisions{};     ///< by day
    std::vector<std::vector<std::size_t>> readingsOf{}; ///< by run, in the order of time
    std::vector<std::vector<std::size_t>> missedOf{};
    std::vector<std::vector<std::size_t>> printsOfLoad{};
    std::vector<std::size_t> lastTestOf{};                   ///< by print
    std::vector<shop::deciding::DoubtfulReading> doubtful{}; ///< with the drifting probe, since its last good look
    std::int64_t nextPrint = 1;
    std::int64_t nextBin = 1;

    /// As many worked days later, early; if there are no more, the evening of the last.
    [[nodiscard]] HistoryMinute morningAfter(HistoryMinute at, int workedDays) const;
    void ask(std::size_t run, Question question, HistoryMinute at) {
        decisions[static_cast<std::size_t>(dayOf(at))].push_back({run, question, at});
    }
    /// Places a hold with its own bin.
    void hold(std::size_t run, HistoryMinute at, records::HoldCause cause, const std::string& because,
              const std::optional<records::PieceRange>& pieces, std::int64_t person);
};

/// The shop on the first day: people, dryers, inks, instruments with what was known of them, methods.
void tellOpening(Story& story, const std::string& probeAddress);
/// Crews, turns, buckets, plans, runs with their readings.
void tellFloor(Story& story, int day);
/// What follows from a run's readings: called once for each run when it has ended.
void tellRun(Story& story, std::size_t run);
/// A piece of each run of the day.
void tellRetained(Story& story, int day);
/// What was asked for on that day so far: decisions, and what was packed.
void tellDecisions(Story& story, int day);
/// Prints, loads and tests.
void tellBench(Story& story, int day);
/// Before the day's work: instruments in ice and in boiling water.
void tellChecks(Story& story, int day);
void tellComplaints(Story& story, int day);

/// Which of a list that is in the order of days are of this one: from the first up to, but not with, the second.
template <class Fact, class AtOf>
[[nodiscard]] std::pair<std::size_t, std::size_t> onDay(const std::vector<Fact>& all, int day, const AtOf& atOf) {
    const auto first = std::lower_bound(all.begin(), all.end(), day,
                                        [&](const Fact& one, int wanted) { return dayOf(atOf(one)) < wanted; });
    const auto last = std::find_if(first, all.end(), [&](const Fact& one) { return dayOf(atOf(one)) != day; });
    return {static_cast<std::size_t>(first - all.begin()), static_cast<std::size_t>(last - all.begin())};
}

} // namespace holdfast::kiosk::demo::telling
