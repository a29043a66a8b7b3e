#include "analytics/cure/dose.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdfast::analytics {
namespace {

constexpr double kGasConstant = 8.314462618; // J/(mol·K), CODATA 2018
constexpr double kIcePoint = 273.15;
constexpr double kNoCap = std::numeric_limits<double>::infinity();

/// Step of the exponent across one piece up to which the rule keeps a relative error below 5e-7: two points h⁴/4320,
/// three points h⁶/2016000 (Abramowitz & Stegun, 25.4.29, remainder for exp); trapezoid with the slopes at its ends
/// h⁴/720 (23.1.30).
constexpr double kTrapezoidStep = 0.13;
constexpr double kTwoPointStep = 0.2;
constexpr double kThreePointStep = 1.0;

constexpr double kResolved = 1e-7; ///< °C, of a margin
/// Newton's steps before every other one halves, as they must where the dose jumps (a level stretch at T2).
constexpr int kFreeSteps = 8;

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

EqualCureLaw::Rate EqualCureLaw::rateAndSlope(double celsius) const noexcept {
    const double inverse = 1.0 / (celsius + kIcePoint);
    const double rate = std::exp(m_theta * (m_inverseAtHot - inverse));
    return {rate, m_theta * inverse * inverse * rate};
}

/// What a line that leaves the band or is steep loses when it is lowered.
double EqualCureLaw::lossOfLine(double from, double to, double seconds, const Band& band) const noexcept {
    const double low = std::min(from, to);
    const double high = std::max(from, to);
    if (high <= band.from || low >= band.cap) {
        return 0.0;
    }
    const double end = std::min(high, band.cap);
    if (high - low < kDecisionTolerance) {
        return seconds * rateAndSlope(end).slope;
    }
    return seconds / (high - low) * (rate(end) - (low > band.from ? rate(low) : 0.0));
}

EqualCureLaw::Worth EqualCureLaw::worth(const Pass& pass, double shift, const Band& band) const noexcept {
    Worth sum;
    const double coldest = band.from - shift - kDecisionTolerance;
    const double kelvin = band.from + kIcePoint;
    const double widest = kTrapezoidStep * kelvin * kelvin / m_theta;
    std::size_t known = pass.samples.size(); // the sample whose rate is at hand
    Rate last;
    for (std::size_t i = 0; i + 1 < pass.samples.size(); ++i) {
        const auto& a = pass.samples[i];
        const auto& b = pass.samples[i + 1];
        if ((a.t.celsius() < coldest && b.t.celsius() < coldest) || pass.joins[i] != Join::line) {
            continue;
        }
        const double from = a.t.celsius() + shift;
        const double to = b.t.celsius() + shift;
        const double seconds = (b.at - a.at).count();
        const bool isPlain = std::min(from, to) >= band.from && std::max(from, to) <= band.cap;
        if (!isPlain || std::abs(to - from) > widest) {
            sum.dose += doseOfLine(from, to, seconds, band);
            sum.lossPerKelvin += lossOfLine(from, to, seconds, band);
            continue;
        }
        const Rate first = known == i ? last : rateAndSlope(from);
        last = rateAndSlope(to);
        known = i + 1;
        sum.dose += seconds * ((first.rate + last.rate) / 2.0 - (to - from) / 12.0 * (last.slope - first.slope));
        sum.lossPerKelvin += seconds * (first.slope + last.slope) / 2.0;
    }
    return sum;
}

Duration EqualCureLaw::cautiousDose(const Pass& pass, TemperatureDifference lowered) const noexcept {
    return Duration{worth(pass, -lowered.celsius(),
                          Band{m_pairs.cooler.temperature.celsius(), m_pairs.hotter.temperature.celsius()})
                        .dose};
}

Duration EqualCureLaw::generousDose(const Pass& pass, const std::vector<HiddenTop>& hidden,
                                    TemperatureDifference raised, Temperature gelLow) const noexcept {
    double sum = worth(pass, raised.celsius(), Band{gelLow.celsius(), kNoCap}).dose;
    for (const auto& gap : hidden) {
        const auto top = gap.top + raised;
        if (top > gelLow) {
            sum += rateAt(top) * (gap.to - gap.from).count();
        }
    }
    return Duration{sum};
}

/// Newton's step on the logarithm of the dose, which is nearly straight, and a little further, so that the margin is
/// soon closed in from both sides.
double EqualCureLaw::nextShift(double at, const Worth& got, double needed) noexcept {
    const double step = got.dose / got.lossPerKelvin * std::log(got.dose / needed);
    return at + step + std::copysign(kResolved / 4.0, step);
}

std::optional<TemperatureDifference> EqualCureLaw::margin(const Pass& pass, TemperatureDifference guard,
                                                          bool reachedAtGuard) const {
    const Band band{m_pairs.cooler.temperature.celsius(), m_pairs.hotter.temperature.celsius()};
    const double needed = m_pairs.hotter.time.count() - kDecisionTolerance;
    if (pass.samples.empty()) {
        return std::nullopt;
    }
    const auto [coldest, hottest] = std::minmax_element(pass.samples.begin(), pass.samples.end(),
                                                        [](const auto& a, const auto& b) { return a.t < b.t; });
    // Lowered by `enough` the dose reaches τ1, lowered by `tooMuch` it does not.
    double enough = coldest->t.celsius() - band.cap;
    double tooMuch = std::max(hottest->t.celsius() - band.from, enough) + 1.0;
    if (!reachedAtGuard && worth(pass, -enough, band).dose < needed) {
        return std::nullopt;
    }
    double at = (enough + tooMuch) / 2.0;
    if (guard.celsius() > enough && guard.celsius() < tooMuch) {
        at = (reachedAtGuard ? enough : tooMuch) = guard.celsius();
    }
    for (int step = 0; tooMuch - enough > kResolved; ++step) {
        const auto got = worth(pass, -at, band);
        if (at > enough && at < tooMuch) {
            (got.dose >= needed ? enough : tooMuch) = at;
        }
        at = step < kFreeSteps || step % 2 == 0 ? nextShift(at, got, needed) : enough;
        if (!(at > enough && at < tooMuch)) {
            at = (enough + tooMuch) / 2.0;
        }
    }
    return TemperatureDifference::fromCelsius(enough);
}

} // namespace holdfast::analytics
