#include "kiosk/demo/demo_steps.hpp"

/// Days 0 to 5: the runs on which something happened. Of every story the bad reading is answered before the next.
namespace holdfast::kiosk::demo {
namespace {

using records::BeltPosition;
using records::ReadingReason;
using shop::ActionCard;

Rides ridesAt(BeltPosition position) {
    Rides ride;
    ride.position = position;
    ride.reason = ReadingReason::map;
    return ride;
}

/// The belt's map: left, centre, right. A packet strip beside the probe of South.
std::vector<DemoStep> dayZero() {
    return {
        {on(0, 7, 5), kNorth, ScansRun{20374}},
        {on(0, 7, 12), kNorth, ridesAt(BeltPosition::left)},
        {on(0, 7, 20), kNorth, ridesAt(BeltPosition::centre)},
        {on(0, 7, 28), kNorth, ridesAt(BeltPosition::right)},
        {on(0, 9, 0), kNorth, FinishesRun{20374, 1}},
        {on(0, 8, 20), kSouth, KeepsStrip{12, 2, false}},
    };
}

/// Set-up until the heat is right: it holds nothing. Then a bad one in the run itself, the belt slower, a good one.
std::vector<DemoStep> dayOne() {
    return {
        {on(1, 8, 0), kSouth, ScansRun{20379}},
        {on(1, 8, 4), kSouth, Acts{ActionCard::setUp}},
        {on(1, 8, 6), kSouth, ridesTo(271.0)},
        {on(1, 8, 14), kSouth, Acts{ActionCard::hotter, {}, {}, 345.0}},
        {on(1, 8, 26), kSouth, ridesTo(295.0)},
        {on(1, 8, 30), kSouth, Acts{ActionCard::ready}},
        {on(1, 8, 40), kSouth, Rides{}},
        {on(1, 9, 40), kSouth, ridesTo(276.5)},
        {on(1, 9, 42), kSouth, Acts{ActionCard::beltSlower, {}, 3.6, {}}},
        {on(1, 9, 45), kSouth, Acts{ActionCard::pulled, 18, {}, {}}},
        {on(1, 9, 57), kSouth, Rides{}},
        {on(1, 13, 40), kSouth, FinishesRun{20379, 18}},
    };
}

/// An underbase flashed twice too cold; a ride judged by a window card and named afterwards; a worry.
std::vector<DemoStep> dayTwo() {
    Rides worried;
    worried.reason = ReadingReason::worry;
    return {
        {on(2, 7, 10), kNorth, ScansRun{20381}},
        {on(2, 7, 16), kNorth, NotesFlash{1, 268.0}},
        {on(2, 7, 22), kNorth, NotesFlash{1, 291.0}},
        {on(2, 7, 40), kNorth, Rides{}},
        {on(2, 9, 30), kNorth, worried},
        {on(2, 10, 20), kNorth, FinishesRun{20381, 2}},
        {on(2, 8, 0), kSouth, ScansCard{8}},
        {on(2, 8, 5), kSouth, Rides{}},
        {on(2, 8, 11), kSouth, ScansRun{20382}},
        {on(2, 9, 0), kSouth, FinishesRun{20382, 0}},
    };
}

/// Cured by less than the guard, the reading is taken again; a single strip; a strip that was not all light.
std::vector<DemoStep> dayThree() {
    Rides again;
    again.retake = true;
    return {
        {on(3, 7, 0), kNorth, ScansRun{20384}},
        {on(3, 7, 2), kNorth, ridesTo(325.5)},
        {on(3, 7, 5), kNorth, again},
        {on(3, 9, 20), kNorth, KeepsStrip{60, 5, false}},
        {on(3, 9, 24), kNorth, KeepsStrip{12, 4, false, true}},
        {on(3, 11, 30), kNorth, Rides{}},
        {on(3, 12, 40), kNorth, FinishesRun{20384, 5}},
    };
}

/// Nobody had scanned anything when this one rode.
std::vector<DemoStep> dayFour() {
    return {
        {on(4, 7, 20), kSouth, ridesTo(294.0)},
        {on(4, 8, 5), kSouth, Claims{20388}},
        {on(4, 9, 0), kSouth, Rides{}},
        {on(4, 9, 40), kSouth, FinishesRun{20388, 0}},
    };
}

/// Two presses on one belt; a way out of a closed window; a hand-over.
std::vector<DemoStep> dayFive() {
    return {
        {on(5, 7, 30), kNorth, ScansRun{20391}},
        {on(5, 7, 32), kNorth, ScansAlso{20392}},
        {on(5, 7, 40), kNorth, Rides{}},
        {on(5, 8, 30), kNorth, FinishesRun{20392, 0}},
        {on(5, 8, 40), kNorth, FinishesRun{20391, 1}},
        {on(5, 8, 10), kSouth, ScansRun{20393}},
        {on(5, 8, 16), kSouth, TakesWayOut{20393}},
        {on(5, 8, 50), kSouth, ScansRun{20393}},
        {on(5, 8, 58), kSouth, Rides{}},
        {on(5, 10, 15), kSouth, FinishesRun{20393, 2}},
        {on(5, 13, 8), kNorth, Acts{ActionCard::takenOver}},
        {on(5, 9, 25), kWest, Acts{ActionCard::feedStopped}},
    };
}

} // namespace

std::vector<DemoStep> demoFirstWeek() {
    std::vector<DemoStep> steps;
    for (const auto& day : {dayZero(), dayOne(), dayTwo(), dayThree(), dayFour(), dayFive()}) {
        steps.insert(steps.end(), day.begin(), day.end());
    }
    return steps;
}

} // namespace holdfast::kiosk::demo
