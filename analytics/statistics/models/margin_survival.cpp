#include "analytics/statistics/models/margin_survival.hpp"

#include <algorithm>

namespace holdfast::analytics::statistics {

namespace {

LogisticData dataOf(const std::vector<MarginTest>& tests) {
    LogisticData data;
    data.covariates.resize(1);
    for (const auto& test : tests) {
        data.covariates[0].push_back(test.margin);
        data.events.push_back(test.survived ? 1.0 : 0.0);
    }
    return data;
}

LogisticOptions firthAt(double level) {
    LogisticOptions options;
    options.level = level;
    return options;
}

std::size_t different(std::vector<std::int64_t> lots) {
    std::sort(lots.begin(), lots.end());
    return static_cast<std::size_t>(std::unique(lots.begin(), lots.end()) - lots.begin());
}

} // namespace

SurvivalCounts countSurvival(const std::vector<MarginTest>& tests) {
    std::vector<std::int64_t> failed;
    std::vector<std::int64_t> survived;
    for (const auto& test : tests) {
        (test.survived ? survived : failed).push_back(test.lot);
    }
    SurvivalCounts counts;
    counts.failures = failed.size();
    counts.survivals = survived.size();
    counts.failureLots = different(std::move(failed));
    counts.survivalLots = different(std::move(survived));
    return counts;
}

tl::expected<LogisticFit, StatisticsFault> survivalByMargin(const std::vector<MarginTest>& tests, double level) {
    return fitLogistic(dataOf(tests), firthAt(level));
}

tl::expected<ValueForChance, StatisticsFault> marginForChance(const std::vector<MarginTest>& tests, double chance,
                                                              double level) {
    if (!countSurvival(tests).allowMargin()) {
        return tl::unexpected{StatisticsFault::TooFewEvents};
    }
    return valueForChance(dataOf(tests), 0, {0.0}, chance, firthAt(level));
}

} // namespace holdfast::analytics::statistics
