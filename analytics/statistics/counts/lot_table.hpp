#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <optional>
#include <span>
#include <vector>

namespace holdfast::analytics::statistics {

using LevelId = std::int32_t;  ///< 0, 1, … over all factors together: dryer 2, bucket 17, cloth lot 5
using FactorId = std::int32_t; ///< which kind of thing a level is

/// Lots, failed or not, and what each had part in; plain numbers, names stay with the caller. A lot may carry several
/// levels of one factor (a bucket and every bucket mixed into it), or none. Lots of one episode are given in the order
/// in which they ran. Persons are no factor (decisions 6).
class LotTable final {
public:
    /// `factorOf[level]` for every level there is.
    explicit LotTable(std::vector<FactorId> factorOf) : m_factorOf{std::move(factorOf)} {}

    /// `episode` any number, the same for all lots between a start, stop or setting change and the next; `stratum` any
    /// number, for lots that may only be compared with their like (0 for all when nothing is asked). A level twice
    /// counts once; one that does not exist is OutOfDomain and the lot is not taken.
    tl::expected<void, StatisticsFault> add(bool failed, std::int32_t episode, std::span<const LevelId> levels,
                                            std::int32_t stratum = 0);

    [[nodiscard]] std::size_t lots() const noexcept { return m_failed.size(); }
    [[nodiscard]] std::size_t levels() const noexcept { return m_factorOf.size(); }
    [[nodiscard]] FactorId factorOf(LevelId level) const noexcept {
        return m_factorOf[static_cast<std::size_t>(level)];
    }
    [[nodiscard]] bool failed(std::size_t lot) const noexcept { return m_failed[lot] != 0; }
    [[nodiscard]] std::int32_t episode(std::size_t lot) const noexcept { return m_episode[lot]; }
    [[nodiscard]] std::int32_t stratum(std::size_t lot) const noexcept { return m_stratum[lot]; }
    [[nodiscard]] std::span<const LevelId> levelsOf(std::size_t lot) const noexcept {
        return std::span{m_levels}.subspan(m_start[lot], m_start[lot + 1] - m_start[lot]);
    }

private:
    std::vector<FactorId> m_factorOf;
    std::vector<char> m_failed;
    std::vector<std::int32_t> m_episode;
    std::vector<std::int32_t> m_stratum;
    std::vector<std::size_t> m_start{0};
    std::vector<LevelId> m_levels;
};

/// The same lots in the order of their episodes, columns by level: what the methods over a LotTable share.
struct LotDesign {
    std::vector<std::int32_t> start;               ///< first lot of each episode, and the number of lots at the end
    std::vector<std::int32_t> stratumOf;           ///< of each episode, 0, 1, …
    std::vector<std::vector<std::int32_t>> strata; ///< the episodes of each stratum
    std::vector<double> excess; ///< running sum of failed − share failed in the stratum, one longer than the lots
    std::vector<std::vector<std::int32_t>> columns; ///< the lots that carry a level, rising
    std::vector<std::int32_t> episodeOf;            ///< of each lot
    std::vector<char> failed;                       ///< of each lot
    std::int64_t failures = 0;

    [[nodiscard]] std::int32_t lots() const noexcept { return static_cast<std::int32_t>(failed.size()); }
};

/// Cost: lots × log lots + levels of all lots. The same episode number in two strata is two episodes.
[[nodiscard]] LotDesign designOf(const LotTable& table);

} // namespace holdfast::analytics::statistics
