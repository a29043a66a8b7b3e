#include "kiosk/shop/planning/replan.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;

namespace {

records::RunOnFile trap() {
    records::RunOnFile run;
    run.plan.run = "019ac000-0000-7000-8000-000000000011";
    run.plan.number = 20414;
    run.plan.dryer = "north";
    run.plan.fabric = "100% polyester";
    run.plan.layers = {{"white", "low-cure", {{"low-cure", 1.0}}}, {"black", "standard", {{"standard", 1.0}}}};
    run.revisions.fabric = {"100% polyester", 3};
    run.lotsSoFar = 1;
    run.lot = records::LotRow{};
    run.lot->id = "lot-1";
    run.lot->dryer = "south";
    return run;
}

std::vector<analytics::InkFamily> families() {
    analytics::InkFamily low;
    low.name = "low-cure";
    low.revision = 2;
    analytics::InkFamily blend;
    blend.name = "blend";
    blend.revision = 5;
    return {low, blend};
}

} // namespace

TEST_CASE("a way out changes only the layers it names, closes the lot and opens another", "[planning]") {
    analytics::WayOut way;
    way.changes = {{2, "standard", "blend"}};
    const auto list = shop::recordsOfWayOut(trap(), way, families(), "lot-2");
    REQUIRE(list.size() == 3);
    const auto& plan = std::get<records::RunReplanned>(list[0]).plan;
    CHECK(plan.layers[0].ink == "low-cure");
    CHECK(plan.layers[1].ink == "blend");
    CHECK(plan.layers[1].colour == "black");
    CHECK(plan.layers[1].parts.front().family == "blend");
    CHECK(std::get<records::LotClosed>(list[1]).lot == "lot-1");
    const auto& lot = std::get<records::LotOpened>(list[2]);
    CHECK(lot.lot == "lot-2");
    CHECK(lot.number == 2);
    CHECK(lot.dryer == "south");
    // decisions 1: a reading uses the newest revisions at its lot's opening
    REQUIRE(lot.revisions.families.size() == 2);
    CHECK(lot.revisions.families[0].revision == 2);
    CHECK(lot.revisions.families[1].revision == 5);
    CHECK(lot.revisions.fabric.revision == 3);
}

TEST_CASE("a run without a lot opens its first one, and a place that is not there is passed over", "[planning]") {
    auto run = trap();
    run.lot.reset();
    run.lotsSoFar = 0;
    analytics::WayOut way;
    way.changes = {{9, "standard", "blend"}, {0, "standard", "blend"}};
    const auto list = shop::recordsOfWayOut(run, way, families(), "lot-1");
    REQUIRE(list.size() == 2);
    CHECK(std::get<records::RunReplanned>(list[0]).plan.layers[1].ink == "standard");
    CHECK(std::get<records::LotOpened>(list[1]).number == 1);
    CHECK(std::get<records::LotOpened>(list[1]).dryer == "north");
}
