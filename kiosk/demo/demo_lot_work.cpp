#include "kiosk/demo/demo_steps.hpp"

#include <array>

/// Where the lots went: packed and shipped, decided, counted on the shelf, complained about.
namespace holdfast::kiosk::demo {
namespace {

using records::ComplaintKind;
using records::DecisionWord;

constexpr std::int64_t kOwner = 3;
constexpr std::int64_t kDecider = 6;

/// Of the training tops two are missing, and nobody knows where they are.
void addPacked(std::vector<DemoStep>& steps) {
    struct Packed final {
        std::int64_t run;
        int day;
        int spoiled;
    };
    constexpr std::array<Packed, 17> kPacked{{
        {20374, 1, 1},
        {20375, 1, 0},
        {20376, 1, 3},
        {20377, 2, 1},
        {20378, 2, 0},
        {20381, 3, 2},
        {20383, 3, 0},
        {20385, 4, 0},
        {20387, 4, 0},
        {20389, 6, 2},
        {20390, 6, 0},
        {20391, 6, 1},
        {20392, 6, 0},
        {20396, 7, 1},
        {20400, 8, 4},
        {20402, 9, 0},
        {20403, 9, 2},
    }};
    for (const auto& packed : kPacked) {
        Packs pack;
        pack.run = packed.run;
        pack.spoiled = packed.spoiled;
        addStep(steps, on(packed.day, 16, 30), pack);
    }
    Packs missing;
    missing.run = 20399;
    missing.unaccounted = 2;
    addStep(steps, on(9, 16, 30), missing);
    Packs here;
    here.run = 20393;
    here.spoiled = 2;
    here.ships = false;
    addStep(steps, on(6, 16, 34), here);
}

void addDecided(std::vector<DemoStep>& steps) {
    addStep(steps, on(2, 16, 0),
            Decides{20379,
                    2,
                    DecisionWord::scrapped,
                    "breaks when it is pulled to a quarter, belt had been too fast",
                    {kDecider}});
    addStep(steps, on(6, 15, 50),
            Decides{20394, 1, DecisionWord::reRun, "stood in the tunnel, goes through again", {kDecider}});
    addStep(steps, on(7, 15, 50),
            Decides{20395, 1, DecisionWord::reRun, "the re-cured half survives: through the dryer again", {kDecider}});
    addStep(steps, on(8, 15, 50),
            Decides{20401, 1, DecisionWord::released, "laboratory's report is here", {kDecider, kOwner}, "LAB 2291"});
    addStep(steps, on(9, 15, 50),
            Decides{20406, 1, DecisionWord::scrapped, "dye has bled through the spring green", {kDecider}});
    addStep(steps, on(10, 16, 10),
            Decides{20405, 1, DecisionWord::released, "sold as seconds, the customer knows why", {kDecider, kOwner}});
}

void addComplaints(std::vector<DemoStep>& steps) {
    addStep(steps, on(5, 13, 30),
            Complains{"Corner bakery", ComplaintKind::feel, "The print feels stiff.", "3", "A-2077", 20377});
    addStep(steps, on(6, 13, 30),
            FindsCause{
                "thick deposit of brown on a heavy cloth", "one stroke less, squeegee noted in the plan", {kDecider}});
    addStep(steps, on(10, 13, 30),
            Complains{"Ferry company", ComplaintKind::cracked, "Cracks across the chest after two washes.", "6",
                      "C-20378-2", 20378});
}

} // namespace

std::vector<DemoStep> demoLotWork() {
    std::vector<DemoStep> steps;
    addPacked(steps);
    addDecided(steps);
    addComplaints(steps);
    addStep(steps, on(10, 16, 20), FailsIceCheck{"P-8", 9.0});
    addStep(steps, minutesAgo(400), Checks{"P-8", analytics::CheckKind::ice});
    addStep(steps, on(10, 16, 50), CountsShelf{1});
    return steps;
}

} // namespace holdfast::kiosk::demo
