#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/fastness/grade.hpp"
#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/temperature.hpp"
#include "kiosk/demo/demo_dryer.hpp"
#include "kiosk/demo/history/planted_failures.hpp"

#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// What happened in the invented shop, as plain facts: nothing of a book, and no person in it. Things refer to each
/// other by their place in the lists.
namespace holdfast::kiosk::demo {

/// Minutes since the midnight before the first day, by the shop's own clock.
using HistoryMinute = int;
inline constexpr int kMinutesADay = 1440;
[[nodiscard]] constexpr int dayOf(HistoryMinute at) noexcept {
    return at / kMinutesADay;
}

enum class Ink { standard, lowCure, blend, waterBased, discharge, silicone };
enum class Cloth { cotton, half, polyester };
enum class Finish { none, softened, peached, repellent };
enum class Lane { left, centre, right };

[[nodiscard]] const char* nameOf(Ink ink) noexcept;
[[nodiscard]] const char* nameOf(Cloth cloth) noexcept;
[[nodiscard]] const char* nameOf(Finish finish) noexcept;

/// Of the starter data: what cures it, for how long.
[[nodiscard]] analytics::Temperature cureOf(Ink ink) noexcept;
[[nodiscard]] analytics::Duration holdOf(Ink ink) noexcept;

struct InstrumentFact final {
    const char* name = "";
    analytics::InstrumentKind kind = analytics::InstrumentKind::probe;
    std::int64_t number = 0;
    int firstDay = 0; ///< of the history, on which it may be used; of a strip pack the day it was bought
    int lastDay = 0;
    /// About the guard that its readings are judged with: of a probe z·u; of a strip what each edge is widened by.
    analytics::TemperatureDifference guard{};
};

struct PartFact final {
    std::size_t bucket = 0;
    double mass = 0.0;
};
enum class Emptied { used, thrownAway, mislabelled };
struct BucketFact final {
    std::int64_t number = 0;
    Ink label = Ink::standard; ///< of a mix: what its parts' labels make it
    Ink holds = Ink::standard; ///< what has to be cured in truth
    std::string name{};        ///< of a mix
    std::string colour{};
    std::string batch{};           ///< the maker's; empty of a mix
    std::vector<PartFact> parts{}; ///< of a mix
    HistoryMinute opened = 0;
    HistoryMinute closed = 0;
    Emptied why = Emptied::used;
};

/// From a start, a stop or a setting to the next.
struct EpisodeFact final {
    DemoDryer dryer = DemoDryer::north;
    HistoryMinute from = 0;
    HistoryMinute to = 0;
    bool bySetting = false; ///< begun by a setting, not by a start
    double beltMetresPerMinute = 0.0;
    analytics::Temperature setPoint = analytics::Temperature::fromCelsius(0);
    analytics::TemperatureDifference warmUp{}; ///< by how much this one is hotter than the usual
};

enum class Turn { started, stopped, hotter, cooler, beltFaster, beltSlower, repaired };
/// What was done at a dryer.
struct TurnFact final {
    DemoDryer dryer = DemoDryer::north;
    HistoryMinute at = 0;
    Turn turn = Turn::started;
    double beltMetresPerMinute = 0.0; ///< as it is from then on
    analytics::Temperature setPoint = analytics::Temperature::fromCelsius(0);
};

struct LayerFact final {
    Ink ink = Ink::standard; ///< as labelled
    std::string colour{};
    std::optional<std::size_t> bucket{}; ///< absent: none was scanned
    bool underbase = false;
};

/// A run with its one lot.
struct RunFact final {
    std::int64_t number = 0;
    std::size_t episode = 0;
    DemoDryer dryer = DemoDryer::north;
    const char* title = "";
    const char* customer = "";
    const char* garment = "";
    Cloth cloth = Cloth::cotton;
    std::string clothLot{};
    Finish finish = Finish::none;
    std::vector<LayerFact> layers{}; ///< bottom first
    bool childrensWear = false;
    int pieces = 0;
    int spoiled = 0;
    HistoryMinute planned = 0;
    HistoryMinute begins = 0;
    HistoryMinute ends = 0;
    analytics::Temperature cure = analytics::Temperature::fromCelsius(0); ///< that the window asks
    analytics::Duration hold{0};
    analytics::TemperatureDifference trueMargin{}; ///< mean of its film above what its ink in truth asks
};

enum class Asked { setUp, drawn, retake, worry, afterChange };
/// Of one layer requirement: the run's. `seen` is the sustained peak (of a held ink the level kept) as indicated, above
/// the run's cure; of a strip the temperature that its reader believes in.
struct ReadingFact final {
    std::size_t run = 0;
    std::size_t instrument = 0;
    HistoryMinute at = 0;
    int piece = 0; ///< 0: of none, when setting up
    Lane lane = Lane::centre;
    Asked asked = Asked::drawn;
    analytics::TemperatureDifference trueMargin{}; ///< of the film, above what the label asks
    analytics::TemperatureDifference seen{};
    std::optional<std::size_t> lastDark{};   ///< of a strip: place among its steps; absent: none
    std::optional<std::size_t> firstLight{}; ///< absent: all dark
    analytics::MarginRange margin{};         ///< as a chart draws it: a strip's is an interval
    std::optional<std::size_t> retakeOf{};
    analytics::Word word = analytics::Word::notProven; ///< a retake's is of both together
};

/// A due reading that nobody took.
struct MissedFact final {
    std::size_t run = 0;
    HistoryMinute at = 0;
    int piece = 0;
    bool last = false; ///< it was the run's last
};

struct LoadFact final {
    std::int64_t number = 0;
    int machine = 0;
    HistoryMinute washed = 0;
    HistoryMinute judged = 0;
    analytics::Grade good = analytics::Grade::best();
    analytics::Grade weak = analytics::Grade::worst();
    bool tooHarsh = false; ///< void: the good witness left its limit
};

struct PrintFact final {
    std::size_t run = 0;
    int piece = 0;
    HistoryMinute named = 0;
    HistoryMinute printed = 0;
    bool repeat = false;                           ///< because another of its lot had failed
    analytics::TemperatureDifference trueMargin{}; ///< above what its ink in truth asks
};

enum class Tested { stretch, wash, bleedWatch, rub };
enum class Outcome { passed, failed, noted };
struct TestFact final {
    std::size_t print = 0;
    Tested tested = Tested::stretch;
    HistoryMinute at = 0;
    int cycle = 0;                     ///< of a wash; of a bleed watch its hours
    std::optional<std::size_t> load{}; ///< of a wash
    Outcome outcome = Outcome::passed;
    bool isVoid = false; ///< its load was
    analytics::Grade change = analytics::Grade::best();
    bool cracked = false;
    bool lifted = false;
};

enum class Complaint { washedOut, cracked, peeled, feel, other };
struct ComplaintFact final {
    std::int64_t number = 0;
    std::size_t run = 0;
    Complaint what = Complaint::washedOut;
    int pieces = 0;
    HistoryMinute received = 0;
    HistoryMinute closed = 0;
    bool ours = false; ///< the print was at fault
};

/// In ice, and of probes and spots in boiling water.
struct CheckFact final {
    std::size_t instrument = 0;
    HistoryMinute at = 0;
    analytics::TemperatureDifference error{}; ///< by which it reads too high
    bool passed = true;
};

/// Every list in the order of time.
struct HistoryFacts final {
    std::chrono::sys_days firstDay{};
    int days = 0;
    std::vector<InstrumentFact> instruments{};
    std::vector<BucketFact> buckets{};
    std::vector<EpisodeFact> episodes{};
    std::vector<TurnFact> turns{};
    std::vector<RunFact> runs{};
    std::vector<ReadingFact> readings{};
    std::vector<MissedFact> missed{};
    std::vector<LoadFact> loads{};
    std::vector<PrintFact> prints{};
    std::vector<TestFact> tests{};
    std::vector<ComplaintFact> complaints{};
    std::vector<CheckFact> checks{};
    Planted planted{};

    /// Of a day before the first one after the history.
    [[nodiscard]] int daysBack(HistoryMinute at) const noexcept { return days - dayOf(at); }
};

/// Steps of every strip pack.
[[nodiscard]] const std::vector<analytics::Temperature>& stripSteps();

} // namespace holdfast::kiosk::demo
