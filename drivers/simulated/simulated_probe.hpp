#pragma once

#include "drivers/catalogue/description.hpp"
#include "drivers/clock/clock.hpp"
#include "drivers/simulated/scenario.hpp"

#include <memory>
#include <string>

namespace holdfast::drivers {

/// A thread that is an instrument: it writes the bytes its description says to a real pseudo-terminal, or answers the
/// queries of a SCPI instrument there, so that the same driver reads it as a real one. Samples are due at equal
/// intervals of clock time from the begin, five a second for the built-in instruments; those that came due while the
/// thread slept are sent late, as a busy line would.
class SimulatedProbe final {
public:
    /// Begins at once. `clock` must outlive the probe. `path` as for PseudoTerminal.
    SimulatedProbe(InstrumentDescription description, Scenario scenario, const Clock& clock,
                   std::string serialNumber = "004217", std::string path = {});
    SimulatedProbe(const SimulatedProbe&) = delete;
    SimulatedProbe& operator=(const SimulatedProbe&) = delete;
    ~SimulatedProbe();

    /// Where a link finds it; stays the same when it is unplugged and plugged in again.
    [[nodiscard]] const std::string& path() const noexcept;
    /// Pulls the cable, or puts it back, from outside the scenario (thread-safe; takes effect within a few ms).
    void setPlugged(bool plugged) noexcept;
    /// Adds a ride that begins now.
    void ride(double peakCelsius, double secondsInside);

private:
    class Instrument;
    std::unique_ptr<Instrument> m_instrument;
};

} // namespace holdfast::drivers
