#include "kiosk/shop/proving/earlier_rides.hpp"

#include "kiosk/shop/proving/machine.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using records::FloorAction;

bool turnsAir(const records::ActionTaken& action) {
    return action.setPoint || action.action == FloorAction::hotter || action.action == FloorAction::cooler;
}

Recording keptRecording(const TraceLoaded& ride, const records::TraceSeen& seen) {
    Recording recording;
    recording.instrument = ride.instrument.name;
    recording.samples = ride.samples;
    if (seen.unitConfirmed) {
        recording.answeredUnit = seen.step.unit;
    }
    return recording;
}

} // namespace

std::optional<analytics::AuthoredTemperature> setPointAt(const std::vector<records::ActionRow>& newestFirst,
                                                         const records::DryerNow& now, std::int64_t at) {
    const auto last = std::find_if(newestFirst.begin(), newestFirst.end(),
                                   [&](const auto& row) { return row.at <= at && turnsAir(row.action); });
    if (last != newestFirst.end()) {
        return last->action.setPoint;
    }
    return now.since <= at ? now.setPoint : std::nullopt;
}

std::optional<analytics::UsualRide> usualRideOf(const TraceLoaded& ride,
                                                const std::optional<analytics::AuthoredTemperature>& setPoint) {
    const auto* seen = std::get_if<records::TraceSeen>(&ride.taken.evidence);
    const bool cured = ride.taken.verdict && ride.taken.verdict->word == analytics::Word::cured;
    if (seen == nullptr || !cured || seen->cutOff) {
        return std::nullopt;
    }
    const auto calibration = calibrationFor(ride.instrument, ride.instrument.name);
    const drivers::CountScale scale{seen->step.value, seen->step.unit == analytics::TemperatureUnit::celsius
                                                          ? drivers::ReadingUnit::celsius
                                                          : drivers::ReadingUnit::fahrenheit};
    const auto raw = rawTraceOf(keptRecording(ride, *seen), scale, calibration->instrument());
    const auto passes = analytics::cleanRecording(raw, calibration.get()).passes;
    const auto index = static_cast<std::size_t>(seen->pass - 1);
    if (seen->pass < 1 || index >= passes.size()) {
        return std::nullopt;
    }
    const auto fit = analytics::fitRise(passes[index]);
    if (!fit || !analytics::rideSigns(&*fit, passes[index], nullptr).empty()) {
        return std::nullopt;
    }
    return analytics::UsualRide{*fit, setPoint ? std::optional{setPoint->temperature()} : std::nullopt};
}

} // namespace holdfast::kiosk::shop
