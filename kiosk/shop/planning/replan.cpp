#include "kiosk/shop/planning/replan.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {

namespace {

records::RunPlanned changedPlan(records::RunPlanned plan, const analytics::WayOut& way) {
    for (const auto& change : way.changes) {
        const auto index = static_cast<std::size_t>(change.position) - 1;
        if (change.position >= 1 && index < plan.layers.size()) {
            plan.layers[index].ink = change.to;
            plan.layers[index].parts = {{change.to, 1.0}};
        }
    }
    return plan;
}

records::RevisionsUsed revisionsOf(const records::RunPlanned& plan, const records::RevisionsUsed& before,
                                   const std::vector<analytics::InkFamily>& newest) {
    records::RevisionsUsed used;
    used.fabric = before.fabric;
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

std::vector<records::Record> recordsOfWayOut(const records::RunOnFile& run, const analytics::WayOut& way,
                                             const std::vector<analytics::InkFamily>& newest,
                                             const std::string& freshLot) {
    const auto plan = changedPlan(run.plan, way);
    std::vector<records::Record> list{records::RunReplanned{plan}};
    records::LotOpened next;
    next.number = run.lotsSoFar + 1;
    if (run.lot) {
        records::LotClosed closed;
        closed.lot = run.lot->id;
        closed.why = records::LotEnd::newRevision;
        list.emplace_back(closed);
        next.dryer = run.lot->dryer;
        next.firstPiece = run.lot->firstPiece;
    }
    next.lot = freshLot;
    next.run = plan.run;
    next.dryer = next.dryer.empty() ? plan.dryer : next.dryer;
    next.revisions = revisionsOf(plan, run.revisions, newest);
    list.emplace_back(next);
    return list;
}

} // namespace holdfast::kiosk::shop
