#include "kiosk/demo/history/history_parts.hpp"

#include <algorithm>
#include <string>
#include <utility>

/// What measures, and how it was looked after.
namespace holdfast::kiosk::demo::making {
namespace {

using analytics::InstrumentKind;
using analytics::TemperatureDifference;

struct Row final {
    const char* name;
    InstrumentKind kind;
    std::int64_t number;
    int from; ///< days before the end
    int until;
    double guard; ///< °C, about what its calibration gives (decisions 2)
};

constexpr int kAlways = 100'000;
/// The spare probe has a certificate for a year only; a strip pack lasts four months.
constexpr std::array<Row, 10> kRows{{
    {"P-3", InstrumentKind::probe, 3, kAlways, 0, 2.483},
    {"P-5", InstrumentKind::probe, 5, kAlways, 0, 2.849},
    {"P-8", InstrumentKind::probe, 8, kAlways, 0, 2.58},
    {"P-1", InstrumentKind::probe, 1, 419, 12, 2.58},
    {"H-7", InstrumentKind::spot, 7, kAlways, 0, 2.6},
    {"S-31", InstrumentKind::strip, 31, kAlways, 440, 3.58},
    {"S-32", InstrumentKind::strip, 32, 440, 330, 3.58},
    {"S-33", InstrumentKind::strip, 33, 330, 220, 3.58},
    {"S-34", InstrumentKind::strip, 34, 220, 110, 3.58},
    {"S-35", InstrumentKind::strip, 35, 110, 0, 3.58},
}};

constexpr int kCheckEvery = 28; ///< days; a check holds for a month
constexpr int kSoundness = 20;  ///< hundredths of a degree Fahrenheit that a sound one is off
constexpr double kLimit = 2.7;  ///< °F at the ice point: class 1 of IEC 60584-1

bool isChecked(const InstrumentFact& instrument) {
    return instrument.kind != InstrumentKind::strip && instrument.number != 1;
}

CheckFact checkOn(const Making& making, Chance& chance, int day, std::size_t instrument) {
    constexpr int kMinutesEach = 7;
    const auto& planted = making.plan.planted;
    CheckFact check;
    check.instrument = instrument;
    check.at = at(day, 6, 0) + static_cast<int>(instrument) * kMinutesEach;
    check.error = TemperatureDifference::fromFahrenheit(chance.between(0, kSoundness) / 100.0) +
                  plantedError(planted, making.facts.instruments[instrument].name, making.daysBackOf(day));
    check.passed = check.error.magnitude() < TemperatureDifference::fromFahrenheit(kLimit);
    return check;
}

} // namespace

void makeInstruments(Making& making) {
    const int days = making.plan.days;
    for (const auto& row : kRows) {
        InstrumentFact fact;
        fact.name = row.name;
        fact.kind = row.kind;
        fact.number = row.number;
        fact.firstDay = std::max(0, days - row.from);
        fact.lastDay = days - 1 - row.until;
        const auto own = TemperatureDifference::fromCelsius(row.guard);
        fact.guard = row.kind == InstrumentKind::strip ? own : making.plan.guard.value_or(own);
        making.facts.instruments.push_back(fact);
    }
}

/// Every four weeks, on the last worked day up to then: so one is the last good look before the drift is found, and one
/// finds it. The morning after, the probe has a new wire and is looked at again.
void makeChecks(Making& making) {
    auto chance = making.chance(1);
    bool again = false;
    for (int day = making.workedFrom(0); day < making.plan.days; day = making.workedFrom(day + 1)) {
        const int next = making.workedFrom(day + 1);
        bool due = day == making.workedFrom(0);
        for (int one = day; one < next; ++one) {
            due = due || making.daysBackOf(one) % kCheckEvery == kInstrumentDrift.days.until % kCheckEvery;
        }
        const bool repaired = std::exchange(again, false);
        for (std::size_t i = 0; (due || repaired) && i < making.facts.instruments.size(); ++i) {
            const auto& instrument = making.facts.instruments[i];
            if (!isChecked(instrument) || (!due && instrument.name != std::string{kInstrumentDrift.instrument})) {
                continue;
            }
            const auto check = checkOn(making, chance, day, i);
            again = again || !check.passed;
            making.facts.checks.push_back(check);
        }
    }
}

} // namespace holdfast::kiosk::demo::making
