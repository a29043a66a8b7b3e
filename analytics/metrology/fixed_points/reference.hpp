#pragma once

#include "analytics/metrology/fixed_points/atmosphere.hpp"
#include "analytics/metrology/fixed_points/boiling_point.hpp"

#include <optional>
#include <tl/expected.hpp>
#include <variant>
#include <vector>

/// What the bath really is: its temperature and what is not known about it.
namespace holdfast::analytics {

/// Read from a barometer in the shop, not reduced. `shop`, if known, lets a report's figure be noticed.
struct StationReading final {
    Pressure pressure = Pressure::fromPascal(0);
    std::optional<Altitude> shop{};
    std::optional<PressureDifference> halfWidth{}; ///< the barometer's own limit of error
};

/// As a weather report gives it, reduced to sea level (QNH).
struct SeaLevelReport final {
    Pressure pressure = Pressure::fromPascal(0);
    Altitude shop = Altitude::fromMetres(0);
};

struct AltitudeAlone final {
    Altitude shop = Altitude::fromMetres(0);
};

using PressureSource = std::variant<StationReading, SeaLevelReport, AltitudeAlone>;

/// Half-widths, taken as rectangular (JCGM 100:2008, 4.3.7). Starter settings, all from memory.
struct BathSettings final {
    TemperatureDifference ice = TemperatureDifference::fromCelsius(0.1);     ///< crushed ice slush, drained and packed
    TemperatureDifference boiling = TemperatureDifference::fromCelsius(0.3); ///< superheat, depth, dissolved salts
    PressureDifference barometer = PressureDifference::fromKilopascal(0.2);
    PressureDifference report = PressureDifference::fromKilopascal(0.2);  ///< other place, other hour, rounding
    PressureDifference weather = PressureDifference::fromKilopascal(2.0); ///< when only the altitude is known
    Length altitude = Length::fromMetres(30.0);
    TemperatureDifference air = TemperatureDifference::fromCelsius(15.0);    ///< departure from the standard column
    PressureDifference suspicious = PressureDifference::fromKilopascal(3.0); ///< above the standard pressure there
};

/// False for a half-width that is negative or not finite.
[[nodiscard]] bool isUsable(const BathSettings& settings) noexcept;

enum class PressureTerm { barometer, report, weather, altitude, reduction };

struct PressureLine final {
    PressureTerm term = PressureTerm::barometer;
    PressureDifference u; ///< standard uncertainty
};

struct AirPressure final {
    Pressure station = Pressure::fromPascal(0);
    std::vector<PressureLine> lines;
    bool looksReduced = false; ///< a station reading that sea level would have, at a shop well above it: ask again
};

enum class PressureFault {
    notFinite,
    stationTooLow,   ///< below 50 kPa
    stationTooHigh,  ///< above 110 kPa
    seaLevelTooLow,  ///< below 87 kPa: not reduced to sea level (lowest measured 870 hPa, WMO archive, from memory)
    seaLevelTooHigh, ///< above 109 kPa (highest measured about 1085 hPa, WMO archive, from memory)
    altitudeTooLow,
    altitudeTooHigh,
    settingsInvalid
};

/// Station pressure from whatever was typed, with a line for each thing not known.
[[nodiscard]] tl::expected<AirPressure, PressureFault> airPressure(const PressureSource& source,
                                                                   const BathSettings& settings = {});

/// Where an uncertainty of the check comes from. Placement has no line: the bath surrounds the tip.
enum class CheckTerm { bath, barometer, report, weather, altitude, reduction, resolution, stability };

struct BudgetLine final {
    CheckTerm term = CheckTerm::bath;
    TemperatureDifference u; ///< standard uncertainty
};

struct BathReference final {
    Temperature at = Temperature::fromCelsius(0);
    std::vector<BudgetLine> lines;
};

/// 0 °C (ITS-90 puts the ice point of air-saturated water within 0.3 mK of it; the pressure's part is below 1 mK).
[[nodiscard]] tl::expected<BathReference, PressureFault> iceReference(const BathSettings& settings = {});

/// The boiling point there, and every line of the pressure as a temperature.
[[nodiscard]] tl::expected<BathReference, PressureFault> boilingReference(const AirPressure& air,
                                                                          const BathSettings& settings = {});

/// √Σu².
[[nodiscard]] TemperatureDifference combined(const std::vector<BudgetLine>& lines) noexcept;

} // namespace holdfast::analytics
