#pragma once

#include "analytics/cure/verdict.hpp"
#include "kiosk/demo/demo_calendar.hpp"
#include "kiosk/demo/demo_dryers.hpp"
#include "kiosk/records/bucket_records.hpp"
#include "kiosk/records/complaint_records.hpp"
#include "kiosk/records/print_records.hpp"
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
    std::optional<double> peakFahrenheit{};          ///< absent: as fits the belt's window
    int silentSeconds = 0;                           ///< around the top: the probe says nothing
    std::optional<records::BeltPosition> position{}; ///< absent: where the plan asks for it
    std::optional<records::ReadingReason> reason{};
    analytics::Placement placement = analytics::Placement::wetInk;
    bool retake = false;
};
/// Nothing unless a reading of that run is due with the next pieces.
struct RidesIfDue final {
    std::int64_t run = 0;
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

// at QA's bench; prints are named by a word of the history's own
struct NamesPrint final {
    std::string print{};
    std::int64_t run = 0;
    int lot = 1;
    int piece = 1;
    std::string shelf{}; ///< empty: it is to be tested
    int keptForDays = 0; ///< on that shelf
    bool reprintAllowed = false;
};
struct CutsPrint final {
    std::string print{};
    std::string half{};
};
struct EndsPrint final {
    std::string print{};
    records::PrintEnd end = records::PrintEnd::usedUp;
};
struct DescribesMethod final {}; ///< of the shop's own: a warm iron on the folded print
struct Washes final {
    std::vector<std::string> prints{};
    const char* machine = "Washer 1";
    const char* goodMark = "G-2";
};
/// The newest load. By eye, in half steps.
struct JudgesLoad final {
    const char* good = "";
    const char* weak = "";
};
struct TestsPrint final {
    std::string print{};
    std::string method{};               ///< key of a starter, or "fold"
    std::string cycle{};                ///< of a wash; of a bleed watch its hours
    std::vector<std::string> answers{}; ///< in the order of the form; of a stretch what each pull showed
    std::vector<std::string> lengths{}; ///< mm: original, stretched, relaxed; of a shrink twice original, relaxed
    std::vector<double> before{};       ///< L*, a*, b*
    std::vector<double> after{};
    int wear = -1; ///< of the pictured print, in tenths; below 0: no picture
    const char* note = "";
};

// at the desk where lots are decided
/// Counted as it came out of the dryer, packed and shipped but for `spoiled` and what left it before.
struct Packs final {
    std::int64_t run = 0;
    int lot = 1;
    int spoiled = 0;
    int unaccounted = 0; ///< that nobody finds
    bool ships = true;
};
struct Decides final {
    std::int64_t run = 0;
    int lot = 1;
    records::DecisionWord word = records::DecisionWord::released;
    const char* reason = "";
    std::vector<std::int64_t> signers{};
    const char* laboratoryReport = "";
};
/// All red bins as the book has them but the newest, which has `fewer` pieces.
struct CountsShelf final {
    int fewer = 0;
};
struct Complains final {
    const char* customer = "";
    records::ComplaintKind what = records::ComplaintKind::washedOut;
    const char* words = "";
    const char* pieces = "";
    const char* clue = "";
    std::int64_t run = 0; ///< 0: tied to none
};
/// Of the oldest complaint that is open.
struct FindsCause final {
    const char* cause = "";
    const char* action = "";
    std::vector<std::int64_t> signers{};
};
/// In ice, by so much too high; readings since the last good look are judged again.
struct FailsIceCheck final {
    const char* instrument = "";
    double errorFahrenheit = 0.0;
};

using DemoAct = std::variant<OpensShop, ChangesCrew, OpensBucket, MakesMix, ClosesBucket, EntersSheet, Checks,
                             PlansRuns, PlansCards, TakesWayOut, OpensLot, FinishesRun, ScansRun, ScansAlso, ScansCard,
                             Claims, Rides, KeepsStrip, TypesSpot, TypesGun, NotesFlash, Acts, RidesIfDue, NamesPrint,
                             CutsPrint, EndsPrint, DescribesMethod, Washes, JudgesLoad, TestsPrint, Packs, Decides,
                             CountsShelf, Complains, FindsCause, FailsIceCheck>;

struct DemoStep final {
    DemoTime at{};
    DemoDryer dryer = DemoDryer::north; ///< where it is done, if at a dryer
    DemoAct act{};
};

/// A ride whose print becomes so hot, in °F.
[[nodiscard]] inline Rides ridesTo(double peakFahrenheit) {
    Rides ride;
    ride.peakFahrenheit = peakFahrenheit;
    return ride;
}

/// A step that no dryer is needed for.
inline void addStep(std::vector<DemoStep>& steps, DemoTime at, DemoAct act) {
    steps.push_back({at, DemoDryer::north, std::move(act)});
}

/// The whole history in the order in which it happened.
[[nodiscard]] const std::vector<DemoStep>& demoSteps();

/// Its parts, in any order.
[[nodiscard]] std::vector<DemoStep> demoDeskWork();
[[nodiscard]] std::vector<DemoStep> demoUsualRuns();
[[nodiscard]] std::vector<DemoStep> demoFirstWeek();
[[nodiscard]] std::vector<DemoStep> demoSecondWeek();
[[nodiscard]] std::vector<DemoStep> demoToday();
[[nodiscard]] std::vector<DemoStep> demoBenchWork();
[[nodiscard]] std::vector<DemoStep> demoLotWork();

} // namespace holdfast::kiosk::demo
