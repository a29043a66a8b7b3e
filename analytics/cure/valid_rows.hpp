#pragma once

#include "analytics/cure/step_rules.hpp"

#include <cstdint>
#include <limits>
#include <span>

/// Steps 1 to 3 of decisions 3: which rows count. Private to this room.
namespace holdfast::analytics::tracing {

using DropCounts = std::array<int, kDropWhyCount>;

inline void countDrop(DropCounts& counts, DropWhy why, std::size_t many = 1) noexcept {
    counts[static_cast<std::size_t>(why)] += static_cast<int>(many);
}

/// b − a, at the ends of the range instead of overflowing: stamps may be anything.
[[nodiscard]] inline MonotonicTime stepBetween(MonotonicTime a, MonotonicTime b) noexcept {
    MonotonicTime::rep step = 0;
    if (__builtin_sub_overflow(b.count(), a.count(), &step)) {
        using Limits = std::numeric_limits<MonotonicTime::rep>;
        step = b > a ? Limits::max() : Limits::min();
    }
    return MonotonicTime{step};
}

struct UsableRows final {
    std::vector<Row> rows;
    bool plain = true; ///< no step between them that a rule could mind
};

/// Step 1: leaves out what is flagged, not finite, outside the range (its ends are inside) or equal in time and value
/// to the valid row before.
[[nodiscard]] UsableRows usableRows(const RawTrace& trace, const StepRules& steps, DropCounts& dropped);

/// Step 2: removes one to three samples whose step in and step out are too fast for a film while the step across is
/// not. Looks again with what is left, so a spike beside or inside another one changes nothing. Linear.
void removeSpikes(std::vector<Row>& rows, const StepRules& steps, DropCounts& dropped);

/// A run of fewer samples says nothing.
inline constexpr std::size_t kFewestSamples = 4;

/// Step 3: removes runs of fewer than four samples at once, then, from the left, runs of at most 10 s between two steps
/// too fast for a probe when the step across is not. Linear.
void removeShortRuns(std::vector<Row>& rows, const StepRules& steps, DropCounts& dropped);

/// Median of numbers in any order, the mean of the middle two for an even count; 0 for none. Linear; reorders nothing
/// the caller still needs.
[[nodiscard]] double medianOf(std::vector<std::int64_t>& values);

} // namespace holdfast::analytics::tracing
