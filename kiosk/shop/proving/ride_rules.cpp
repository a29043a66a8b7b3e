#include "kiosk/shop/proving/ride_rules.hpp"

#include "analytics/cure/window.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

using analytics::Temperature;

struct Valued final {
    MonotonicTime at{0};
    Temperature t = Temperature::fromCelsius(0);
};

std::vector<Valued> usableOf(const Probe& probe) {
    const auto scale = scaleOf(probe.scale, probe.answeredUnit);
    std::vector<Valued> values;
    values.reserve(probe.lastMinute.size());
    for (const auto& sample : probe.lastMinute) {
        if (const auto t = usableValue(sample, scale, probe.known ? &*probe.known : nullptr)) {
            values.push_back({sample.at, *t});
        }
    }
    return values;
}

std::optional<Temperature> levelOf(const std::vector<Valued>& values) {
    if (values.size() < kFewestForLevel + 2) {
        return std::nullopt;
    }
    std::vector<Temperature> before;
    std::transform(values.begin(), values.end() - 2, std::back_inserter(before), [](const Valued& v) { return v.t; });
    const auto middle = before.begin() + static_cast<std::ptrdiff_t>(before.size() / 2);
    std::nth_element(before.begin(), middle, before.end());
    return *middle;
}

} // namespace

drivers::CountScale scaleOf(const drivers::CountScale& link,
                            const std::optional<analytics::TemperatureUnit>& answered) {
    if (!answered) {
        return link;
    }
    const bool celsius = *answered == analytics::TemperatureUnit::celsius;
    return {link.step, celsius ? drivers::ReadingUnit::celsius : drivers::ReadingUnit::fahrenheit};
}

std::optional<Temperature> usableValue(const drivers::Sample& sample, const drivers::CountScale& scale,
                                       const KnownInstrument* known) {
    if (sample.flags != drivers::SampleFlag::none) {
        return std::nullopt;
    }
    const auto raw = indicated(sample, scale);
    if (!raw.isFinite() || raw < kColdestPossible || raw > kHottestPossible) {
        return std::nullopt;
    }
    if (known == nullptr || !known->calibration) {
        return raw;
    }
    const auto& range = known->calibration->instrument().range;
    if (range && (raw < range->low || raw > range->high)) {
        return std::nullopt;
    }
    return known->calibration->corrected(raw);
}

void keepLastMinute(std::vector<drivers::Sample>& samples) {
    if (samples.empty()) {
        return;
    }
    const auto from = samples.back().at - kPreRoll;
    const auto first = std::find_if(samples.begin(), samples.end(), [&](const auto& s) { return s.at >= from; });
    samples.erase(samples.begin(), first);
}

std::optional<Temperature> levelBefore(const Probe& probe) {
    return levelOf(usableOf(probe));
}

bool rideStarts(const Probe& probe) {
    const auto values = usableOf(probe);
    const auto level = levelOf(values);
    return level && values.back().t >= *level + kStartRise && values[values.size() - 2].t >= *level + kStartRise;
}

std::vector<drivers::Sample> preRoll(const Probe& probe) {
    const auto values = usableOf(probe);
    const auto cold = std::find_if(values.begin(), values.end(), [](const Valued& v) { return v.t <= kColdStart; });
    if (cold == values.end()) {
        return probe.lastMinute;
    }
    const auto first = std::find_if(probe.lastMinute.begin(), probe.lastMinute.end(),
                                    [&](const auto& sample) { return sample.at >= cold->at; });
    return {first, probe.lastMinute.end()};
}

MonotonicTime gapLimitOf(const std::vector<drivers::Sample>& samples) {
    std::vector<MonotonicTime> steps;
    for (std::size_t i = 1; i < samples.size(); ++i) {
        if (samples[i].at > samples[i - 1].at) {
            steps.push_back(samples[i].at - samples[i - 1].at);
        }
    }
    if (steps.empty()) {
        return std::chrono::seconds{2};
    }
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    const auto limit = analytics::gapLimit(analytics::Duration{*middle});
    return std::chrono::duration_cast<MonotonicTime>(limit);
}

bool holdsAreOver(const AnnouncedRun* run, const analytics::Calibration& calibration,
                  const analytics::GuardSetting& guard, Temperature t) {
    if (run == nullptr) {
        return true;
    }
    for (const auto& layer : run->onFile.layers.layers) {
        const auto& ink = layer.ink.requirement;
        if (ink.pairs) {
            const auto g = calibration.guardAt(ink.pairs->hotter.temperature, guard);
            if (!analytics::atMost(t, ink.gelLow() - g)) {
                return false;
            }
        } else if (ink.hold > analytics::Duration{0}) {
            if (!analytics::atMost(t, ink.cure - calibration.guardAt(ink.cure, guard))) {
                return false;
            }
        }
    }
    return true;
}

Temperature gelLowOf(const AnnouncedRun* run) {
    if (run == nullptr || run->onFile.layers.layers.empty()) {
        return kRideFrom;
    }
    auto lowest = run->onFile.layers.layers.front().ink.requirement.gelLow();
    for (const auto& layer : run->onFile.layers.layers) {
        lowest = std::min(lowest, layer.ink.requirement.gelLow());
    }
    return lowest;
}

} // namespace holdfast::kiosk::shop
