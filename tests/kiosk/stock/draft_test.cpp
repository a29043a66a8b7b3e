#include "kiosk/shop/stock/bucket_draft.hpp"
#include "kiosk/shop/stock/company.hpp"
#include "kiosk/shop/stock/fabric_draft.hpp"
#include "kiosk/shop/stock/family_draft.hpp"
#include "kiosk/shop/stock/mix_draft.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast::kiosk::shop;
namespace a = holdfast::analytics;
namespace r = holdfast::kiosk::records;
using Cause = StockFaultCause;

namespace {

r::FamilyRecord starter(const std::string& name) {
    for (const auto& family : a::starterFamilies()) {
        if (family.name == name) {
            return r::recordOf(family, a::TemperatureUnit::fahrenheit);
        }
    }
    FAIL("no starter " + name);
    return {};
}

template <class Made>
bool has(const tl::expected<Made, std::vector<StockFault>>& made, Cause cause, const std::string& field) {
    return !made && std::any_of(made.error().begin(), made.error().end(),
                                [&](const auto& one) { return one.cause == cause && one.field == field; });
}

template <class Made>
std::size_t faultsIn(const tl::expected<Made, std::vector<StockFault>>& made) {
    return made ? 0 : made.error().size();
}

r::BucketTree pail(std::int64_t number, const std::string& family) {
    r::BucketTree tree;
    tree.bucket.id = "b" + std::to_string(number);
    tree.bucket.number = number;
    tree.bucket.name = family;
    return tree;
}

r::BucketTree mixed(std::int64_t number, const std::vector<r::BucketTree>& parts) {
    auto tree = pail(number, "mix");
    tree.bucket.isMix = true;
    for (const auto& part : parts) {
        tree.bucket.parts.push_back({part.bucket.id, 1.0});
        tree.parts.push_back(part);
    }
    return tree;
}

MixStock stockOf(const std::vector<r::BucketTree>& trees) {
    MixStock stock;
    for (const auto& tree : trees) {
        stock.trees.emplace(tree.bucket.number, tree);
    }
    stock.families = a::starterFamilies();
    stock.today = a::Date{std::chrono::days{20'000}};
    return stock;
}

MixDraft draftOfParts(std::vector<DraftPart> parts) {
    MixDraft draft;
    draft.number = 9;
    draft.name = "team red";
    draft.parts = std::move(parts);
    return draft;
}

} // namespace

TEST_CASE("a family revised without a change keeps every figure as authored, in either unit", "[stock]") {
    for (const auto unit : {a::TemperatureUnit::fahrenheit, a::TemperatureUnit::celsius}) {
        for (const auto& family : a::starterFamilies()) {
            const auto record = r::recordOf(family, a::TemperatureUnit::fahrenheit);
            const auto made = familyFrom(draftOf(record, unit), {});
            REQUIRE(made);
            CHECK(made->revision == record.revision + 1);
            CHECK(made->cure == record.cure);
            CHECK(made->gel == record.gel);
            auto next = record;
            ++next.revision;
            CHECK(r::toFamily(*made) == r::toFamily(next));
        }
    }
}

TEST_CASE("a figure that is typed keeps its number and the shown unit", "[stock]") {
    auto draft = draftOf(starter("low-cure"), a::TemperatureUnit::celsius);
    draft.cure = " 141,5 ";
    draft.potLife = "6";
    draft.bandLow = "0,5";
    draft.bandHigh = "1.1";
    const auto made = familyFrom(draft, {});
    REQUIRE(made);
    CHECK(made->cure == a::AuthoredTemperature{141.5, a::TemperatureUnit::celsius});
    CHECK(made->potLife->count() == 21'600.0); // 6 h
    CHECK(made->additiveBand->low == Approx(0.005).epsilon(1e-12));
    CHECK(made->additiveBand->high == Approx(0.011).epsilon(1e-12));
}

TEST_CASE("every fault of a family is told at once", "[stock]") {
    FamilyDraft draft;
    draft.name = "Low-Cure";
    draft.gelLow = "280";
    draft.cure = "";
    draft.hold = "soon";
    draft.ease = "1.5";
    draft.hotter = "330";
    draft.bandHigh = "101";
    draft.mark = a::Mark::dataSheet;
    const auto made = familyFrom(draft, {"low-cure"});
    CHECK(has(made, Cause::nameTaken, "name"));
    CHECK(has(made, Cause::halfGiven, "gel-high"));
    CHECK(has(made, Cause::cureMissing, "cure"));
    CHECK(has(made, Cause::notANumber, "hold"));
    CHECK(has(made, Cause::notWhole, "ease"));
    CHECK(has(made, Cause::halfGiven, "hotter-time"));
    CHECK(has(made, Cause::halfGiven, "band-low"));
    CHECK(has(made, Cause::overHundredPercent, "band-high"));
    CHECK(has(made, Cause::sourceMissing, "source"));
}

TEST_CASE("what analytics finds wrong with a family stands at its field", "[stock]") {
    auto draft = draftOf(starter("standard"), a::TemperatureUnit::fahrenheit);
    draft.gelLow = "300";
    draft.gelHigh = "290";
    draft.cure = "285";
    draft.ceiling = "280";
    const auto made = familyFrom(draft, {});
    REQUIRE(!made);
    CHECK(has(made, Cause::family, "gel-low"));
    CHECK(has(made, Cause::family, "cure"));
    CHECK(has(made, Cause::family, "ceiling"));
}

TEST_CASE("no temperature of ice, of an oven's fire or of words is taken", "[stock]") {
    for (const std::string typed : {"-40", "3200", "1e99999", "nan", "hot"}) {
        auto draft = draftOf(starter("standard"), a::TemperatureUnit::fahrenheit);
        draft.cure = typed;
        INFO(typed);
        const auto made = familyFrom(draft, {});
        REQUIRE(!made);
        CHECK(made.error().front().field == "cure");
        CHECK(made.error().size() == 1);
    }
}

TEST_CASE("a cloth keeps its ceilings, parts its colours by commas and refuses bleed above scorch", "[stock]") {
    const auto record = r::recordOf(a::starterFabrics().front(), a::TemperatureUnit::fahrenheit);
    auto draft = draftOf(record, a::TemperatureUnit::celsius);
    draft.coloursNotAtRisk = " navy , black,, navy ";
    const auto made = fabricFrom(draft, {});
    REQUIRE(made);
    CHECK(made->hardCeiling == record.hardCeiling);
    CHECK(made->coloursNotAtRisk == std::vector<std::string>{"navy", "black"});
    CHECK(made->revision == record.revision + 1);

    FabricDraft wrong;
    wrong.name = "felt";
    wrong.hardCeiling = "300";
    wrong.bleedCeiling = "320";
    CHECK(has(fabricFrom(wrong, {}), Cause::fabric, "bleed-ceiling"));
    wrong.name = "Felt";
    CHECK(has(fabricFrom(wrong, {"felt"}), Cause::nameTaken, "name"));
}

TEST_CASE("a pail is opened with what stands on it, and every fault at once", "[stock]") {
    BucketDraft draft{"silicone", "red", " L-7 ", "2026-03-01", "1,5", true};
    const auto made = bucketFrom(draft, {"silicone"}, 77);
    REQUIRE(made);
    CHECK(made->batch == "L-7");
    CHECK(made->expiry == a::Date{std::chrono::year{2026} / 3 / 1});
    CHECK(made->additivePercent == 1.5);
    CHECK(made->potLifeStartsAt == 77);

    draft = {"gold", std::string(201, 'x'), "a\x01", "2026-02-30", "-1", false};
    const auto wrong = bucketFrom(draft, {"silicone"}, 77);
    CHECK(has(wrong, Cause::familyUnknown, "family"));
    CHECK(has(wrong, Cause::textTooLong, "colour"));
    CHECK(has(wrong, Cause::controlSign, "batch"));
    CHECK(has(wrong, Cause::notADate, "expiry"));
    CHECK(has(wrong, Cause::negative, "additive"));
    CHECK(faultsIn(wrong) == 5);
}

TEST_CASE("a mix that contains itself is refused at any depth", "[stock]") {
    const auto inner = mixed(3, {pail(1, "standard"), mixed(9, {pail(2, "blend")})});
    const auto stock = stockOf({pail(1, "standard"), inner, mixed(9, {pail(2, "blend")})});
    const auto itself = mixFrom(draftOfParts({{1, "1"}, {9, "1"}}), stock);
    CHECK(has(itself, Cause::containsItself, "part.9"));
    CHECK(faultsIn(itself) == 1);
    CHECK(has(mixFrom(draftOfParts({{3, "1"}}), stock), Cause::containsItself, "part.3"));
    CHECK(has(mixFrom(draftOfParts({{9, "1"}}), stockOf({})), Cause::containsItself, "part.9"));
}

TEST_CASE("a mix of one chemistry is made of buckets that stand, each once, each with a mass", "[stock]") {
    auto gone = pail(4, "blend");
    gone.bucket.closed = r::BucketEnd::mislabelled;
    const auto stock =
        stockOf({pail(1, "standard"), pail(2, "blend"), pail(3, "silicone"), gone, pail(5, "never heard of")});
    const auto made = mixFrom(draftOfParts({{1, "2"}, {2, "1,5"}}), stock);
    REQUIRE(made);
    CHECK(made->parts == std::vector<r::BucketPart>{{"b1", 2.0}, {"b2", 1.5}});
    CHECK(made->number == 9);

    CHECK(has(mixFrom(draftOfParts({}), stock), Cause::noPart, "parts"));
    CHECK(has(mixFrom(draftOfParts({{1, "1"}, {1, "1"}}), stock), Cause::bucketTwice, "part.1"));
    CHECK(has(mixFrom(draftOfParts({{1, "1"}, {3, "1"}}), stock), Cause::chemistriesDiffer, "parts"));
    CHECK(has(mixFrom(draftOfParts({{4, "1"}}), stock), Cause::bucketClosed, "part.4"));
    CHECK(has(mixFrom(draftOfParts({{5, "1"}}), stock), Cause::familyGone, "part.5"));
    CHECK(has(mixFrom(draftOfParts({{77, "1"}}), stock), Cause::bucketUnknown, "part.77"));
    for (const std::string mass : {"", "0", "-1", "much", "inf", "1e400"}) {
        INFO(mass);
        CHECK(has(mixFrom(draftOfParts({{1, mass}}), stock), Cause::massNotPositive, "part.1"));
    }
    const auto all = mixFrom(draftOfParts({{1, ""}, {3, "1"}, {4, "1"}, {77, "x"}}), stock);
    CHECK(faultsIn(all) == 5); // mass of 1, closed 4, mass of 77, unknown 77, chemistries
}

TEST_CASE("an expired, an overdue and an emptied part are told and do not forbid the mix", "[stock]") {
    auto old = pail(1, "standard");
    old.bucket.expiry = a::Date{std::chrono::days{19'999}}; // the day before the stock's today
    auto overdue = pail(2, "silicone");
    overdue.bucket.potLifeStartsAt = 0;
    auto emptied = pail(3, "standard");
    emptied.bucket.closed = r::BucketEnd::empty;
    auto stock = stockOf({old, overdue, emptied});
    stock.now = 14'400'001; // a millisecond over the silicone's four hours (contracts, starters)
    const auto draft = draftOfParts({{1, "1"}, {2, "1"}, {3, "1"}});
    CHECK(warningsOf(draft, stock) == std::vector<PartWarning>{{PartWarningCause::expired, 1},
                                                               {PartWarningCause::pastPotLife, 2},
                                                               {PartWarningCause::emptied, 3}});
    CHECK(mixFrom(draftOfParts({{1, "1"}, {3, "1"}}), stock));
    stock.now = 14'400'000;
    CHECK(warningsOf(draft, stock).size() == 2);
}

TEST_CASE("company names every family once for each cloth it is open on, and agrees with the window of both",
          "[stock]") {
    const auto families = a::starterFamilies();
    const auto fabrics = a::starterFabrics();
    for (const auto& family : families) {
        const auto company = companyOf(a::pureInk(family), "white", families, fabrics);
        REQUIRE(company.size() == fabrics.size());
        for (const auto& one : company) {
            const bool closed = one.window.state == a::WindowState::closed;
            CHECK(one.with.size() + one.notWith.size() == (closed ? 0U : families.size()));
        }
    }
    // decisions 1: standard cures at 320 °F and polyester's bleed ceiling lies at 300 °F (contracts, starters).
    const auto standard =
        std::find_if(families.begin(), families.end(), [](const auto& one) { return one.name == "standard"; });
    for (const auto& one : companyOf(a::pureInk(*standard), "white", families, fabrics)) {
        if (one.fabric == "100% polyester") {
            CHECK(one.window.state == a::WindowState::closed);
        }
    }
    CHECK(companyOf(a::pureInk(*standard), "white", families, {}).empty());
}
