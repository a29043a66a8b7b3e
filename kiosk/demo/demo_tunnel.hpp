#pragma once

#include "drivers/simulated/simulated_probe.hpp"
#include "kiosk/demo/demo_ride.hpp"
#include "kiosk/shop/proving/proving_state.hpp"

#include <QObject>
#include <QTimer>

namespace holdfast::kiosk::demo {

/// The demo's dryer: when a run is announced, its simulated print rides as the demo says for that run, or so that it
/// fits the run's window.
class DemoTunnel final : public QObject {
    Q_OBJECT
public:
    /// The probe's port stands at `path`. `clock` must outlive the tunnel.
    DemoTunnel(const drivers::Clock& clock, const std::string& path, QObject* parent = nullptr);

    /// If the run announced waits for a ride, its print goes in shortly.
    void expectRide(const shop::ProvingState& state);

private:
    void startRide();
    [[nodiscard]] int realMilliseconds(double clockSeconds) const;

    const drivers::Clock& m_clock;
    drivers::SimulatedProbe m_probe;
    QTimer m_starting;
    RideShape m_shape; ///< of the next ride
};

} // namespace holdfast::kiosk::demo
