#include "analytics/cure/dose.hpp"

#include <boost/math/tools/toms748_solve.hpp>

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <limits>

namespace holdfast::analytics {
namespace {

constexpr double kGasConstant = 8.314462618; // J/(mol·K), CODATA 2018
constexpr double kIcePoint = 273.15;
constexpr double kNoCap = std::numeric_limits<double>::infinity();

/// Step of the exponent across one piece up to which the rule keeps a relative error below 5e-7: two points h⁴/4320,
/// three points h⁶/2016000 (Abramowitz & Stegun, 25.4.29, remainder for exp).
constexpr double kTwoPointStep = 0.2;
constexpr double kThreePointStep = 1.0;

} // namespace

EqualCureLaw::EqualCureLaw(const EqualCurePairs& pairs) noexcept : m_pairs{pairs} {
    m_inverseAtHot = 1.0 / pairs.hotter.temperature.kelvin();
    m_theta =
        std::log(pairs.cooler.time / pairs.hotter.time) / (1.0 / pairs.cooler.temperature.kelvin() - m_inverseAtHot);
}

double EqualCureLaw::activationEnergyJoulePerMole() const noexcept {
    return kGasConstant * m_theta;
}

double EqualCureLaw::rate(double celsius) const noexcept {
    return std::exp(m_theta * (m_inverseAtHot - 1.0 / (celsius + kIcePoint)));
}

double EqualCureLaw::rateAt(Temperature t) const noexcept {
    return rate(t.celsius());
}

/// Mean of the rate between two temperatures passed at a steady pace.
double EqualCureLaw::integral(double low, double high) const noexcept {
    const double kelvin = low + kIcePoint;
    const double exponent = m_theta * (high - low) / (kelvin * kelvin);
    if (exponent <= kTwoPointStep) {
        constexpr double kHalfOffset = 0.28867513459481287; // 1/(2·√3)
        const double middle = (low + high) / 2.0;
        const double offset = kHalfOffset * (high - low);
        return (rate(middle - offset) + rate(middle + offset)) / 2.0;
    }
    constexpr double kHalfOffset = 0.3872983346207417; // √0.6/2
    const int pieces = static_cast<int>(std::ceil(exponent / kThreePointStep));
    const double width = (high - low) / pieces;
    double sum = 0.0;
    for (int i = 0; i < pieces; ++i) {
        const double middle = low + (i + 0.5) * width;
        sum += (5.0 * (rate(middle - kHalfOffset * width) + rate(middle + kHalfOffset * width)) + 8.0 * rate(middle)) /
               18.0;
    }
    return sum / pieces;
}

double EqualCureLaw::doseOfLine(double from, double to, double seconds, const Band& band) const noexcept {
    const double low = std::min(from, to);
    const double high = std::max(from, to);
    if (high < band.from - kDecisionTolerance) {
        return 0.0;
    }
    if (high - low < kDecisionTolerance) {
        return high >= band.cap ? seconds : seconds * rate(high);
    }
    const double perDegree = seconds / (high - low);
    const double start = std::max(low, band.from);
    const double end = std::min(high, band.cap);
    double dose = 0.0;
    if (end > start) {
        dose += perDegree * (end - start) * integral(start, end);
    }
    if (high > band.cap) {
        dose += perDegree * (high - std::max(low, band.cap)); // the cap is T1, whose rate is 1
    }
    return dose;
}

double EqualCureLaw::dose(const Pass& pass, double shift, const Band& band) const noexcept {
    double sum = 0.0;
    const double coldest = band.from - shift - kDecisionTolerance;
    for (std::size_t i = 0; i + 1 < pass.samples.size(); ++i) {
        const auto& a = pass.samples[i];
        const auto& b = pass.samples[i + 1];
        const bool counts = a.t.celsius() >= coldest || b.t.celsius() >= coldest;
        if (counts && pass.joins[i] == Join::line) {
            sum += doseOfLine(a.t.celsius() + shift, b.t.celsius() + shift, (b.at - a.at).count(), band);
        }
    }
    return sum;
}

Duration EqualCureLaw::cautiousDose(const Pass& pass, TemperatureDifference lowered) const noexcept {
    return Duration{dose(pass, -lowered.celsius(),
                         Band{m_pairs.cooler.temperature.celsius(), m_pairs.hotter.temperature.celsius()})};
}

Duration EqualCureLaw::generousDose(const Pass& pass, const std::vector<HiddenTop>& hidden,
                                    TemperatureDifference raised, Temperature gelLow) const noexcept {
    double sum = dose(pass, raised.celsius(), Band{gelLow.celsius(), kNoCap});
    for (const auto& gap : hidden) {
        const auto top = gap.top + raised;
        if (top > gelLow) {
            sum += rateAt(top) * (gap.to - gap.from).count();
        }
    }
    return Duration{sum};
}

std::optional<TemperatureDifference> EqualCureLaw::margin(const Pass& pass, TemperatureDifference guard,
                                                          bool reachedAtGuard) const {
    const Band band{m_pairs.cooler.temperature.celsius(), m_pairs.hotter.temperature.celsius()};
    const double needed = m_pairs.hotter.time.count() - kDecisionTolerance;
    const auto worth = [&](double lowered) { return dose(pass, -lowered, band); };
    if (pass.samples.empty()) {
        return std::nullopt;
    }
    const auto [coldest, hottest] = std::minmax_element(pass.samples.begin(), pass.samples.end(),
                                                        [](const auto& a, const auto& b) { return a.t < b.t; });
    // Lowered by `enough` the dose reaches τ1, lowered by `tooMuch` it does not.
    double enough = coldest->t.celsius() - band.cap;
    double tooMuch = std::max(hottest->t.celsius() - band.from, enough) + 1.0;
    if (!reachedAtGuard && worth(enough) < needed) {
        return std::nullopt;
    }
    if (guard.celsius() > enough && guard.celsius() < tooMuch) {
        (reachedAtGuard ? enough : tooMuch) = guard.celsius();
    }
    // The logarithm of the dose is nearly straight; where the dose jumps (a level stretch at T2) the solver halves.
    constexpr double kFloor = 1e-12;
    const auto excess = [&](double lowered) { return std::log(std::max(worth(lowered) / needed, kFloor)); };
    const auto resolved = [](double low, double high) { return high - low <= 1e-10; };
    std::uintmax_t steps = 100;
    const double atEnough = excess(enough);
    if (atEnough <= 0.0) {
        return TemperatureDifference::fromCelsius(enough);
    }
    const auto bracket =
        boost::math::tools::toms748_solve(excess, enough, tooMuch, atEnough, excess(tooMuch), resolved, steps);
    return TemperatureDifference::fromCelsius(bracket.first);
}

} // namespace holdfast::analytics
