#include "analytics/cure/valid_rows.hpp"

namespace holdfast::analytics::tracing {

namespace {

constexpr Duration kShortRun{10.0};

/// Rows [from, to) with nothing but lines between them.
struct Run final {
    std::size_t from = 0;
    std::size_t to = 0;
};

std::vector<Run> runsOf(const std::vector<Row>& rows, const StepRules& steps) {
    std::vector<Run> runs;
    std::size_t from = 0;
    for (std::size_t i = 1; i < rows.size(); ++i) {
        if (steps.joinOf(rows[i - 1], rows[i]) != Join::line) {
            runs.push_back({from, i});
            from = i;
        }
    }
    if (!rows.empty()) {
        runs.push_back({from, rows.size()});
    }
    return runs;
}

/// Keeps only the rows of these runs, which stand in order.
void keepOnly(std::vector<Row>& rows, const std::vector<Run>& runs, DropCounts& dropped) {
    std::size_t kept = 0;
    for (const Run& run : runs) {
        for (std::size_t i = run.from; i < run.to; ++i) {
            rows[kept++] = rows[i];
        }
    }
    countDrop(dropped, DropWhy::shortRun, rows.size() - kept);
    rows.resize(kept);
}

/// A run being put together from pieces that joined after what lay between them went.
struct Chain final {
    Row first;
    Row last;
    std::vector<Run> pieces;
};

class Sweeper final {
public:
    Sweeper(const std::vector<Row>& rows, const StepRules& steps) : m_rows{rows}, m_steps{steps} {}

    /// `next` follows; whatever it lets go, goes first.
    void take(const Run& next) {
        const Row& first = m_rows[next.from];
        while (m_chains.size() >= 2 && mayGo(first)) {
            m_chains.pop_back();
        }
        const Row& last = m_rows[next.to - 1];
        if (!m_chains.empty() && m_steps.joinOf(m_chains.back().last, first) == Join::line) {
            m_chains.back().pieces.push_back(next);
            m_chains.back().last = last;
        } else {
            m_chains.push_back({first, last, {next}});
        }
    }

    [[nodiscard]] std::vector<Run> left() const {
        std::vector<Run> runs;
        for (const Chain& chain : m_chains) {
            runs.insert(runs.end(), chain.pieces.begin(), chain.pieces.end());
        }
        return runs;
    }

private:
    [[nodiscard]] bool mayGo(const Row& after) const {
        const Chain& middle = m_chains.back();
        const Row& before = m_chains[m_chains.size() - 2].last;
        return m_steps.tooFastForProbe(middle.last, after) && m_steps.tooFastForProbe(before, middle.first) &&
               !m_steps.tooFastForProbe(before, after) && atLeast(kShortRun, middle.last.at - middle.first.at);
    }

    const std::vector<Row>& m_rows;
    const StepRules& m_steps;
    std::vector<Chain> m_chains;
};

} // namespace

void removeShortRuns(std::vector<Row>& rows, const StepRules& steps, DropCounts& dropped) {
    std::vector<Run> runs = runsOf(rows, steps);
    if (runs.size() == 1 && rows.size() >= kFewestSamples) {
        return;
    }
    std::erase_if(runs, [](const Run& run) { return run.to - run.from < kFewestSamples; });
    keepOnly(rows, runs, dropped);
    runs = runsOf(rows, steps);
    Sweeper sweeper{rows, steps};
    for (const Run& run : runs) {
        sweeper.take(run);
    }
    keepOnly(rows, sweeper.left(), dropped);
}

} // namespace holdfast::analytics::tracing
