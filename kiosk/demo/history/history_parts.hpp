#pragma once

#include "kiosk/demo/history/chance.hpp"
#include "kiosk/demo/history/history_model.hpp"

#include <array>
#include <optional>
#include <string>
#include <vector>

/// The parts of which the history is made, one after the other; each has chance of its own, so that what one part
/// draws does not move the next.
namespace holdfast::kiosk::demo::making {

struct Making final {
    const HistoryPlan& plan;
    HistoryFacts facts{};
    std::vector<bool> worked{}; ///< by day
    [[nodiscard]] Chance chance(std::uint64_t part) const noexcept {
        return Chance{plan.seed * 0x2545F4914F6CDD1DU + part};
    }
    [[nodiscard]] int daysBackOf(int day) const noexcept { return plan.days - day; }
    /// The first worked day from `day` on; plan.days if there is none.
    [[nodiscard]] int workedFrom(int day) const noexcept {
        while (day < plan.days && !worked[static_cast<std::size_t>(day)]) {
            ++day;
        }
        return day;
    }
    /// As many worked days later.
    [[nodiscard]] int workedLater(int day, int count) const noexcept {
        for (; count > 0 && day < plan.days; --count) {
            day = workedFrom(day + 1);
        }
        return day;
    }
};

[[nodiscard]] constexpr HistoryMinute at(int day, int hour, int minute) noexcept {
    return day * kMinutesADay + hour * 60 + minute;
}

void makeInstruments(Making& making);
void makeChecks(Making& making);
void makeBuckets(Making& making);
void makeRuns(Making& making);
void makeReadings(Making& making);
void makeTests(Making& making);
void makeComplaints(Making& making);

/// What buckets of an ink and colour are open on a day: a place in the list of buckets.
[[nodiscard]] std::optional<std::size_t> bucketOn(const HistoryFacts& facts, HistoryMinute when, Ink ink,
                                                  const std::string& colour);

} // namespace holdfast::kiosk::demo::making
