#include "kiosk/shop/testing/due_week.hpp"

#include <algorithm>
#include <set>
#include <tuple>

namespace holdfast::kiosk::shop {
namespace {

using Key = std::tuple<std::string, std::string, std::optional<int>, std::string, DueStep>;

Key keyOf(const DueTest& due) {
    return {due.print, due.method, due.cycle, due.load, due.step};
}

NamedDue nameFor(const DueTest& due, const DueFacts& facts) {
    NamedDue out;
    out.due = due;
    const auto method = std::find_if(facts.methods.begin(), facts.methods.end(),
                                     [&](const auto& one) { return one.key == due.method; });
    if (method != facts.methods.end()) {
        out.method = *method;
    }
    const auto print = std::find_if(facts.prints.begin(), facts.prints.end(),
                                    [&](const auto& one) { return one.named.print == due.print; });
    if (print != facts.prints.end()) {
        out.print = print->named.number;
        out.run = print->runNumber;
    }
    return out;
}

} // namespace

TestsDue testsDue(const DueFacts& facts, const drivers::WallTime& now, int daysAhead, std::size_t named) {
    constexpr std::int64_t kMillisecondsADay = 86'400'000;
    TestsDue out;
    std::set<Key> today;
    for (const auto& due : dueTests(facts, now)) { // late ones first, longest first
        ++out.today;
        today.insert(keyOf(due));
        if (due.state != DueState::late) {
            continue;
        }
        ++out.late;
        if (out.latest.size() < named) {
            out.latest.push_back(nameFor(due, facts));
        }
    }
    const drivers::WallTime then{now.millisecondsSinceEpoch + daysAhead * kMillisecondsADay, now.utcOffsetMinutes};
    const auto later = dueTests(facts, then);
    out.soon = static_cast<int>(
        std::count_if(later.begin(), later.end(), [&](const auto& due) { return today.count(keyOf(due)) == 0; }));
    return out;
}

} // namespace holdfast::kiosk::shop
