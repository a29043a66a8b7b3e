#include "drivers/simulated/scenario.hpp"

#include <algorithm>

namespace holdfast::drivers {

namespace {

double secondsOf(MonotonicTime span) noexcept {
    return static_cast<double>(span.count()) * 1e-6;
}

/// The tunnel for one ride: the belt runs as long as the ride asks, the air is as hot as its peak asks.
TunnelModel tunnelFor(const TunnelModel& tunnel, const SimulatedRide& ride, double startCelsius) noexcept {
    TunnelModel fitted = tunnel;
    fitted.beltMetresPerMinute = tunnel.heatedLengthMetres / ride.secondsInside * 60.0;
    return fitted.withPeak(ride.peakCelsius, startCelsius);
}

} // namespace

double Scenario::celsiusAt(MonotonicTime sinceBegin) const noexcept {
    double start = tunnel.ambientCelsius;
    for (std::size_t i = 0; i < rides.size() && rides[i].start <= sinceBegin; ++i) {
        const TunnelModel fitted = tunnelFor(tunnel, rides[i], start);
        const bool isLast = i + 1 == rides.size() || rides[i + 1].start > sinceBegin;
        const MonotonicTime until = isLast ? sinceBegin : rides[i + 1].start;
        start = fitted.celsiusAt(secondsOf(until - rides[i].start), start);
    }
    return start;
}

const Trouble* Scenario::troubleAt(MonotonicTime sinceBegin) const noexcept {
    const auto found = std::find_if(troubles.begin(), troubles.end(), [sinceBegin](const Trouble& trouble) {
        return trouble.from <= sinceBegin && sinceBegin < trouble.until;
    });
    return found == troubles.end() ? nullptr : &*found;
}

} // namespace holdfast::drivers
