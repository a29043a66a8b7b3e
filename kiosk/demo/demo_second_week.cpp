#include "kiosk/demo/demo_steps.hpp"

/// Days 6 to 10: the runs on which something happened. Of every story the bad reading is answered before the next.
namespace holdfast::kiosk::demo {
namespace {

using shop::ActionCard;

/// Under-cured in the middle of a run; a discharge ink past its pot life.
std::vector<DemoStep> daySix() {
    return {
        {on(6, 6, 45), kWest, Acts{ActionCard::started}},
        {on(6, 7, 0), kNorth, ScansRun{20395}},
        {on(6, 7, 8), kNorth, Rides{}},
        {on(6, 7, 36), kNorth, ridesTo(309.0)},
        {on(6, 7, 38), kNorth, Acts{ActionCard::hotter, {}, {}, 370.0}},
        {on(6, 7, 40), kNorth, Acts{ActionCard::pulled, 14, {}, {}}},
        {on(6, 7, 53), kNorth, Rides{}},
        {on(6, 11, 0), kNorth, FinishesRun{20395, 14}},
        {on(6, 8, 0), kWest, ScansRun{20397}},
        {on(6, 8, 10), kWest, Rides{}},
        {on(6, 13, 40), kWest, ScansRun{20397}},
        {on(6, 13, 50), kWest, Rides{}},
        {on(6, 15, 0), kWest, FinishesRun{20397, 6}},
    };
}

/// Too hot for the cloth; the first ride of the day taped on a cured print.
std::vector<DemoStep> daySeven() {
    Rides taped;
    taped.placement = analytics::Placement::tapedOnFilm;
    return {
        {on(7, 7, 5), kNorth, ScansRun{20398}},
        {on(7, 7, 12), kNorth, ridesTo(349.5)},
        {on(7, 7, 14), kNorth, Acts{ActionCard::cooler, {}, {}, 355.0}},
        {on(7, 7, 16), kNorth, Acts{ActionCard::problem}},
        {on(7, 7, 30), kNorth, Rides{}},
        {on(7, 9, 10), kNorth, taped},
        {on(7, 9, 40), kNorth, FinishesRun{20398, 9}},
    };
}

/// A spot and single strips beside each other; a spot that was not reset.
std::vector<DemoStep> dayEight() {
    return {
        {on(8, 8, 0), kSouth, ScansRun{20404}},          {on(8, 8, 6), kSouth, KeepsStrip{61, 1, true}},
        {on(8, 8, 20), kSouth, TypesSpot{294.5, 272.0}}, {on(8, 8, 24), kSouth, TypesSpot{294.5, 74.0}},
        {on(8, 9, 10), kSouth, FinishesRun{20404, 0}},
    };
}

/// A surface gun in the tunnel sees it too cold, one at the outfeed proves nothing; a spot sees polyester too hot.
std::vector<DemoStep> dayNine() {
    return {
        {on(9, 7, 20), kNorth, ScansRun{20405}},
        {on(9, 7, 26), kNorth, TypesGun{"G-4", 306.0, true}},
        {on(9, 7, 28), kNorth, Acts{ActionCard::beltSlower, {}, 4.0, {}}},
        {on(9, 7, 40), kNorth, Rides{}},
        {on(9, 8, 30), kNorth, TypesGun{"G-4", 301.0, false}},
        {on(9, 8, 34), kNorth, Rides{}},
        {on(9, 9, 30), kNorth, FinishesRun{20405, 3}},
        {on(9, 8, 0), kSouth, ScansRun{20406}},
        {on(9, 8, 8), kSouth, TypesSpot{347.5, 76.0}},
        {on(9, 8, 10), kSouth, Acts{ActionCard::beltFaster, {}, 4.0, {}}},
        {on(9, 8, 12), kSouth, Acts{ActionCard::pulled, 11, {}, {}}},
        {on(9, 8, 25), kSouth, Rides{}},
        {on(9, 9, 5), kSouth, FinishesRun{20406, 11}},
    };
}

/// A print that fell off the probe; a strip out of date; a window so narrow that its middle is the aim.
std::vector<DemoStep> dayTen() {
    return {
        {on(10, 9, 0), kSouth, ScansRun{20409}},
        {on(10, 9, 4), kSouth, NotesFlash{1, 256.0}},
        {on(10, 9, 8), kSouth, ridesTo(152.0)},
        {on(10, 9, 14), kSouth, Rides{}},
        {on(10, 10, 20), kSouth, KeepsStrip{9, 1, false}},
        {on(10, 10, 40), kSouth, FinishesRun{20409, 1}},
        {on(10, 10, 0), kNorth, ScansRun{20410}},
        {on(10, 10, 10), kNorth, Rides{}},
        {on(10, 10, 40), kNorth, TypesGun{"G-6", 289.0, false}},
        {on(10, 11, 30), kNorth, FinishesRun{20410, 0}},
        {on(10, 13, 8), kNorth, Acts{ActionCard::takenOver}},
    };
}

} // namespace

std::vector<DemoStep> demoSecondWeek() {
    std::vector<DemoStep> steps;
    for (const auto& day : {daySix(), daySeven(), dayEight(), dayNine(), dayTen()}) {
        steps.insert(steps.end(), day.begin(), day.end());
    }
    return steps;
}

} // namespace holdfast::kiosk::demo
