#include "kiosk/shop/planning/replan.hpp"

#include "kiosk/shop/planning/revisions.hpp"

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

} // namespace

std::vector<records::Record> recordsOfWayOut(const records::RunOnFile& run, const analytics::WayOut& way,
                                             const std::vector<analytics::InkFamily>& newest,
                                             const std::string& freshLot) {
    const auto plan = changedPlan(run.plan, way);
    std::vector<records::Record> list{records::RunReplanned{plan}};
    if (run.lot) {
        records::LotClosed closed;
        closed.lot = run.lot->id;
        closed.why = records::LotEnd::newRevision;
        list.emplace_back(closed);
    }
    list.emplace_back(nextLot(plan, run, newest, freshLot));
    return list;
}

} // namespace holdfast::kiosk::shop
