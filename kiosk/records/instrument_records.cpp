#include "kiosk/records/instrument_records.hpp"

namespace holdfast::kiosk::records {

analytics::Certificate toCertificate(const CertificateSpec& spec) {
    analytics::Certificate certificate{spec.date, spec.due, spec.coverageFactor, {}};
    for (const auto& point : spec.points) {
        certificate.points.push_back(
            {point.at.temperature(), point.correction.difference(), point.expandedUncertainty.difference()});
    }
    return certificate;
}

analytics::Check toCheck(const CheckSpec& spec) {
    return {spec.kind, spec.passed, spec.date, spec.due};
}

analytics::Instrument toInstrument(const InstrumentSpec& spec, const std::vector<CertificateSpec>& certificates,
                                   const std::vector<CheckSpec>& checks) {
    analytics::Instrument instrument;
    instrument.name = spec.name;
    instrument.kind = spec.kind;
    instrument.type = spec.type;
    instrument.toleranceClass = spec.toleranceClass;
    if (spec.statedTolerance) {
        instrument.statedTolerance = spec.statedTolerance->difference();
    }
    if (spec.resolution) {
        instrument.resolution = spec.resolution->difference();
    }
    if (spec.range) {
        instrument.range = analytics::MeasuringRange{spec.range->low.temperature(), spec.range->high.temperature()};
    }
    instrument.placement = spec.placement;
    if (spec.ownPlacement) {
        instrument.ownPlacement = spec.ownPlacement->difference();
    }
    if (spec.strip) {
        analytics::StripSteps steps;
        for (const auto& step : spec.strip->steps) {
            steps.steps.push_back(step.temperature());
        }
        steps.tolerance = spec.strip->tolerance.difference();
        steps.expiry = spec.strip->expiry;
        instrument.strip = steps;
    }
    for (const auto& certificate : certificates) {
        instrument.certificates.push_back(toCertificate(certificate));
    }
    for (const auto& check : checks) {
        instrument.checks.push_back(toCheck(check));
    }
    return instrument;
}

} // namespace holdfast::kiosk::records
