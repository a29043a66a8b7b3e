#include "analytics/cure/ride/rise_fit.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

constexpr double kMostSerialCorrelation = 0.98;
constexpr double kCoolingRead = 0.75;
constexpr TemperatureDifference kLeastFall = TemperatureDifference::fromCelsius(20.0);

/// The way up as indices into the samples of a pass, both ends inside.
struct WayUp final {
    std::size_t from = 0;
    std::size_t peak = 0;
    Temperature entry = Temperature::fromCelsius(0);
};

std::optional<WayUp> wayUpOf(const Pass& pass, const RiseRules& rules) {
    const auto& samples = pass.samples;
    if (samples.empty()) {
        return std::nullopt;
    }
    const auto cooler = [](const CleanSample& a, const CleanSample& b) { return a.t < b.t; };
    const auto peak = std::max_element(samples.begin(), samples.end(), cooler);
    const auto lowest = std::min_element(samples.begin(), peak + 1, cooler);
    WayUp way;
    way.peak = static_cast<std::size_t>(peak - samples.begin());
    const auto rise = peak->t - lowest->t;
    const auto foot = lowest->t + std::max(rules.skippedLeast, rise * rules.skippedShare);
    way.from = way.peak;
    while (way.from > 0 && samples[way.from].t > foot) {
        --way.from;
    }
    // The level before: the median of what the last ten seconds before the foot showed, never above the foot.
    std::vector<double> before;
    for (std::size_t i = way.from + 1; i-- > 0 && samples[way.from].at - samples[i].at <= Duration{10.0};) {
        if (samples[i].t <= foot) {
            before.push_back(samples[i].t.celsius());
        }
    }
    if (before.empty()) {
        way.entry = lowest->t;
    } else {
        const auto middle = before.begin() + static_cast<std::ptrdiff_t>(before.size() / 2);
        std::nth_element(before.begin(), middle, before.end());
        way.entry = Temperature::fromCelsius(*middle);
    }
    return way;
}

std::optional<RiseFault> faultOf(const Pass& pass, const WayUp& way, const RiseRules& rules) {
    const auto& samples = pass.samples;
    const auto& first = samples[way.from];
    const auto& peak = samples[way.peak];
    const Duration time = peak.at - first.at;
    if (way.peak - way.from + 1 < static_cast<std::size_t>(rules.leastSamples) || time < rules.leastTime ||
        peak.t - first.t < rules.leastRise) {
        return RiseFault::tooShort;
    }
    Duration unseen{0};
    for (std::size_t i = way.from; i < way.peak; ++i) {
        if (pass.joins[i] == Join::gap) {
            unseen += samples[i + 1].at - samples[i].at;
        } else if (pass.joins[i] != Join::line) {
            return RiseFault::broken;
        }
    }
    return unseen > time * rules.mostUnseenShare ? std::optional{RiseFault::gaps} : std::nullopt;
}

std::vector<CurvePoint> pointsOf(const Pass& pass, const WayUp& way) {
    std::vector<CurvePoint> points;
    for (std::size_t i = way.from; i <= way.peak; ++i) {
        points.push_back({pass.samples[i].at - pass.samples[way.from].at, pass.samples[i].t});
    }
    return points;
}

bool toldApart(const FirstOrderFit& fit, const FirstOrderLimits& limits, const RiseRules& rules) {
    if (!limits.shortest || !limits.longest || !limits.airLow || !limits.airHigh) {
        return false;
    }
    const auto tau = fit.curve.tau;
    const auto most = (fit.curve.air - fit.curve.start) * rules.mostAirShare;
    return limits.longest->tau <= tau * rules.mostTauFactor && limits.shortest->tau * rules.mostTauFactor >= tau &&
           *limits.airHigh - fit.curve.air <= most && fit.curve.air - *limits.airLow <= most;
}

/// The last sample from the peak on that still follows the curve.
Duration leavesAt(const Pass& pass, const WayUp& way, const RiseFit& fit, const RiseRules& rules) {
    const auto most = std::min(rules.offCurve, rules.stillOnCurve + 3.0 * fit.spread);
    std::size_t last = way.peak;
    for (std::size_t i = way.peak + 1; i < pass.samples.size() && pass.joins[i - 1] == Join::line; ++i) {
        if (pass.samples[i].t < fit.curve.at(pass.samples[i].at - fit.from) - most) {
            break;
        }
        last = i;
    }
    return pass.samples[last].at;
}

/// Time constant towards `entry` from the fall to three quarters of the peak above it, or as far as the trace falls;
/// absent when that is less than 20 °C or behind anything but lines and gaps.
std::optional<Duration> coolingOf(const Pass& pass, const WayUp& way, const RiseFit& fit) {
    const auto hot = fit.raw - fit.entry;
    for (std::size_t i = way.peak + 1; i < pass.samples.size(); ++i) {
        if (pass.joins[i - 1] != Join::line && pass.joins[i - 1] != Join::gap) {
            return std::nullopt;
        }
        const auto& sample = pass.samples[i];
        const bool enough = sample.t - fit.entry <= hot * kCoolingRead;
        const bool last = i + 1 == pass.samples.size() && fit.raw - sample.t >= kLeastFall;
        if ((enough || last) && sample.at > fit.left && sample.t > fit.entry) {
            return (sample.at - fit.left) / std::log(hot / (sample.t - fit.entry));
        }
    }
    return std::nullopt;
}

void addPlaceInTime(RiseFit& fit, const Pass& pass, const WayUp& way, const RiseRules& rules) {
    fit.entry = way.entry;
    fit.from = pass.samples[way.from].at;
    fit.peakAt = pass.samples[way.peak].at;
    fit.entered = fit.from + fit.curve.timeOf(fit.entry).value_or(Duration{0});
    fit.left = leavesAt(pass, way, fit, rules);
    fit.inTunnel = fit.left - fit.entered;
    fit.rate = (fit.curve.air - fit.entry) / fit.curve.tau;
    fit.raw = pass.samples[way.peak].t;
    const auto sustained = sustainedPeak(pass);
    fit.sustained = sustained ? sustained->t : fit.raw;
    fit.cooling = coolingOf(pass, way, fit);
    fit.medianInterval = pass.medianInterval;
}

void addSpread(RiseFit& fit, const FirstOrderFit& curve, const std::vector<CurvePoint>& points,
               const RiseRules& rules) {
    std::vector<CurvePoint> residuals;
    for (std::size_t i = 0; i < points.size(); ++i) {
        residuals.push_back({points[i].at, Temperature::fromCelsius(curve.residuals[i].celsius())});
    }
    fit.spread = curve.spread;
    fit.flutter = flutterOf(residuals, rules.flutterLag);
    fit.serialCorrelation = curve.serialCorrelation;
    fit.samples = static_cast<int>(points.size());
}

tl::expected<RiseFit, RiseFault> fitWay(const Pass& pass, const WayUp& way, const RiseRules& rules) {
    const auto points = pointsOf(pass, way);
    const auto problem = FirstOrderProblem::of(points);
    if (!problem) {
        return tl::unexpected{problem.error() == CurveFault::tooFewPoints ? RiseFault::tooShort
                                                                          : RiseFault::notFirstOrder};
    }
    const auto curve = problem->fit();
    if (!curve) {
        return tl::unexpected{RiseFault::notToldApart};
    }
    if (!(curve->curve.air > curve->curve.start)) {
        return tl::unexpected{RiseFault::notFirstOrder};
    }
    const auto rise = points.back().t - points.front().t;
    if (curve->spread > rise * rules.noisySpreadShare) {
        return tl::unexpected{RiseFault::tooNoisy};
    }
    const double alike = std::clamp(curve->serialCorrelation, 0.0, kMostSerialCorrelation);
    const double inflation = (1.0 + alike) / (1.0 - alike);
    const auto limits = problem->limits(*curve, rules.confidence, inflation);
    if (!toldApart(*curve, limits, rules)) {
        return tl::unexpected{RiseFault::notToldApart};
    }
    RiseFit fit;
    fit.curve = curve->curve;
    fit.shortest = *limits.shortest;
    fit.longest = *limits.longest;
    fit.airLow = *limits.airLow;
    fit.airHigh = *limits.airHigh;
    fit.tauError = curve->tauError * std::sqrt(inflation);
    fit.airError = curve->airError * std::sqrt(inflation);
    fit.rateError = HeatingRate::fromCelsiusPerSecond(curve->rateError.celsiusPerSecond() * std::sqrt(inflation));
    addSpread(fit, *curve, points, rules);
    addPlaceInTime(fit, pass, way, rules);
    return fit;
}

} // namespace

TemperatureDifference flutterOf(const std::vector<CurvePoint>& residuals, Duration lag) noexcept {
    double squares = 0.0;
    int pairs = 0;
    std::size_t later = 0;
    for (const auto& residual : residuals) {
        while (later < residuals.size() && residuals[later].at - residual.at < lag) {
            ++later;
        }
        if (later == residuals.size()) {
            break;
        }
        const double change = (residuals[later].t - residual.t).celsius();
        squares += change * change;
        ++pairs;
    }
    return TemperatureDifference::fromCelsius(pairs > 0 ? std::sqrt(squares / (2.0 * pairs)) : 0.0);
}

tl::expected<RiseFit, RiseFault> fitRise(const Pass& pass, const RiseRules& rules) {
    if (pass.tooCoarse) {
        return tl::unexpected{RiseFault::tooCoarse};
    }
    const auto way = wayUpOf(pass, rules);
    if (!way || !pass.everAbove80) {
        return tl::unexpected{RiseFault::noPass};
    }
    if (pass.startsHot || pass.unitInDoubt) {
        return tl::unexpected{RiseFault::unitNotSure};
    }
    if (!hasFallen(pass)) {
        return tl::unexpected{RiseFault::notFallen};
    }
    if (const auto fault = faultOf(pass, *way, rules)) {
        return tl::unexpected{*fault};
    }
    return fitWay(pass, *way, rules);
}

} // namespace holdfast::analytics
