#include "kiosk/demo/demo_runs.hpp"
#include "kiosk/demo/demo_steps.hpp"

#include <array>

/// Runs on which nothing happened: scanned, ridden for when it was due, finished.
namespace holdfast::kiosk::demo {
namespace {

constexpr double kPiecesAMinute = 1.9; ///< of the slowest belt
constexpr int kLastPieceAfter = 5;

struct Usual final {
    std::int64_t run = 0;
    DemoTime begins{};
    int spoiled = 0;
};

constexpr std::array<Usual, 20> kUsual{{
    {20375, on(0, 8, 0), 0},   {20376, on(0, 9, 30), 3},  {20377, on(1, 7, 0), 1},   {20378, on(1, 9, 40), 0},
    {20380, on(1, 10, 0), 2},  {20383, on(2, 10, 5), 0},  {20385, on(3, 8, 10), 0},  {20386, on(3, 10, 45), 1},
    {20387, on(3, 13, 20), 0}, {20389, on(4, 7, 35), 2},  {20390, on(4, 10, 0), 0},  {20394, on(5, 9, 10), 0},
    {20396, on(6, 8, 20), 1},  {20399, on(7, 10, 15), 0}, {20400, on(7, 11, 0), 4},  {20401, on(7, 13, 30), 0},
    {20402, on(8, 8, 40), 0},  {20403, on(8, 9, 30), 2},  {20407, on(9, 10, 20), 0}, {20408, on(10, 7, 15), 2},
}};

} // namespace

std::vector<DemoStep> demoUsualRuns() {
    std::vector<DemoStep> steps;
    for (const auto& usual : kUsual) {
        const auto* run = demoRun(usual.run);
        auto at = usual.begins;
        steps.push_back({at, run->dryer, ScansRun{usual.run}});
        at.minute += static_cast<int>(run->pieces / kPiecesAMinute) + kLastPieceAfter;
        steps.push_back({at, run->dryer, FinishesRun{usual.run, usual.spoiled}});
    }
    return steps;
}

} // namespace holdfast::kiosk::demo
