#include "analytics/cure/way_counts.hpp"

#include <limits>

namespace holdfast::analytics {
namespace {

constexpr unsigned kCarriesHardUpper = 1;
constexpr unsigned kAsksLower = 2;
constexpr unsigned kHidesBleed = 4;
constexpr unsigned kHasWorstEase = 8;

bool isAllowed(const Option& option, const WayFilter& filter) {
    return !(filter.showsBleed == true && !option.showsBleed) &&
           !(filter.worstEase && option.ease > *filter.worstEase) && !(filter.lower && option.limit > *filter.lower);
}

unsigned marksOf(const Option& option, const WayFilter& filter) {
    return (option.carriesHardUpper ? kCarriesHardUpper : 0U) | (option.limit == filter.lower ? kAsksLower : 0U) |
           (option.showsBleed ? 0U : kHidesBleed) | (option.ease == filter.worstEase ? kHasWorstEase : 0U);
}

/// Keeps the lowest sums until they hold that many ways.
void dropBeyond(std::map<std::int64_t, std::uint64_t>& counts, std::size_t room) {
    std::uint64_t held = 0;
    auto end = counts.begin();
    for (; end != counts.end() && held < room; ++end) {
        held = cappedSum(held, end->second);
    }
    counts.erase(end, counts.end());
}

} // namespace

std::uint64_t cappedSum(std::uint64_t a, std::uint64_t b) noexcept {
    constexpr auto kMost = std::numeric_limits<std::uint64_t>::max();
    return a > kMost - b ? kMost : a + b;
}

WayCounts::WayCounts(const Bundle& bundle, const WayFilter& filter, std::size_t room) {
    readKept(bundle, filter);
    readOptions(bundle, filter);
    count(room);
}

void WayCounts::readKept(const Bundle& bundle, const WayFilter& filter) {
    m_keptPasses = !(filter.showsBleed == true && !bundle.keptShowsBleed) &&
                   !(filter.lower && bundle.keptLower && *bundle.keptLower > *filter.lower);
    m_kept = (bundle.keptCarriesHardUpper ? kCarriesHardUpper : 0U) | (bundle.keptShowsBleed ? 0U : kHidesBleed) |
             (filter.lower && bundle.keptLower == filter.lower ? kAsksLower : 0U);
    m_needed = kCarriesHardUpper | (filter.lower ? kAsksLower : 0U) | (filter.showsBleed == false ? kHidesBleed : 0U) |
               (filter.worstEase ? kHasWorstEase : 0U);
}

void WayCounts::readOptions(const Bundle& bundle, const WayFilter& filter) {
    for (const auto& options : bundle.options) {
        auto& marked = m_options.emplace_back();
        for (const auto& option : options) {
            if (isAllowed(option, filter)) {
                marked.push_back({&option, marksOf(option, filter), filter.worstEase ? option.ease : 0});
            }
        }
    }
}

void WayCounts::count(std::size_t room) {
    m_from.resize(m_options.size() + 1);
    if (!m_keptPasses) {
        return;
    }
    m_from.back()[0][0] = 1;
    for (std::size_t layer = m_options.size(); layer-- > 0;) {
        for (Marks marks = 0; marks < kMarkSets; ++marks) {
            for (const auto& [sum, ways] : m_from[layer + 1][marks]) {
                for (const auto& marked : m_options[layer]) {
                    auto& here = m_from[layer][marks | marked.marks][sum + marked.ease];
                    here = cappedSum(here, ways);
                }
            }
        }
        for (auto& counts : m_from[layer]) {
            dropBeyond(counts, room);
        }
    }
}

std::map<std::int64_t, std::uint64_t> WayCounts::bySum() const {
    std::map<std::int64_t, std::uint64_t> all;
    for (Marks marks = 0; marks < kMarkSets; ++marks) {
        if (((marks | m_kept) & m_needed) != m_needed) {
            continue;
        }
        for (const auto& [sum, ways] : m_from.front()[marks]) {
            all[sum] = cappedSum(all[sum], ways);
        }
    }
    return all;
}

bool WayCounts::canEnd(std::size_t layer, Marks marks, std::int64_t sum) const {
    for (Marks later = 0; later < kMarkSets; ++later) {
        if (((marks | later) & m_needed) == m_needed && m_from[layer][later].count(sum) > 0) {
            return true;
        }
    }
    return false;
}

void WayCounts::visit(std::int64_t sum, std::size_t most, const std::function<void(const Choice&)>& take) const {
    Choice chosen;
    if (canEnd(0, m_kept, sum)) {
        descend(chosen, m_kept, sum, most, take);
    }
}

void WayCounts::descend(Choice& chosen, Marks marks, std::int64_t sum, std::size_t& left,
                        const std::function<void(const Choice&)>& take) const {
    const auto layer = chosen.size();
    if (left > 0 && layer == m_options.size()) {
        take(chosen);
        --left;
        return;
    }
    for (std::size_t i = 0; left > 0 && i < m_options[layer].size(); ++i) {
        const auto& marked = m_options[layer][i];
        const auto rest = sum - marked.ease;
        if (canEnd(layer + 1, marks | marked.marks, rest)) {
            chosen.push_back(marked.option);
            descend(chosen, marks | marked.marks, rest, left, take);
            chosen.pop_back();
        }
    }
}

} // namespace holdfast::analytics
