#pragma once

#include "tests/analytics/cure/verdict/ride.hpp"

#include <random>

namespace ride {

/// A smooth single hump sampled every `step` seconds: 25 °C, a rise and a fall of different widths (logistic), never
/// faster than 15 °C/s, back to 30 °C. `level` is the hottest sample's temperature, about.
struct Hump final {
    double level = 165.0;
    double rise = 8.0;  ///< logistic width in s
    double hold = 20.0; ///< between the two shoulders in s
    double fall = 9.0;

    [[nodiscard]] double at(double seconds) const {
        const double start = 10.0 + 6.0 * rise;
        const double up = 1.0 / (1.0 + std::exp(-(seconds - start) / rise));
        const double down = 1.0 / (1.0 + std::exp((seconds - start - hold) / fall));
        return 25.0 + (level - 25.0) * up * down;
    }
    [[nodiscard]] double end() const { return 10.0 + 6.0 * rise + hold + 7.0 * fall; }
};

/// With `shift` added where the film is hot, fading out towards the cold ends so that the ride still starts cold.
inline an::RawTrace sampled(const Hump& hump, double step, double shift = 0.0) {
    an::RawTrace trace;
    for (int i = 0; i * step <= hump.end(); ++i) {
        const double t = hump.at(i * step);
        const double share = std::clamp((t - 30.0) / 50.0, 0.0, 1.0);
        trace.samples.push_back(
            {std::chrono::microseconds{std::llround(i * step * 1e6)}, celsius(t + shift * share), false});
    }
    return trace;
}

inline Hump randomHump(std::mt19937& engine) {
    const auto between = [&](double low, double high) {
        return std::uniform_real_distribution<double>{low, high}(engine);
    };
    return {between(145.0, 195.0), between(3.0, 12.0), between(30.0, 120.0), between(3.0, 12.0)};
}

inline double randomStep(std::mt19937& engine) {
    return std::uniform_real_distribution<double>{0.1, 0.8}(engine);
}

/// Every kind of lower limit, with ceilings near enough to matter.
inline std::vector<an::RunPlan> manyPlans() {
    auto unbroken = family(155.0, 40.0);
    unbroken.unbroken = true;
    auto bleeding = family(150.0);
    bleeding.bleedResistance = an::BleedResistance::low;
    return {plan({family(160.0)}),
            plan({family(160.0)}, ceilings(178.0)),
            plan({family(155.0, 45.0)}, ceilings(185.0)),
            plan({unbroken}, ceilings(185.0)),
            plan({familyWithPairs()}, ceilings(190.0)),
            plan({family(150.0), family(160.0), familyWithPairs()}, ceilings(185.0)),
            plan({bleeding}, ceilings(185.0, 170.0))};
}

} // namespace ride
