#include "analytics/statistics/models/interval_mean.hpp"

#include "analytics/statistics/models/censored_normal.hpp"
#include "analytics/statistics/models/root_search.hpp"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cmath>

namespace holdfast::analytics::statistics {

namespace {

constexpr int kMostMeanSteps = 200;

/// The step still promises less than rounding: its expected gain, in units of log likelihood.
bool isSettled(double gain, const CensoredLikelihood& at) {
    return gain < 1e-14 * (1.0 + std::abs(at.value));
}

std::optional<StatisticsFault> faultOf(const CensoredValue& value) {
    if (std::isnan(value.lower) || std::isnan(value.upper) || !std::isfinite(value.weight)) {
        return StatisticsFault::NotFinite;
    }
    const bool crossed = value.lower > value.upper || (std::isinf(value.lower) && value.lower == value.upper);
    return crossed || value.weight < 0.0 ? std::optional{StatisticsFault::OutOfDomain} : std::nullopt;
}

struct Weights final {
    double all = 0.0;
    double open = 0.0;
    std::size_t informative = 0;
};

Weights weightsOf(const std::vector<CensoredValue>& values) {
    Weights weights;
    for (const auto& value : values) {
        const bool low = std::isfinite(value.lower);
        const bool high = std::isfinite(value.upper);
        weights.all += value.weight;
        weights.open += low && high ? 0.0 : value.weight;
        weights.informative += value.weight > 0.0 && (low || high) ? 1 : 0;
    }
    return weights;
}

std::optional<StatisticsFault> faultOf(const std::vector<CensoredValue>& values, const Weights& weights) {
    if (values.empty() || !(weights.all > 0.0)) {
        return StatisticsFault::NoValues;
    }
    if (3.0 * weights.open > weights.all * (1.0 + 1e-12)) {
        return StatisticsFault::TooManyOpen;
    }
    std::vector<CensoredValue> weighted;
    std::copy_if(values.begin(), values.end(), std::back_inserter(weighted),
                 [](const CensoredValue& value) { return value.weight > 0.0; });
    if (weights.informative < 2 && weights.all < 2.0) {
        return StatisticsFault::TooFewValues;
    }
    return commonRange(weighted) ? std::optional{StatisticsFault::NoSpread} : std::nullopt;
}

struct Peak final {
    double gamma = 0.0;
    double theta = 1.0;
    CensoredLikelihood at;
};

/// Steps along (Δγ, Δθ), halved until the likelihood does not fall and θ stays above 0. False when nothing is gained.
bool advance(const CensoredNormal& data, Peak& peak, double stepGamma, double stepTheta) {
    for (int halving = 0; halving < 60; ++halving) {
        const double theta = peak.theta + stepTheta;
        if (theta > 0.0) {
            const auto next = data.at(peak.gamma + stepGamma, theta);
            if (next.value >= peak.at.value) {
                peak = {peak.gamma + stepGamma, theta, next};
                return true;
            }
        }
        stepGamma *= 0.5;
        stepTheta *= 0.5;
    }
    return false;
}

std::optional<Peak> climb(const CensoredNormal& data) {
    Peak peak{0.0, 1.0, data.at(0.0, 1.0)};
    for (int i = 0; i < kMostMeanSteps; ++i) {
        const auto& at = peak.at;
        const double determinant = at.gammaGamma * at.thetaTheta - at.gammaTheta * at.gammaTheta;
        if (!(determinant > 0.0) || !std::isfinite(at.value)) {
            return std::nullopt;
        }
        const double stepGamma = -(at.thetaTheta * at.gamma - at.gammaTheta * at.theta) / determinant;
        const double stepTheta = -(at.gammaGamma * at.theta - at.gammaTheta * at.gamma) / determinant;
        if (isSettled(at.gamma * stepGamma + at.theta * stepTheta, at) || !advance(data, peak, stepGamma, stepTheta)) {
            return peak;
        }
    }
    return std::nullopt;
}

/// Largest log likelihood with this mean, from a first guess of 1/sd that is left at the best one.
std::optional<double> profile(const CensoredNormal& data, double mean, double& theta) {
    Peak peak{mean * theta, theta, data.at(mean * theta, theta)};
    for (int i = 0; i < kMostMeanSteps; ++i) {
        const auto& at = peak.at;
        const double slope = mean * at.gamma + at.theta;
        const double bend = mean * mean * at.gammaGamma + 2.0 * mean * at.gammaTheta + at.thetaTheta;
        if (!(bend < 0.0) || !std::isfinite(at.value)) {
            return std::nullopt;
        }
        const double step = -slope / bend;
        if (isSettled(slope * step, at) || !advance(data, peak, mean * step, step)) {
            theta = peak.theta;
            return at.value;
        }
    }
    return std::nullopt;
}

std::optional<double> limitOf(const CensoredNormal& data, const Peak& peak, double error, double z, double side) {
    double theta = peak.theta;
    const double mean = peak.gamma / peak.theta;
    const auto beyond = [&](double distance) -> std::optional<double> {
        const auto value = profile(data, mean + side * distance, theta);
        if (!value) {
            return std::nullopt;
        }
        return std::sqrt(std::max(0.0, 2.0 * (peak.at.value - *value))) - z;
    };
    const auto distance = distanceToZero(beyond, -z, z * error);
    return distance ? std::optional{mean + side * *distance} : std::nullopt;
}

} // namespace

tl::expected<IntervalMean, StatisticsFault> intervalMean(const std::vector<CensoredValue>& values, double level) {
    if (!(level > 0.0 && level < 1.0)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    for (const auto& value : values) {
        if (const auto fault = faultOf(value)) {
            return tl::unexpected{*fault};
        }
    }
    const Weights weights = weightsOf(values);
    if (const auto fault = faultOf(values, weights)) {
        return tl::unexpected{*fault};
    }
    const CensoredNormal data{values};
    const auto peak = std::isfinite(data.scale()) ? climb(data) : std::nullopt;
    if (!peak) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    const auto& at = peak->at;
    const double mean = peak->gamma / peak->theta;
    const double determinant = at.gammaGamma * at.thetaTheta - at.gammaTheta * at.gammaTheta;
    const double variance =
        -(at.thetaTheta + 2.0 * mean * at.gammaTheta + mean * mean * at.gammaGamma) / determinant; // of γ − mean·θ
    const double error = std::sqrt(std::max(0.0, variance)) / peak->theta;
    const double z = boost::math::quantile(boost::math::complement(boost::math::normal{}, (1.0 - level) / 2.0));
    const auto lower = limitOf(data, *peak, error, z, -1.0);
    const auto upper = limitOf(data, *peak, error, z, 1.0);
    if (!lower || !upper) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    IntervalMean result;
    result.mean = data.centre() + data.scale() * mean;
    result.standardDeviation = data.scale() / peak->theta;
    result.standardError = data.scale() * error;
    result.lower = data.centre() + data.scale() * *lower;
    result.upper = data.centre() + data.scale() * *upper;
    result.level = level;
    result.logLikelihood = at.value;
    result.openShare = weights.open / weights.all;
    return result;
}

std::optional<CommonRange> commonRange(const std::vector<CensoredValue>& values) {
    if (values.empty()) {
        return std::nullopt;
    }
    CommonRange range{-std::numeric_limits<double>::infinity(), std::numeric_limits<double>::infinity()};
    for (const auto& value : values) {
        if (std::isnan(value.lower) || std::isnan(value.upper)) {
            return std::nullopt;
        }
        range.lower = std::max(range.lower, value.lower);
        range.upper = std::min(range.upper, value.upper);
    }
    return range.lower <= range.upper ? std::optional{range} : std::nullopt;
}

} // namespace holdfast::analytics::statistics
