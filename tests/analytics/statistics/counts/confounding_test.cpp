#include "analytics/statistics/counts/confounding.hpp"

#include <catch2/catch.hpp>

#include <random>

using namespace holdfast::analytics::statistics;
using Catch::WithinAbs;

namespace {

using Lots = std::vector<std::vector<LevelId>>;

LotTable tableOf(std::vector<FactorId> factorOf, const Lots& lots) {
    LotTable table{std::move(factorOf)};
    for (std::size_t i = 0; i < lots.size(); ++i)
        REQUIRE(table.add(false, static_cast<std::int32_t>(i), lots[i]));
    return table;
}

std::vector<LevelId> levelsOf(const std::vector<TwinLevel>& twins) {
    std::vector<LevelId> levels;
    for (const auto& twin : twins)
        levels.push_back(twin.level);
    return levels;
}

} // namespace

TEST_CASE("levels that always went together are one class", "[statistics][counts][confounding]") {
    // dryers 0, 1; cloth 2, 3, 4; cloth 4 only ever ran on dryer 1, and dryer 1 only ever ran cloth 4
    const auto table = tableOf({0, 0, 1, 1, 1}, {{0, 2}, {0, 3}, {1, 4}, {1, 4}, {0, 2}});
    const auto classes = levelsNotToldApart(table);
    REQUIRE(classes.size() == 1);
    CHECK(levelsOf(classes[0]) == std::vector<LevelId>{0, 1, 4});
    CHECK(classes[0][1].complement);
    CHECK(classes[0][2].complement);
}

TEST_CASE("two dryers alone are one contrast and no class", "[statistics][counts][confounding]") {
    const auto table = tableOf({0, 0, 1, 1, 1}, {{0, 2}, {1, 2}, {0, 3}, {1, 3}, {0, 4}});
    CHECK(levelsNotToldApart(table).empty());
}

TEST_CASE("buckets that were always mixed together cannot be told apart", "[statistics][counts][confounding]") {
    const auto table = tableOf({0, 0, 0}, {{0, 1}, {2}, {0, 1}, {}});
    const auto classes = levelsNotToldApart(table);
    REQUIRE(classes.size() == 1);
    CHECK(levelsOf(classes[0]) == std::vector<LevelId>{0, 1});
    CHECK_FALSE(classes[0][1].complement);
}

TEST_CASE("a level that no lot carries is in no class, those on every lot are in one",
          "[statistics][counts][confounding]") {
    const auto table = tableOf({0, 1, 2, 3}, {{0, 1}, {0, 1}, {0, 1}});
    const auto classes = levelsNotToldApart(table);
    REQUIRE(classes.size() == 1);
    CHECK(levelsOf(classes[0]) == std::vector<LevelId>{0, 1});
    CHECK(levelsNotToldApart(LotTable{{}}).empty());
    CHECK(levelsNotToldApart(LotTable{{0, 0}}).empty());
}

TEST_CASE("a sum of other levels is found by the rank", "[statistics][counts][confounding]") {
    // family 0 is exactly cloth 2 or cloth 3
    const auto table = tableOf({0, 0, 1, 1, 1}, {{0, 2}, {0, 3}, {1, 4}, {0, 2}, {1, 4}, {1, 4}, {0, 3}});
    const std::vector<LevelId> asked{2, 3, 0};
    const auto found = linearDependences(table, asked);
    REQUIRE(found.size() == 1);
    CHECK(found[0].level == 0);
    CHECK(found[0].constant == 0.0);
    REQUIRE(found[0].terms.size() == 2);
    CHECK(found[0].terms[0].level == 2);
    CHECK_THAT(found[0].terms[0].coefficient, WithinAbs(1.0, 1e-9));
    CHECK_THAT(found[0].terms[1].coefficient, WithinAbs(1.0, 1e-9));
}

TEST_CASE("that one factor's levels add up to every lot is no finding", "[statistics][counts][confounding]") {
    const auto table = tableOf({0, 0, 0, 1, 1}, {{0, 3}, {1, 4}, {2, 3}, {0, 4}, {1, 3}, {2, 4}});
    const std::vector<LevelId> all{0, 1, 2, 3, 4};
    CHECK(linearDependences(table, all).empty());
}

TEST_CASE("a dependence through the constant keeps its sign", "[statistics][counts][confounding]") {
    // clip 2 was on whenever neither dryer 0 ran nor cloth 1 was on the belt, and those two never met
    const auto table = tableOf({0, 1, 2}, {{0}, {1}, {2}, {0}, {2}, {1}});
    const auto found = linearDependences(table, std::vector<LevelId>{0, 1, 2});
    REQUIRE(found.size() == 1);
    CHECK(found[0].level == 2);
    CHECK_THAT(found[0].constant, WithinAbs(1.0, 1e-9));
    REQUIRE(found[0].terms.size() == 2);
    CHECK_THAT(found[0].terms[0].coefficient, WithinAbs(-1.0, 1e-9));
}

TEST_CASE("every dependence reported holds in every lot", "[statistics][counts][confounding]") {
    std::mt19937_64 random{9};
    std::uniform_int_distribution<LevelId> pick(0, 9);
    LotTable table{{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1}};
    Lots lots;
    for (int i = 0; i < 300; ++i) {
        const LevelId bucket = pick(random); // families 10, 11, 12 hold buckets 0–2, 3–6, 7–9
        lots.push_back({bucket, bucket < 3 ? 10 : bucket < 7 ? 11 : 12});
        REQUIRE(table.add(false, i, lots.back()));
    }
    const std::vector<LevelId> all{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12};
    const auto found = linearDependences(table, all);
    CHECK(found.size() == 3);
    for (const auto& dependence : found)
        for (const auto& lot : lots) {
            const auto has = [&](LevelId level) {
                return std::find(lot.begin(), lot.end(), level) != lot.end() ? 1.0 : 0.0;
            };
            double sum = dependence.constant;
            for (const auto& term : dependence.terms)
                sum += term.coefficient * has(term.level);
            CHECK_THAT(sum, WithinAbs(has(dependence.level), 1e-8));
        }
}

TEST_CASE("levels that do not exist are not taken", "[statistics][counts][confounding]") {
    LotTable table{{0, 0}};
    CHECK(table.add(true, 0, std::vector<LevelId>{2}).error() == StatisticsFault::OutOfDomain);
    CHECK(table.add(true, 0, std::vector<LevelId>{-1}).error() == StatisticsFault::OutOfDomain);
    CHECK(table.lots() == 0);
    REQUIRE(table.add(true, 0, std::vector<LevelId>{1, 1, 0, 1}));
    CHECK(table.levelsOf(0).size() == 2);
    CHECK(linearDependences(table, std::vector<LevelId>{-3, 7, 0, 0}).empty());
}
