#include "analytics/metrology/fixed_points/boiling_point.hpp"

#include <array>

namespace holdfast::analytics {
namespace {

// IAPWS R7-97, table 34.
constexpr std::array kN{0.11670521452767e4,  -0.72421316703206e6, -0.17073846940092e2, 0.12020824702470e5,
                        -0.32325550322333e7, 0.14915108613530e2,  -0.48232657361591e4, 0.40511340542057e6,
                        -0.23855557567849e0, 0.65017534844798e3};
constexpr double kLowestPascal = 611.213;
constexpr double kHighestPascal = 22.064e6;
constexpr double kLowestKelvin = 273.15;
constexpr double kHighestKelvin = 647.096;
constexpr double kPascalPerMegapascal = 1e6;

/// Equation 31, T in K for p in MPa.
double backward(double megapascal) noexcept {
    const double beta = std::pow(megapascal, 0.25);
    const double e = beta * beta + kN[2] * beta + kN[5];
    const double f = kN[0] * beta * beta + kN[3] * beta + kN[6];
    const double g = kN[1] * beta * beta + kN[4] * beta + kN[7];
    const double d = 2.0 * g / (-f - std::sqrt(f * f - 4.0 * e * g));
    const double sum = kN[9] + d;
    return (sum - std::sqrt(sum * sum - 4.0 * (kN[8] + kN[9] * d))) / 2.0;
}

/// Equation 30, p in MPa for T in K.
double forward(double kelvin) noexcept {
    const double theta = kelvin + kN[8] / (kelvin - kN[9]);
    const double a = theta * theta + kN[0] * theta + kN[1];
    const double b = kN[2] * theta * theta + kN[3] * theta + kN[4];
    const double c = kN[5] * theta * theta + kN[6] * theta + kN[7];
    return std::pow(2.0 * c / (-b + std::sqrt(b * b - 4.0 * a * c)), 4.0);
}

} // namespace

tl::expected<Temperature, SaturationFault> saturationTemperature(Pressure pressure) noexcept {
    if (!pressure.isFinite()) {
        return tl::unexpected{SaturationFault::notFinite};
    }
    if (pressure.pascals() < kLowestPascal) {
        return tl::unexpected{SaturationFault::tooLow};
    }
    if (pressure.pascals() > kHighestPascal) {
        return tl::unexpected{SaturationFault::tooHigh};
    }
    return Temperature::fromKelvin(backward(pressure.pascals() / kPascalPerMegapascal));
}

tl::expected<Pressure, SaturationFault> saturationPressure(Temperature temperature) noexcept {
    if (!temperature.isFinite()) {
        return tl::unexpected{SaturationFault::notFinite};
    }
    if (!atLeast(temperature, Temperature::fromKelvin(kLowestKelvin))) {
        return tl::unexpected{SaturationFault::tooLow};
    }
    if (!atMost(temperature, Temperature::fromKelvin(kHighestKelvin))) {
        return tl::unexpected{SaturationFault::tooHigh};
    }
    return Pressure::fromPascal(forward(temperature.kelvin()) * kPascalPerMegapascal);
}

tl::expected<Temperature, SaturationFault> boilingPoint(Pressure station) noexcept {
    if (!station.isFinite()) {
        return tl::unexpected{SaturationFault::notFinite};
    }
    if (station < kLowestStationPressure) {
        return tl::unexpected{SaturationFault::tooLow};
    }
    if (station > kHighestStationPressure) {
        return tl::unexpected{SaturationFault::tooHigh};
    }
    return saturationTemperature(station);
}

tl::expected<TemperatureDifference, SaturationFault> boilingPointSpread(Pressure station,
                                                                        PressureDifference u) noexcept {
    const auto there = boilingPoint(station);
    if (!there) {
        return tl::unexpected{there.error()};
    }
    if (!u.isFinite()) {
        return tl::unexpected{SaturationFault::notFinite};
    }
    constexpr double kHalfStep = 100.0;
    const double p = station.pascals();
    const double rise =
        backward((p + kHalfStep) / kPascalPerMegapascal) - backward((p - kHalfStep) / kPascalPerMegapascal);
    return TemperatureDifference::fromCelsius(rise / (2.0 * kHalfStep) * u.magnitude().pascals());
}

} // namespace holdfast::analytics
