#include "analytics/cure/passes.hpp"

#include "analytics/cure/gap_bounds.hpp"

namespace holdfast::analytics::tracing {

namespace {

class Cutter final {
public:
    Cutter(Whole& whole, const TraceRules& rules) : m_whole{whole}, m_rules{rules} {}

    std::vector<Pass> cut(int& tail) {
        const std::size_t count = m_whole.samples.size();
        for (std::size_t i = 0; i < count; ++i) {
            const Temperature t = m_whole.samples[i].t;
            m_passed = m_passed || !atMost(t, m_rules.passFrom);
            if (!m_passed) {
                continue;
            }
            if (atMost(t, m_rules.passEnds)) {
                close(i + 1);
                m_from = i;
                m_shared = 1;
            } else if (endsBehind(i)) {
                close(i + 1);
                m_from = i + 1;
                m_shared = 0;
                m_beforeGap = m_whole.samples[i];
            }
        }
        closeRest(tail);
        return std::move(m_passes);
    }

private:
    /// A gap that may hide a bottom at or below 60 °C. Where the sample behind it is that cold itself, that sample ends
    /// the pass and shows the fall.
    [[nodiscard]] bool endsBehind(std::size_t i) const {
        if (i + 1 >= m_whole.samples.size() || m_whole.joins[i] != Join::gap) {
            return false;
        }
        const CleanSample& before = m_whole.samples[i];
        const CleanSample& after = m_whole.samples[i + 1];
        return !atMost(after.t, m_rules.passEnds) &&
               atMost(hiddenBottomOf(before, after, m_rules.filmRate), m_rules.passEnds);
    }

    void close(std::size_t to) {
        Pass pass;
        // What was hot behind a unit switch makes one more pass, which begins with the last sample of this one.
        const bool isLast = m_closingRest || !m_whole.hotAfterUnitSwitch;
        if (m_from == 0 && to == m_whole.samples.size() && isLast) {
            pass.samples = std::move(m_whole.samples);
            pass.joins = std::move(m_whole.joins);
            m_whole.samples.clear();
        } else {
            const auto at = [](auto& list, std::size_t i) { return list.begin() + static_cast<std::ptrdiff_t>(i); };
            pass.samples.assign(at(m_whole.samples, m_from), at(m_whole.samples, to));
            if (to > m_from + 1) {
                pass.joins.assign(at(m_whole.joins, m_from), at(m_whole.joins, to - 1));
            }
        }
        pass.medianInterval = m_whole.median;
        pass.startsHot = m_whole.startsHot;
        pass.unitInDoubt = m_whole.unitInDoubtFrom && *m_whole.unitInDoubtFrom < to;
        pass.everAbove80 = m_passed;
        pass.beforeLeadGap = m_beforeGap;
        pass.secondOrLater = !m_passes.empty();
        m_passes.push_back(std::move(pass));
        m_passed = false;
        m_beforeGap.reset();
    }

    void closeRest(int& tail) {
        const std::size_t count = m_whole.samples.size();
        const bool all = m_passes.empty();
        m_closingRest = true;
        m_passed = m_passed || m_whole.hotAfterUnitSwitch;
        if (m_passed || all) {
            close(count);
            m_passes.back().unitSwitchedAt = m_whole.unitSwitchedAt;
        } else {
            tail += static_cast<int>(count - std::min(count, m_from + m_shared));
        }
    }

    Whole& m_whole;
    const TraceRules& m_rules;
    std::vector<Pass> m_passes;
    std::size_t m_from = 0;
    std::size_t m_shared = 0; ///< samples of the rest that a pass already holds
    bool m_passed = false;
    bool m_closingRest = false;
    std::optional<CleanSample> m_beforeGap;
};

} // namespace

std::vector<Pass> cutIntoPasses(Whole whole, const TraceRules& rules, int& tail) {
    return Cutter{whole, rules}.cut(tail);
}

} // namespace holdfast::analytics::tracing
