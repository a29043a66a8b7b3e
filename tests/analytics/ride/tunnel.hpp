#pragma once

#include "analytics/cure/ride/rise_fit.hpp"
#include "tests/analytics/cure/verdict/ride.hpp"

#include <algorithm>
#include <cmath>
#include <random>

/// A tunnel as a first-order lag, and what may go wrong in it.
namespace tunnel {

namespace an = holdfast::analytics;

struct Tunnel final {
    double entry = 28.0;
    double air = 185.0;
    double tau = 18.0;
    double inside = 38.0; ///< s under the heat
    double cooling = 22.0;
    double noise = 0.0;    ///< standard deviation, white
    double flutter = 0.0;  ///< amplitude, °C, swinging with a period of 1.7 s
    double boilsFor = 0.0; ///< s at 100 °C
    double step = 0.25;

    /// Without noise; t from the moment it comes under the heat.
    [[nodiscard]] double at(double t) const {
        if (t <= 0.0) {
            return entry;
        }
        if (t > inside) {
            const double top = at(inside);
            return entry + (top - entry) * std::exp(-(t - inside) / cooling);
        }
        const double boils = -tau * std::log((air - 100.0) / (air - entry));
        const double dry = boilsFor <= 0.0 || t < boils ? t : std::max(boils, t - boilsFor);
        return air + (entry - air) * std::exp(-dry / tau);
    }
    [[nodiscard]] double peak() const { return at(inside); }
};

constexpr double kPreRoll = 20.0;

inline an::RawTrace ride(const Tunnel& tunnel, unsigned seed = 1) {
    std::mt19937 engine{seed};
    std::normal_distribution<double> noise{0.0, 1.0};
    an::RawTrace trace;
    const double end = tunnel.inside + 3.0 * tunnel.cooling;
    for (int i = 0; i * tunnel.step <= kPreRoll + end; ++i) {
        const double t = i * tunnel.step - kPreRoll;
        const bool hot = t > 0.0 && t <= tunnel.inside;
        const double swing = hot ? tunnel.flutter * std::sin(2.0 * 3.14159265 * t / 1.7) : 0.0;
        const double value = tunnel.at(t) + swing + tunnel.noise * noise(engine);
        trace.samples.push_back(
            {std::chrono::microseconds{std::llround((t + kPreRoll) * 1e6)}, ride::celsius(value), false});
    }
    return trace;
}

inline an::Pass pass(const an::RawTrace& trace) {
    return an::cleanRecording(trace, nullptr).passes.front();
}
inline an::Pass pass(const Tunnel& tunnel, unsigned seed = 1) {
    return pass(ride(tunnel, seed));
}

inline an::RiseFit fit(const Tunnel& tunnel, unsigned seed = 1) {
    const auto result = an::fitRise(pass(tunnel, seed));
    if (!result) {
        throw std::runtime_error{"no fit: " + std::to_string(static_cast<int>(result.error()))};
    }
    return *result;
}

} // namespace tunnel
