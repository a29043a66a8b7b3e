#include "drivers/simulated/tunnel_model.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace holdfast::drivers {

namespace {

double towards(double goal, double start, double seconds, double lag) noexcept {
    return goal + (start - goal) * std::exp(-seconds / lag);
}

/// SplitMix64 (Steele, Lea, Flood, OOPSLA 2014): one well mixed word for each counter.
std::uint64_t mixed(std::uint64_t word) noexcept {
    word += 0x9E3779B97F4A7C15U;
    word = (word ^ (word >> 30U)) * 0xBF58476D1CE4E5B9U;
    word = (word ^ (word >> 27U)) * 0x94D049BB133111EBU;
    return word ^ (word >> 31U);
}

/// In (0, 1).
double uniform(std::uint64_t word) noexcept {
    return (static_cast<double>(mixed(word) >> 11U) + 0.5) * 0x1p-53;
}

} // namespace

double TunnelModel::secondsInside() const noexcept {
    return heatedLengthMetres / beltMetresPerMinute * 60.0;
}

double TunnelModel::celsiusAt(double seconds, double startCelsius) const noexcept {
    if (seconds <= 0.0) {
        return startCelsius;
    }
    const double inside = std::min(seconds, secondsInside());
    const double heated = towards(airCelsius, startCelsius, inside, lagSeconds * loadFactor);
    return towards(ambientCelsius, heated, seconds - inside, coolingLagSeconds);
}

double TunnelModel::peakCelsius(double startCelsius) const noexcept {
    return celsiusAt(secondsInside(), startCelsius);
}

TunnelModel TunnelModel::withPeak(double peakCelsius, double startCelsius) const noexcept {
    TunnelModel tunnel = *this;
    const double reached = -std::expm1(-secondsInside() / (lagSeconds * loadFactor));
    tunnel.airCelsius = startCelsius + (peakCelsius - startCelsius) / reached;
    return tunnel;
}

double noiseAt(std::uint64_t seed, std::int64_t index) noexcept {
    const std::uint64_t counter = mixed(seed) + 2U * static_cast<std::uint64_t>(index);
    return std::sqrt(-2.0 * std::log(uniform(counter))) * std::cos(2.0 * std::numbers::pi * uniform(counter + 1U));
}

} // namespace holdfast::drivers
