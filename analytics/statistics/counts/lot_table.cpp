#include "analytics/statistics/counts/lot_table.hpp"

#include <algorithm>
#include <numeric>
#include <tuple>

namespace holdfast::analytics::statistics {
namespace {

/// Running sum of failed − share failed in the lot's stratum.
void sumExcess(LotDesign& design) {
    std::vector<double> failed(design.strata.size(), 0.0);
    std::vector<double> lots(design.strata.size(), 0.0);
    const auto stratumOf = [&](std::size_t lot) {
        return static_cast<std::size_t>(design.stratumOf[static_cast<std::size_t>(design.episodeOf[lot])]);
    };
    for (std::size_t lot = 0; lot < design.failed.size(); ++lot) {
        failed[stratumOf(lot)] += design.failed[lot] ? 1.0 : 0.0;
        lots[stratumOf(lot)] += 1.0;
    }
    design.excess.assign(1, 0.0);
    for (std::size_t lot = 0; lot < design.failed.size(); ++lot) {
        const double share = failed[stratumOf(lot)] / lots[stratumOf(lot)];
        design.excess.push_back(design.excess.back() + (design.failed[lot] ? 1.0 : 0.0) - share);
    }
}

} // namespace

tl::expected<void, StatisticsFault> LotTable::add(bool failed, std::int32_t episode, std::span<const LevelId> levels,
                                                  std::int32_t stratum) {
    for (const LevelId level : levels)
        if (level < 0 || static_cast<std::size_t>(level) >= m_factorOf.size())
            return tl::unexpected(StatisticsFault::OutOfDomain);
    const auto first = static_cast<std::ptrdiff_t>(m_levels.size());
    m_levels.insert(m_levels.end(), levels.begin(), levels.end());
    std::sort(m_levels.begin() + first, m_levels.end());
    m_levels.erase(std::unique(m_levels.begin() + first, m_levels.end()), m_levels.end());
    m_start.push_back(m_levels.size());
    m_failed.push_back(failed ? 1 : 0);
    m_episode.push_back(episode);
    m_stratum.push_back(stratum);
    return {};
}

LotDesign designOf(const LotTable& table) {
    std::vector<std::size_t> order(table.lots());
    std::iota(order.begin(), order.end(), std::size_t{0});
    const auto key = [&](std::size_t lot) { return std::tuple{table.stratum(lot), table.episode(lot)}; };
    std::stable_sort(order.begin(), order.end(), [&](std::size_t l, std::size_t r) { return key(l) < key(r); });
    LotDesign design;
    design.columns.resize(table.levels());
    for (std::size_t i = 0; i < order.size(); ++i) {
        const std::size_t lot = order[i];
        const auto position = static_cast<std::int32_t>(i);
        if (i == 0 || table.stratum(lot) != table.stratum(order[i - 1]))
            design.strata.emplace_back();
        if (i == 0 || key(lot) != key(order[i - 1])) {
            design.strata.back().push_back(static_cast<std::int32_t>(design.start.size()));
            design.stratumOf.push_back(static_cast<std::int32_t>(design.strata.size() - 1));
            design.start.push_back(position);
        }
        design.episodeOf.push_back(static_cast<std::int32_t>(design.start.size() - 1));
        design.failed.push_back(table.failed(lot) ? 1 : 0);
        design.failures += table.failed(lot) ? 1 : 0;
        for (const LevelId level : table.levelsOf(lot))
            design.columns[static_cast<std::size_t>(level)].push_back(position);
    }
    design.start.push_back(design.lots());
    sumExcess(design);
    return design;
}

} // namespace holdfast::analytics::statistics
