#pragma once

#include "kiosk/shop/instruments/check_draft.hpp"

/// How the air of a check is chosen: the words behind the ids.
namespace holdfast::kiosk::screens {

inline constexpr const char* kAir = "instruments.air.";
inline constexpr const char* kAirUnit = "instruments.air-unit.";

struct AirFromRow final {
    shop::instruments::AirFrom from;
    const char* word;
};
inline constexpr AirFromRow kAirFroms[] = {{shop::instruments::AirFrom::weatherReport, "report"},
                                           {shop::instruments::AirFrom::barometer, "barometer"},
                                           {shop::instruments::AirFrom::altitudeAlone, "altitude"}};

struct AirUnitRow final {
    analytics::PressureUnit unit;
    const char* word;
};
inline constexpr AirUnitRow kAirUnits[] = {{analytics::PressureUnit::hectopascal, "hpa"},
                                           {analytics::PressureUnit::inchOfMercury, "inhg"},
                                           {analytics::PressureUnit::kilopascal, "kpa"},
                                           {analytics::PressureUnit::millimetreOfMercury, "mmhg"}};

} // namespace holdfast::kiosk::screens
