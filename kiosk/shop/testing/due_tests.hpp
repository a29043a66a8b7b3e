#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/records/test_queries.hpp"

#include <optional>
#include <string>
#include <vector>

/// What is to be done with which print, and by when.
namespace holdfast::kiosk::shop {

enum class DueStep {
    test,       ///< look at it, pull it, rub it
    putInDrum,  ///< a wash: its next cycle
    judgeLoad,  ///< a load has come out and nobody has looked at its witnesses
    gradeCycle, ///< a wash: it came out of a load that was judged
};

enum class DueState {
    now,   ///< its hour has come, or it waits on the bench
    by,    ///< later today: at `at`
    today, ///< any time today
    late,  ///< `day` has passed
};

struct DueTest final {
    DueStep step = DueStep::test;
    DueState state = DueState::today;
    std::string print{};        ///< id; empty of a load
    std::string method{};       ///< key; of a load its programme
    std::optional<int> cycle{}; ///< of a wash; of a bleed watch its hours
    std::string load{};         ///< id, of judgeLoad and gradeCycle
    std::int64_t loadNumber = 0;
    std::int64_t at = 0;   ///< wall milliseconds when it became, or becomes, due
    analytics::Date day{}; ///< the last day on which it is not late
};

/// A lot and a method that one of its prints, also one that has ended since, was tested by.
struct TestedLot final {
    std::string lot{};    ///< id
    std::string method{}; ///< key
};

/// What the list is made of. All of it as it stands in the book.
struct DueFacts final {
    std::vector<records::PrintRow> prints{};         ///< those that have not ended
    std::vector<records::MethodDescribed> methods{}; ///< not withdrawn
    std::vector<records::TestRow> tests{};           ///< of these prints and their lots, oldest first
    std::vector<records::LoadRow> loads{};           ///< of these prints, oldest first
    std::vector<TestedLot> testedLots{};
    std::vector<std::string> bleedingFabrics{}; ///< whose dye migrates: they owe a bleed watch
};

/// Late ones first, longest first; then what is to be done now, by an hour, today. A method for each lot is owed by one
/// print of the lot: the one that was begun with it, else the first that is neither retained nor a half. A series goes
/// on by itself until its programme's cycles, or its hours, are done or it failed; in a void load nothing was done. A
/// test is late once the day after which it could be done is over, and at least twelve hours later; a wash's next cycle
/// has until the day after.
[[nodiscard]] std::vector<DueTest> dueTests(const DueFacts& facts, const drivers::WallTime& now);

} // namespace holdfast::kiosk::shop
