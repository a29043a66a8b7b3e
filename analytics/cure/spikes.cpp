#include "analytics/cure/valid_rows.hpp"

namespace holdfast::analytics::tracing {

namespace {

constexpr std::size_t kLongestSpike = 3;

/// How many of the last `count` rows, 0 to 3, are a spike now that `after` follows them.
std::size_t spikeBefore(const Row* rows, std::size_t count, const Row& after, const StepRules& steps) {
    if (count < 2 || !steps.tooFastForFilm(rows[count - 1], after)) {
        return 0;
    }
    for (std::size_t length = 1; length <= kLongestSpike && length < count; ++length) {
        const Row& first = rows[count - length];
        const Row& before = rows[count - length - 1];
        if (steps.tooFastForFilm(before, first) && !steps.tooFastForFilm(before, after)) {
            return length;
        }
    }
    return 0;
}

} // namespace

void removeSpikes(std::vector<Row>& rows, const StepRules& steps, DropCounts& dropped) {
    std::size_t kept = 0;
    for (std::size_t i = 0; i < rows.size(); ++i) {
        const std::size_t spike = spikeBefore(rows.data(), kept, rows[i], steps);
        countDrop(dropped, DropWhy::spike, spike);
        kept -= spike;
        rows[kept++] = rows[i];
    }
    rows.resize(kept);
}

} // namespace holdfast::analytics::tracing
