#include "analytics/cure/trace_facts.hpp"

#include <algorithm>
#include <limits>

namespace holdfast::analytics {

namespace {

constexpr std::size_t kFewest = 3;
constexpr Duration kShortest{2.0};

/// Minimum of a window whose two ends only move forward: a queue of samples, each below all that follow it.
class SlidingMinimum final {
public:
    void add(std::size_t index, double value) {
        while (m_queue.size() > m_front && m_queue.back().value >= value) {
            m_queue.pop_back();
        }
        m_queue.push_back({index, value});
    }
    [[nodiscard]] double from(std::size_t index) {
        while (m_queue[m_front].index < index) {
            ++m_front;
        }
        return m_queue[m_front].value;
    }
    void clear() {
        m_queue.clear();
        m_front = 0;
    }

private:
    struct Entry final {
        std::size_t index = 0;
        double value = 0.0;
    };
    std::vector<Entry> m_queue;
    std::size_t m_front = 0;
};

struct Best final {
    double level = -std::numeric_limits<double>::infinity();
    std::size_t from = 0;
    bool found = false;
};

/// Looks through [from, to), samples joined by lines. The shortest stretch from each start is enough: a longer one is
/// never higher.
void searchRun(const std::vector<CleanSample>& samples, std::size_t from, std::size_t to, SlidingMinimum& minimum,
               Best& best) {
    minimum.clear();
    std::size_t end = from;
    for (std::size_t start = from; start + kFewest <= to; ++start) {
        while (end < to && (end < start + kFewest || !atLeast(samples[end - 1].at - samples[start].at, kShortest))) {
            minimum.add(end, samples[end].t.celsius());
            ++end;
        }
        if (!atLeast(samples[end - 1].at - samples[start].at, kShortest)) {
            return;
        }
        const double level = minimum.from(start);
        if (level > best.level) {
            best = {level, start, true};
        }
    }
}

/// Searches what is joined by lines around `top`, as far as two of the shortest stretches go: a good first level, so
/// that the rest of the pass is passed over quickly.
void searchAround(const Pass& pass, std::size_t top, SlidingMinimum& minimum, Best& best) {
    const auto& samples = pass.samples;
    const auto near = [&](std::size_t i) { return atLeast(2.0 * kShortest, samples[top].at - samples[i].at); };
    std::size_t from = top;
    while (from > 0 && pass.joins[from - 1] == Join::line && near(from - 1)) {
        --from;
    }
    std::size_t to = top + 1;
    while (to < samples.size() && pass.joins[to - 1] == Join::line &&
           atLeast(2.0 * kShortest, samples[to].at - samples[top].at)) {
        ++to;
    }
    searchRun(samples, from, to, minimum, best);
}

} // namespace

std::optional<PeakAt> sustainedPeak(const Pass& pass) {
    const auto& samples = pass.samples;
    if (samples.empty()) {
        return std::nullopt;
    }
    const auto top = std::max_element(samples.begin(), samples.end(), [](const CleanSample& a, const CleanSample& b) {
        return a.t.celsius() < b.t.celsius();
    });
    SlidingMinimum minimum;
    Best best;
    searchAround(pass, static_cast<std::size_t>(top - samples.begin()), minimum, best);
    std::size_t from = 0;
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const bool lower = !(samples[i].t.celsius() > best.level);
        if (lower || i + 1 == samples.size() || pass.joins[i] != Join::line) {
            if (const std::size_t to = lower ? i : i + 1; to >= from + kFewest) {
                searchRun(samples, from, to, minimum, best);
            }
            from = i + 1;
        }
    }
    if (!best.found) {
        return std::nullopt;
    }
    while (best.from > 0 && pass.joins[best.from - 1] == Join::line &&
           samples[best.from - 1].t.celsius() >= best.level) {
        --best.from;
    }
    std::size_t hottest = best.from;
    for (std::size_t i = best.from; i < samples.size() && samples[i].t.celsius() >= best.level; ++i) {
        if (samples[i].t.celsius() > samples[hottest].t.celsius()) {
            hottest = i;
        }
        if (i < pass.joins.size() && pass.joins[i] != Join::line) {
            break;
        }
    }
    return PeakAt{Temperature::fromCelsius(best.level), samples[hottest].at};
}

} // namespace holdfast::analytics
