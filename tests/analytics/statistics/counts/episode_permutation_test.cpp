#include "analytics/statistics/counts/episode_permutation.hpp"

#include <catch2/catch.hpp>

#include <limits>
#include <random>
#include <vector>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;

namespace {

std::vector<EpisodeFigure> groups(const std::vector<double>& with, const std::vector<double>& without) {
    std::vector<EpisodeFigure> episodes;
    for (const double value : with)
        episodes.push_back({value, 1.0, true, 0});
    for (const double value : without)
        episodes.push_back({value, 1.0, false, 0});
    return episodes;
}

/// Sixteen mice, days survived, treated and not.
std::vector<EpisodeFigure> mice() {
    return groups({94, 197, 16, 38, 99, 141, 23}, {52, 104, 146, 10, 51, 30, 40, 27, 46});
}

} // namespace

TEST_CASE("all arrangements of the mice", "[statistics][counts][permutation]") {
    // Efron and Tibshirani, An Introduction to the Bootstrap, 1993, table 2.1: difference 30.63; scipy 1.10.1
    // permutation_test(n_resamples=inf): 11440 arrangements, greater 0.1409965035, less 0.8612762238, both
    // 0.2819930070.
    const auto test = permuteEpisodes(mice());
    REQUIRE(test);
    CHECK(test->exact);
    CHECK(test->arrangements == 11440);
    CHECK_THAT(test->difference, WithinAbs(30.63492063492064, 1e-11));
    CHECK_THAT(test->greater, WithinAbs(0.1409965035, 1e-10));
    CHECK_THAT(test->less, WithinAbs(0.8612762238, 1e-10));
    CHECK_THAT(test->twoSided, WithinAbs(0.2819930070, 1e-10));
}

TEST_CASE("drawn arrangements come near all of them, and the same seed gives the same",
          "[statistics][counts][permutation]") {
    PermutationSettings settings;
    settings.enumerateUpTo = 0;
    settings.permutations = 20'000;
    settings.seed = 11;
    const auto test = permuteEpisodes(mice(), settings);
    REQUIRE(test);
    CHECK_FALSE(test->exact);
    CHECK_THAT(test->greater, WithinAbs(0.1409965035, 4.0 * 0.00246)); // four standard errors of 20,000 draws
    CHECK(permuteEpisodes(mice(), settings)->greater == test->greater);
    settings.permutations = 1;
    CHECK(permuteEpisodes(mice(), settings)->greater >= 0.5);
}

TEST_CASE("the smallest p is one over the arrangements, never nothing", "[statistics][counts][permutation]") {
    const auto test = permuteEpisodes(groups({9, 9, 9}, {0, 0, 0}));
    REQUIRE(test);
    CHECK(test->arrangements == 20); // C(6, 3)
    CHECK_THAT(test->greater, WithinAbs(1.0 / 20.0, 1e-15));
    CHECK(test->less == 1.0);
}

TEST_CASE("labels are only moved within their stratum", "[statistics][counts][permutation]") {
    // Two dryers; the level is only ever on the worse one, half the time, and makes no difference there.
    std::vector<EpisodeFigure> episodes;
    for (int i = 0; i < 4; ++i) {
        episodes.push_back({8.0, 10.0, i < 2, 1});
        episodes.push_back({1.0, 10.0, false, 2});
    }
    const auto within = permuteEpisodes(episodes);
    REQUIRE(within);
    CHECK(within->arrangements == 6); // C(4, 2) × C(4, 0)
    CHECK(within->greater == 1.0);
    for (auto& episode : episodes)
        episode.stratum = 0;
    CHECK(permuteEpisodes(episodes)->greater < 0.25);
}

TEST_CASE("whole episodes keep the false alarm rate where single readings would not",
          "[statistics][counts][permutation]") {
    std::mt19937_64 random{5};
    std::bernoulli_distribution badEpisode(0.3);
    int alarms = 0;
    constexpr int kTrials = 400;
    for (int trial = 0; trial < kTrials; ++trial) {
        std::vector<EpisodeFigure> episodes; // eight readings each, all bad or all good
        for (int i = 0; i < 12; ++i)
            episodes.push_back({badEpisode(random) ? 8.0 : 0.0, 8.0, i < 5, 0});
        alarms += permuteEpisodes(episodes)->greater <= 0.05 ? 1 : 0;
    }
    CHECK(alarms <= 34); // 5 % of 400 and three standard errors
}

TEST_CASE("episodes that cannot be compared are refused", "[statistics][counts][permutation]") {
    CHECK(permuteEpisodes({}).error() == StatisticsFault::NoValues);
    CHECK(permuteEpisodes(groups({1}, {})).error() == StatisticsFault::NoSpread);
    CHECK(permuteEpisodes(groups({}, {1, 2})).error() == StatisticsFault::NoSpread);
    CHECK(permuteEpisodes(groups({std::numeric_limits<double>::quiet_NaN()}, {1})).error() ==
          StatisticsFault::NotFinite);
    auto weightless = groups({1}, {2});
    weightless[0].weight = 0.0;
    CHECK(permuteEpisodes(weightless).error() == StatisticsFault::OutOfDomain);
    PermutationSettings none;
    none.permutations = 0;
    CHECK(permuteEpisodes(mice(), none).error() == StatisticsFault::OutOfDomain);
    const auto equal = permuteEpisodes(groups({3, 3}, {3, 3, 3}));
    REQUIRE(equal);
    CHECK(equal->greater == 1.0);
    CHECK(equal->twoSided == 1.0);
}
