#include "analytics/metrology/instrument_faults.hpp"

#include "analytics/metrology/tolerance.hpp"

#include <cmath>

namespace holdfast::analytics {
namespace {

using Kind = InstrumentFaultKind;

class FaultList final {
public:
    void add(bool wrong, Kind kind, std::optional<std::size_t> item = {}) {
        if (wrong) {
            m_faults.push_back({kind, m_entry, item});
        }
    }
    void within(std::optional<std::size_t> entry) { m_entry = entry; }
    [[nodiscard]] std::vector<InstrumentFault> take() { return std::move(m_faults); }

private:
    std::vector<InstrumentFault> m_faults;
    std::optional<std::size_t> m_entry;
};

bool isSize(TemperatureDifference d) noexcept {
    return d.isFinite() && d >= TemperatureDifference{};
}
bool isSize(const std::optional<TemperatureDifference>& d) noexcept {
    return !d || isSize(*d);
}

void listCertificate(const Certificate& certificate, FaultList& list) {
    const auto& points = certificate.points;
    list.add(certificate.due < certificate.date, Kind::certificateDueBeforeDate);
    list.add(!std::isfinite(certificate.coverageFactor) || certificate.coverageFactor <= 0,
             Kind::coverageFactorInvalid);
    list.add(points.empty(), Kind::certificateWithoutPoints);
    for (std::size_t i = 0; i < points.size(); ++i) {
        list.add(!points[i].at.isFinite() || !points[i].correction.isFinite(), Kind::pointNotFinite, i);
        list.add(i > 0 && points[i].at <= points[i - 1].at, Kind::pointsOutOfOrder, i);
        list.add(!isSize(points[i].expandedUncertainty), Kind::uncertaintyInvalid, i);
    }
}

void listStrip(const StripSteps& strip, FaultList& list) {
    list.add(strip.steps.empty(), Kind::stripWithoutSteps);
    for (std::size_t i = 0; i < strip.steps.size(); ++i) {
        list.add(!strip.steps[i].isFinite(), Kind::stripStepNotFinite, i);
        list.add(i > 0 && strip.steps[i] <= strip.steps[i - 1], Kind::stripStepsOutOfOrder, i);
    }
    list.add(!isSize(strip.tolerance), Kind::stripToleranceInvalid);
}

void listSensor(const Instrument& instrument, FaultList& list) {
    const auto& [type, toleranceClass] = std::pair{instrument.type, instrument.toleranceClass};
    list.add(toleranceClass && !type, Kind::classWithoutType);
    list.add(toleranceClass && type && !isClassDefined(*type, *toleranceClass), Kind::classNotDefinedForType);
    list.add(!isSize(instrument.statedTolerance), Kind::statedToleranceInvalid);
    list.add(!isSize(instrument.resolution), Kind::resolutionInvalid);
    list.add(!isSize(instrument.ownPlacement), Kind::placementInvalid);
    if (const auto& range = instrument.range) {
        const bool finite = range->low.isFinite() && range->high.isFinite();
        list.add(!finite, Kind::rangeInvalid);
        list.add(finite && range->low >= range->high, Kind::rangeReversed);
    }
}

} // namespace

std::vector<InstrumentFault> validate(const Instrument& instrument) {
    FaultList list;
    listSensor(instrument, list);
    for (std::size_t i = 0; i < instrument.certificates.size(); ++i) {
        list.within(i);
        listCertificate(instrument.certificates[i], list);
    }
    for (std::size_t i = 0; i < instrument.checks.size(); ++i) {
        list.within(i);
        list.add(instrument.checks[i].due < instrument.checks[i].date, Kind::checkDueBeforeDate);
    }
    list.within(std::nullopt);
    list.add(instrument.kind == InstrumentKind::strip && !instrument.strip, Kind::stripMissing);
    if (instrument.strip) {
        listStrip(*instrument.strip, list);
    }
    return list.take();
}

std::vector<InstrumentFault> faultsOf(const Certificate& certificate) {
    FaultList list;
    listCertificate(certificate, list);
    return list.take();
}

} // namespace holdfast::analytics
