#include "analytics/metrology/placement.hpp"

#include <boost/math/distributions/students_t.hpp>

#include <cmath>

namespace holdfast::analytics {

TemperatureDifference starterPlacement(Placement placement) noexcept {
    switch (placement) {
    case Placement::wetInk:
        return TemperatureDifference::fromCelsius(1.5);
    case Placement::tapedOnFilm:
        return TemperatureDifference::fromCelsius(3.0);
    case Placement::inOrUnderCloth:
        break;
    }
    return TemperatureDifference::fromCelsius(4.0);
}

TemperatureDifference starterGunPlacement() noexcept {
    return TemperatureDifference::fromCelsius(3.0);
}

TemperatureDifference placementOf(const Instrument& instrument) noexcept {
    const auto starter =
        instrument.kind == InstrumentKind::gun ? starterGunPlacement() : starterPlacement(instrument.placement);
    return instrument.ownPlacement.value_or(starter);
}

std::optional<TemperatureDifference> ownPlacementFrom(std::span<const Temperature> peaks,
                                                      const GuardSetting& setting) noexcept {
    const double z = setting.z();
    if (peaks.size() < kRepeatRides || !std::isfinite(z)) {
        return std::nullopt;
    }
    const double n = static_cast<double>(peaks.size());
    double mean = 0.0;
    for (const auto peak : peaks) {
        mean += peak.celsius() / n;
    }
    double squares = 0.0;
    for (const auto peak : peaks) {
        squares += (peak.celsius() - mean) * (peak.celsius() - mean);
    }
    if (!std::isfinite(squares)) {
        return std::nullopt;
    }
    const boost::math::students_t_distribution<double> student{n - 1.0};
    const double t = boost::math::quantile(boost::math::complement(student, setting.risk.fraction()));
    return TemperatureDifference::fromCelsius(std::sqrt(squares / (n - 1.0)) * t / z);
}

} // namespace holdfast::analytics
