#include "kiosk/demo/demo_steps.hpp"

#include <algorithm>
#include <cstdlib>
#include <iterator>
#include <tuple>

namespace holdfast::kiosk::demo {
namespace {

bool isEarlier(const DemoStep& one, const DemoStep& other) {
    return std::tie(one.at.day, one.at.minute) < std::tie(other.at.day, other.at.minute);
}

/// Whoever stands at the dryer looks every few minutes whether a reading is due, unless something else is going on.
constexpr int kLooksEvery = 3; ///< minutes, while a run begins; later half as often
constexpr int kBegins = 20;
constexpr int kBusy = 2;
constexpr int kLateAfter = 16; ///< minutes: by then the last reading was taken or is missed

int looksEvery(int minutesSince) {
    return minutesSince < kBegins ? kLooksEvery : 2 * kLooksEvery;
}

bool isBusy(const std::vector<DemoStep>& all, DemoDryer dryer, const DemoTime& at) {
    return std::any_of(all.begin(), all.end(), [&](const DemoStep& step) {
        return step.dryer == dryer && step.at.day == at.day && std::abs(step.at.minute - at.minute) < kBusy &&
               !std::holds_alternative<FinishesRun>(step.act);
    });
}

std::optional<std::int64_t> begunBy(const DemoAct& act) {
    const auto* scanned = std::get_if<ScansRun>(&act);
    const auto* claimed = std::get_if<Claims>(&act);
    return scanned != nullptr   ? std::optional{scanned->run}
           : claimed != nullptr ? std::optional{claimed->run}
                                : std::nullopt;
}

/// Of the past days: today's readings are those of demoToday().
void addLooks(const std::vector<DemoStep>& floor, std::vector<DemoStep>& all) {
    for (const auto& begin : floor) {
        const auto run = begunBy(begin.act);
        if (!run || begin.at.day == kToday) {
            continue;
        }
        const auto end = std::find_if(floor.begin(), floor.end(), [&](const DemoStep& step) {
            const auto* finished = std::get_if<FinishesRun>(&step.act);
            return finished != nullptr && finished->run == *run && step.at.day == begin.at.day;
        });
        if (end == floor.end()) {
            continue;
        }
        for (auto at = begin.at; at.minute < end->at.minute; at.minute += looksEvery(at.minute - begin.at.minute)) {
            if (!isBusy(floor, begin.dryer, at)) {
                all.push_back({at, begin.dryer, RidesIfDue{*run}});
            }
        }
        all.push_back({{end->at.day, end->at.minute + kLateAfter}, begin.dryer, RidesIfDue{*run}});
    }
}

std::vector<DemoStep> inOrder() {
    std::vector<DemoStep> floor;
    for (auto& part : {demoUsualRuns(), demoFirstWeek(), demoSecondWeek(), demoToday()}) {
        std::copy(part.begin(), part.end(), std::back_inserter(floor));
    }
    std::vector<DemoStep> all;
    for (auto& part : {demoDeskWork(), floor, demoBenchWork(), demoLotWork()}) {
        std::copy(part.begin(), part.end(), std::back_inserter(all));
    }
    addLooks(floor, all);
    std::stable_sort(all.begin(), all.end(), isEarlier);
    return all;
}

} // namespace

const std::vector<DemoStep>& demoSteps() {
    static const auto all = inOrder();
    return all;
}

} // namespace holdfast::kiosk::demo
