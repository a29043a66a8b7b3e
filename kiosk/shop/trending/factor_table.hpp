#pragma once

#include "analytics/statistics/counts/shared_failures.hpp"
#include "kiosk/shop/trending/suspects.hpp"

#include <map>
#include <vector>

namespace holdfast::kiosk::shop::trending {

/// Units that failed or did not with the levels they carry, for one ranking. Lots for what a lot is printed with;
/// a lot as far as an instrument read it, or at a place of the belt, or as far as a load washed it, for those.
class FactorTable final {
public:
    /// The number of a level, new or known.
    [[nodiscard]] analytics::statistics::LevelId of(const FactorLevel& level);
    void add(bool failed, std::int32_t episode, const std::vector<FactorLevel>& levels, std::int32_t stratum = 0);
    [[nodiscard]] const FactorLevel& level(analytics::statistics::LevelId id) const {
        return m_levels[static_cast<std::size_t>(id)];
    }
    [[nodiscard]] analytics::statistics::LotTable table() const;
    [[nodiscard]] bool empty() const noexcept { return m_units.empty(); }

private:
    struct Unit final {
        bool failed = false;
        std::int32_t episode = 0;
        std::int32_t stratum = 0;
        std::vector<analytics::statistics::LevelId> levels{};
    };
    std::vector<FactorLevel> m_levels{};
    std::map<std::pair<FactorKind, std::string>, analytics::statistics::LevelId> m_ids{};
    std::vector<Unit> m_units{};
};

[[nodiscard]] FactorLevel dryerLevel(const TrendFacts& facts, FactIndex dryer);
[[nodiscard]] FactorLevel instrumentLevel(const TrendFacts& facts, FactIndex instrument);
[[nodiscard]] FactorLevel bucketLevel(const TrendFacts& facts, FactIndex bucket);
[[nodiscard]] FactorLevel loadLevel(const TrendFacts& facts, FactIndex load);
[[nodiscard]] FactorLevel positionLevel(records::BeltPosition position);
/// Dryer, buckets, families, cloth, cloth lot, finish: what a lot is printed with.
[[nodiscard]] std::vector<FactorLevel> printedWith(const TrendFacts& facts, FactIndex lot);

/// The tables of a question: printed with; instruments (with their like) and positions, within a dryer; loads; shifts.
[[nodiscard]] std::vector<FactorTable> factorTables(const TrendFacts& facts, const std::vector<LotOutcome>& outcomes,
                                                    bool shift);

} // namespace holdfast::kiosk::shop::trending
