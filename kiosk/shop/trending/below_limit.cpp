#include "kiosk/shop/trending/below_limit.hpp"

#include "analytics/statistics/charts/random_effects.hpp"

#include <algorithm>
#include <boost/math/distributions/normal.hpp>
#include <set>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;
using analytics::TemperatureDifference;

constexpr double kConfidence = 0.95;

std::vector<double> exactOf(const TrendFacts& facts, const Episode& episode) {
    std::vector<double> values;
    for (const auto index : episode.readings) {
        const auto& reading = facts.readings[static_cast<std::size_t>(index)];
        if (!reading.isStrip && reading.margin.low && reading.margin.low->isFinite()) {
            values.push_back(reading.margin.low->celsius());
        }
    }
    return values;
}

/// Of what the same dryers did at other times.
st::PooledWithin pooledWithin(const TrendFacts& facts, const TrendFilter& filter,
                              const std::vector<Episode>& episodes) {
    st::PooledWithin pooled;
    std::set<std::pair<FactIndex, std::int64_t>> own;
    for (const auto& episode : episodes) {
        own.emplace(episode.dryer, episode.from);
    }
    TrendFilter wider;
    wider.dryer = filter.dryer;
    for (const auto& episode : episodesOf(facts, wider)) {
        const auto values = exactOf(facts, episode);
        if (values.size() < 2 || own.count({episode.dryer, episode.from}) != 0) {
            continue;
        }
        double mean = 0.0;
        for (const auto value : values) {
            mean += value / static_cast<double>(values.size());
        }
        for (const auto value : values) {
            pooled.squares += (value - mean) * (value - mean);
        }
        pooled.degrees += static_cast<double>(values.size() - 1);
    }
    return pooled;
}

/// The largest share that lies above the limit with that confidence, 0.5 where not even half is known to.
double shareAbove(const std::vector<std::vector<double>>& groups, const st::PooledWithin& pooled) {
    const auto boundAt = [&](double content) {
        const auto bound = st::randomEffectsBound(groups, {content, kConfidence, st::BoundSide::Lower}, pooled);
        return bound ? bound->bound : -1.0;
    };
    double low = 0.5;
    double high = 0.9999;
    if (boundAt(low) < 0.0) {
        return low;
    }
    if (boundAt(high) >= 0.0) {
        return high;
    }
    constexpr int kHalvings = 14; // a hundredth of a piece in a hundred
    for (int i = 0; i < kHalvings; ++i) {
        const double middle = (low + high) / 2.0;
        (boundAt(middle) >= 0.0 ? low : high) = middle;
    }
    return low;
}

} // namespace

Figure<BelowLimit> belowLimit(const TrendFacts& facts, const TrendFilter& filter,
                              const std::vector<Episode>& episodes) {
    std::vector<std::vector<double>> groups;
    std::size_t readings = 0;
    bool oneAnEpisode = true;
    for (const auto& episode : episodes) {
        auto values = exactOf(facts, episode);
        if (!values.empty()) {
            readings += values.size();
            oneAnEpisode = oneAnEpisode && values.size() == 1;
            groups.push_back(std::move(values));
        }
    }
    const auto need = static_cast<std::int64_t>(st::kUsualGroups);
    const auto have = static_cast<std::int64_t>(groups.size());
    if (groups.size() < st::kUsualGroups) {
        return tl::unexpected(Refusal{NoFigure::tooFewEpisodes, have, need});
    }
    const auto pooled = pooledWithin(facts, filter, episodes);
    const auto bound = st::randomEffectsBound(groups, {0.95, kConfidence, st::BoundSide::Lower}, pooled);
    if (!bound) {
        return tl::unexpected(refusalOf(bound.error(), have, need));
    }
    if (!(bound->sd > 0.0)) {
        return tl::unexpected(Refusal{NoFigure::allEqual, have, need});
    }
    BelowLimit below;
    below.perHundred = 100.0 * boost::math::cdf(boost::math::normal{}, -bound->mean / bound->sd);
    below.atMostPerHundred = 100.0 * (1.0 - shareAbove(groups, pooled));
    below.atMostPerHundred = std::max(below.atMostPerHundred, below.perHundred);
    below.bound95 = TemperatureDifference::fromCelsius(bound->bound);
    below.episodes = groups.size();
    below.readings = readings;
    below.oneAnEpisode = oneAnEpisode;
    return below;
}

} // namespace holdfast::kiosk::shop::trending
