#include "analytics/metrology/calibration.hpp"

#include "analytics/metrology/correction.hpp"
#include "analytics/metrology/placement.hpp"
#include "analytics/metrology/tolerance.hpp"

#include <algorithm>
#include <cmath>
#include <limits>

namespace holdfast::analytics {
namespace {

constexpr TemperatureDifference kUnknown = TemperatureDifference::fromCelsius(std::numeric_limits<double>::infinity());

double squared(TemperatureDifference d) noexcept {
    return d.celsius() * d.celsius();
}

/// √ of a variance in K²; a part that is not a number is unknown, never small.
TemperatureDifference root(double variance) noexcept {
    return std::isnan(variance) ? kUnknown : TemperatureDifference::fromCelsius(std::sqrt(variance));
}

/// The newest usable certificate that fits; the last typed one of several of the same day.
template <class Fits>
std::optional<Certificate> newestCertificate(const std::vector<Certificate>& certificates, Fits fits) {
    const Certificate* newest = nullptr;
    for (const auto& certificate : certificates) {
        if (isUsable(certificate) && fits(certificate) && (!newest || certificate.date >= newest->date)) {
            newest = &certificate;
        }
    }
    return newest ? std::optional{*newest} : std::nullopt;
}

std::optional<Date> lastFailure(const std::vector<Check>& checks, Date today) noexcept {
    std::optional<Date> last;
    for (const auto& check : checks) {
        if (!check.passed && check.date <= today) {
            last = std::max(last, std::optional{check.date});
        }
    }
    return last;
}

std::optional<TemperatureDifference> orIfSound(std::optional<TemperatureDifference> tolerance) noexcept {
    const bool sound = tolerance && tolerance->isFinite() && *tolerance >= TemperatureDifference{};
    return sound ? tolerance : std::nullopt;
}

} // namespace

TemperatureDifference StandardUncertainty::ofMean(int readings) const noexcept {
    return root(squared(common) + squared(random) / std::max(readings, 1));
}

Calibration::Calibration(Instrument instrument, Date today) : m_instrument{std::move(instrument)}, m_today{today} {
    m_certificate =
        newestCertificate(m_instrument.certificates, [&](const Certificate& c) { return isInDate(c, today); });
    if (m_certificate) {
        m_previousCertificate = newestCertificate(m_instrument.certificates,
                                                  [&](const Certificate& c) { return c.date < m_certificate->date; });
    }
    const auto failure = lastFailure(m_instrument.checks, today);
    m_checked = std::any_of(m_instrument.checks.begin(), m_instrument.checks.end(), [&](const Check& check) {
        return check.passed && check.date <= today && today <= check.due && (!failure || check.date > *failure);
    });
    const bool passedSince = std::any_of(m_instrument.checks.begin(), m_instrument.checks.end(), [&](const Check& c) {
        return c.passed && c.date <= today && failure && c.date > *failure;
    });
    m_failed = failure && !passedSince && !(m_certificate && m_certificate->date >= *failure);
}

TemperatureDifference Calibration::correctionAt(Temperature raw) const noexcept {
    const bool applies = m_certificate && m_instrument.kind != InstrumentKind::strip;
    return applies ? correctionFrom(*m_certificate, raw) : TemperatureDifference{};
}

Temperature Calibration::corrected(Temperature raw) const noexcept {
    return raw + correctionAt(raw);
}

std::optional<TemperatureDifference> Calibration::toleranceAt(Temperature at) const noexcept {
    if (m_instrument.kind == InstrumentKind::strip) {
        return m_instrument.strip ? orIfSound(m_instrument.strip->tolerance) : std::nullopt;
    }
    const bool thermocouple = m_instrument.kind != InstrumentKind::gun && m_instrument.type.has_value();
    if (thermocouple && m_instrument.toleranceClass) {
        if (const auto a = classTolerance(*m_instrument.type, *m_instrument.toleranceClass, at)) {
            return a;
        }
    }
    return orIfSound(m_instrument.statedTolerance);
}

TemperatureDifference Calibration::commonAt(Temperature limit) const noexcept {
    const auto a = toleranceAt(limit).value_or(kUnknown);
    const auto e = m_certificate ? extensionError(*m_certificate, limit).value_or(a / 2.0) : TemperatureDifference{};
    if (!m_certificate || !hasPointNear(*m_certificate, limit)) {
        return root(squared(a) / 3.0 + squared(e));
    }
    const auto drift =
        m_previousCertificate ? driftBetween(*m_previousCertificate, *m_certificate, limit) : std::nullopt;
    const auto d = drift.value_or(a / 2.0);
    const auto u = expandedUncertaintyFrom(*m_certificate, limit) / m_certificate->coverageFactor;
    return root(squared(u) + squared(d) / 3.0 + squared(e) / 3.0);
}

StandardUncertainty Calibration::uncertaintyAt(Temperature limit) const noexcept {
    const auto placement = placementOf(m_instrument);
    if (m_instrument.kind == InstrumentKind::strip) {
        return {{}, root(squared(placement))};
    }
    return {commonAt(limit), root(squared(placement) + squared(m_instrument.resolution) / 12.0)};
}

TemperatureDifference Calibration::guardAt(Temperature limit, const GuardSetting& setting) const noexcept {
    return setting.z() * uncertaintyAt(limit).ofMean();
}

std::optional<CalibrationFault> Calibration::faultAt(Temperature limit) const noexcept {
    if (m_instrument.kind == InstrumentKind::strip) {
        const auto& strip = m_instrument.strip;
        if (strip && strip->expiry && *strip->expiry < m_today) {
            return CalibrationFault::stripExpired;
        }
        return toleranceAt(limit) ? std::nullopt : std::optional{CalibrationFault::noTolerance};
    }
    if (m_failed || (!m_certificate && !m_checked)) {
        return CalibrationFault::noCertificateOrCheckInDate;
    }
    const auto a = toleranceAt(limit);
    const bool farFromLimit = m_certificate && !hasPointNear(*m_certificate, limit);
    if (farFromLimit && a && !atMost(largestCorrection(*m_certificate), *a)) {
        return CalibrationFault::correctionBeyondClassFarFromLimit;
    }
    return commonAt(limit).isFinite() ? std::nullopt : std::optional{CalibrationFault::noTolerance};
}

} // namespace holdfast::analytics
