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

const std::vector<DemoStep>& demoSteps() {
    static const auto all = inOrder();
    return all;
}

} // namespace holdfast::kiosk::demo
