#pragma once

#include "analytics/quantity/temperature.hpp"
#include "kiosk/demo/demo_dryer.hpp"

#include <cstddef>
#include <cstdint>
#include <vector>

/// What the invented eighteen months hide, in one place. Days are counted back from the first of the twelve working
/// days that follow them: 430 is 430 calendar days before it. Buckets, loads and runs get their numbers as the history
/// is made; `Planted` says which they were.
namespace holdfast::kiosk::demo {

/// From `from` days before up to, but not with, `until` days before.
struct DaysBack final {
    int from = 0;
    int until = 0;
    [[nodiscard]] constexpr bool holds(int daysBack) const noexcept { return daysBack <= from && daysBack > until; }
};

/// North's elements grow old: its film loses heat evenly, week by week, until they are changed.
struct HeatLoss final {
    DemoDryer dryer = DemoDryer::north;
    DaysBack days{430, 332};
    analytics::TemperatureDifference inAll = analytics::TemperatureDifference::fromCelsius(-4.0);
};

/// A pail that holds standard ink under a low-cure label is stirred into a mix, which is printed on two dryers.
/// Readings are good for the label; the prints wash out. Both buckets are closed as mislabelled on the last day.
struct MislabelledBucket final {
    DaysBack days{205, 186};
    int mixedAfter = 2; ///< days after the pail was opened
    DemoDryer often = DemoDryer::south;
    DemoDryer sometimes = DemoDryer::north;
};

/// West's belt is turned faster for a rush order and nobody turns it back; written down as what it was.
struct BeltChange final {
    DemoDryer dryer = DemoDryer::west;
    DaysBack days{150, 108};
    double slowMetresPerMinute = 2.0;
    double fastMetresPerMinute = 2.4;
    analytics::TemperatureDifference shift = analytics::TemperatureDifference::fromCelsius(-3.5);
};

/// South's probe reads more and more too high. Its monthly ice check passes once while it does, and fails at the next;
/// strips and the other probes, and the prints, know nothing of it.
struct InstrumentDrift final {
    const char* instrument = "P-5";
    DaysBack days{286, 244};
    int lastGoodCheck = 272;
    analytics::TemperatureDifference aDay = analytics::TemperatureDifference::fromCelsius(0.06);
};

/// One print fails in a load whose witnesses were within limits; two more of its lot, washed anew, pass.
struct FalseAlarm final {
    DaysBack days{76, 66};
    int cycle = 2;
};

inline constexpr HeatLoss kHeatLoss{};
inline constexpr MislabelledBucket kMislabelledBucket{};
inline constexpr BeltChange kBeltChange{};
inline constexpr InstrumentDrift kInstrumentDrift{};
inline constexpr FalseAlarm kFalseAlarm{};

/// Which of them a history has.
struct PlantedFailures final {
    bool heatLoss = true;
    bool mislabelledBucket = true;
    bool beltChange = true;
    bool instrumentDrift = true;
    bool falseAlarm = true;
    [[nodiscard]] static constexpr PlantedFailures none() noexcept { return {false, false, false, false, false}; }
};

/// Where they are to be found in one history; 0 or empty what it has not.
struct Planted final {
    std::int64_t pail = 0;             ///< number of the mislabelled bucket
    std::int64_t mix = 0;              ///< number of the mix that it went into
    std::vector<std::size_t> poured{}; ///< runs printed from that mix
    std::int64_t alarmLoad = 0;        ///< number of the load of the false alarm
    std::size_t alarmRun = 0;          ///< its run
    std::size_t alarmPrint = 0;        ///< its print
};

} // namespace holdfast::kiosk::demo
