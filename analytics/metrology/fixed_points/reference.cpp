#include "analytics/metrology/fixed_points/reference.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

const double kRectangular = std::sqrt(3.0);
constexpr Pressure kLowestSeaLevel = Pressure::fromKilopascal(87.0);
constexpr Pressure kHighestSeaLevel = Pressure::fromKilopascal(109.0);

PressureFault faultOf(AtmosphereFault fault) noexcept {
    switch (fault) {
    case AtmosphereFault::notFinite:
        return PressureFault::notFinite;
    case AtmosphereFault::tooLow:
        return PressureFault::altitudeTooLow;
    case AtmosphereFault::tooHigh:
        return PressureFault::altitudeTooHigh;
    }
    return PressureFault::notFinite;
}

PressureFault faultOf(SaturationFault fault) noexcept {
    switch (fault) {
    case SaturationFault::notFinite:
        return PressureFault::notFinite;
    case SaturationFault::tooLow:
        return PressureFault::stationTooLow;
    case SaturationFault::tooHigh:
        return PressureFault::stationTooHigh;
    }
    return PressureFault::notFinite;
}

CheckTerm termOf(PressureTerm term) noexcept {
    switch (term) {
    case PressureTerm::barometer:
        return CheckTerm::barometer;
    case PressureTerm::report:
        return CheckTerm::report;
    case PressureTerm::weather:
        return CheckTerm::weather;
    case PressureTerm::altitude:
        return CheckTerm::altitude;
    case PressureTerm::reduction:
        return CheckTerm::reduction;
    }
    return CheckTerm::barometer;
}

template <class Quantity>
bool isHalfWidth(Quantity q) noexcept {
    return q.isFinite() && q >= Quantity{};
}

PressureLine rectangular(PressureTerm term, PressureDifference halfWidth) {
    return {term, halfWidth / kRectangular};
}

using Answer = tl::expected<AirPressure, PressureFault>;

struct Reader final {
    const BathSettings& settings;

    Answer operator()(const StationReading& reading) const {
        const auto halfWidth = reading.halfWidth.value_or(settings.barometer);
        if (!isHalfWidth(halfWidth)) {
            return tl::unexpected{PressureFault::settingsInvalid};
        }
        AirPressure air{reading.pressure, {rectangular(PressureTerm::barometer, halfWidth)}, false};
        if (reading.shop) {
            const auto standard = standardPressure(*reading.shop);
            if (!standard) {
                return tl::unexpected{faultOf(standard.error())};
            }
            air.looksReduced = reading.pressure - *standard > settings.suspicious;
        }
        return air;
    }

    Answer operator()(const SeaLevelReport& report) const {
        if (!report.pressure.isFinite()) {
            return tl::unexpected{PressureFault::notFinite};
        }
        if (report.pressure < kLowestSeaLevel) {
            return tl::unexpected{PressureFault::seaLevelTooLow};
        }
        if (report.pressure > kHighestSeaLevel) {
            return tl::unexpected{PressureFault::seaLevelTooHigh};
        }
        const auto station = stationPressure(report.pressure, report.shop);
        if (!station) {
            return tl::unexpected{faultOf(station.error())};
        }
        AirPressure air{*station, {rectangular(PressureTerm::report, settings.report)}, false};
        addAltitude(air, report.shop);
        air.lines.push_back(
            rectangular(PressureTerm::reduction, *reductionSpread(*station, report.shop, settings.air)));
        return air;
    }

    Answer operator()(const AltitudeAlone& alone) const {
        const auto station = standardPressure(alone.shop);
        if (!station) {
            return tl::unexpected{faultOf(station.error())};
        }
        AirPressure air{*station, {rectangular(PressureTerm::weather, settings.weather)}, false};
        addAltitude(air, alone.shop);
        return air;
    }

    /// The altitude has been found in range.
    void addAltitude(AirPressure& air, Altitude shop) const {
        air.lines.push_back(rectangular(PressureTerm::altitude, *altitudeSpread(air.station, shop, settings.altitude)));
    }
};

} // namespace

bool isUsable(const BathSettings& s) noexcept {
    return isHalfWidth(s.ice) && isHalfWidth(s.boiling) && isHalfWidth(s.barometer) && isHalfWidth(s.report) &&
           isHalfWidth(s.weather) && isHalfWidth(s.altitude) && isHalfWidth(s.air) && isHalfWidth(s.suspicious);
}

tl::expected<AirPressure, PressureFault> airPressure(const PressureSource& source, const BathSettings& settings) {
    if (!isUsable(settings)) {
        return tl::unexpected{PressureFault::settingsInvalid};
    }
    auto air = std::visit(Reader{settings}, source);
    if (air) {
        if (const auto boils = boilingPoint(air->station); !boils) {
            return tl::unexpected{faultOf(boils.error())};
        }
    }
    return air;
}

tl::expected<BathReference, PressureFault> iceReference(const BathSettings& settings) {
    if (!isUsable(settings)) {
        return tl::unexpected{PressureFault::settingsInvalid};
    }
    return BathReference{Temperature::fromCelsius(0), {{CheckTerm::bath, settings.ice / kRectangular}}};
}

tl::expected<BathReference, PressureFault> boilingReference(const AirPressure& air, const BathSettings& settings) {
    if (!isUsable(settings)) {
        return tl::unexpected{PressureFault::settingsInvalid};
    }
    const auto boils = boilingPoint(air.station);
    if (!boils) {
        return tl::unexpected{faultOf(boils.error())};
    }
    BathReference reference{*boils, {{CheckTerm::bath, settings.boiling / kRectangular}}};
    for (const auto& line : air.lines) {
        const auto spread = boilingPointSpread(air.station, line.u);
        if (!spread) {
            return tl::unexpected{PressureFault::notFinite};
        }
        reference.lines.push_back({termOf(line.term), *spread});
    }
    return reference;
}

TemperatureDifference combined(const std::vector<BudgetLine>& lines) noexcept {
    double sum = 0.0;
    for (const auto& line : lines) {
        sum += line.u.celsius() * line.u.celsius();
    }
    return TemperatureDifference::fromCelsius(std::sqrt(sum));
}

} // namespace holdfast::analytics
