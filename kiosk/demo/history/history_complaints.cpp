#include "kiosk/demo/history/history_parts.hpp"

#include <algorithm>
#include <cmath>

/// What customers said, weeks later.
namespace holdfast::kiosk::demo::making {
namespace {

using analytics::TemperatureDifference;

constexpr double kMedianDelay = 27.0; ///< days from packing to the letter
constexpr double kSpreadOfLog = 0.6;

} // namespace

void makeComplaints(Making& making) {
    auto chance = making.chance(6);
    auto& facts = making.facts;
    std::vector<ComplaintFact> all;
    for (std::size_t i = 0; i < facts.runs.size(); ++i) {
        const auto& run = facts.runs[i];
        const double delay = kMedianDelay * std::exp(kSpreadOfLog * chance.normal());
        const bool atFault = chance.happens(0.3 * washOutChance(run.trueMargin));
        const bool anyway = chance.happens(making.plan.complaints);
        const int day = making.workedFrom(dayOf(run.ends) + 3 + static_cast<int>(delay));
        const int closed = making.workedLater(day, chance.between(3, 8));
        const auto other = static_cast<Complaint>(chance.between(1, 4));
        const int pieces = chance.between(1, std::max(2, run.pieces / 8));
        if ((!atFault && !anyway) || closed >= making.plan.days - 1) {
            continue;
        }
        ComplaintFact complaint;
        complaint.run = i;
        complaint.ours = atFault;
        complaint.what = atFault && chance.happens(0.7) ? Complaint::washedOut : other;
        complaint.pieces = pieces;
        complaint.received = at(day, 9, 30) + static_cast<int>(i % 50);
        complaint.closed = at(closed, 11, 0) + static_cast<int>(i % 50);
        all.push_back(complaint);
    }
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.received < b.received; });
    std::int64_t number = 0;
    for (auto& complaint : all) {
        complaint.number = ++number;
    }
    facts.complaints = std::move(all);
}

} // namespace holdfast::kiosk::demo::making
