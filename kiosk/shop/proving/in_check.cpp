#include "kiosk/shop/proving/machine.hpp"
#include "kiosk/shop/proving/ride_rules.hpp"

#include <algorithm>

/// An instrument in a bath: what it shows there is no ride, and no beginning of one.
namespace holdfast::kiosk::shop {
namespace {

using analytics::Temperature;

// What a trace may begin at (decisions 3, starts hot): colder is the ice, hotter the boiling water.
constexpr auto kRoomFrom = Temperature::fromCelsius(5.0);
constexpr auto kRoomTo = Temperature::fromCelsius(40.0);
constexpr MonotonicTime kAtRestFor{10'000'000}; // (MEM)

/// The last ten seconds lie within the rise that begins a ride.
bool isAtRest(const Probe& probe, MonotonicTime at) {
    if (at - probe.lastMinute.front().at < kAtRestFor) {
        return false;
    }
    auto scale = scaleOf(probe.scale, probe.answeredUnit);
    auto low = indicated(probe.lastMinute.back(), scale);
    auto high = low;
    for (const auto& sample : probe.lastMinute) {
        if (sample.flags == drivers::SampleFlag::none && at - sample.at <= kAtRestFor) {
            low = std::min(low, indicated(sample, scale));
            high = std::max(high, indicated(sample, scale));
        }
    }
    return high - low < kStartRise;
}

} // namespace

bool mayStart(const Probe& probe, Temperature t) {
    return !probe.waitsForCool && !probe.inCheck && (!probe.fromBath || t >= kRideFrom);
}

void feedFromBath(Probe& probe, const drivers::Sample& sample, const std::optional<Temperature>& t) {
    auto& minute = probe.lastMinute;
    const bool cold = t && *t < kRoomFrom;
    if (cold || (minute.empty() && (!t || *t > kRoomTo))) {
        minute.clear();
        return;
    }
    minute.push_back(sample);
    keepLastMinute(minute);
    if (t && isAtRest(probe, sample.at)) {
        probe.fromBath = false;
        minute.erase(minute.begin(), std::find_if(minute.begin(), minute.end(),
                                                  [&](const auto& one) { return sample.at - one.at <= kAtRestFor; }));
    }
}

void onInCheck(Machine& m, const InstrumentInCheck& event) {
    Probe* probe = m.probeNamed(event.probe);
    const bool riding = probe != nullptr && probe->recording && probe->recording->isRide;
    if (probe == nullptr || probe->inCheck == event.inCheck || (event.inCheck && riding)) {
        return;
    }
    probe->inCheck = event.inCheck;
    probe->fromBath = !event.inCheck;
    if (!event.inCheck) {
        probe->lastMinute.clear();
    } else if (probe->recording) {
        discardRecording(m, *probe); // the hand that carried it to the bath had warmed it
    }
}

} // namespace holdfast::kiosk::shop
