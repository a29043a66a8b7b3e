#include "analytics/cure/valid_rows.hpp"

namespace holdfast::analytics::tracing {

UsableRows usableRows(const RawTrace& trace, const StepRules& steps, DropCounts& dropped) {
    UsableRows result;
    std::vector<Row>& rows = result.rows;
    rows.resize(trace.samples.size());
    Row* next = rows.data();
    const double low =
        trace.range ? trace.range->low.celsius() - kDecisionTolerance : -std::numeric_limits<double>::max();
    const double high =
        trace.range ? trace.range->high.celsius() + kDecisionTolerance : std::numeric_limits<double>::max();
    const MonotonicTime origin = trace.samples.empty() ? MonotonicTime{0} : trace.samples.front().at;
    Row before; // rows.back(), kept at hand
    for (const TraceSample& sample : trace.samples) {
        const double value = sample.indicated.celsius();
        if (sample.flagged) {
            countDrop(dropped, DropWhy::flagged);
        } else if (!std::isfinite(value)) {
            countDrop(dropped, DropWhy::notFinite);
        } else if (value < low || value > high) {
            countDrop(dropped, DropWhy::outOfRange);
        } else {
            const Row row{Duration{stepBetween(origin, sample.at)}, sample.indicated, sample.indicated};
            if (next != rows.data() && !steps.isPlain(before, row)) {
                if (before.at == row.at && before.indicated.celsius() == value) {
                    countDrop(dropped, DropWhy::duplicate);
                    continue;
                }
                result.plain = false;
            }
            *next++ = row;
            before = row;
        }
    }
    rows.resize(static_cast<std::size_t>(next - rows.data()));
    return result;
}

} // namespace holdfast::analytics::tracing
