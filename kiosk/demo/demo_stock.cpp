#include "kiosk/demo/demo_stock.hpp"

#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink_family.hpp"
#include "kiosk/records/json_object.hpp"
#include "kiosk/shop/stock/fabric_draft.hpp"
#include "kiosk/shop/stock/family_draft.hpp"

#include <algorithm>
#include <array>
#include <cassert>

namespace holdfast::kiosk::demo {
namespace {

/// Months from the maker's shelf to its date, in days (from memory).
constexpr int kHalfAYear = 180;

constexpr std::array<DemoBucket, 17> kBuckets{{
    {301, "standard", "black", "L 20 114", kHalfAYear, "", false},
    {302, "standard", "white", "L 20 131", kHalfAYear, "", false},
    {303, "standard", "red", "L 20 098", kHalfAYear, "", false},
    {304, "low-cure", "white", "L 31 007", kHalfAYear, "", false},
    {305, "low-cure", "black", "L 31 012", kHalfAYear, "", false},
    {306, "low-cure", "yellow", "L 31 020", kHalfAYear, "", false},
    {307, "blend", "white", "L 25 040", kHalfAYear, "", false},
    {308, "blend", "gold", "L 25 055", 8, "", false},
    {309, "water-based", "navy", "W 04 210", kHalfAYear, "2", false},
    {310, "water-based", "green", "W 04 233", kHalfAYear, "2", false},
    {311, "discharge", "bone", "D 11 003", kHalfAYear, "6", true},
    {312, "silicone", "white", "S 02 018", kHalfAYear, "3", true},
    {314, "standard", "yellow", "L 20 077", 60, "", false},
    {315, "low-cure", "royal blue", "L 31 033", kHalfAYear, "", false},
    {316, "standard", "white", "L 20 140", kHalfAYear, "", false},
    {318, "discharge", "bone", "D 11 004", kHalfAYear, "6", true},
    {319, "silicone", "red", "S 02 021", kHalfAYear, "3", true},
}};
/// It holds standard ink under a low-cure label.
constexpr DemoBucket kMislabelled{317, "low-cure", "black", "L 31 012", kHalfAYear, "", false};

const std::array<DemoMix, 4>& mixes() {
    static const std::array<DemoMix, 4> all{{
        {320, "standard mix", "orange", {{303, "3"}, {314, "1"}}},
        {321, "low-cure mix", "spring green", {{306, "2"}, {315, "0.8"}}},
        {322, "olive from leftovers", "olive", {{320, "1.2"}, {321, "1.5"}}},
        {323, "water-based mix", "teal", {{309, "1"}, {310, "1"}}},
    }};
    return all;
}

struct Cloth final {
    const char* name;
    const char* hardCeiling; ///< °F
};
/// Heat-sensitive ones, where one degree more or less decides.
constexpr std::array<Cloth, 2> kCloths{{{"Coated nylon", "292"}, {"Lined nylon", "297"}}};

} // namespace

std::vector<records::Record> demoInks() {
    constexpr auto kUnit = analytics::TemperatureUnit::fahrenheit;
    std::vector<records::Record> list;
    for (const auto& family : analytics::starterFamilies()) {
        list.emplace_back(records::recordOf(family, kUnit));
    }
    for (const auto& fabric : analytics::starterFabrics()) {
        list.emplace_back(records::recordOf(fabric, kUnit));
    }
    for (const auto& cloth : kCloths) {
        shop::FabricDraft draft;
        draft.name = cloth.name;
        draft.hardCeiling = cloth.hardCeiling;
        draft.source = "demo shop";
        const auto fabric = shop::fabricFrom(draft, {});
        assert(fabric);
        list.emplace_back(*fabric);
    }
    return list;
}

records::Record demoWaterBasedSheet(const records::FamilyRecord& before) {
    auto draft = shop::draftOf(before, analytics::TemperatureUnit::fahrenheit);
    draft.potLife = "168";
    draft.bandLow = "1";
    draft.bandHigh = "3";
    draft.rest = "48";
    draft.mark = analytics::Mark::dataSheet;
    draft.source = "demo data sheet";
    const auto family = shop::familyFrom(draft, {});
    assert(family);
    return *family;
}

const DemoBucket& demoBucket(std::int64_t number) {
    const auto* found =
        std::find_if(kBuckets.begin(), kBuckets.end(), [&](const DemoBucket& one) { return one.number == number; });
    return found == kBuckets.end() ? kMislabelled : *found;
}

const DemoMix& demoMix(std::int64_t number) {
    const auto& all = mixes();
    const auto* found = std::find_if(all.begin(), all.end(), [&](const DemoMix& one) { return one.number == number; });
    assert(found != all.end());
    return *found;
}

shop::BucketDraft draftOf(const DemoBucket& bucket, std::chrono::sys_days today) {
    shop::BucketDraft draft;
    draft.family = bucket.family;
    draft.colour = bucket.colour;
    draft.batch = bucket.batch;
    draft.additive = bucket.additive;
    draft.catalysedNow = bucket.catalysed;
    if (bucket.keepsDays > 0) {
        draft.expiry = records::toText(analytics::Date{today + std::chrono::days{bucket.keepsDays}});
    }
    return draft;
}

shop::MixDraft draftOf(const DemoMix& mix) {
    shop::MixDraft draft;
    draft.number = mix.number;
    draft.name = mix.name;
    draft.colour = mix.colour;
    draft.parts = mix.parts;
    return draft;
}

} // namespace holdfast::kiosk::demo
