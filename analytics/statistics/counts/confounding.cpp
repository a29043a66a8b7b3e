#include "analytics/statistics/counts/confounding.hpp"

#include <algorithm>
#include <unordered_map>

namespace holdfast::analytics::statistics {
namespace {

using Column = std::vector<std::int32_t>;

/// splitmix64 (Steele, Lea and Flood, OOPSLA 2014): one fixed number a lot.
std::uint64_t numberOf(std::int32_t lot) noexcept {
    std::uint64_t z = (static_cast<std::uint64_t>(lot) + 1) * 0x9E3779B97F4A7C15ULL;
    z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9ULL;
    z = (z ^ (z >> 27)) * 0x94D049BB133111EBULL;
    return z ^ (z >> 31);
}

std::uint64_t sumOf(const Column& column) noexcept {
    std::uint64_t sum = 0;
    for (const std::int32_t lot : column)
        sum += numberOf(lot);
    return sum;
}

bool complementary(const Column& left, const Column& right, std::int32_t lots) noexcept {
    if (left.size() + right.size() != static_cast<std::size_t>(lots))
        return false;
    std::size_t l = 0;
    std::size_t r = 0;
    for (std::int32_t lot = 0; lot < lots; ++lot) {
        const bool inLeft = l < left.size() && left[l] == lot;
        const bool inRight = r < right.size() && right[r] == lot;
        if (inLeft == inRight)
            return false;
        l += inLeft ? 1 : 0;
        r += inRight ? 1 : 0;
    }
    return true;
}

/// A class says something as soon as two of it are the same column, or of different factors.
bool saysSomething(const LotTable& table, const std::vector<TwinLevel>& twins) {
    for (std::size_t i = 0; i < twins.size(); ++i)
        for (std::size_t j = i + 1; j < twins.size(); ++j)
            if (twins[i].complement == twins[j].complement ||
                table.factorOf(twins[i].level) != table.factorOf(twins[j].level))
                return true;
    return false;
}

} // namespace

std::vector<std::vector<TwinLevel>> levelsNotToldApart(const LotTable& table, const LotDesign& design) {
    std::uint64_t every = 0;
    for (std::int32_t lot = 0; lot < design.lots(); ++lot)
        every += numberOf(lot);
    std::vector<std::vector<TwinLevel>> classes;
    std::unordered_map<std::uint64_t, std::size_t> classOf;
    for (std::size_t i = 0; i < design.columns.size(); ++i) {
        const Column& column = design.columns[i];
        if (column.empty())
            continue;
        const std::uint64_t sum = sumOf(column);
        const auto [found, isNew] = classOf.try_emplace(std::min(sum, every - sum), classes.size());
        if (isNew) {
            classes.push_back({{static_cast<LevelId>(i), false}});
            continue;
        }
        auto& twins = classes[found->second];
        const Column& first = design.columns[static_cast<std::size_t>(twins.front().level)];
        if (first == column)
            twins.push_back({static_cast<LevelId>(i), false});
        else if (complementary(first, column, design.lots()))
            twins.push_back({static_cast<LevelId>(i), true});
    }
    classes.erase(
        std::remove_if(classes.begin(), classes.end(), [&](const auto& twins) { return !saysSomething(table, twins); }),
        classes.end());
    return classes;
}

std::vector<std::vector<TwinLevel>> levelsNotToldApart(const LotTable& table) {
    return levelsNotToldApart(table, designOf(table));
}

} // namespace holdfast::analytics::statistics
