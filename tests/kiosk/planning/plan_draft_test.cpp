#include "kiosk/shop/planning/habits.hpp"
#include "kiosk/shop/planning/layer_bucket.hpp"
#include "kiosk/shop/planning/plan_draft.hpp"
#include "tests/kiosk/planning/starters.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::shop;

namespace {

PlanDraft jerseys() {
    PlanDraft draft;
    draft.title = "red jerseys";
    draft.fabric = "100% polyester";
    draft.pieces = "144";
    draft.layers = {{"white", "low-cure", {}, true}, {"black", "low-cure", {}, false}};
    return draft;
}

bool has(const std::vector<PlanFault>& faults, PlanFaultCause cause, const std::string& field) {
    return std::any_of(faults.begin(), faults.end(),
                       [&](const PlanFault& fault) { return fault.cause == cause && fault.field == field; });
}

records::RunOnFile onFile(const records::RunPlanned& plan, bool lotOpen) {
    records::RunOnFile run;
    run.plan = plan;
    run.revisions.fabric = {plan.fabric, 3};
    run.lotsSoFar = 1;
    if (lotOpen) {
        run.lot = records::LotRow{};
        run.lot->id = "lot-1";
        run.lot->dryer = "north";
    }
    return run;
}

} // namespace

TEST_CASE("a plan is taken as typed, with names as the book spells them", "[planning]") {
    auto draft = jerseys();
    draft.fabric = "  100% POLYESTER ";
    draft.layers[1].ink = "Low-Cure";
    const auto plan = planFrom(draft, starters());
    REQUIRE(plan);
    CHECK(plan->fabric == "100% polyester");
    CHECK(plan->layers[1].ink == "low-cure");
    CHECK(plan->layers[0].underbase);
    CHECK(plan->pieces == 144);
    CHECK(draftOf(*plan).layers[1].ink == "low-cure");
}

TEST_CASE("every fault of a plan is told at once, each with its field", "[planning]") {
    PlanDraft draft;
    draft.pieces = "a dozen";
    draft.fabric = "tarpaulin";
    draft.customer = std::string(10'000, 'x');
    draft.layers = {{"white", "", {}, false}, {"black", "mystery", {}, false}};
    const auto plan = planFrom(draft, starters());
    REQUIRE_FALSE(plan);
    CHECK(has(plan.error(), PlanFaultCause::titleMissing, "title"));
    CHECK(has(plan.error(), PlanFaultCause::piecesNotANumber, "pieces"));
    CHECK(has(plan.error(), PlanFaultCause::fabricUnknown, "fabric"));
    CHECK(has(plan.error(), PlanFaultCause::textTooLong, "customer"));
    CHECK(has(plan.error(), PlanFaultCause::inkMissing, "layer.1.ink"));
    CHECK(has(plan.error(), PlanFaultCause::inkUnknown, "layer.2.ink"));
}

TEST_CASE("pieces are a whole number from one", "[planning]") {
    for (const auto* typed : {"0", "-3", "1.5", "12x", "1000001", "99999999999999999999"}) {
        INFO(typed);
        auto draft = jerseys();
        draft.pieces = typed;
        CHECK_FALSE(planFrom(draft, starters()));
    }
    auto draft = jerseys();
    draft.pieces = "";
    REQUIRE(planFrom(draft, starters()));
    CHECK_FALSE(planFrom(draft, starters())->pieces);
}

TEST_CASE("control signs, no layers and too many layers are refused", "[planning]") {
    auto draft = jerseys();
    draft.title = "red\x07jerseys";
    CHECK(has(planFrom(draft, starters()).error(), PlanFaultCause::controlSign, "title"));
    draft = jerseys();
    draft.layers.clear();
    CHECK(has(planFrom(draft, starters()).error(), PlanFaultCause::noLayer, "layers"));
    draft.layers.assign(kMostLayers + 1, {"white", "low-cure", {}, false});
    CHECK(has(planFrom(draft, starters()).error(), PlanFaultCause::tooManyLayers, "layers"));
}

TEST_CASE("a changed print closes the open lot and opens the next; a changed title does not", "[planning]") {
    auto plan = *planFrom(jerseys(), starters());
    plan.run = "run-1";
    const auto before = onFile(plan, true);
    auto renamed = plan;
    renamed.title = "scarlet jerseys";
    CHECK(recordsOfPlan(renamed, &before, starters().families, "lot-2").size() == 1);
    auto other = plan;
    other.layers[1].ink = "blend";
    other.layers[1].parts = {{"blend", 1.0}};
    const auto list =
        recordsOfPlan(other, &before, starters().families, "lot-2"); // decisions 5: another print, another lot
    REQUIRE(list.size() == 3);
    CHECK(std::get<records::LotClosed>(list[1]).lot == "lot-1");
    const auto& next = std::get<records::LotOpened>(list[2]);
    CHECK(next.lot == "lot-2");
    CHECK(next.number == 2);
    CHECK(next.revisions.fabric.revision == 3); // the lot before counted with it
    CHECK(next.revisions.families.size() == 2);
    const auto closed = onFile(plan, false);
    CHECK(recordsOfPlan(other, &closed, starters().families, "lot-2").size() == 1);
}

TEST_CASE("finishing closes the open lot with its last piece and keeps the run finished", "[planning]") {
    const auto plan = *planFrom(jerseys(), starters());
    const auto list = recordsOfFinish(onFile(plan, true), 140, 4);
    REQUIRE(list.size() == 2);
    CHECK(std::get<records::LotClosed>(list[0]).lastPiece == 140);
    CHECK(std::get<records::RunFinished>(list[1]).spoiled == 4);
    CHECK(recordsOfFinish(onFile(plan, false), {}, {}).size() == 1);
}

namespace {

records::BucketTree pail(std::int64_t number, const std::string& family) {
    records::BucketTree tree;
    tree.bucket.number = number;
    tree.bucket.name = family;
    tree.bucket.colour = "white";
    return tree;
}

analytics::Ink inkOf(const std::string& family) {
    const auto families = starters().families;
    const auto found =
        std::find_if(families.begin(), families.end(), [&](const auto& one) { return one.name == family; });
    REQUIRE(found != families.end());
    return analytics::pureInk(*found);
}

const analytics::Date kToday{std::chrono::sys_days{std::chrono::year{2026} / 3 / 1}};

} // namespace

TEST_CASE("a bucket on a layer gives the layer its ink, a mix by the mass of its parts", "[planning]") {
    auto mix = pail(9, "team red");
    mix.parts = {pail(3, "low-cure"), pail(4, "standard"), pail(5, "low-cure")};
    mix.bucket.parts = {{"a", 2.0}, {"b", 1.0}, {"c", 1.0}};
    const auto mixed = analytics::mixInks("team red", {{inkOf("low-cure"), 3.0}, {inkOf("standard"), 1.0}});
    REQUIRE(mixed);
    const auto bucket = layerBucket(9, mix, *mixed, 0, kToday);
    REQUIRE(bucket);
    auto stock = starters();
    stock.buckets = {*bucket};
    auto draft = jerseys();
    draft.layers[0].colour.clear();
    pourInto(draft.layers[0], *bucket);
    CHECK(draft.layers[0].colour == "white");
    const auto plan = planFrom(draft, stock);
    REQUIRE(plan);
    CHECK(plan->layers[0].ink == "team red");
    CHECK(plan->layers[0].buckets == std::vector<std::int64_t>{9});
    REQUIRE(plan->layers[0].parts.size() == 2);
    CHECK(plan->layers[0].parts[0].family == "low-cure");
    CHECK(plan->layers[0].parts[0].mass == Approx(0.75)); // 3 of 4 parts
    CHECK(plan->layers[0].parts[1].mass == Approx(0.25));
    CHECK(draftOf(*plan).layers[0].buckets == plan->layers[0].buckets);
}

TEST_CASE("a bucket that is not there, was closed or is of nobody knows what is refused by its number", "[planning]") {
    CHECK(layerBucket(7, {}, {}, 0, kToday).error() == PlanFault{PlanFaultCause::bucketUnknown, "layers", "7", {}});
    CHECK(layerBucket(7, pail(7, "gone"), {}, 0, kToday).error().cause == PlanFaultCause::bucketInkUnknown);
    auto closed = pail(7, "low-cure");
    closed.bucket.closed = records::BucketEnd::mislabelled;
    CHECK(layerBucket(7, closed, inkOf("low-cure"), 0, kToday).error().cause == PlanFaultCause::bucketClosed);
    auto draft = jerseys();
    draft.layers[0].buckets = {7};
    const auto plan = planFrom(draft, starters());
    REQUIRE_FALSE(plan);
    CHECK(has(plan.error(), PlanFaultCause::bucketUnknown, "layer.1.ink"));
    auto expired = pail(7, "low-cure");
    expired.bucket.expiry = analytics::Date{std::chrono::sys_days{std::chrono::year{2026} / 2 / 1}};
    CHECK(layerBucket(7, expired, inkOf("low-cure"), 0, kToday)->trouble == analytics::BucketFault::expired);
}

TEST_CASE("another bucket of the same ink begins another lot, and the lot says why", "[planning]") {
    auto stock = starters();
    stock.buckets = {*layerBucket(3, pail(3, "low-cure"), inkOf("low-cure"), 0, kToday),
                     *layerBucket(4, pail(4, "low-cure"), inkOf("low-cure"), 0, kToday)};
    auto draft = jerseys();
    pourInto(draft.layers[0], stock.buckets[0]);
    const auto before = onFile(*planFrom(draft, stock), true);
    pourInto(draft.layers[0], stock.buckets[1]);
    const auto list = recordsOfPlan(*planFrom(draft, stock), &before, stock.families, "lot-2");
    REQUIRE(list.size() == 3); // decisions 5: pieces between changes of bucket
    CHECK(std::get<records::LotClosed>(list[1]).why == records::LotEnd::otherBucket);
}

TEST_CASE("how the shop prints is the shop's own once it said so, and common practice until then", "[planning]") {
    const auto starter = habitsFrom({}, {});
    CHECK(starter.coveringColours == std::vector<std::string>{"black"}); // advice.hpp, common practice
    CHECK(starterHabit(kCoveringColours) == "black");
    CHECK(starterHabit("theme").empty());
    const auto own =
        habitsFrom(records::SettingValue{std::string{" Black, navy ,black,"}}, records::SettingValue{std::string{}});
    CHECK(own.coveringColours == std::vector<std::string>{"Black", "navy"});
    CHECK(own.lightGarments.empty());                                                             // said to be none
    CHECK(habitsFrom(records::SettingValue{5.0}, {}).coveringColours == starter.coveringColours); // no text at all
}
