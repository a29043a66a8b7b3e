#include "kiosk/demo/demo_ride.hpp"

#include "drivers/catalogue/catalogue.hpp"
#include "drivers/simulated/scenario.hpp"
#include "kiosk/demo/demo_shop.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>

namespace holdfast::kiosk::demo {
namespace {

using analytics::Temperature;
using analytics::TemperatureDifference;

constexpr double kSecondsBefore = 10.0;
constexpr double kSecondsOfRise = 75.0;   ///< four times the model's lag: from cold into a hold
constexpr double kSecondsAfterCold = 7.0; ///< a ride is judged when it was fallen for five
constexpr double kColdCelsius = 56.0;     ///< under the 60 °C to which a ride is watched
constexpr double kFallCelsius = 23.0;     ///< and under the 20 °C that it must fall
constexpr auto kSustainedBelowTop = TemperatureDifference::fromCelsius(1.5);      ///< decisions 2: 1 to 2 °C
constexpr auto kSustainedBelowLevelTop = TemperatureDifference::fromCelsius(0.2); ///< the noise alone
constexpr double kSecondsToLevel = 160.0; ///< a belt so slow that the film comes as near to the air as the probe sees
constexpr auto kAboveLower = TemperatureDifference::fromCelsius(8.0); ///< where no aim is known

double celsiusOf(double fahrenheit) {
    return Temperature::fromFahrenheit(fahrenheit).celsius();
}

Temperature sustainedGoal(const analytics::RunWindow& window) {
    if (window.aim) {
        return *window.aim;
    }
    return window.upper ? window.lower + (*window.upper - window.lower) * 0.5 : window.lower + kAboveLower;
}

bool isSilent(double second, double top, int silentSeconds) {
    return silentSeconds > 0 && std::abs(second - top) <= silentSeconds / 2.0;
}

} // namespace

const drivers::InstrumentDescription& probeDescription() {
    const auto* description = drivers::findInstrument(kDemoCatalogueId);
    assert(description != nullptr);
    return *description;
}

RideShape fittingRide(const analytics::RunWindow& window) {
    RideShape shape;
    shape.peakFahrenheit = (sustainedGoal(window) + kSustainedBelowTop).fahrenheit();
    if (window.narrow) {
        shape.peakFahrenheit = (sustainedGoal(window) + kSustainedBelowLevelTop).fahrenheit();
        shape.secondsInside = kSecondsToLevel;
    }
    if (window.hold > analytics::Duration{0}) {
        shape.secondsInside = window.hold.count() + kSecondsOfRise;
    }
    return shape;
}

SimulatedSamples samplesOf(const RideShape& shape, std::uint64_t seed, drivers::MonotonicTime begin) {
    const auto& probe = probeDescription();
    const double peak = celsiusOf(shape.peakFahrenheit);
    const double cold = std::min(kColdCelsius, peak - kFallCelsius);
    drivers::Scenario scenario;
    scenario.rides.push_back(
        {drivers::MonotonicTime{static_cast<std::int64_t>(kSecondsBefore * 1e6)}, peak, shape.secondsInside});
    const double top = kSecondsBefore + shape.secondsInside;
    const double fall = scenario.tunnel.coolingLagSeconds *
                        std::log((peak - scenario.tunnel.ambientCelsius) / (cold - scenario.tunnel.ambientCelsius));
    const double length = top + fall + kSecondsAfterCold;
    SimulatedSamples ride;
    ride.length = drivers::MonotonicTime{static_cast<std::int64_t>(length * 1e6)};
    const drivers::MonotonicTime interval{probe.interval};
    for (std::int64_t index = 0; index * interval < ride.length; ++index) {
        const auto since = index * interval;
        if (isSilent(static_cast<double>(since.count()) * 1e-6, top, shape.silentSeconds)) {
            continue;
        }
        const double celsius = scenario.celsiusAt(since) + scenario.noiseCelsius * drivers::noiseAt(seed, index);
        ride.samples.append({begin + since, std::llround(celsius / probe.scale().step), drivers::SampleFlag::none});
    }
    return ride;
}

} // namespace holdfast::kiosk::demo
