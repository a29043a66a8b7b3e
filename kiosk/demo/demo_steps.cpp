#include "kiosk/demo/demo_steps.hpp"

#include <algorithm>
#include <iterator>
#include <tuple>

namespace holdfast::kiosk::demo {
namespace {

bool isEarlier(const DemoStep& one, const DemoStep& other) {
    return std::tie(one.at.day, one.at.minute) < std::tie(other.at.day, other.at.minute);
}

std::vector<DemoStep> inOrder() {
    std::vector<DemoStep> all;
    for (auto& part : {demoDeskWork(), demoUsualRuns(), demoFirstWeek(), demoSecondWeek(), demoToday()}) {
        std::copy(part.begin(), part.end(), std::back_inserter(all));
    }
    std::stable_sort(all.begin(), all.end(), isEarlier);
    return all;
}

} // namespace

bool onlyAnnounces(const DemoAct& act) {
    if (const auto* action = std::get_if<Acts>(&act)) {
        return action->card == shop::ActionCard::setUp || action->card == shop::ActionCard::ready;
    }
    return std::holds_alternative<ScansRun>(act) || std::holds_alternative<ScansAlso>(act) ||
           std::holds_alternative<ScansCard>(act);
}

const std::vector<DemoStep>& demoSteps() {
    static const auto all = inOrder();
    return all;
}

} // namespace holdfast::kiosk::demo
