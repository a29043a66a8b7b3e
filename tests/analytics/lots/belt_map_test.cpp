#include "analytics/lots/belt_map.hpp"

#include <catch2/catch.hpp>

#include <limits>

using namespace holdfast::analytics;

namespace {

constexpr Date kMonday{std::chrono::year{2026} / 3 / 2};

LanePeak ride(BeltLane lane, double peak, Date on = kMonday) {
    return {lane, Temperature::fromCelsius(peak), on};
}

} // namespace

TEST_CASE("the coldest lane of a belt map is the one with the lowest peak", "[lots][map]") {
    const auto map =
        beltMapOf({ride(BeltLane::left, 164.0), ride(BeltLane::centre, 168.5), ride(BeltLane::right, 161.2)});
    REQUIRE(map);
    CHECK(map->coldest == BeltLane::right);
    CHECK(map->on == kMonday);
}

TEST_CASE("the newest ride of a lane counts and the map is as old as its oldest", "[lots][map]") {
    const auto map =
        beltMapOf({ride(BeltLane::left, 150.0), ride(BeltLane::left, 170.0, kMonday + std::chrono::days{3}),
                   ride(BeltLane::centre, 166.0, kMonday + std::chrono::days{2}),
                   ride(BeltLane::right, 167.0, kMonday + std::chrono::days{1})});
    REQUIRE(map);
    CHECK(map->coldest == BeltLane::centre);
    CHECK(map->on == kMonday + std::chrono::days{1}); // the right lane's
}

TEST_CASE("there is no map without a ride in every lane", "[lots][map]") {
    CHECK_FALSE(beltMapOf({}));
    CHECK_FALSE(beltMapOf({ride(BeltLane::left, 164.0), ride(BeltLane::right, 161.2)}));
    CHECK_FALSE(beltMapOf({ride(BeltLane::left, 164.0), ride(BeltLane::right, 161.2),
                           ride(BeltLane::centre, std::numeric_limits<double>::quiet_NaN())}));
    CHECK(beltMapOf({ride(BeltLane::left, 164.0), ride(BeltLane::centre, 164.0), ride(BeltLane::right, 164.0)})
              ->coldest == BeltLane::left); // equal ones: the leftmost
}

TEST_CASE("a map holds for a week and not across maintenance", "[lots][map]") {
    const BeltMap map{BeltLane::left, kMonday};
    // Decisions 5: weekly, after maintenance.
    CHECK(isInDate(map, kMonday, std::nullopt));
    CHECK(isInDate(map, kMonday + std::chrono::days{7}, std::nullopt));
    CHECK_FALSE(isInDate(map, kMonday + std::chrono::days{8}, std::nullopt));
    CHECK_FALSE(isInDate(map, kMonday - std::chrono::days{1}, std::nullopt));
    CHECK(isInDate(map, kMonday + std::chrono::days{2}, kMonday - std::chrono::days{1}));
    CHECK_FALSE(isInDate(map, kMonday + std::chrono::days{2}, kMonday));
    CHECK_FALSE(isInDate(map, kMonday + std::chrono::days{2}, kMonday + std::chrono::days{1}));
}
