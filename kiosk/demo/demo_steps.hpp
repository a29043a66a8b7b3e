#pragma once

#include "analytics/cure/verdict.hpp"
#include "kiosk/demo/demo_calendar.hpp"
#include "kiosk/demo/demo_dryers.hpp"
#include "kiosk/records/bucket_records.hpp"
#include "kiosk/records/reading_records.hpp"
#include "kiosk/shop/proving/action_card.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <variant>
#include <vector>

/// What people did in the demo shop, one step a use case.
namespace holdfast::kiosk::demo {

// at the desk
struct OpensShop final {};
struct ChangesCrew final {
    std::vector<std::int64_t> persons{};
    int unnamed = 0;
};
struct OpensBucket final {
    std::int64_t number = 0;
};
struct MakesMix final {
    std::int64_t number = 0;
};
struct ClosesBucket final {
    std::int64_t number = 0;
    records::BucketEnd why = records::BucketEnd::empty;
};
struct EntersSheet final {}; ///< of the water-based ink
struct Checks final {
    std::string instrument{};
    analytics::CheckKind kind = analytics::CheckKind::ice;
};
struct PlansRuns final {
    std::int64_t first = 0;
    std::int64_t last = 0;
};
struct PlansCards final {};
/// The first of the ways out that the program offers.
struct TakesWayOut final {
    std::int64_t run = 0;
};
/// The run waits at its dryer for a first reading.
struct OpensLot final {
    std::int64_t run = 0;
};
struct FinishesRun final {
    std::int64_t run = 0;
    int spoiled = 0;
};

// at a dryer
struct ScansRun final {
    std::int64_t run = 0;
};
struct ScansAlso final {
    std::int64_t run = 0;
};
struct ScansCard final {
    std::int64_t number = 0;
};
/// "Whose was this?": the newest unnamed ride was of that run.
struct Claims final {
    std::int64_t run = 0;
};
struct Rides final {
    std::optional<double> peakFahrenheit{}; ///< absent: as fits the belt's window
    int silentSeconds = 0;                  ///< around the top: the probe says nothing
    records::BeltPosition position = records::BeltPosition::centre;
    std::optional<records::ReadingReason> reason{};
    analytics::Placement placement = analytics::Placement::wetInk;
    bool retake = false;
};
struct KeepsStrip final {
    std::int64_t label = 0; ///< of the packet, or of a single strip
    int lastDark = -1;      ///< index of the step
    bool nextUnsure = false;
    bool usedBefore = false; ///< not all its steps were light before
};
struct TypesSpot final {
    double heldFahrenheit = 0.0;
    double beforeFahrenheit = 75.0;
};
struct TypesGun final {
    std::string instrument{};
    double surfaceFahrenheit = 0.0;
    bool inTunnel = false;
};
struct NotesFlash final {
    int layer = 1;
    double peakFahrenheit = 0.0;
};
/// An action card, with what the dryer is turned to.
struct Acts final {
    shop::ActionCard card = shop::ActionCard::problem;
    std::optional<int> pieces{};
    std::optional<double> beltMetresPerMinute{};
    std::optional<double> setPointFahrenheit{};
};

using DemoAct = std::variant<OpensShop, ChangesCrew, OpensBucket, MakesMix, ClosesBucket, EntersSheet, Checks,
                             PlansRuns, PlansCards, TakesWayOut, OpensLot, FinishesRun, ScansRun, ScansAlso, ScansCard,
                             Claims, Rides, KeepsStrip, TypesSpot, TypesGun, NotesFlash, Acts>;

struct DemoStep final {
    DemoTime at{};
    DemoDryer dryer = DemoDryer::north; ///< where it is done, if at a dryer
    DemoAct act{};
};

/// The whole history in the order in which it happened.
[[nodiscard]] const std::vector<DemoStep>& demoSteps();

/// Its parts, in any order.
[[nodiscard]] std::vector<DemoStep> demoDeskWork();
[[nodiscard]] std::vector<DemoStep> demoUsualRuns();
[[nodiscard]] std::vector<DemoStep> demoFirstWeek();
[[nodiscard]] std::vector<DemoStep> demoSecondWeek();
[[nodiscard]] std::vector<DemoStep> demoToday();

} // namespace holdfast::kiosk::demo
