#pragma once

#include "analytics/quantity/duration.hpp"
#include "analytics/quantity/probability.hpp"
#include "analytics/quantity/temperature.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <vector>

namespace holdfast::analytics {

/// Response of a first-order lag to a step: T(t) = air − (air − start)·e^(−t/τ). 63.2 % of the way at τ, 86.5 % at 2τ,
/// 95.0 % at 3τ (any control handbook).
struct FirstOrderCurve final {
    Temperature air = Temperature::fromCelsius(0);   ///< what it goes towards
    Temperature start = Temperature::fromCelsius(0); ///< at t = 0
    Duration tau{0};

    /// τ must be positive; t may be negative: then the curve is continued backwards.
    [[nodiscard]] Temperature at(Duration t) const noexcept;
    /// When the curve passes `t`; absent if it never does.
    [[nodiscard]] std::optional<Duration> timeOf(Temperature t) const noexcept;
    /// Slope at t = 0: (air − start)/τ.
    [[nodiscard]] HeatingRate rate() const noexcept;
};

struct CurvePoint final {
    Duration at{0}; ///< on the curve's own time
    Temperature t = Temperature::fromCelsius(0);
};

/// noTimeConstant: the best τ lies at an end of what these times could ever show, so that no curve is better than a
/// step or a straight line.
enum class CurveFault { tooFewPoints, notFinite, timesNotRising, level, noTimeConstant };

/// Standard errors from the linearised model (Bates & Watts, Nonlinear Regression Analysis, 1988, 2.2).
struct FirstOrderFit final {
    FirstOrderCurve curve;
    Duration tauError{0};
    TemperatureDifference airError;
    TemperatureDifference startError; ///< 0 when the start was given
    HeatingRate rateError = HeatingRate::fromCelsiusPerSecond(0);
    TemperatureDifference spread; ///< √(residual sum of squares / freedom)
    int freedom = 0;              ///< points less parameters
    std::vector<TemperatureDifference> residuals;
    double serialCorrelation = 0.0; ///< of neighbouring residuals, lag 1; 0 when all are 0
};

/// What the data do not contradict; an end is absent where they contradict nothing on that side.
struct FirstOrderLimits final {
    std::optional<FirstOrderCurve> shortest; ///< the best curve of the smallest τ
    std::optional<FirstOrderCurve> longest;
    std::optional<Temperature> airLow; ///< both absent unless τ is limited on both sides
    std::optional<Temperature> airHigh;
};

/// Least squares by variable projection: for a given τ the curve is linear in air and start, so that one unknown is
/// left (Golub & Pereyra, SIAM J. Numer. Anal. 10, 1973). Its log is searched on a grid, then by Brent's minimiser
/// (Brent, Algorithms for Minimization without Derivatives, 1973, ch. 5), then polished by Gauss–Newton. At least one
/// point more than parameters; times must not fall.
class FirstOrderProblem final {
public:
    /// `start`: known value at t = 0; otherwise it is fitted too.
    [[nodiscard]] static tl::expected<FirstOrderProblem, CurveFault> of(const std::vector<CurvePoint>& points,
                                                                        std::optional<Temperature> start = {});

    [[nodiscard]] tl::expected<FirstOrderFit, CurveFault> fit() const;

    /// Likelihood limits: all curves whose sum of squares is at most S_min·(1 + inflation·t²/freedom), t Student's at
    /// this two-sided confidence (Bates & Watts, 6.1). `inflation` ≥ 1 allows for residuals that are alike in
    /// succession; it also divides the freedom of t, which never falls below 3.
    [[nodiscard]] FirstOrderLimits limits(const FirstOrderFit& fit, Probability confidence,
                                          double inflation = 1.0) const;

private:
    /// The best curve of one τ; `air` and `start` in °C.
    struct Projection final {
        double air = 0.0;
        double start = 0.0;
        double sum = 0.0;         ///< of squared residuals
        double airVariance = 0.0; ///< of air at this τ, in units of σ²; infinite where it is not determined
    };

    [[nodiscard]] Projection project(double tau) const noexcept;
    [[nodiscard]] double sumAtLog(double logTau) const noexcept;
    [[nodiscard]] double searchedLogTau(double low, double high) const;
    [[nodiscard]] FirstOrderCurve curveOf(double tau) const noexcept;
    [[nodiscard]] std::optional<double> crossing(double from, double end, double most) const;
    [[nodiscard]] double extremeAir(double lowLog, double highLog, double most, double sign) const;
    void polish(double& logTau) const;
    void addErrors(FirstOrderFit& fit) const;

    std::vector<double> m_times;
    std::vector<double> m_values;
    std::optional<double> m_start;
    double m_total = 0.0;  ///< sum of squares about the mean
    double m_lowLog = 0.0; ///< log of the shortest and longest τ the times could show
    double m_highLog = 0.0;
};

} // namespace holdfast::analytics
