#include "analytics/cure/way_counts.hpp"
#include "analytics/cure/ways_out_search.hpp"

#include <algorithm>
#include <cmath>
#include <limits>
#include <set>
#include <tuple>

namespace holdfast::analytics {
namespace {

/// Width below both ceilings in billionths of a kelvin, so that rounding never orders what is equal.
std::int64_t widthKey(const std::optional<Temperature>& upper, Temperature lower) {
    constexpr double kWidest = 1e9;
    if (!upper) {
        return std::numeric_limits<std::int64_t>::max();
    }
    return std::llround(std::clamp((*upper - lower).celsius(), -kWidest, kWidest) / kDecisionTolerance);
}

struct Ranked final {
    WayOut way;
    std::int64_t width = 0;
};

/// Order of ways alike in layers changed, bleed and ease: wider first, then by names.
bool comesBefore(const Ranked& a, const Ranked& b) {
    if (a.width != b.width) {
        return a.width > b.width;
    }
    const auto& left = a.way.changes;
    const auto& right = b.way.changes;
    for (std::size_t i = 0; i < left.size(); ++i) {
        if (left[i].to != right[i].to) {
            return left[i].to < right[i].to;
        }
    }
    for (std::size_t i = 0; i < left.size(); ++i) {
        if (left[i].position != right[i].position) {
            return left[i].position < right[i].position;
        }
    }
    return a.way.instrument < b.way.instrument;
}

Ranked rankedFrom(const Bundle& bundle, const WayCounts::Choice& chosen, bool showsBleed) {
    Ranked ranked;
    auto& way = ranked.way;
    way.instrument = bundle.instrument;
    way.upper = bundle.upper;
    way.bleedProvable = showsBleed;
    way.lower = bundle.keptLower ? *bundle.keptLower : chosen.front()->limit;
    for (std::size_t i = 0; i < chosen.size(); ++i) {
        way.changes.push_back({bundle.positions[i], {}, *chosen[i]->name});
        way.lower = std::max(way.lower, chosen[i]->limit);
    }
    ranked.width = widthKey(way.upper, way.lower);
    return ranked;
}

/// Puts bundles that change equally many layers in order, as far as there is room for their ways.
class Ranking final {
public:
    Ranking(std::vector<const Bundle*> bundles, std::size_t room) : m_bundles{std::move(bundles)}, m_room{room} {}

    [[nodiscard]] std::vector<WayOut> ways() {
        for (const bool showsBleed : {true, false}) {
            for (const auto& worst : worstEases()) {
                if (m_ways.size() < m_room) {
                    addBySum({showsBleed, worst, std::nullopt});
                }
            }
        }
        return std::move(m_ways);
    }

private:
    /// Every ease there is, best first; one empty entry where only the instrument changes.
    [[nodiscard]] std::vector<std::optional<int>> worstEases() const {
        std::set<int> eases;
        for (const auto* bundle : m_bundles) {
            for (const auto& options : bundle->options) {
                for (const auto& option : options) {
                    eases.insert(option.ease);
                }
            }
        }
        return eases.empty() ? std::vector<std::optional<int>>{std::nullopt}
                             : std::vector<std::optional<int>>{eases.begin(), eases.end()};
    }

    void addBySum(const WayFilter& filter) {
        std::vector<WayCounts> counts;
        std::map<std::int64_t, std::uint64_t> bySum;
        for (const auto* bundle : m_bundles) {
            counts.emplace_back(*bundle, filter, m_room);
            for (const auto& [sum, ways] : counts.back().bySum()) {
                bySum[sum] = cappedSum(bySum[sum], ways);
            }
        }
        for (const auto& [sum, ways] : bySum) {
            const auto left = m_room - m_ways.size();
            if (left == 0) {
                return;
            }
            if (ways <= left) {
                std::vector<Ranked> all;
                for (std::size_t i = 0; i < counts.size(); ++i) {
                    gather(all, *m_bundles[i], counts[i], sum, *filter.showsBleed);
                }
                append(std::move(all));
            } else {
                addByWidth(filter, sum);
            }
        }
    }

    /// More ways of one sum than there is room for: widest first, and of one width by names.
    void addByWidth(WayFilter filter, std::int64_t sum) {
        for (const auto& [width, members] : widths()) {
            std::vector<Ranked> alike;
            for (const auto& [bundle, lower] : members) {
                filter.lower = lower;
                gather(alike, *bundle, WayCounts{*bundle, filter, m_room}, sum, *filter.showsBleed);
            }
            append(std::move(alike));
            if (m_ways.size() == m_room) {
                return;
            }
        }
    }

    using Member = std::pair<const Bundle*, Temperature>;
    /// Every lower limit each bundle can have, by width, widest first.
    [[nodiscard]] std::map<std::int64_t, std::vector<Member>, std::greater<>> widths() const {
        std::map<std::int64_t, std::vector<Member>, std::greater<>> groups;
        for (const auto* bundle : m_bundles) {
            std::set<Temperature> lowers;
            for (const auto& options : bundle->options) {
                for (const auto& option : options) {
                    lowers.insert(bundle->keptLower ? std::max(*bundle->keptLower, option.limit) : option.limit);
                }
            }
            if (lowers.empty() && bundle->keptLower) {
                lowers.insert(*bundle->keptLower);
            }
            for (const auto lower : lowers) {
                groups[widthKey(bundle->upper, lower)].emplace_back(bundle, lower);
            }
        }
        return groups;
    }

    void gather(std::vector<Ranked>& into, const Bundle& bundle, const WayCounts& counts, std::int64_t sum,
                bool showsBleed) const {
        counts.visit(sum, m_room - m_ways.size(),
                     [&](const WayCounts::Choice& chosen) { into.push_back(rankedFrom(bundle, chosen, showsBleed)); });
    }

    void append(std::vector<Ranked> ranked) {
        std::sort(ranked.begin(), ranked.end(), comesBefore);
        for (auto& one : ranked) {
            if (m_ways.size() < m_room) {
                m_ways.push_back(std::move(one.way));
            }
        }
    }

    std::vector<const Bundle*> m_bundles;
    std::size_t m_room;
    std::vector<WayOut> m_ways;
};

std::uint64_t totalOf(const std::vector<Bundle>& bundles) {
    std::uint64_t total = 0;
    for (const auto& bundle : bundles) {
        for (const auto& [sum, ways] : WayCounts{bundle, {}, std::numeric_limits<std::size_t>::max()}.bySum()) {
            total = cappedSum(total, ways);
        }
    }
    return total;
}

} // namespace

WaysOut firstWays(const std::vector<Bundle>& bundles, std::size_t shown) {
    std::map<std::size_t, std::vector<const Bundle*>> byLayersChanged;
    for (const auto& bundle : bundles) {
        byLayersChanged[bundle.positions.size()].push_back(&bundle);
    }
    WaysOut found;
    for (auto& [changed, alike] : byLayersChanged) {
        auto ways = Ranking{std::move(alike), shown - found.ways.size()}.ways();
        std::move(ways.begin(), ways.end(), std::back_inserter(found.ways));
    }
    constexpr std::uint64_t kMost = std::numeric_limits<int>::max();
    found.leftOut = static_cast<int>(std::min(totalOf(bundles) - found.ways.size(), kMost));
    return found;
}

} // namespace holdfast::analytics
