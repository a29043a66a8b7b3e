#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/simulated/tunnel_model.hpp"

#include <cstdint>
#include <vector>

namespace holdfast::drivers {

/// One pass through the tunnel.
struct SimulatedRide {
    MonotonicTime start{0}; ///< when the film comes under the heat, from the scenario's begin
    double peakCelsius = 160.0;
    double secondsInside = 40.0; ///< how long it stays there: heated length over belt speed
};

enum class TroubleKind {
    silence,      ///< nothing is sent
    openCircuit,  ///< the status word, or 9.9E37
    overRange,    ///< the status word, or 9.9E37
    glitch,       ///< `celsius` in place of the true value
    noise,        ///< what a line at another speed looks like
    garbledLines, ///< text that is not this instrument's
    otherUnit,    ///< the unit switched at the instrument
    unplugged,    ///< the port goes away and comes back at the same path
};

/// Something goes wrong from `from` up to, not including, `until`; counted from the scenario's begin.
struct Trouble {
    TroubleKind kind = TroubleKind::silence;
    MonotonicTime from{0};
    MonotonicTime until{0};
    double celsius = 0.0; ///< for a glitch
};

/// What a simulated probe lives through. Everything in clock time, so a faster clock shortens all of it alike.
struct Scenario {
    TunnelModel tunnel;
    double noiseCelsius = 0.1; ///< standard deviation
    std::uint64_t seed = 1;
    std::vector<SimulatedRide> rides; ///< in order of start; a ride may begin before the last one has cooled
    std::vector<Trouble> troubles;

    /// Without noise and troubles.
    [[nodiscard]] double celsiusAt(MonotonicTime sinceBegin) const noexcept;
    /// The first trouble that holds then, if any.
    [[nodiscard]] const Trouble* troubleAt(MonotonicTime sinceBegin) const noexcept;
};

} // namespace holdfast::drivers
