#include "analytics/statistics/counts/episode_permutation.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <optional>
#include <random>
#include <vector>

namespace holdfast::analytics::statistics {
namespace {

struct FigureSums {
    double sum = 0.0;
    double weight = 0.0;
};

struct Stratum {
    std::vector<FigureSums> episodes;
    std::vector<char> flags; ///< sorted: those without first, so that next_permutation goes through all
    std::size_t with = 0;
};

struct Layout {
    std::vector<Stratum> strata;
    FigureSums all;
    FigureSums seen;  ///< the episodes that carry the level
    double scale = 0; ///< of the figures, for what counts as a tie
};

std::optional<StatisticsFault> faultOf(std::span<const EpisodeFigure> episodes, const PermutationSettings& settings) {
    if (episodes.empty())
        return StatisticsFault::NoValues;
    if (settings.permutations < 1)
        return StatisticsFault::OutOfDomain;
    bool with = false;
    bool without = false;
    for (const auto& episode : episodes) {
        if (!std::isfinite(episode.sum) || !std::isfinite(episode.weight))
            return StatisticsFault::NotFinite;
        if (!(episode.weight > 0.0))
            return StatisticsFault::OutOfDomain;
        (episode.with ? with : without) = true;
    }
    return with && without ? std::nullopt : std::optional{StatisticsFault::NoSpread};
}

Layout layoutOf(std::span<const EpisodeFigure> episodes) {
    std::map<std::int32_t, Stratum> byStratum;
    Layout layout;
    for (const auto& episode : episodes) {
        auto& stratum = byStratum[episode.stratum];
        stratum.episodes.push_back({episode.sum, episode.weight});
        stratum.with += episode.with ? 1 : 0;
        layout.all = {layout.all.sum + episode.sum, layout.all.weight + episode.weight};
        if (episode.with)
            layout.seen = {layout.seen.sum + episode.sum, layout.seen.weight + episode.weight};
        layout.scale = std::max(layout.scale, std::abs(episode.sum / episode.weight));
    }
    for (auto& [id, stratum] : byStratum) {
        stratum.flags.assign(stratum.episodes.size(), 0);
        std::fill(stratum.flags.end() - static_cast<std::ptrdiff_t>(stratum.with), stratum.flags.end(), char{1});
        layout.strata.push_back(std::move(stratum));
    }
    return layout;
}

double difference(const Layout& layout, const FigureSums& with) noexcept {
    return with.sum / with.weight - (layout.all.sum - with.sum) / (layout.all.weight - with.weight);
}

/// ∏ C(episodes, with) over the strata, as a double: it may be beyond any integer.
double arrangementsOf(const Layout& layout) noexcept {
    double logarithm = 0.0;
    for (const auto& stratum : layout.strata) {
        const auto n = static_cast<double>(stratum.episodes.size());
        const auto smaller = std::min(stratum.with, stratum.episodes.size() - stratum.with);
        for (std::size_t i = 0; i < smaller; ++i)
            logarithm += std::log((n - static_cast<double>(i)) / static_cast<double>(i + 1));
    }
    return std::round(std::exp(std::min(logarithm, 600.0)));
}

struct Tally {
    double observed;
    double tie;
    std::int64_t greater = 0;
    std::int64_t less = 0;
    std::int64_t count = 0;

    void take(double value) noexcept {
        greater += value >= observed - tie ? 1 : 0;
        less += value <= observed + tie ? 1 : 0;
        ++count;
    }
};

FigureSums flagged(const Stratum& stratum) noexcept {
    FigureSums sums;
    for (std::size_t i = 0; i < stratum.flags.size(); ++i)
        if (stratum.flags[i])
            sums = {sums.sum + stratum.episodes[i].sum, sums.weight + stratum.episodes[i].weight};
    return sums;
}

void enumerate(Layout& layout, std::size_t depth, const FigureSums& soFar, Tally& tally) {
    if (depth == layout.strata.size()) {
        tally.take(difference(layout, soFar));
        return;
    }
    auto& stratum = layout.strata[depth];
    do {
        const FigureSums here = flagged(stratum);
        enumerate(layout, depth + 1, {soFar.sum + here.sum, soFar.weight + here.weight}, tally);
    } while (std::next_permutation(stratum.flags.begin(), stratum.flags.end()));
}

void draw(Layout& layout, const PermutationSettings& settings, Tally& tally) {
    std::mt19937_64 random{settings.seed};
    for (std::int64_t m = 0; m < settings.permutations; ++m) {
        FigureSums with;
        for (auto& stratum : layout.strata)
            for (std::size_t i = 0; i < stratum.with; ++i) {
                std::uniform_int_distribution<std::size_t> pick(i, stratum.episodes.size() - 1);
                std::swap(stratum.episodes[i], stratum.episodes[pick(random)]);
                with = {with.sum + stratum.episodes[i].sum, with.weight + stratum.episodes[i].weight};
            }
        tally.take(difference(layout, with));
    }
}

} // namespace

tl::expected<PermutationTest, StatisticsFault> permuteEpisodes(std::span<const EpisodeFigure> episodes,
                                                               const PermutationSettings& settings) {
    if (const auto fault = faultOf(episodes, settings))
        return tl::unexpected(*fault);
    Layout layout = layoutOf(episodes);
    const double observed = difference(layout, layout.seen);
    if (!std::isfinite(observed))
        return tl::unexpected(StatisticsFault::OutOfDomain);
    Tally tally{observed, 1e-9 * layout.scale};
    PermutationTest test;
    test.difference = observed;
    test.exact = arrangementsOf(layout) <= static_cast<double>(settings.enumerateUpTo);
    if (test.exact) {
        enumerate(layout, 0, {}, tally);
    } else {
        draw(layout, settings, tally);
    }
    const double own = test.exact ? 0.0 : 1.0; // the arrangement seen counts among those drawn
    const double total = static_cast<double>(tally.count) + own;
    test.greater = (static_cast<double>(tally.greater) + own) / total;
    test.less = (static_cast<double>(tally.less) + own) / total;
    test.twoSided = std::min(1.0, 2.0 * std::min(test.greater, test.less));
    test.arrangements = tally.count;
    return test;
}

} // namespace holdfast::analytics::statistics
