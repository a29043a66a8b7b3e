#include "analytics/cure/ride/first_order.hpp"

#include "analytics/cure/ride/three_columns.hpp"

#include <boost/math/distributions/students_t.hpp>
#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/roots.hpp>

#include <algorithm>
#include <cmath>
#include <limits>
#include <numeric>

namespace holdfast::analytics {
namespace {

constexpr int kGrid = 80;
constexpr double kShortestInSteps = 0.3; ///< of the median step between points
constexpr double kLongestInSpans = 50.0; ///< beyond, a curve differs from a straight line by less than 1 % of its rise
constexpr int kBits = 26;                ///< half of a double's: more cannot be had of a minimum
constexpr int kPolishes = 12;
constexpr double kLeastFreedom = 3.0;
/// A sum of squares below this share of the total is rounding.
constexpr double kRounding = 1e-24;

/// The share of the step that is gone through at t, 1 − e^(−t/τ).
double shareAt(double t, double tau) noexcept {
    return -std::expm1(-t / tau);
}

double medianStep(const std::vector<double>& times) {
    std::vector<double> steps;
    for (std::size_t i = 1; i < times.size(); ++i) {
        if (times[i] > times[i - 1]) {
            steps.push_back(times[i] - times[i - 1]);
        }
    }
    if (steps.empty()) {
        return 0.0;
    }
    const auto middle = steps.begin() + static_cast<std::ptrdiff_t>(steps.size() / 2);
    std::nth_element(steps.begin(), middle, steps.end());
    return *middle;
}

double serialCorrelationOf(const std::vector<double>& residuals) noexcept {
    double neighbours = 0.0;
    double squares = 0.0;
    for (std::size_t i = 0; i < residuals.size(); ++i) {
        squares += residuals[i] * residuals[i];
        if (i > 0) {
            neighbours += residuals[i] * residuals[i - 1];
        }
    }
    return squares > 0.0 ? neighbours / squares : 0.0;
}

} // namespace

Temperature FirstOrderCurve::at(Duration t) const noexcept {
    return start + (air - start) * shareAt(t.count(), tau.count());
}

std::optional<Duration> FirstOrderCurve::timeOf(Temperature t) const noexcept {
    const double left = (air - t) / (air - start);
    if (!(left > 0.0) || !std::isfinite(left) || !(tau.count() > 0.0)) {
        return std::nullopt;
    }
    return Duration{-tau.count() * std::log(left)};
}

HeatingRate FirstOrderCurve::rate() const noexcept {
    return (air - start) / tau;
}

tl::expected<FirstOrderProblem, CurveFault> FirstOrderProblem::of(const std::vector<CurvePoint>& points,
                                                                  std::optional<Temperature> start) {
    if (points.size() < (start ? 3U : 4U)) {
        return tl::unexpected{CurveFault::tooFewPoints};
    }
    FirstOrderProblem problem;
    for (const auto& point : points) {
        if (!point.t.isFinite() || !std::isfinite(point.at.count())) {
            return tl::unexpected{CurveFault::notFinite};
        }
        if (!problem.m_times.empty() && point.at.count() < problem.m_times.back()) {
            return tl::unexpected{CurveFault::timesNotRising};
        }
        problem.m_times.push_back(point.at.count());
        problem.m_values.push_back(point.t.celsius());
    }
    if (start) {
        if (!start->isFinite()) {
            return tl::unexpected{CurveFault::notFinite};
        }
        problem.m_start = start->celsius();
    }
    const auto& values = problem.m_values;
    const double mean = std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
    for (const double value : values) {
        problem.m_total += (value - mean) * (value - mean);
    }
    const double step = medianStep(problem.m_times);
    const double last = problem.m_times.back();
    const double span = last - (start ? std::min(0.0, problem.m_times.front()) : problem.m_times.front());
    if (!(step > 0.0) || !(span > 0.0)) {
        return tl::unexpected{CurveFault::timesNotRising};
    }
    if (!(problem.m_total > 0.0)) {
        return tl::unexpected{CurveFault::level};
    }
    problem.m_lowLog = std::log(kShortestInSteps * step);
    problem.m_highLog = std::log(kLongestInSpans * span);
    return problem;
}

FirstOrderProblem::Projection FirstOrderProblem::project(double tau) const noexcept {
    const std::size_t n = m_times.size();
    double meanShare = 0.0;
    double meanValue = m_start.value_or(0.0);
    if (!m_start) {
        meanValue = 0.0;
        for (std::size_t i = 0; i < n; ++i) {
            meanShare += shareAt(m_times[i], tau);
            meanValue += m_values[i];
        }
        meanShare /= static_cast<double>(n);
        meanValue /= static_cast<double>(n);
    }
    double squares = 0.0;
    double products = 0.0;
    for (std::size_t i = 0; i < n; ++i) {
        const double share = shareAt(m_times[i], tau) - meanShare;
        squares += share * share;
        products += share * (m_values[i] - meanValue);
    }
    const double step = squares > 0.0 ? products / squares : 0.0;
    Projection best;
    best.start = m_start.value_or(meanValue - step * meanShare);
    best.air = best.start + step;
    for (std::size_t i = 0; i < n; ++i) {
        const double residual = m_values[i] - meanValue - step * (shareAt(m_times[i], tau) - meanShare);
        best.sum += residual * residual;
    }
    const double rest = 1.0 - meanShare;
    best.airVariance =
        squares > 0.0 ? (m_start ? 1.0 : rest * rest) / squares : std::numeric_limits<double>::infinity();
    if (!m_start) {
        best.airVariance += 1.0 / static_cast<double>(n);
    }
    return best;
}

double FirstOrderProblem::sumAtLog(double logTau) const noexcept {
    return project(std::exp(logTau)).sum;
}

FirstOrderCurve FirstOrderProblem::curveOf(double tau) const noexcept {
    const auto best = project(tau);
    return {Temperature::fromCelsius(best.air), Temperature::fromCelsius(best.start), Duration{tau}};
}

/// log τ of the least sum on a grid between the two ends, then between the neighbours of that point.
double FirstOrderProblem::searchedLogTau(double low, double high) const {
    const double step = (high - low) / kGrid;
    int best = 0;
    double least = std::numeric_limits<double>::infinity();
    for (int i = 0; i <= kGrid; ++i) {
        const double sum = sumAtLog(low + i * step);
        if (sum < least) {
            least = sum;
            best = i;
        }
    }
    if (best == 0 || best == kGrid) {
        return low + best * step;
    }
    const auto at = [this](double logTau) { return sumAtLog(logTau); };
    return boost::math::tools::brent_find_minima(at, low + (best - 1) * step, low + (best + 1) * step, kBits).first;
}

/// Gauss–Newton on all parameters; only log τ need be kept, the others follow from it.
void FirstOrderProblem::polish(double& logTau) const {
    double sum = sumAtLog(logTau);
    for (int i = 0; i < kPolishes; ++i) {
        const double tau = std::exp(logTau);
        const auto best = project(tau);
        ThreeColumns columns{m_times, tau, best.air - best.start, !m_start};
        std::vector<double> residuals(m_times.size());
        for (std::size_t k = 0; k < m_times.size(); ++k) {
            residuals[k] = m_values[k] - best.start - (best.air - best.start) * shareAt(m_times[k], tau);
        }
        const auto move = columns.logTauStep(residuals);
        if (!move || std::abs(*move) > 0.1) {
            return;
        }
        const double next = logTau + *move;
        const double nextSum = sumAtLog(next);
        // Below the noise of the sum itself a step still brings τ nearer, so a rise by rounding is let pass.
        if (nextSum > sum * (1.0 + 1e-9) + kRounding * m_total) {
            return;
        }
        logTau = next;
        sum = nextSum;
        if (std::abs(*move) < 1e-15) {
            return;
        }
    }
}

tl::expected<FirstOrderFit, CurveFault> FirstOrderProblem::fit() const {
    double logTau = searchedLogTau(m_lowLog, m_highLog);
    const double step = (m_highLog - m_lowLog) / kGrid;
    if (logTau < m_lowLog + 0.5 * step || logTau > m_highLog - 0.5 * step) {
        return tl::unexpected{CurveFault::noTimeConstant};
    }
    polish(logTau);
    FirstOrderFit fit;
    fit.curve = curveOf(std::exp(logTau));
    addErrors(fit);
    return fit;
}

void FirstOrderProblem::addErrors(FirstOrderFit& fit) const {
    std::vector<double> residuals;
    double sum = 0.0;
    for (std::size_t i = 0; i < m_times.size(); ++i) {
        residuals.push_back(m_values[i] - fit.curve.at(Duration{m_times[i]}).celsius());
        fit.residuals.push_back(TemperatureDifference::fromCelsius(residuals.back()));
        sum += residuals.back() * residuals.back();
    }
    fit.freedom = static_cast<int>(m_times.size()) - (m_start ? 2 : 3);
    const double sigma = std::sqrt(sum / fit.freedom);
    fit.spread = TemperatureDifference::fromCelsius(sigma);
    fit.serialCorrelation = serialCorrelationOf(residuals);

    const double step = (fit.curve.air - fit.curve.start).celsius();
    const ThreeColumns columns{m_times, fit.curve.tau.count(), step, !m_start};
    const auto errors = columns.errors(sigma);
    fit.tauError = Duration{errors.logTau * fit.curve.tau.count()};
    fit.airError = TemperatureDifference::fromCelsius(errors.air);
    fit.startError = TemperatureDifference::fromCelsius(errors.start);
    fit.rateError = HeatingRate::fromCelsiusPerSecond(errors.rate);
}

/// Where the sum first passes `most` on the way from the best log τ to an end; absent if it never does.
std::optional<double> FirstOrderProblem::crossing(double from, double end, double most) const {
    const double step = (end - from) / kGrid;
    for (int i = 1; i <= kGrid; ++i) {
        const double next = from + i * step;
        if (sumAtLog(next) <= most) {
            continue;
        }
        const double inside = next - step;
        const auto over = [&](double logTau) { return sumAtLog(logTau) - most; };
        if (over(inside) >= 0.0) {
            return inside;
        }
        std::uintmax_t steps = 100;
        const boost::math::tools::eps_tolerance<double> tolerance{40};
        const auto root =
            boost::math::tools::toms748_solve(over, std::min(inside, next), std::max(inside, next), tolerance, steps);
        return (root.first + root.second) / 2.0;
    }
    return std::nullopt;
}

/// The highest (sign 1) or lowest (sign −1) air of all curves with τ between the limits and a sum of at most `most`:
/// at one τ the sum rises as (air − best air)²/variance.
double FirstOrderProblem::extremeAir(double lowLog, double highLog, double most, double sign) const {
    const auto negated = [&](double logTau) {
        const auto best = project(std::exp(logTau));
        return -(sign * best.air + std::sqrt(std::max(0.0, most - best.sum) * best.airVariance));
    };
    const auto found = boost::math::tools::brent_find_minima(negated, lowLog, highLog, kBits).second;
    return -sign * std::min({found, negated(lowLog), negated(highLog)});
}

FirstOrderLimits FirstOrderProblem::limits(const FirstOrderFit& fit, Probability confidence, double inflation) const {
    const double factor = std::max(1.0, inflation);
    const double freedom = std::max(kLeastFreedom, fit.freedom / factor);
    const boost::math::students_t_distribution<double> student{freedom};
    const double t = boost::math::quantile(boost::math::complement(student, (1.0 - confidence.fraction()) / 2.0));
    const double best = std::log(fit.curve.tau.count());
    const double sum = sumAtLog(best);
    const double most = sum * (1.0 + factor * t * t / fit.freedom) + kRounding * m_total;

    FirstOrderLimits limits;
    const auto low = crossing(best, m_lowLog, most);
    const auto high = crossing(best, m_highLog, most);
    if (low) {
        limits.shortest = curveOf(std::exp(*low));
    }
    if (high) {
        limits.longest = curveOf(std::exp(*high));
    }
    if (low && high) {
        limits.airLow = Temperature::fromCelsius(extremeAir(*low, *high, most, -1.0));
        limits.airHigh = Temperature::fromCelsius(extremeAir(*low, *high, most, 1.0));
    }
    return limits;
}

} // namespace holdfast::analytics
