#include "kiosk/demo/demo_tunnel.hpp"

#include "drivers/catalogue/catalogue.hpp"
#include "kiosk/demo/demo_shop.hpp"
#include "kiosk/demo/demo_today.hpp"

#include <cassert>

namespace holdfast::kiosk::demo {

namespace {

constexpr double kPauseSeconds = 4.0; ///< between the scan and the print going in

} // namespace

DemoTunnel::DemoTunnel(const drivers::Clock& clock, const std::string& path, QObject* parent)
    : QObject{parent}, m_clock{clock}, m_probe{probeDescription(), {}, clock, kDemoSerialNumber, path} {
    m_starting.setSingleShot(true);
    connect(&m_starting, &QTimer::timeout, this, &DemoTunnel::startRide);
}

void DemoTunnel::expectRide(const shop::ProvingState& state) {
    const auto& window = shop::shownWindow(state);
    const bool waits = shop::stageOf(state) == shop::Stage::window && state.run && window &&
                       window->state != analytics::WindowState::closed;
    if (waits) {
        const bool alone = state.belt.size() < 2;
        const auto today = alone ? rideOfToday(state.run->onFile.plan.number) : std::nullopt;
        m_shape = today.value_or(fittingRide(*window));
        m_starting.start(realMilliseconds(kPauseSeconds));
    } else {
        m_starting.stop();
    }
}

void DemoTunnel::startRide() {
    m_probe.ride(analytics::Temperature::fromFahrenheit(m_shape.peakFahrenheit).celsius(), m_shape.secondsInside);
    if (m_shape.silentSeconds > 0) {
        const double half = m_shape.silentSeconds / 2.0;
        QTimer::singleShot(realMilliseconds(m_shape.secondsInside - half), this, [this] { m_probe.setPlugged(false); });
        QTimer::singleShot(realMilliseconds(m_shape.secondsInside + half), this, [this] { m_probe.setPlugged(true); });
    }
}

int DemoTunnel::realMilliseconds(double clockSeconds) const {
    const drivers::MonotonicTime span{static_cast<std::int64_t>(clockSeconds * 1e6)};
    return static_cast<int>(drivers::realDelay(m_clock, span).count());
}

} // namespace holdfast::kiosk::demo
