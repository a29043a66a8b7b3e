#include "kiosk/demo/demo_tunnel.hpp"

#include "drivers/catalogue/catalogue.hpp"
#include "kiosk/demo/demo_shop.hpp"

#include <algorithm>
#include <cassert>

namespace holdfast::kiosk::demo {

namespace {

constexpr double kPauseSeconds = 4.0; ///< between the scan and the print going in
constexpr double kSecondsInside = 40.0;

const drivers::InstrumentDescription& probeDescription() {
    const auto* description = drivers::findInstrument(kDemoCatalogueId);
    assert(description != nullptr);
    return *description;
}

const DemoRide* rideOf(std::int64_t run) {
    const auto& rides = demoRides();
    const auto found =
        std::find_if(rides.begin(), rides.end(), [run](const DemoRide& ride) { return ride.run == run; });
    return found == rides.end() ? nullptr : &*found;
}

} // namespace

DemoTunnel::DemoTunnel(const drivers::Clock& clock, const std::string& path, QObject* parent)
    : QObject{parent}, m_clock{clock}, m_probe{probeDescription(), {}, clock, "004217", path} {
    m_starting.setSingleShot(true);
    connect(&m_starting, &QTimer::timeout, this, &DemoTunnel::startRide);
}

void DemoTunnel::expectRide(const shop::ProvingState& state) {
    const bool waits = shop::stageOf(state) == shop::Stage::window && state.run && state.window &&
                       state.window->state != analytics::WindowState::closed;
    if (waits) {
        m_run = state.run->onFile.plan.number;
        m_starting.start(realMilliseconds(kPauseSeconds));
    } else {
        m_starting.stop();
    }
}

void DemoTunnel::startRide() {
    const auto* ride = rideOf(m_run);
    const double peakFahrenheit = ride != nullptr ? ride->peakFahrenheit : 294.2;
    m_probe.ride((peakFahrenheit - 32.0) * 5.0 / 9.0, kSecondsInside);
    if (ride != nullptr && ride->silentSeconds > 0) {
        const double half = ride->silentSeconds / 2.0;
        QTimer::singleShot(realMilliseconds(kSecondsInside - half), this, [this] { m_probe.setPlugged(false); });
        QTimer::singleShot(realMilliseconds(kSecondsInside + half), this, [this] { m_probe.setPlugged(true); });
    }
}

int DemoTunnel::realMilliseconds(double clockSeconds) const {
    const drivers::MonotonicTime span{static_cast<std::int64_t>(clockSeconds * 1e6)};
    return static_cast<int>(drivers::realDelay(m_clock, span).count());
}

} // namespace holdfast::kiosk::demo
