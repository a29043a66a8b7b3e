#include "analytics/statistics/models/logistic.hpp"

#include "analytics/statistics/models/logistic_profile.hpp"
#include "analytics/statistics/models/root_search.hpp"

#include <boost/math/distributions/normal.hpp>

#include <algorithm>
#include <cassert>
#include <cmath>

namespace holdfast::analytics::statistics {

namespace {

double twoSidedZ(double level) {
    return boost::math::quantile(boost::math::complement(boost::math::normal{}, (1.0 - level) / 2.0));
}

/// Of chi-square with one degree of freedom.
double upperTail(double chiSquare) {
    return std::erfc(std::sqrt(0.5 * chiSquare));
}

/// From the constant; of many rows, first to the peak of a few, which Firth's penalty keeps finite.
std::optional<LogisticPeak> climbFromConstant(const LogisticDesign& design, Penalty penalty) {
    constexpr std::size_t kManyPairs = 8'000;
    constexpr std::size_t kEvery = 16;
    SmallVector start{};
    start[0] = design.startLogOdds();
    if (design.pairs() >= kManyPairs) {
        const auto few = climbLogistic(design.thinned(kEvery), Penalty::Firth, start);
        if (auto peak = few ? climbLogistic(design, penalty, few->beta) : std::nullopt) {
            return peak;
        }
    }
    return climbLogistic(design, penalty, start);
}

/// The constant as the user's covariates have it: log odds where they are all 0, as parts of the design's coefficients.
SmallVector constantParts(const LogisticDesign& design) {
    SmallVector parts{};
    parts[0] = 1.0;
    for (std::size_t j = 1; j < design.coefficients(); ++j) {
        parts[j] = -design.centre(j) / design.scale(j);
    }
    return parts;
}

double varianceOf(const SmallSymmetric& covariance, const SmallVector& parts) {
    double variance = 0.0;
    for (std::size_t a = 0; a < covariance.size(); ++a) {
        for (std::size_t b = 0; b < covariance.size(); ++b) {
            variance += parts[a] * covariance.at(a, b) * parts[b];
        }
    }
    return variance;
}

int directionOf(const LogisticPeak& peak, const SmallVector& parts) {
    if (peak.separation == Separation::None) {
        return 0;
    }
    double size = 0.0;
    for (std::size_t j = 0; j < parts.size(); ++j) {
        size += std::abs(parts[j] * peak.direction[j]);
    }
    double largest = 0.0;
    for (const double part : peak.direction) {
        largest = std::max(largest, std::abs(part));
    }
    double most = 0.0;
    for (const double part : parts) {
        most = std::max(most, std::abs(part));
    }
    const double along = dot(parts, peak.direction);
    return std::abs(along) > 1e-4 * std::max(size, largest * most) ? (along > 0.0 ? 1 : -1) : 0;
}

void addWald(LogisticCoefficient& coefficient, double z) {
    coefficient.lower = coefficient.estimate - z * coefficient.standardError;
    coefficient.upper = coefficient.estimate + z * coefficient.standardError;
    const double ratio = coefficient.estimate / coefficient.standardError;
    coefficient.chiSquare = ratio * ratio;
    coefficient.p = upperTail(coefficient.chiSquare);
}

void addProfile(LogisticCoefficient& coefficient, const LogisticProfile& profile, double scale, double z) {
    const auto lower = profile.limit(z, -1.0);
    const auto upper = profile.limit(z, 1.0);
    coefficient.lower = lower ? std::optional{*lower / scale} : std::nullopt;
    coefficient.upper = upper ? std::optional{*upper / scale} : std::nullopt;
    if (const auto chiSquare = profile.chiSquareAt(0.0)) {
        coefficient.chiSquare = *chiSquare;
        coefficient.p = upperTail(*chiSquare);
    }
}

/// The constant's profile needs the design about the covariates' zero; the peak is looked for again from there.
void addConstantProfile(LogisticCoefficient& constant, LogisticDesign design, const LogisticPeak& peak, Penalty penalty,
                        double z) {
    SmallVector start = peak.beta;
    start[0] = constant.estimate;
    for (std::size_t j = 1; j < design.coefficients(); ++j) {
        design.recentre(j, 0.0);
    }
    if (const auto moved = climbLogistic(design, penalty, start)) {
        addProfile(constant, LogisticProfile{design, penalty, *moved, 0}, 1.0, z);
    }
}

LogisticFit figuresOf(const LogisticDesign& design, const LogisticPeak& peak, const LogisticOptions& options) {
    LogisticFit fit;
    fit.level = options.level;
    fit.logLikelihood = peak.logLikelihood;
    fit.penalizedLogLikelihood = peak.objective;
    fit.deviance = std::max(0.0, 2.0 * (design.saturated() - peak.logLikelihood));
    fit.nullDeviance = std::max(0.0, 2.0 * (design.saturated() - design.constantOnly()));
    fit.separation = peak.separation;
    const SmallVector ofConstant = constantParts(design);
    for (std::size_t j = 0; j < design.coefficients(); ++j) {
        SmallVector parts{};
        parts[j] = 1.0 / design.scale(j);
        parts = j == 0 ? ofConstant : parts;
        LogisticCoefficient coefficient;
        coefficient.estimate = dot(parts, peak.beta);
        coefficient.standardError = std::sqrt(std::max(0.0, varianceOf(peak.covariance, parts)));
        coefficient.runsAway = directionOf(peak, parts);
        fit.coefficients.push_back(coefficient);
    }
    return fit;
}

/// Half the log determinant is that of the design's own units; in the user's it differs by the logs of the scales.
double penaltyShift(const LogisticDesign& design) {
    double shift = 0.0;
    for (std::size_t j = 1; j < design.coefficients(); ++j) {
        shift += std::log(design.scale(j));
    }
    return shift;
}

} // namespace

double LogisticFit::chanceAt(const std::vector<double>& covariates) const {
    assert(covariates.size() + 1 == coefficients.size());
    double eta = coefficients[0].estimate;
    for (std::size_t j = 0; j < covariates.size(); ++j) {
        eta += coefficients[j + 1].estimate * covariates[j];
    }
    return eta >= 0.0 ? 1.0 / (1.0 + std::exp(-eta)) : std::exp(eta) / (1.0 + std::exp(eta));
}

tl::expected<LogisticFit, StatisticsFault> fitLogistic(const LogisticData& data, const LogisticOptions& options) {
    if (!(options.level > 0.0 && options.level < 1.0)) {
        return tl::unexpected{StatisticsFault::OutOfDomain};
    }
    const auto design = LogisticDesign::of(data);
    if (!design) {
        return tl::unexpected{design.error()};
    }
    const auto peak = climbFromConstant(*design, options.penalty);
    if (!peak) {
        return tl::unexpected{StatisticsFault::NoConvergence};
    }
    LogisticFit fit = figuresOf(*design, *peak, options);
    if (options.penalty == Penalty::Firth) {
        fit.penalizedLogLikelihood += penaltyShift(*design);
    }
    if (fit.separation != Separation::None) {
        return fit;
    }
    const double z = twoSidedZ(options.level);
    for (std::size_t j = 0; j < fit.coefficients.size(); ++j) {
        if (!options.profile) {
            addWald(fit.coefficients[j], z);
        } else if (j == 0) {
            addConstantProfile(fit.coefficients[0], *design, *peak, options.penalty, z);
        } else {
            addProfile(fit.coefficients[j], LogisticProfile{*design, options.penalty, *peak, j}, design->scale(j), z);
        }
    }
    return fit;
}

} // namespace holdfast::analytics::statistics
