#include "kiosk/demo/demo_runs.hpp"
#include "kiosk/demo/demo_steps.hpp"

#include <array>

/// Runs on which nothing happened: scanned, ridden for, finished.
namespace holdfast::kiosk::demo {
namespace {

constexpr int kFirstRideAfter = 8;
constexpr int kRideEvery = 55;
constexpr int kLastPieceAfter = 25;

struct Usual final {
    std::int64_t run = 0;
    DemoTime begins{};
    int rides = 1;
    int spoiled = 0;
};

constexpr std::array<Usual, 20> kUsual{{
    {20375, on(0, 8, 0), 1, 0},   {20376, on(0, 9, 30), 2, 3},  {20377, on(1, 7, 0), 1, 1},
    {20378, on(1, 9, 40), 2, 0},  {20380, on(1, 10, 0), 1, 2},  {20383, on(2, 10, 5), 1, 0},
    {20385, on(3, 8, 10), 1, 0},  {20386, on(3, 10, 45), 1, 1}, {20387, on(3, 13, 20), 1, 0},
    {20389, on(4, 7, 35), 2, 2},  {20390, on(4, 10, 0), 2, 0},  {20394, on(5, 9, 10), 1, 0},
    {20396, on(6, 8, 20), 1, 1},  {20399, on(7, 10, 15), 1, 0}, {20400, on(7, 11, 0), 2, 4},
    {20401, on(7, 13, 30), 1, 0}, {20402, on(8, 8, 40), 1, 0},  {20403, on(8, 9, 30), 1, 2},
    {20407, on(9, 10, 20), 1, 0}, {20408, on(10, 7, 15), 3, 2},
}};

} // namespace

std::vector<DemoStep> demoUsualRuns() {
    std::vector<DemoStep> steps;
    for (const auto& usual : kUsual) {
        const auto dryer = demoRun(usual.run)->dryer;
        auto at = usual.begins;
        steps.push_back({at, dryer, ScansRun{usual.run}});
        at.minute += kFirstRideAfter;
        for (int ride = 0; ride < usual.rides; ++ride) {
            steps.push_back({at, dryer, Rides{}});
            at.minute += kRideEvery;
        }
        at.minute += kLastPieceAfter - kRideEvery;
        steps.push_back({at, dryer, FinishesRun{usual.run, usual.spoiled}});
    }
    return steps;
}

} // namespace holdfast::kiosk::demo
