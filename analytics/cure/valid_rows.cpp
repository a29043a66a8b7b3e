#include "analytics/cure/valid_rows.hpp"

namespace holdfast::analytics::tracing {

std::vector<Row> usableRows(const RawTrace& trace, DropCounts& dropped) {
    std::vector<Row> rows;
    rows.reserve(trace.samples.size());
    const double low =
        trace.range ? trace.range->low.celsius() - kDecisionTolerance : -std::numeric_limits<double>::max();
    const double high =
        trace.range ? trace.range->high.celsius() + kDecisionTolerance : std::numeric_limits<double>::max();
    const MonotonicTime origin = trace.samples.empty() ? MonotonicTime{0} : trace.samples.front().at;
    for (const TraceSample& sample : trace.samples) {
        const double value = sample.indicated.celsius();
        if (sample.flagged) {
            countDrop(dropped, DropWhy::flagged);
        } else if (!std::isfinite(value)) {
            countDrop(dropped, DropWhy::notFinite);
        } else if (value < low || value > high) {
            countDrop(dropped, DropWhy::outOfRange);
        } else {
            const Duration at{stepBetween(origin, sample.at)};
            if (!rows.empty() && rows.back().at == at && rows.back().indicated.celsius() == value) {
                countDrop(dropped, DropWhy::duplicate);
            } else {
                rows.push_back({at, sample.indicated, sample.indicated});
            }
        }
    }
    return rows;
}

} // namespace holdfast::analytics::tracing
