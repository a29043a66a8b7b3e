#include "analytics/cure/ride/wet_stretch.hpp"

#include <algorithm>
#include <cmath>
#include <set>

namespace holdfast::analytics {
namespace {

constexpr Temperature kFoot = Temperature::fromCelsius(60.0); ///< where the rise before is measured from

struct Stretch final {
    std::size_t first = 0;
    std::size_t last = 0;
};

/// Samples that may belong to the rise or a level top: all up to the last one within `level` of the raw peak.
std::size_t endOfRise(const Pass& pass, TemperatureDifference level) {
    const auto peak = rawPeak(pass);
    std::size_t end = 0;
    for (std::size_t i = 0; peak && i < pass.samples.size(); ++i) {
        if (pass.samples[i].t >= peak->t - level) {
            end = i + 1;
        }
    }
    return end;
}

Duration timeOf(const Pass& pass, const Stretch& stretch) noexcept {
    return pass.samples[stretch.last].at - pass.samples[stretch.first].at;
}

std::optional<Stretch> longestLevel(const Pass& pass, const WetRules& rules) {
    std::optional<Stretch> longest;
    std::multiset<Temperature> inside;
    std::size_t first = 0;
    const std::size_t end = endOfRise(pass, rules.level);
    for (std::size_t i = 0; i < end; ++i) {
        const auto t = pass.samples[i].t;
        const bool joined = i == 0 || pass.joins[i - 1] == Join::line;
        if (!joined || t < rules.from || t > rules.to) {
            inside.clear();
            first = i + 1;
        }
        if (t < rules.from || t > rules.to) {
            continue;
        }
        first = std::min(first, i);
        inside.insert(t);
        while (*inside.rbegin() - *inside.begin() > rules.level) {
            inside.erase(inside.find(pass.samples[first].t));
            ++first;
        }
        const Stretch now{first, i};
        if (!longest || timeOf(pass, now) > timeOf(pass, *longest)) {
            longest = now;
        }
    }
    return longest;
}

/// Least-squares slope of the samples of a stretch, °C/s.
double slopeOf(const Pass& pass, const Stretch& stretch, double& mean) {
    double meanTime = 0.0;
    mean = 0.0;
    const auto n = static_cast<double>(stretch.last - stretch.first + 1);
    for (std::size_t i = stretch.first; i <= stretch.last; ++i) {
        meanTime += pass.samples[i].at.count() / n;
        mean += pass.samples[i].t.celsius() / n;
    }
    double products = 0.0;
    double squares = 0.0;
    for (std::size_t i = stretch.first; i <= stretch.last; ++i) {
        const double time = pass.samples[i].at.count() - meanTime;
        products += time * (pass.samples[i].t.celsius() - mean);
        squares += time * time;
    }
    return squares > 0.0 ? products / squares : 0.0;
}

double rateBetween(const CleanSample& a, const CleanSample& b) noexcept {
    return b.at > a.at ? (b.t - a.t).celsius() / (b.at - a.at).count() : 0.0;
}

double rateBefore(const Pass& pass, const Stretch& stretch) {
    std::size_t foot = stretch.first;
    while (foot > 0 && pass.samples[foot].t > kFoot) {
        --foot;
    }
    return rateBetween(pass.samples[foot], pass.samples[stretch.first]);
}

/// How fast the trace rises by `climb` behind the stretch; absent if it never does.
std::optional<double> rateBehind(const Pass& pass, const Stretch& stretch, TemperatureDifference climb) {
    const auto& last = pass.samples[stretch.last];
    for (std::size_t i = stretch.last + 1; i < pass.samples.size(); ++i) {
        if (pass.samples[i].t >= last.t + climb) {
            return rateBetween(last, pass.samples[i]);
        }
    }
    return std::nullopt;
}

} // namespace

std::optional<WetStretch> wetStretchOf(const Pass& pass, const Usual* usual, const WetRules& rules) {
    const auto stretch = longestLevel(pass, rules);
    if (!stretch || timeOf(pass, *stretch) < rules.least) {
        return std::nullopt;
    }
    double mean = 0.0;
    const double slope = std::max(0.0, slopeOf(pass, *stretch, mean));
    if (slope > rules.mostOfRateBefore * rateBefore(pass, *stretch)) {
        return std::nullopt;
    }
    const Duration lasted = timeOf(pass, *stretch);
    if (const auto behind = rateBehind(pass, *stretch, rules.climb)) {
        if (*behind < rules.leastClimbOn * slope) {
            return std::nullopt;
        }
    } else {
        const double missing =
            usual ? (usual->air.middle.celsius() - mean) * -std::expm1(-lasted / usual->tau.middle) : 0.0;
        if (missing < rules.leastMissing * rules.level.celsius()) {
            return std::nullopt;
        }
    }
    return WetStretch{pass.samples[stretch->first].at, lasted, Temperature::fromCelsius(mean)};
}

} // namespace holdfast::analytics
