#include "kiosk/shop/planning/revisions.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

records::RevisionsUsed revisionsOf(const records::RunPlanned& plan, const records::RunOnFile& before,
                                   const std::vector<analytics::InkFamily>& newest) {
    records::RevisionsUsed used;
    used.fabric = plan.fabric == before.plan.fabric ? before.revisions.fabric : records::RevisionUsed{plan.fabric, 1};
    const auto add = [&used](const records::RevisionUsed& revision) {
        if (std::find(used.families.begin(), used.families.end(), revision) == used.families.end()) {
            used.families.push_back(revision);
        }
    };
    for (const auto& layer : plan.layers) {
        for (const auto& part : layer.parts) {
            const auto family = std::find_if(newest.begin(), newest.end(),
                                             [&part](const auto& one) { return one.name == part.family; });
            if (family != newest.end()) {
                add({family->name, family->revision});
            }
        }
    }
    return used;
}

} // namespace

records::LotOpened nextLot(const records::RunPlanned& plan, const records::RunOnFile& before,
                           const std::vector<analytics::InkFamily>& newest, const std::string& freshLot) {
    records::LotOpened next;
    next.lot = freshLot;
    next.run = plan.run;
    next.number = before.lotsSoFar + 1;
    if (before.lot) {
        next.dryer = before.lot->dryer;
        next.firstPiece = before.lot->firstPiece;
    }
    if (next.dryer.empty()) {
        next.dryer = plan.dryer;
    }
    next.revisions = revisionsOf(plan, before, newest);
    return next;
}

} // namespace holdfast::kiosk::shop
