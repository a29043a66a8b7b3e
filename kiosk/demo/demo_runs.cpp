#include "kiosk/demo/demo_runs.hpp"

#include <algorithm>

namespace holdfast::kiosk::demo {
namespace {

constexpr const char* kCotton = "100% cotton";
constexpr const char* kHalf = "50/50 blend";
constexpr const char* kPolyester = "100% polyester";
constexpr bool kUnderbase = true;
constexpr bool kChildren = true;

// clang-format off
std::vector<DemoRun> firstWeek() {
    return {
        {20374, kNorth, "market aprons", "Garden market", "natural", 80, kCotton, {{"black", "", 301}}},
        {20375, kSouth, "team jerseys", "Night runners", "royal blue", 48, kPolyester, {{"white", "", 304}}},
        {20376, kWest, "canvas bags", "Town library", "natural", 150, kCotton, {{"navy", "", 309}}},
        {20377, kNorth, "staff tees", "Corner bakery", "white", 60, kCotton, {{"brown", "standard"}}},
        {20378, kNorth, "crew hoodies", "Ferry company", "navy", 72, kHalf, {{"white", "", 307}}},
        {20379, kSouth, "marathon vests", "Night runners", "yellow", 200, kPolyester, {{"black", "", 305}}},
        {20380, kWest, "exhibition tees", "Old mill museum", "natural", 90, kCotton, {{"green", "", 310}}},
        {20381, kNorth, "concert shirts", "Harbour choir", "black", 64, kCotton,
         {{"white", "", 302, kUnderbase}, {"red", "", 303}}},
        {20382, kSouth, "climbing shirts", "Quarry climbing club", "grey", 40, kPolyester,
         {{"yellow", "", 306}, {"black", "", 305}}},
        {20383, kWest, "soft-hand tees", "Ceramics studio", "sand", 55, kCotton, {{"teal", "", 323}}},
        {20384, kNorth, "festival tees", "Lakeside festival", "white", 300, kCotton, {{"orange", "", 320}}},
        {20385, kSouth, "skating tops", "Skating rink", "purple", 36, kPolyester, {{"white", "low-cure"}}},
        {20386, kWest, "faded tees", "Radio club", "black", 70, kCotton, {{"bone", "", 311}}},
        {20387, kNorth, "club scarves", "Rowing club", "navy", 50, kHalf, {{"gold", "", 308}}},
        {20388, kSouth, "relay shirts", "Night runners", "green", 60, kPolyester, {{"white", "", 304}, {"black", "", 305}}},
        {20389, kNorth, "workshop tees", "Bicycle workshop", "grey", 90, kCotton,
         {{"black", "", 301}, {"yellow", "", 314}}},
        {20390, kWest, "garden bags", "Allotment society", "natural", 120, kCotton, {{"green", "", 310}}},
    };
}

std::vector<DemoRun> secondWeek() {
    return {
        {20391, kNorth, "usher tees", "Puppet theatre", "black", 30, kCotton, {{"white", "standard"}}},
        {20392, kNorth, "bar tees", "Puppet theatre", "black", 24, kCotton, {{"red", "", 303}}},
        {20393, kSouth, "red jerseys", "Sailing school", "red", 80, kPolyester,
         {{"white", "low-cure"}, {"black", "standard"}}},
        {20394, kWest, "reading-room hoodies", "Town library", "grey", 45, kCotton, {{"navy", "water-based"}}},
        {20395, kNorth, "harvest tees", "Harvest fair", "yellow", 110, kCotton, {{"green", "standard"}}},
        {20396, kSouth, "choir polos", "Tram depot choir", "white", 52, kPolyester,
         {{"white", "low-cure"}, {"royal blue", "", 315}}},
        {20397, kWest, "vintage tees", "Radio club", "brown", 65, kCotton, {{"bone", "", 318}}},
        {20398, kNorth, "camp shirts", "Village fire brigade", "red", 100, kHalf, {{"white", "", 307}}},
        {20399, kSouth, "training tops", "Rowing club", "navy", 75, kPolyester, {{"white", "low-cure"}}},
        {20400, kWest, "museum bags", "Old mill museum", "natural", 140, kCotton, {{"teal", "", 323}}},
        {20401, kNorth, "nursery tees", "Riverside nursery", "white", 40, kCotton, {{"yellow", "standard"}}, kChildren},
        {20402, kWest, "skating leggings", "Skating rink", "black", 34, kPolyester, {{"white", "", 312}}},
        {20403, kNorth, "scout shirts", "Hill scouts", "sand", 85, kCotton, {{"olive", "", 322}}},
        {20404, kSouth, "keeper tops", "Valley school", "black", 28, kPolyester, {{"yellow", "", 306}}},
        {20405, kNorth, "delivery tees", "Corner bakery", "white", 66, kCotton, {{"brown", "standard"}}},
        {20406, kSouth, "dance tops", "Juggling troupe", "black", 44, kPolyester, {{"spring green", "", 321}}},
        {20407, kWest, "swim bags", "Sailing school", "navy", 58, kPolyester, {{"red", "", 319}}},
        {20408, kNorth, "reading tees", "Book fair", "white", 130, kCotton, {{"black", "", 301}}},
        {20409, kSouth, "sprint vests", "Night runners", "red", 90, kPolyester,
         {{"white", "", 304, kUnderbase}, {"yellow", "", 306}}},
        {20410, kNorth, "umbrella covers", "Ferry company", "blue", 62, "Lined nylon", {{"black", "low-cure"}}},
    };
}

std::vector<DemoRun> todayAndAhead() {
    return {
        {20411, kNorth, "white tees", "Harbour choir", "white", 60, kCotton, {{"black", "standard"}}},
        {20412, kNorth, "navy hoodies", "Rowing club", "navy", 96, kHalf, {{"white", "blend"}, {"gold", "blend"}}},
        {20413, kNorth, "red jerseys", "Hill school", "red", 144, kPolyester,
         {{"white", "low-cure"}, {"black", "low-cure"}, {"yellow", "low-cure"}}},
        {20414, kNorth, "red jerseys", "Valley school", "red", 120, kPolyester,
         {{"white", "low-cure"}, {"black", "standard"}, {"yellow", "low-cure"}}},
        {20415, kNorth, "tote bags", "Book fair", "black", 80, "Coated nylon", {{"black", "low-cure"}}},
        {20416, kNorth, "black tees", "Summer band", "black", 72, kCotton, {{"white", "standard"}, {"red", "standard"}}},
        {20417, kWest, "tea towels", "Ceramics studio", "white", 160, kCotton, {{"navy", "", 309}}},
        {20418, kNorth, "depot tees", "Tram depot choir", "grey", 95, kCotton, {{"black", "", 301}}},
        {20419, kSouth, "regatta tops", "Rowing club", "navy", 110, kPolyester, {{"white", "", 304}}},
        {20420, kWest, "garden aprons", "Garden market", "green", 70, kCotton, {{"navy", "water-based"}}},
        {20421, kNorth, "playgroup tees", "Riverside nursery", "yellow", 36, kCotton, {{"red", "", 303}}, kChildren},
        {20422, kSouth, "dark red jerseys", "Hill school", "dark red", 84, "100% polyester, sublimated or dark red",
         {{"white", "low-cure"}}},
    };
}
// clang-format on

} // namespace

const std::vector<DemoRun>& demoRuns() {
    static const auto all = [] {
        auto list = firstWeek();
        for (auto& more : {secondWeek(), todayAndAhead()}) {
            list.insert(list.end(), more.begin(), more.end());
        }
        return list;
    }();
    return all;
}

const std::vector<DemoRun>& demoWindowCards() {
    static const std::vector<DemoRun> cards = {
        {7, kNorth, "standard on cotton", "", "", 0, kCotton, {{"white", "standard"}}},
        {8, kSouth, "low-cure on polyester", "", "", 0, kPolyester, {{"white", "low-cure"}}},
        {9, kWest, "water-based on cotton", "", "", 0, kCotton, {{"navy", "water-based"}}},
    };
    return cards;
}

const DemoRun* demoRun(std::int64_t number) {
    const auto& all = demoRuns();
    const auto found = std::find_if(all.begin(), all.end(), [&](const DemoRun& run) { return run.number == number; });
    return found == all.end() ? nullptr : &*found;
}

shop::PlanDraft draftOf(const DemoRun& run, records::PlanKind kind, const std::string& dryer) {
    shop::PlanDraft draft;
    draft.kind = kind;
    draft.number = run.number;
    draft.title = run.title;
    draft.customer = run.customer;
    draft.garmentColour = run.garment;
    draft.pieces = run.pieces > 0 ? std::to_string(run.pieces) : std::string{};
    draft.dryer = dryer;
    draft.fabric = run.fabric;
    draft.childrensWear = run.childrensWear;
    if (kind == records::PlanKind::run) {
        draft.reference = "A-" + std::to_string(run.number - 20000 + 1700);
    }
    for (const auto& layer : run.layers) {
        shop::DraftLayer one;
        one.colour = layer.colour;
        one.ink = layer.family;
        one.underbase = layer.underbase;
        if (layer.bucket != 0) {
            one.buckets = {layer.bucket};
        }
        draft.layers.push_back(std::move(one));
    }
    return draft;
}

} // namespace holdfast::kiosk::demo
