#pragma once

#include "analytics/statistics/fault.hpp"

#include <tl/expected.hpp>

#include <cstddef>
#include <optional>
#include <vector>

/// How the chance of an event moves with one or several figures: log(p/(1 − p)) = b₀ + b₁x₁ + …
namespace holdfast::analytics::statistics {

/// One row a test, or a group of tests with the same covariates.
struct LogisticData final {
    std::vector<std::vector<double>> covariates; ///< one column each, any units; without the constant
    std::vector<double> events;                  ///< of each row, 0 … trials
    std::vector<double> trials;                  ///< of each row; empty: 1 each
};

enum class Penalty {
    None, ///< maximum likelihood
    Firth ///< half the log determinant of the information added: finite under separation, less biased in small samples
};

enum class Separation {
    None,
    Quasi,   ///< a line has failures on one side, survivals on the other, and both only on the line itself
    Complete ///< a line has all failures on one side and all survivals on the other
};

struct LogisticOptions final {
    Penalty penalty = Penalty::Firth;
    double level = 0.95;
    bool profile = true; ///< limits and p by profile likelihood; false: Wald, which is quicker and worse
};

struct LogisticCoefficient final {
    double estimate = 0.0;       ///< change of log odds for one unit; where `runsAway`, only where the search stopped
    double standardError = 0.0;  ///< from the information without the penalty's own bend
    std::optional<double> lower; ///< none where the likelihood sets no limit on that side
    std::optional<double> upper;
    double chiSquare = 0.0; ///< likelihood ratio (Wald if not `profile`) against 0, one degree of freedom
    double p = 1.0;
    int runsAway = 0; ///< −1 or 1: under separation the likelihood rises for ever in that direction
};

struct LogisticFit final {
    std::vector<LogisticCoefficient> coefficients; ///< the constant first
    double logLikelihood = 0.0;                    ///< without binomial coefficients
    double penalizedLogLikelihood = 0.0;           ///< the same without penalty
    double deviance = 0.0;
    double nullDeviance = 0.0;                ///< of the constant alone, without penalty
    Separation separation = Separation::None; ///< looked for under maximum likelihood only
    double level = 0.95;

    /// Chance of an event at these covariates (as many as the fit has).
    [[nodiscard]] double chanceAt(const std::vector<double>& covariates) const;
};

/// Logistic regression by maximum likelihood (McCullagh and Nelder, Generalized Linear Models, 2nd ed., 4.4) or Firth's
/// penalised likelihood (Firth, Biometrika 80:27, 1993; Heinze and Schemper, Statist. Med. 21:2409, 2002: limits and
/// p-values from the profile of the penalised likelihood). Fisher scoring with halved steps, Cholesky's factor of the
/// p × p information; rows with equal covariates are put together. n·log n once, n·p² a step, some ten steps a fit and
/// a limit.
///
/// Maximum likelihood under separation has no maximum: flagged with the coefficients that run away; their p is 1 and
/// they have no limits (Albert and Anderson, Biometrika 71:1, 1984: a direction in which no row's chance gets worse,
/// here the direction the steps settle to, checked on every row).
///
/// Rows are taken as independent: several tests of one lot make the limits too narrow. Faults: UnequalLengths,
/// NotFinite, OutOfDomain (events beyond trials, no room for the coefficients, level), NoValues, TooFewValues (fewer
/// rows with trials than coefficients), Collinear (a covariate all equal, or given by the others), NoConvergence.
[[nodiscard]] tl::expected<LogisticFit, StatisticsFault> fitLogistic(const LogisticData& data,
                                                                     const LogisticOptions& options = {});

/// The value of one covariate at which the chance reaches a level.
struct ValueForChance final {
    double value = 0.0;
    std::optional<double> lower; ///< none where the data set no limit: always both, if the slope may be zero
    std::optional<double> upper;
    bool rises = false;        ///< the chance rises with the covariate
    bool extrapolated = false; ///< the value lies outside the covariate seen
    double level = 0.95;
};

/// Inverse prediction. Limits by profile likelihood, penalised like the fit: all values x₀ for which the line held at
/// that chance at x₀ is not rejected (the likelihood form of Fieller's theorem; Finney, Probit Analysis, 3rd ed., 4.6;
/// Williams, Biometrics 42:641, 1986). `at` holds the other covariates and one place, at `covariate`, that is not read.
/// 0 < chance < 1. Faults as fitLogistic, NoSpread if the slope is nothing, Separated under maximum likelihood.
[[nodiscard]] tl::expected<ValueForChance, StatisticsFault> valueForChance(const LogisticData& data,
                                                                           std::size_t covariate,
                                                                           const std::vector<double>& at, double chance,
                                                                           const LogisticOptions& options = {});

} // namespace holdfast::analytics::statistics
