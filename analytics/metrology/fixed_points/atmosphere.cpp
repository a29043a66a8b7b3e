#include "analytics/metrology/fixed_points/atmosphere.hpp"

namespace holdfast::analytics {
namespace {

constexpr double kEarthRadius = 6356766.0;   // m, U.S. Standard Atmosphere 1976, table 2
constexpr double kSeaLevelPascal = 101325.0; // Pa
constexpr double kSeaLevelKelvin = 288.15;   // K
constexpr double kLapse = 0.0065;            // K/m
constexpr double kGravity = 9.80665;         // m/s²
constexpr double kMolarMass = 0.0289644;     // kg/mol
constexpr double kGasConstant = 8.31432;     // J/(mol·K), the value of the standard, not today's
constexpr double kHydrostatic = kGravity * kMolarMass / kGasConstant; // K/m
constexpr double kExponent = kHydrostatic / kLapse;                   // 5.25588
constexpr double kLowestMetres = -2000.0;
constexpr double kHighestMetres = 11000.0;

tl::expected<double, AtmosphereFault> inRange(double metres) noexcept {
    if (!std::isfinite(metres)) {
        return tl::unexpected{AtmosphereFault::notFinite};
    }
    if (metres < kLowestMetres) {
        return tl::unexpected{AtmosphereFault::tooLow};
    }
    if (metres > kHighestMetres) {
        return tl::unexpected{AtmosphereFault::tooHigh};
    }
    return metres;
}

tl::expected<Pressure, AtmosphereFault> shifted(Pressure from, Altitude altitude, double sign) noexcept {
    const auto height = inRange(geopotentialHeight(altitude).metres());
    if (!height) {
        return tl::unexpected{height.error()};
    }
    if (!from.isFinite()) {
        return tl::unexpected{AtmosphereFault::notFinite};
    }
    if (from.pascals() <= 0.0) {
        return tl::unexpected{AtmosphereFault::tooLow};
    }
    const double ratio =
        std::pow(from.pascals() / kSeaLevelPascal, 1.0 / kExponent) + sign * kLapse * *height / kSeaLevelKelvin;
    if (ratio <= 0.0) {
        return tl::unexpected{AtmosphereFault::tooHigh};
    }
    return Pressure::fromPascal(kSeaLevelPascal * std::pow(ratio, kExponent));
}

} // namespace

GeopotentialHeight geopotentialHeight(Altitude altitude) noexcept {
    const double z = altitude.metres();
    return GeopotentialHeight::fromMetres(kEarthRadius * z / (kEarthRadius + z));
}

tl::expected<Pressure, AtmosphereFault> standardPressure(GeopotentialHeight height) noexcept {
    return inRange(height.metres()).map([](double metres) {
        return Pressure::fromPascal(kSeaLevelPascal * std::pow(1.0 - kLapse * metres / kSeaLevelKelvin, kExponent));
    });
}

tl::expected<Pressure, AtmosphereFault> standardPressure(Altitude altitude) noexcept {
    return standardPressure(geopotentialHeight(altitude));
}

tl::expected<Pressure, AtmosphereFault> stationPressure(Pressure seaLevel, Altitude altitude) noexcept {
    return shifted(seaLevel, altitude, -1.0);
}

tl::expected<Pressure, AtmosphereFault> seaLevelPressure(Pressure station, Altitude altitude) noexcept {
    return shifted(station, altitude, 1.0);
}

tl::expected<PressureDifference, AtmosphereFault> reductionSpread(Pressure station, Altitude altitude,
                                                                  TemperatureDifference airDeparture) noexcept {
    return inRange(geopotentialHeight(altitude).metres()).map([&](double metres) {
        const double kelvin = kSeaLevelKelvin - kLapse * metres / 2.0;
        return PressureDifference::fromPascal(station.pascals() * kHydrostatic * metres * airDeparture.celsius() /
                                              (kelvin * kelvin))
            .magnitude();
    });
}

tl::expected<PressureDifference, AtmosphereFault> altitudeSpread(Pressure station, Altitude altitude,
                                                                 Length uncertainty) noexcept {
    return inRange(geopotentialHeight(altitude).metres()).map([&](double metres) {
        const double kelvin = kSeaLevelKelvin - kLapse * metres;
        return PressureDifference::fromPascal(station.pascals() * kHydrostatic * uncertainty.metres() / kelvin)
            .magnitude();
    });
}

} // namespace holdfast::analytics
