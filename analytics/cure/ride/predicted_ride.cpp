#include "analytics/cure/ride/predicted_ride.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

constexpr Duration kPreRoll{10.0};
constexpr double kCoarsestStep = 0.5;
constexpr double kStretch = 2.0; ///< s, of a sustained peak
constexpr double kFinestStep = 0.1;
constexpr double kCooledTo = 5.0;       ///< °C above the entry
constexpr double kMostConstants = 10.0; ///< of cooling
constexpr int kMostSamples = 20000;

/// What the instrument indicates when its corrected reading is `t`; the correction changes little over its own size.
Temperature indicatedFor(Temperature t, const Calibration& calibration) noexcept {
    Temperature indicated = t;
    for (int i = 0; i < 8; ++i) {
        indicated = t - calibration.correctionAt(indicated);
    }
    return indicated;
}

} // namespace

PredictedRide::PredictedRide(const RiseFit& fit) noexcept : m_fit{fit}, m_cooling{fit.cooling.value_or(fit.curve.tau)} {
    const double modelled = (alongCurve(fit.curve, asRidden()) - fit.entry).celsius();
    const double ridden = (fit.raw - fit.entry).celsius();
    if (modelled > 0.0 && ridden > 0.0) {
        m_stretch = ridden / modelled;
    }
}

/// Peak of a film that enters at `entry`, by this curve's air and τ.
Temperature PredictedRide::alongCurve(const FirstOrderCurve& curve, const Heating& heating) const noexcept {
    return FirstOrderCurve{curve.air + heating.hotter, m_fit.entry, curve.tau}.at(heating.inTunnel);
}

/// The earlier ride's sustained peak, moved by what this curve says of the change.
Temperature PredictedRide::moved(const FirstOrderCurve& curve, const Heating& heating) const noexcept {
    return m_fit.sustained + (alongCurve(curve, heating) - alongCurve(curve, asRidden())) -
           (underTop(heating) - underTop(asRidden()));
}

Temperature PredictedRide::rawPeak(const Heating& heating) const noexcept {
    return m_fit.entry + (alongCurve(m_fit.curve, heating) - m_fit.entry) * m_stretch;
}

Temperature PredictedRide::sustainedPeak(const Heating& heating) const noexcept {
    return rawPeak(heating) - (m_fit.raw - m_fit.sustained) - (underTop(heating) - underTop(asRidden()));
}

/// How far below the raw peak a stretch of 2 s fits.
TemperatureDifference PredictedRide::underTop(const Heating& heating) const noexcept {
    const auto top = rawPeak(heating);
    const auto airLeft = m_fit.curve.air + heating.hotter - alongCurve(m_fit.curve, heating);
    const double rise = m_stretch * airLeft.celsius() / m_fit.curve.tau.count();
    const double fall = (top - m_fit.entry).celsius() / m_cooling.count();
    const bool pointed = rise > 0.0 && fall > 0.0;
    return TemperatureDifference::fromCelsius(pointed ? kStretch / (1.0 / rise + 1.0 / fall) : 0.0);
}

Temperature PredictedRide::lowestPeak(const Heating& heating) const noexcept {
    return std::min({sustainedPeak(heating), moved(m_fit.shortest, heating), moved(m_fit.longest, heating)});
}

Temperature PredictedRide::highestPeak(const Heating& heating) const noexcept {
    return std::max({sustainedPeak(heating), moved(m_fit.shortest, heating), moved(m_fit.longest, heating)});
}

std::optional<Duration> PredictedRide::timeFor(Temperature rawPeak) const noexcept {
    const auto wanted = m_fit.entry + (rawPeak - m_fit.entry) / m_stretch;
    const auto time = FirstOrderCurve{m_fit.curve.air, m_fit.entry, m_fit.curve.tau}.timeOf(wanted);
    return time && time->count() > 0.0 ? time : std::nullopt;
}

TemperatureDifference PredictedRide::hotterFor(Temperature rawPeak, Duration inTunnel) const noexcept {
    const double share = -std::expm1(-inTunnel / m_fit.curve.tau);
    return (rawPeak - this->rawPeak({inTunnel, {}})) / (m_stretch * share);
}

RawTrace PredictedRide::trace(const Heating& heating, const Calibration& calibration) const {
    const double entry = m_fit.entry.celsius();
    const double top = rawPeak(heating).celsius();
    const double interval = m_fit.medianInterval.count();
    const double step = interval > 0.0 ? std::clamp(interval, kFinestStep, kCoarsestStep) : kCoarsestStep;
    const double out = kPreRoll.count() + heating.inTunnel.count();
    const double end =
        out + m_cooling.count() * std::clamp(std::log(std::max(1.0, (top - entry) / kCooledTo)), 0.0, kMostConstants);
    RawTrace trace;
    const auto sample = [&](double at) {
        double t = entry;
        if (at >= out) {
            t = entry + (top - entry) * std::exp(-(at - out) / m_cooling.count());
        } else if (at > kPreRoll.count()) {
            t = rawPeak({Duration{at - kPreRoll.count()}, heating.hotter}).celsius();
        }
        const auto stamp = std::chrono::microseconds{std::llround(at * 1e6)};
        trace.samples.push_back({stamp, indicatedFor(Temperature::fromCelsius(t), calibration), false});
    };
    // Counted back from the outfeed, so that the hottest moment is a sample.
    const int before = static_cast<int>(std::floor(std::min(out / step, double{kMostSamples})));
    const int behind = static_cast<int>(std::ceil(std::min((end - out) / step, double{kMostSamples})));
    for (int i = -before; i <= behind; ++i) {
        sample(out + i * step);
    }
    return trace;
}

} // namespace holdfast::analytics
