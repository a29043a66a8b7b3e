#include "analytics/lots/balance.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;

TEST_CASE("pieces balance when everything made is somewhere", "[lots][balance]") {
    // Decisions 5: made = shipped + here + retained + tested + scrapped. 288 = 250 + 24 + 1 + 4 + 9.
    const auto balance = balanceOf({288, 250, 24, 1, 4, 9});
    REQUIRE(balance);
    CHECK(balance->accounted == 288);
    CHECK(balance->difference == 0);
    CHECK(balance->balances());
}

TEST_CASE("a difference is said with its sign", "[lots][balance]") {
    // 288 − (250 + 20 + 1 + 4 + 9) = 288 − 284 = 4 are missing.
    CHECK(balanceOf({288, 250, 20, 1, 4, 9})->difference == 4);
    // 288 − (250 + 30 + 1 + 4 + 9) = 288 − 294 = 6 too many.
    CHECK(balanceOf({288, 250, 30, 1, 4, 9})->difference == -6);
    CHECK(balanceOf({})->balances()); // nothing made, nothing anywhere
}

TEST_CASE("a number below zero is refused by its name", "[lots][balance]") {
    CHECK(balanceOf({-1, 0, 0, 0, 0, 0}).error() == BalanceFault::madeNegative);
    CHECK(balanceOf({1, -1, 0, 0, 0, 0}).error() == BalanceFault::shippedNegative);
    CHECK(balanceOf({1, 0, -1, 0, 0, 0}).error() == BalanceFault::hereNegative);
    CHECK(balanceOf({1, 0, 0, -1, 0, 0}).error() == BalanceFault::retainedNegative);
    CHECK(balanceOf({1, 0, 0, 0, -1, 0}).error() == BalanceFault::testedNegative);
    CHECK(balanceOf({1, 0, 0, 0, 0, -1}).error() == BalanceFault::scrappedNegative);
}

TEST_CASE("the largest numbers that fit do not overflow the sum", "[lots][balance]") {
    constexpr int most = std::numeric_limits<int>::max();
    // 5 × 2147483647 = 10737418235 by hand.
    CHECK(balanceOf({0, most, most, most, most, most})->accounted == 10'737'418'235LL);
}
