#include "kiosk/demo/demo_steps.hpp"

/// What is done away from the dryers: stock, plans, crews, checks.
namespace holdfast::kiosk::demo {
namespace {

using analytics::CheckKind;
using records::BucketEnd;

void addStock(std::vector<DemoStep>& steps) {
    for (std::int64_t number = 301; number <= 310; ++number) {
        addStep(steps, on(0, 6, 10), OpensBucket{number});
    }
    addStep(steps, on(0, 6, 20), OpensBucket{314});
    addStep(steps, on(0, 6, 20), OpensBucket{315});
    addStep(steps, on(1, 14, 20), EntersSheet{});
    addStep(steps, on(2, 9, 10), MakesMix{323});
    addStep(steps, on(3, 6, 40), MakesMix{320});
    addStep(steps, on(3, 10, 10), OpensBucket{311});
    addStep(steps, on(3, 15, 25), ClosesBucket{311, BucketEnd::thrownAway});
    addStep(steps, on(5, 8, 5), MakesMix{321});
    addStep(steps, on(6, 7, 30), OpensBucket{318});
    addStep(steps, on(6, 15, 20), ClosesBucket{318, BucketEnd::thrownAway});
    addStep(steps, on(6, 13, 0), OpensBucket{317});
    addStep(steps, on(7, 9, 50), ClosesBucket{317, BucketEnd::mislabelled});
    addStep(steps, on(8, 6, 50), OpensBucket{312});
    addStep(steps, on(8, 7, 0), MakesMix{322});
    addStep(steps, on(8, 12, 20), ClosesBucket{312, BucketEnd::empty});
    addStep(steps, on(9, 7, 5), ClosesBucket{302, BucketEnd::empty});
    addStep(steps, on(9, 7, 10), OpensBucket{316});
    addStep(steps, on(9, 9, 15), OpensBucket{319});
}

/// Plans are written the afternoon before, a day's runs at once.
void addPlans(std::vector<DemoStep>& steps) {
    addStep(steps, on(0, 6, 30), PlansCards{});
    addStep(steps, on(0, 6, 35), PlansRuns{20374, 20376});
    addStep(steps, on(0, 14, 0), PlansRuns{20377, 20380});
    addStep(steps, on(1, 14, 0), PlansRuns{20381, 20382});
    addStep(steps, on(2, 9, 20), PlansRuns{20383, 20383});
    addStep(steps, on(3, 6, 45), PlansRuns{20384, 20385});
    addStep(steps, on(3, 10, 20), PlansRuns{20386, 20387});
    addStep(steps, on(3, 14, 0), PlansRuns{20388, 20390});
    addStep(steps, on(4, 14, 0), PlansRuns{20391, 20394});
    addStep(steps, on(5, 14, 10), PlansRuns{20395, 20396});
    addStep(steps, on(6, 7, 40), PlansRuns{20397, 20397});
    addStep(steps, on(6, 14, 0), PlansRuns{20398, 20401});
    addStep(steps, on(8, 7, 10), PlansRuns{20402, 20404});
    addStep(steps, on(8, 14, 0), PlansRuns{20405, 20406});
    addStep(steps, on(9, 9, 20), PlansRuns{20407, 20407});
    addStep(steps, on(9, 14, 0), PlansRuns{20408, 20410});
    addStep(steps, on(10, 13, 50), PlansRuns{20411, 20417});
    addStep(steps, minutesAgo(390), PlansRuns{20418, 20422});
}

void addCrews(std::vector<DemoStep>& steps) {
    for (int day = 0; day < kToday; ++day) {
        const bool odd = day % 2 != 0;
        addStep(steps, on(day, 6, 25),
                ChangesCrew{odd ? std::vector<std::int64_t>{4, 5} : std::vector<std::int64_t>{1, 2}});
        addStep(steps, on(day, 13, 5),
                ChangesCrew{odd ? std::vector<std::int64_t>{1, 7} : std::vector<std::int64_t>{4, 8}, day % 3});
    }
    addStep(steps, minutesAgo(420), ChangesCrew{{4, 5}, 0});
    addStep(steps, minutesAgo(200), ChangesCrew{{1, 2}, 1});
}

} // namespace

std::vector<DemoStep> demoDeskWork() {
    std::vector<DemoStep> steps;
    addStep(steps, on(0, 6, 0), OpensShop{});
    addStock(steps);
    addPlans(steps);
    addCrews(steps);
    addStep(steps, on(7, 6, 40), Checks{"P-5", CheckKind::ice});
    addStep(steps, on(7, 6, 50), Checks{"P-5", CheckKind::boiling});
    addStep(steps, on(9, 6, 45), Checks{"P-8", CheckKind::ice});
    addStep(steps, on(9, 6, 40), Checks{"H-7", CheckKind::ice});
    return steps;
}

} // namespace holdfast::kiosk::demo
