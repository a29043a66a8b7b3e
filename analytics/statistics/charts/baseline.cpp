#include "analytics/statistics/charts/baseline.hpp"

#include <algorithm>

namespace holdfast::analytics::statistics {

bool Baseline::says(ChartCaveat caveat) const {
    return std::find(caveats.begin(), caveats.end(), caveat) != caveats.end();
}

tl::expected<void, StatisticsFault> Baselines::keep(Baseline baseline) {
    if (baseline.name.empty() || m_kept.contains(baseline.name)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    auto name = baseline.name;
    m_kept.emplace(std::move(name), std::move(baseline));
    return {};
}

const Baseline* Baselines::find(const std::string& name) const {
    const auto found = m_kept.find(name);
    return found == m_kept.end() ? nullptr : &found->second;
}

} // namespace holdfast::analytics::statistics
