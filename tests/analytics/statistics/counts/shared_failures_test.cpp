#include "analytics/statistics/counts/shared_failures.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <chrono>
#include <random>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;
using Catch::WithinRel;

namespace {

const LevelFinding& findingOf(const SharedFailures& result, LevelId level) {
    return *std::find_if(result.ranked.begin(), result.ranked.end(),
                         [&](const LevelFinding& finding) { return finding.level == level; });
}

/// Lots of a shop: dryers 0–1, cloth 2–7, buckets 8–27; an episode is a dryer with a cloth, its lots change buckets.
/// The `suspect` bucket fails with the chance `bad`, everything else with 4 %, and some episodes fail as a whole.
LotTable shop(std::uint64_t seed, LevelId suspect, double bad, double wholeEpisode) {
    std::vector<FactorId> factorOf(28, 2);
    std::fill_n(factorOf.begin(), 2, 0);
    std::fill_n(factorOf.begin() + 2, 6, 1);
    LotTable table{factorOf};
    std::mt19937_64 random{seed};
    const auto below = [&](int count) { return static_cast<int>(random() % static_cast<std::uint64_t>(count)); };
    const auto chance = [&](double p) { return std::uniform_real_distribution<>{}(random) < p; };
    for (int episode = 0; episode < 200; ++episode) {
        const LevelId dryer = below(2);
        const LevelId cloth = 2 + below(6);
        const bool whole = chance(wholeEpisode);
        const int lots = 1 + below(6);
        for (int lot = 0; lot < lots; ++lot) {
            const LevelId bucket = 8 + below(20);
            const bool failed = whole || chance(bucket == suspect ? bad : 0.04);
            REQUIRE(table.add(failed, episode, std::vector<LevelId>{dryer, cloth, bucket}));
        }
    }
    return table;
}

} // namespace

TEST_CASE("a bad bucket comes first, with its counts", "[statistics][counts][shared]") {
    for (const std::uint64_t seed : {1, 2, 3}) {
        const auto result = rankSharedFailures(shop(seed, 13, 0.8, 0.03));
        REQUIRE(result);
        const auto& first = result->ranked.front();
        CHECK(first.level == 13);
        CHECK(first.factor == 2);
        CHECK(first.q < 0.01);
        CHECK(first.permutationP < 0.001);
        CHECK(first.with.hits + first.without.hits == result->failed);
        CHECK(first.with.of + first.without.of == static_cast<std::int64_t>(result->lots));
        CHECK(first.odds.lower > 3.0);
        const auto exact = fisherExact({first.with.hits, first.with.of - first.with.hits, first.without.hits,
                                        first.without.of - first.without.hits});
        CHECK(first.fisherP == exact->greater);
    }
}

TEST_CASE("a few levels stand as they are in a ranking by hand", "[statistics][counts][shared]") {
    // Four episodes of one lot each: level 0 on the two that failed, level 1 on the two that passed, level 2 on one of
    // each.
    LotTable table{{0, 0, 1}};
    REQUIRE(table.add(true, 1, std::vector<LevelId>{0, 2}));
    REQUIRE(table.add(true, 2, std::vector<LevelId>{0}));
    REQUIRE(table.add(false, 3, std::vector<LevelId>{1, 2}));
    REQUIRE(table.add(false, 4, std::vector<LevelId>{1}));
    const auto result = rankSharedFailures(table);
    REQUIRE(result);
    const auto& with = findingOf(*result, 0);
    CHECK(with.exact);
    CHECK_THAT(with.permutationP, WithinAbs(1.0 / 6.0, 1e-15)); // one of C(4, 2)
    CHECK_THAT(with.fisherP, WithinAbs(1.0 / 6.0, 1e-15));      // the same table
    CHECK_THAT(with.q, WithinAbs(0.5, 1e-15));                  // three levels
    CHECK(with.episodes == 2);
    CHECK_THAT(findingOf(*result, 2).permutationP, WithinAbs(5.0 / 6.0, 1e-15)); // all but the pair that passed
    CHECK(findingOf(*result, 1).permutationP == 1.0);
    CHECK(result->ranked.front().level == 0);
    CHECK(result->classes.empty());
}

TEST_CASE("an episode that failed as a whole is one piece of evidence", "[statistics][counts][shared]") {
    LotTable table{{0, 0}};
    for (int episode = 0; episode < 20; ++episode)
        for (int lot = 0; lot < 10; ++lot)
            REQUIRE(table.add(episode == 7, episode, std::vector<LevelId>{episode == 7 ? 0 : 1}));
    const auto result = rankSharedFailures(table);
    REQUIRE(result);
    const auto& level = findingOf(*result, 0);
    CHECK(level.caveat == LevelCaveat::OneEpisode);
    CHECK(level.fisherP < 1e-15);
    CHECK_THAT(level.permutationP, WithinAbs(1.0 / 20.0, 1e-15));
    CHECK(level.exact);
}

TEST_CASE("without planted failures nothing is blamed more often than stated", "[statistics][counts][shared]") {
    int blamed = 0;
    constexpr int kShops = 60;
    for (std::uint64_t seed = 100; seed < 100 + kShops; ++seed) {
        const auto result = rankSharedFailures(shop(seed, -1, 0.0, 0.10));
        REQUIRE(result);
        blamed += std::any_of(result->ranked.begin(), result->ranked.end(), [](const auto& f) { return f.q <= 0.05; });
    }
    CHECK(blamed <= 8); // 5 % of 60 and three standard errors
}

TEST_CASE("p of a level without effect are spread evenly", "[statistics][counts][shared]") {
    int below20 = 0;
    int below5 = 0;
    constexpr int kShops = 120;
    for (std::uint64_t seed = 500; seed < 500 + kShops; ++seed) {
        const auto result = rankSharedFailures(shop(seed, -1, 0.0, 0.15));
        const double p = findingOf(*result, 3).permutationP;
        below20 += p <= 0.20 ? 1 : 0;
        below5 += p <= 0.05 ? 1 : 0;
    }
    CHECK(below20 <= 37); // 20 % of 120 and three standard errors
    CHECK(below20 >= 11);
    CHECK(below5 <= 13);
}

TEST_CASE("levels of the same lots share their figures and count once", "[statistics][counts][shared]") {
    LotTable table{{0, 0, 1, 1, 2}};
    for (int episode = 0; episode < 30; ++episode) {
        const bool one = episode % 3 == 0;
        std::vector<LevelId> levels{one ? 0 : 1, one ? 2 : 3};
        if (episode % 2 == 0)
            levels.push_back(4);
        REQUIRE(table.add(one && episode % 4 != 0, episode, levels));
    }
    const auto result = rankSharedFailures(table);
    REQUIRE(result);
    const auto& dryer = findingOf(*result, 0);
    const auto& cloth = findingOf(*result, 2);
    REQUIRE(dryer.twins);
    CHECK(dryer.twins == cloth.twins);
    CHECK(result->classes[*dryer.twins].size() == 4);
    CHECK(dryer.permutationP == cloth.permutationP);
    CHECK(dryer.q == cloth.q);
    CHECK(dryer.q <= 3.0 * dryer.permutationP + 1e-12); // three different columns, not five
    CHECK_FALSE(findingOf(*result, 4).twins);
}

TEST_CASE("within a stratum a level is only compared with its like", "[statistics][counts][shared]") {
    // Dryer 1 fails more; level 0 is only ever on dryer 1. Compared within dryer it is not to blame.
    LotTable apart{{0}};
    LotTable mixed{{0}};
    std::mt19937_64 random{4};
    for (int episode = 0; episode < 80; ++episode) {
        const int dryer = episode % 2;
        const bool failed = random() % 100 < (dryer == 1 ? 50U : 2U);
        const std::vector<LevelId> levels =
            dryer == 1 && episode % 4 == 1 ? std::vector<LevelId>{0} : std::vector<LevelId>{};
        REQUIRE(apart.add(failed, episode, levels, dryer));
        REQUIRE(mixed.add(failed, episode, levels));
    }
    CHECK(rankSharedFailures(mixed)->ranked[0].permutationP < 0.05);
    CHECK(rankSharedFailures(apart)->ranked[0].permutationP > 0.05);
}

TEST_CASE("all pass, all fail, one lot, one level: figures with their caveat", "[statistics][counts][shared]") {
    CHECK(rankSharedFailures(LotTable{{0}}).error() == StatisticsFault::NoValues);
    for (const bool failed : {false, true}) {
        LotTable table{{0, 0, 1}};
        for (int episode = 0; episode < 6; ++episode)
            REQUIRE(table.add(failed, episode, std::vector<LevelId>{episode % 2}));
        const auto result = rankSharedFailures(table);
        REQUIRE(result);
        CHECK(result->caveat == (failed ? SharedFailureCaveat::EverythingFailed : SharedFailureCaveat::NothingFailed));
        for (const auto& finding : result->ranked) {
            CHECK(finding.permutationP == 1.0);
            CHECK(finding.q == 1.0);
            CHECK_FALSE(finding.odds.ratio);
        }
        CHECK(result->ranked.back().level == 2);
        CHECK(result->ranked.back().caveat == LevelCaveat::NoContrast);
    }
    LotTable one{{0, 1}};
    REQUIRE(one.add(true, 5, std::vector<LevelId>{0, 1}));
    const auto single = rankSharedFailures(one);
    REQUIRE(single);
    CHECK(single->ranked[0].caveat == LevelCaveat::NoContrast);
    LotTable episode{{0, 0}};
    for (int lot = 0; lot < 8; ++lot)
        REQUIRE(episode.add(lot < 4, 1, std::vector<LevelId>{lot < 4 ? 0 : 1}));
    const auto sole = rankSharedFailures(episode);
    CHECK(sole->caveat == SharedFailureCaveat::OneEpisode);
    CHECK(sole->ranked[0].permutationP == 1.0);
    SharedFailureSettings wrong;
    wrong.confidence = std::nan("");
    CHECK(rankSharedFailures(one, wrong).error() == StatisticsFault::OutOfDomain);
    wrong = {};
    wrong.permutations = -1;
    CHECK(rankSharedFailures(one, wrong).error() == StatisticsFault::OutOfDomain);
    CHECK(rankSharedFailures(LotTable{{}}).error() == StatisticsFault::NoValues);
}

TEST_CASE("the same seed gives the same ranking", "[statistics][counts][shared]") {
    const auto table = shop(8, 20, 0.5, 0.05);
    SharedFailureSettings settings;
    settings.seed = 77;
    const auto one = rankSharedFailures(table, settings);
    const auto two = rankSharedFailures(table, settings);
    for (std::size_t i = 0; i < one->ranked.size(); ++i) {
        CHECK(one->ranked[i].level == two->ranked[i].level);
        CHECK(one->ranked[i].permutationP == two->ranked[i].permutationP);
    }
}

TEST_CASE("ten thousand lots and a thousand levels are ranked in seconds", "[statistics][counts][shared]") {
    std::vector<FactorId> factorOf(1000);
    for (std::size_t i = 0; i < factorOf.size(); ++i)
        factorOf[i] = static_cast<FactorId>(i < 8 ? 0 : i < 100 ? 1 : 2);
    LotTable table{factorOf};
    std::mt19937_64 random{1};
    int lots = 0;
    for (int episode = 0; lots < 10'000; ++episode) {
        const auto dryer = static_cast<LevelId>(random() % 8);
        for (std::uint64_t n = 1 + random() % 6; n > 0 && lots < 10'000; --n, ++lots) {
            std::vector<LevelId> levels{dryer, static_cast<LevelId>(8 + random() % 92)};
            for (int mixed = 0; mixed < 8; ++mixed)
                levels.push_back(static_cast<LevelId>(100 + random() % 900));
            const bool bad = std::find(levels.begin(), levels.end(), 500) != levels.end();
            REQUIRE(table.add(random() % 100 < (bad ? 50U : 3U), episode, levels));
        }
    }
    const auto start = std::chrono::steady_clock::now();
    const auto result = rankSharedFailures(table);
    const auto took = std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
    REQUIRE(result);
    CHECK(result->ranked.front().level == 500);
    CHECK(result->ranked.front().q < 0.05);
    INFO("seconds " << took);
    CHECK(took < 20.0); // far above what it takes: a guard against a cost of another order
}
