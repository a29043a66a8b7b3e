#pragma once

#include "analytics/cure/window.hpp"
#include "drivers/catalogue/catalogue.hpp"
#include "drivers/link/sample.hpp"

#include <QVector>

#include <cstdint>

namespace holdfast::kiosk::demo {

/// What a simulated print goes through.
struct RideShape final {
    double peakFahrenheit = 0.0; ///< of the film
    double secondsInside = 40.0; ///< under the heat
    int silentSeconds = 0;       ///< around the top: the probe says nothing
};

/// A ride that proves the window met if one can: to its aim, and long enough for its hold.
[[nodiscard]] RideShape fittingRide(const analytics::RunWindow& window);

/// What the catalogue says of the demo's probe.
[[nodiscard]] const drivers::InstrumentDescription& probeDescription();

struct SimulatedSamples final {
    QVector<drivers::Sample> samples{};
    drivers::MonotonicTime length{0};
};

/// The whole ride at the rate and in the steps of the demo's probe, from ten seconds before the heat until the film is
/// cold. The same for the same seed.
[[nodiscard]] SimulatedSamples samplesOf(const RideShape& shape, std::uint64_t seed, drivers::MonotonicTime begin);

} // namespace holdfast::kiosk::demo
