#pragma once

#include "analytics/statistics/models/logistic.hpp"

#include <cmath>
#include <utility>
#include <vector>

namespace holdfast::analytics::statistics {

/// Endometrial cancer, 79 women: neovasculation, pulsatility index, endometrium height; event: high histology grade
/// (Heinze and Schemper, Statist. Med. 21:2409, 2002, their second example).
inline LogisticData endometrial() {
    LogisticData data;
    data.covariates = {{0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 0,
                        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 0, 0, 0,
                        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0, 0, 0, 1, 1, 0, 1, 0},
                       {13, 16, 8,  34, 20, 5,  17, 10, 26, 17, 8,  7,  20, 10, 18, 16, 18, 8,  29, 12,
                        20, 38, 22, 7,  25, 15, 7,  28, 11, 19, 10, 10, 18, 14, 21, 11, 17, 25, 16, 19,
                        15, 33, 24, 48, 12, 19, 2,  22, 40, 5,  0,  21, 15, 29, 15, 12, 3,  20, 23, 12,
                        22, 42, 15, 13, 14, 19, 12, 13, 10, 12, 49, 6,  5,  17, 11, 21, 5,  19, 33},
                       {1.64, 2.26, 3.14, 2.68, 1.28, 2.31, 1.8,  1.68, 1.56, 2.31, 2.01, 1.89, 3.15, 1.23, 1.27, 1.76,
                        2,    2.64, 0.88, 1.27, 1.37, 0.97, 1.14, 0.88, 0.91, 0.58, 0.97, 1.5,  1.33, 2.37, 1.82, 3.13,
                        1.31, 1.92, 1.64, 2.01, 1.88, 1.93, 2.11, 1.29, 1.72, 0.75, 1.92, 1.84, 1.11, 1.61, 1.18, 1.44,
                        1.18, 0.93, 1.17, 1.19, 1.06, 2.02, 2.29, 2.33, 2.9,  1.7,  1.41, 2.25, 1.54, 1.97, 1.75, 2.16,
                        2.57, 1.37, 3.61, 2.04, 2.17, 1.69, 0.27, 1.84, 1.3,  0.96, 1.01, 0.98, 0.35, 1.02, 0.85}};
    data.events = {0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1,
                   0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 0,
                   0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1};
    return data;
}

/// O-rings of 23 flights: joint temperature in °F, event: a ring in distress (Dalal, Fowlkes and Hoadley, JASA 84:945,
/// 1989).
inline LogisticData oRings() {
    LogisticData data;
    data.covariates = {{66, 70, 69, 68, 67, 72, 73, 70, 57, 63, 70, 78, 67, 53, 67, 75, 70, 81, 76, 79, 75, 76, 58}};
    data.events = {0, 1, 0, 0, 0, 0, 0, 0, 1, 1, 1, 0, 0, 1, 0, 0, 0, 0, 0, 0, 1, 0, 1};
    return data;
}

/// Tobacco budworms killed of 20 at log2 doses of cypermethrin, males then females (Collett, Modelling Binary Data,
/// 1991, p. 75); covariates: female, log2 dose.
inline LogisticData budworms() {
    LogisticData data;
    data.covariates = {{0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1}, {0, 1, 2, 3, 4, 5, 0, 1, 2, 3, 4, 5}};
    data.events = {1, 4, 9, 13, 18, 20, 0, 2, 6, 10, 12, 16};
    data.trials.assign(12, 20.0);
    return data;
}

inline LogisticOptions maximumLikelihood() {
    LogisticOptions options;
    options.penalty = Penalty::None;
    return options;
}

inline LogisticData oneColumn(std::vector<double> x, std::vector<double> y) {
    LogisticData data;
    data.covariates = {std::move(x)};
    data.events = std::move(y);
    return data;
}

/// Finite figures, a p that is one.
inline bool isSound(const LogisticCoefficient& c) {
    const bool limits = std::isfinite(c.lower.value_or(0.0)) && std::isfinite(c.upper.value_or(0.0));
    return limits && std::isfinite(c.estimate) && std::isfinite(c.standardError) && c.p >= 0.0 && c.p <= 1.0;
}

} // namespace holdfast::analytics::statistics
