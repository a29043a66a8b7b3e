#pragma once

#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/temperature.hpp"

#include <chrono>
#include <optional>
#include <string>
#include <vector>

/// What the shop knows about a thing that measures: plain data, judged by calibration.hpp.
namespace holdfast::analytics {

using Date = std::chrono::sys_days;

enum class InstrumentKind { probe, spot, strip, gun };

enum class ThermocoupleType { k, j, t, e, n };

/// Tolerance classes of IEC 60584-1 (1, 2, 3) and limits of error of ASTM E230 (standard, special).
enum class ToleranceClass { iecClass1, iecClass2, iecClass3, astmStandard, astmSpecial };

/// How the sensor sits while it reads; each has its own random uncertainty.
enum class Placement { wetInk, tapedOnFilm, inOrUnderCloth };

/// One line of a calibration certificate: add `correction` to a reading at `at`; expanded uncertainty U (with the
/// certificate's k).
struct CalibrationPoint final {
    Temperature at = Temperature::fromCelsius(0);
    TemperatureDifference correction;
    TemperatureDifference expandedUncertainty;
};

/// Valid from `date` up to and including `due`. Points in ascending order of temperature, at least one; k > 0.
struct Certificate final {
    Date date;
    Date due;
    double coverageFactor = 2.0;
    std::vector<CalibrationPoint> points;
};

enum class CheckKind { ice, boiling, comparison };

struct Check final {
    CheckKind kind = CheckKind::ice;
    bool passed = false;
    Date date;
    Date due;
};

/// An irreversible label: its steps in ascending order and the maker's tolerance of each.
struct StripSteps final {
    std::vector<Temperature> steps;
    TemperatureDifference tolerance;
    std::optional<Date> expiry;
};

/// Indication limits of the instrument; its ends are inside.
struct MeasuringRange final {
    Temperature low = Temperature::fromCelsius(0);
    Temperature high = Temperature::fromCelsius(0);
};

struct Instrument final {
    std::string name;
    InstrumentKind kind = InstrumentKind::probe;
    std::optional<ThermocoupleType> type;                 ///< probes and spots
    std::optional<ToleranceClass> toleranceClass;         ///< probes and spots
    std::optional<TemperatureDifference> statedTolerance; ///< guns, and probes that are not thermocouples
    TemperatureDifference resolution;                     ///< the step of its indication; 0 = none
    std::optional<MeasuringRange> range;
    Placement placement = Placement::wetInk;
    std::optional<TemperatureDifference> ownPlacement; ///< u_p from the shop's ten repeat rides
    std::vector<Certificate> certificates;             ///< any order
    std::vector<Check> checks;                         ///< any order
    std::optional<StripSteps> strip;
};

} // namespace holdfast::analytics
