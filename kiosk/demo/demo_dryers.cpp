#include "kiosk/demo/demo_dryers.hpp"

#include "kiosk/demo/demo_shop.hpp"
#include "kiosk/shop/keeping/dryer_draft.hpp"

#include <array>
#include <cassert>

namespace holdfast::kiosk::demo {
namespace {

struct Dryer final {
    const char* name;
    const char* probe;
    const char* heatedLength; ///< m
    const char* belt;         ///< m/min
    const char* slowest;
    const char* fastest;
    const char* setPoint; ///< °F
    const char* highest;
    const char* piecesPerMetre;
};

/// Each fed from one press by hand. North for cotton, South cooler for polyester, West long and slow for inks that must
/// be held.
constexpr std::array<Dryer, 3> kDryers{{
    {"North", kDemoProbe, "3", "4.5", "1", "8", "360", "450", "0.5"},
    {"South", "P-5", "3.6", "4", "1", "9", "335", "450", "0.5"},
    {"West", "P-8", "6", "2", "0.6", "6", "345", "420", "1"},
}};

const Dryer& rowOf(DemoDryer dryer) {
    return kDryers[static_cast<std::size_t>(dryer)];
}

} // namespace

const char* nameOf(DemoDryer dryer) {
    return rowOf(dryer).name;
}

const char* probeOf(DemoDryer dryer) {
    return rowOf(dryer).probe;
}

std::vector<records::Record> demoDryers(const std::function<std::string()>& makeId) {
    std::vector<records::Record> list;
    std::vector<records::DryerDescribed> others;
    for (const auto& row : kDryers) {
        shop::DryerDraft draft;
        draft.name = row.name;
        draft.heatedLength = row.heatedLength;
        draft.belt = row.belt;
        draft.slowest = row.slowest;
        draft.fastest = row.fastest;
        draft.setPoint = row.setPoint;
        draft.highestSetPoint = row.highest;
        draft.piecesPerMetre = row.piecesPerMetre;
        auto dryer = shop::dryerFrom(draft, others);
        assert(dryer);
        dryer->dryer = makeId();
        others.push_back(*dryer);
        list.emplace_back(*std::move(dryer));
    }
    return list;
}

} // namespace holdfast::kiosk::demo
