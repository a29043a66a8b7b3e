#include "kiosk/records/floor_projection.hpp"
#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/stock_queries.hpp"
#include "tests/kiosk/records/support/samples.hpp"
#include "tests/kiosk/records/support/shop_book.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::records;
using holdfast::kiosk::records::testing::day;
using holdfast::kiosk::records::testing::sampleOfEveryKind;
using holdfast::kiosk::records::testing::Shop;
namespace a = holdfast::analytics;

namespace {

BucketOpened pail(const std::string& id, std::int64_t number, const std::string& family) {
    BucketOpened one;
    one.bucket = id;
    one.number = number;
    one.family = family;
    return one;
}

MixMade mix(const std::string& id, std::int64_t number, std::vector<BucketPart> parts) {
    MixMade one;
    one.bucket = id;
    one.number = number;
    one.name = "mix " + id;
    one.parts = std::move(parts);
    return one;
}

/// The plan of the samples with its second layer printed from these buckets.
RunReplanned printedFrom(std::vector<std::int64_t> buckets) {
    for (const auto& sample : sampleOfEveryKind()) {
        if (const auto* plan = std::get_if<RunPlanned>(&sample)) {
            auto again = *plan;
            again.layers.at(1).buckets = std::move(buckets);
            return {again};
        }
    }
    return {};
}

RunOnFile runOf(const Shop& shop, const std::optional<Moment>& now = {}) {
    const auto run = runByNumber(shop.db(), PlanKind::run, 20418, now);
    REQUIRE(run);
    REQUIRE(*run);
    return **run;
}

BucketTree tree(const Shop& shop, std::int64_t number) {
    const auto found = ancestry(shop.db(), number);
    REQUIRE(found);
    REQUIRE(*found);
    return **found;
}

constexpr std::int64_t kHour = 3'600'000;

} // namespace

TEST_CASE("a mix is made of buckets that stand before it, and of nothing else", "[records][bucket]") {
    Shop shop;
    REQUIRE(shop.tell(pail("a", 1, "low-cure")));
    REQUIRE(shop.tell(pail("b", 2, "standard")));
    CHECK_FALSE(shop.tell(mix("m", 3, {{"m", 1.0}})));
    CHECK_FALSE(shop.tell(mix("m", 3, {{"a", 1.0}, {"m", 0.0}}))); // not even without mass
    CHECK_FALSE(shop.tell(mix("m", 3, {{"a", 1.0}, {"nowhere", 1.0}})));
    CHECK_FALSE(shop.tell(mix("a", 3, {{"b", 1.0}}))); // a pail never becomes a mix
    CHECK_FALSE(shop.tell(mix("m", 2, {{"a", 1.0}}))); // somebody else's number
    CHECK_FALSE(shop.tell(pail("c", 1, "low-cure")));
    REQUIRE(shop.tell(mix("m", 3, {{"a", 1.0}, {"b", 1.0}})));
    CHECK_FALSE(shop.tell(mix("m", 4, {{"a", 1.0}})));
    CHECK(buckets(shop.db(), true)->size() == 3);
}

TEST_CASE("masses of a mix are finite, not negative, and one is positive", "[records][bucket]") {
    const auto readsWith = [](const std::string& parts) {
        return readRecord("mix.made", 1, R"({"bucket":"m","number":3,"name":"m","parts":[)" + parts + "]}").has_value();
    };
    CHECK(readsWith(R"({"bucket":"a","mass":0.001},{"bucket":"b","mass":0})"));
    CHECK_FALSE(readsWith(""));
    CHECK_FALSE(readsWith(R"({"bucket":"a","mass":0},{"bucket":"b","mass":0})"));
    CHECK_FALSE(readsWith(R"({"bucket":"a","mass":-1},{"bucket":"b","mass":2})"));
    CHECK_FALSE(readsWith(R"({"bucket":"a","mass":1e400})"));
    CHECK_FALSE(readsWith(R"({"bucket":"a","mass":null})"));
    CHECK_FALSE(readsWith(R"({"bucket":"a","mass":"1"})"));
}

TEST_CASE("an emptied bucket may have gone into a mix, a thrown away or mislabelled one may not", "[records][bucket]") {
    Shop shop;
    REQUIRE(shop.tell(pail("a", 1, "low-cure")));
    REQUIRE(shop.tell(pail("b", 2, "low-cure")));
    REQUIRE(shop.tell(pail("c", 3, "low-cure")));
    REQUIRE(shop.tell(BucketClosed{"a", BucketEnd::empty}));
    REQUIRE(shop.tell(BucketClosed{"b", BucketEnd::thrownAway}));
    REQUIRE(shop.tell(BucketClosed{"c", BucketEnd::mislabelled}));
    CHECK_FALSE(shop.tell(BucketClosed{"a", BucketEnd::empty})); // twice
    CHECK_FALSE(shop.tell(BucketClosed{"nowhere", BucketEnd::empty}));
    CHECK(shop.tell(mix("m", 4, {{"a", 1.0}})));
    CHECK_FALSE(shop.tell(mix("n", 5, {{"b", 1.0}})));
    CHECK_FALSE(shop.tell(mix("n", 5, {{"c", 1.0}})));
    CHECK(buckets(shop.db(), false)->size() == 1);
    CHECK((**bucketByNumber(shop.db(), 3)).closed == BucketEnd::mislabelled);
    CHECK_FALSE(*bucketByNumber(shop.db(), 99));
}

TEST_CASE("mixes of mixes that double with each step are refused before they cannot be drawn", "[records][bucket]") {
    Shop shop;
    REQUIRE(shop.tell(pail("0", 1, "low-cure")));
    // sizes 1, 3, 7, … 2^(n+1) - 1; 2^12 - 1 is the last not above 4096
    for (int i = 1; i <= 11; ++i) {
        const auto below = std::to_string(i - 1);
        REQUIRE(shop.tell(mix(std::to_string(i), i + 1, {{below, 1.0}, {below, 1.0}})));
    }
    REQUIRE(projecting::kMostBucketsInTree == 4096);
    CHECK_FALSE(shop.tell(mix("12", 13, {{"11", 1.0}, {"11", 1.0}})));
    CHECK(ancestry(shop.db(), 12)->has_value());
}

TEST_CASE("a mix of mixes is drawn down to its pails, with shares by mass", "[records][bucket]") {
    Shop shop;
    shop.plan();
    auto old = pail("a", 1, "low-cure");
    old.expiry = day(2026, 6, 1);
    REQUIRE(shop.tell(old));
    auto unused = pail("b", 2, "standard");
    unused.expiry = day(2026, 1, 1);
    REQUIRE(shop.tell(unused));
    REQUIRE(shop.tell(mix("m", 3, {{"a", 1.0}, {"b", 0.0}})));
    auto late = pail("c", 4, "low-cure");
    late.expiry = day(2026, 9, 1);
    REQUIRE(shop.tell(late));
    REQUIRE(shop.tell(mix("n", 5, {{"m", 3.0}, {"c", 1.0}})));
    const auto drawn = tree(shop, 5);
    REQUIRE(drawn.parts.size() == 2);
    CHECK(drawn.share == 1.0);
    CHECK(drawn.parts[0].share == Approx(0.75)); // 3 of 3 + 1
    REQUIRE(drawn.parts[0].parts.size() == 2);
    CHECK(drawn.parts[0].parts[0].share == Approx(0.75));
    CHECK(drawn.parts[0].parts[1].share == 0.0);
    CHECK(drawn.bucket.expiry == day(2026, 6, 1)); // the earliest that has mass
    const auto ink = inkOfBucket(shop.db(), 5);
    REQUIRE(ink);
    REQUIRE(*ink);
    CHECK_FALSE((*ink)->isMix());                                  // standard went in without mass
    CHECK((*ink)->requirement.cure.fahrenheit() == Approx(285.0)); // starter, contracts.md
    CHECK_FALSE(*inkOfBucket(shop.db(), 5, 0));                    // before any family stood in the book
    CHECK_FALSE(*inkOfBucket(shop.db(), 99));
    REQUIRE(shop.tell(pail("d", 6, "nobody knows it")));
    CHECK_FALSE(*inkOfBucket(shop.db(), 6));
    CHECK(*nextNumber(shop.db(), Numbered::bucket) == 7);
}

TEST_CASE("masses at the ends of double still give shares", "[records][bucket]") {
    Shop shop;
    REQUIRE(shop.tell(pail("a", 1, "low-cure")));
    REQUIRE(shop.tell(mix("m", 2, {{"a", 1.7e308}, {"a", 1.7e308}})));
    CHECK(tree(shop, 2).parts.at(0).share == Approx(0.5));
    REQUIRE(shop.tell(mix("n", 3, {{"a", 5e-324}})));
    CHECK(tree(shop, 3).parts.at(0).share == 1.0);
}

TEST_CASE("pot life counts from the earliest catalysing, inclusive, and comes before expiry", "[records][bucket]") {
    Shop shop;
    auto family = recordOf(a::starterFamilies().front(), a::TemperatureUnit::fahrenheit);
    family.name = "catalysed";
    family.potLife = a::Duration{8 * 3600.0};
    REQUIRE(shop.tell(family));
    auto one = pail("a", 1, "catalysed");
    one.potLifeStartsAt = 0;
    one.expiry = day(2026, 3, 1);
    REQUIRE(shop.tell(one));
    auto later = mix("m", 2, {{"a", 1.0}});
    later.potLifeStartsAt = 2 * kHour;
    REQUIRE(shop.tell(later));
    auto sealed = pail("s", 3, "catalysed");
    REQUIRE(shop.tell(sealed));
    REQUIRE(shop.tell(mix("z", 4, {{"s", 1.0}, {"a", 0.0}})));
    const auto trouble = [&](std::int64_t number, std::int64_t at, a::Date today) {
        const auto found = troubleOf(tree(shop, number), **inkOfBucket(shop.db(), number), at, today);
        return found ? std::optional{found->fault} : std::nullopt;
    };
    using a::BucketFault;
    CHECK_FALSE(trouble(2, 8 * kHour, day(2026, 3, 1))); // the end and the day itself still count
    CHECK(trouble(2, 8 * kHour + 1, day(2026, 3, 2)) == BucketFault::pastPotLife);
    CHECK(trouble(2, 8 * kHour, day(2026, 3, 2)) == BucketFault::expired);
    CHECK_FALSE(trouble(3, 1'000'000 * kHour, day(2030, 1, 1))); // never catalysed
    CHECK_FALSE(trouble(4, 1'000'000 * kHour, day(2030, 1, 1))); // a part without mass counts nowhere
}

TEST_CASE("the additive of a mix is what was told of it, else what its parts bring", "[records][bucket]") {
    Shop shop;
    auto family = recordOf(a::starterFamilies().front(), a::TemperatureUnit::fahrenheit);
    family.name = "banded";
    family.additiveBand = a::AdditiveBand{0.011, 0.03};
    REQUIRE(shop.tell(family));
    const auto add = [&](BucketOpened one, std::optional<double> percent) {
        one.additivePercent = percent;
        REQUIRE(shop.tell(one));
    };
    add(pail("low", 1, "banded"), 1.1); // the low end, as typed
    add(pail("much", 2, "banded"), 5.0);
    add(pail("untold", 3, "banded"), {});
    REQUIRE(shop.tell(mix("half", 4, {{"much", 1.0}, {"low", 1.0}})));     // 3.05 %
    REQUIRE(shop.tell(mix("third", 5, {{"much", 1.0}, {"untold", 1.0}}))); // 2.5 %
    auto told = mix("told", 6, {{"much", 1.0}});
    told.additivePercent = 3.0;
    REQUIRE(shop.tell(told));
    const auto troubled = [&](std::int64_t number) {
        return troubleOf(tree(shop, number), **inkOfBucket(shop.db(), number), 0, day(2026, 1, 1)).has_value();
    };
    CHECK_FALSE(troubled(1));
    CHECK(troubled(2));
    CHECK_FALSE(troubled(3));
    CHECK(troubled(4));
    CHECK_FALSE(troubled(5));
    CHECK_FALSE(troubled(6));
}

TEST_CASE("a layer has the ink of its scanned buckets, whatever was planned", "[records][bucket]") {
    Shop shop;
    shop.plan();
    REQUIRE(shop.tell(pail("a", 1, "low-cure")));
    auto old = pail("b", 2, "standard");
    old.expiry = day(2026, 3, 1);
    REQUIRE(shop.tell(old));
    const Moment dayAfter{shop.now(), day(2026, 3, 2)};
    SECTION("other families than planned") {
        REQUIRE(shop.tell(printedFrom({1})));
        const auto run = runOf(shop, dayAfter);
        CHECK(run.usable);
        CHECK(run.layers.layers.at(1).ink.requirement.cure.fahrenheit() == Approx(285.0)); // starter low-cure
        CHECK(run.revisions.families.size() == 1);                                         // standard is not printed
        CHECK_FALSE(run.layers.layers.at(1).bucketTrouble);
    }
    SECTION("the planned families, from several buckets, the worst named if the moment is told") {
        REQUIRE(shop.tell(printedFrom({1, 2})));
        const auto run = runOf(shop, dayAfter);
        CHECK(run.usable);
        CHECK(run.layers.layers.at(1).ink.name == "black mix"); // the plan's own word
        REQUIRE(run.layers.layers.at(1).bucketTrouble);
        CHECK(run.layers.layers.at(1).bucketTrouble->fault == a::BucketFault::expired);
        CHECK(run.layers.layers.at(1).bucketTrouble->bucket == "standard");
        CHECK_FALSE(run.layers.layers.at(0).bucketTrouble);
        CHECK_FALSE(runOf(shop).layers.layers.at(1).bucketTrouble);
        CHECK_FALSE(runOf(shop, Moment{shop.now(), day(2026, 3, 1)}).layers.layers.at(1).bucketTrouble);
    }
    SECTION("a bucket nobody opened cannot be judged") {
        REQUIRE(shop.tell(printedFrom({77})));
        CHECK_FALSE(runOf(shop).usable);
    }
    SECTION("the lot's revisions count for buckets too") {
        auto hotter = recordOf(a::starterFamilies().at(2), a::TemperatureUnit::fahrenheit);
        REQUIRE(hotter.name == "low-cure");
        hotter.revision = 2;
        hotter.cure.value = 300;
        REQUIRE(shop.tell(hotter));
        REQUIRE(shop.tell(printedFrom({1})));
        CHECK(runOf(shop).layers.layers.at(1).ink.requirement.cure.fahrenheit() == Approx(285.0));
        CHECK(revisionsOfFamily(shop.db(), "low-cure")->size() == 2);
        CHECK(revisionsOfFamily(shop.db(), "low-cure")->at(1).revision == 2);
        CHECK(revisionsOfFabric(shop.db(), "100% polyester")->size() == 1);
    }
}
