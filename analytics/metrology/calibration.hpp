#pragma once

#include "analytics/metrology/instrument.hpp"
#include "analytics/quantity/probability.hpp"

#include <optional>

namespace holdfast::analytics {

/// Standard uncertainty of one reading, in its two parts: `common` is the same for every reading of the day, `random`
/// is new each time (decisions 2; GUM, JCGM 100:2008, 5.1).
struct StandardUncertainty final {
    TemperatureDifference common;
    TemperatureDifference random;
    /// u of the mean of n ≥ 1 readings of one dryer state: √(c² + r²/n).
    [[nodiscard]] TemperatureDifference ofMean(int readings = 1) const noexcept;
};

/// Why an instrument cannot prove a film cured today; absent when it can.
enum class CalibrationFault {
    noCertificateOrCheckInDate,
    correctionBeyondClassFarFromLimit, ///< certificate shows |correction| > a and has no point within 25 °C of the limit
    stripExpired,
    noTolerance ///< neither a class nor a stated tolerance is known
};

/// Risk at one limit, 5 % unless the shop sets it between 0.1 % and 20 %.
struct GuardSetting final {
    Probability risk = Probability::fromPercent(5.0);
    [[nodiscard]] double z() const noexcept; ///< z(1 − α) of the standard normal distribution
};

/// An instrument as it stands on one day: which certificate and checks are in date, its correction and uncertainty.
/// Pure value; never reads a clock.
class Calibration final {
public:
    Calibration(Instrument instrument, Date today);

    [[nodiscard]] const Instrument& instrument() const noexcept { return m_instrument; }
    [[nodiscard]] Date today() const noexcept { return m_today; }
    [[nodiscard]] const std::optional<Certificate>& certificateInDate() const noexcept { return m_certificate; }
    [[nodiscard]] bool checkedInDate() const noexcept { return m_checked; }

    /// t = raw + correction: piecewise linear through the certificate's points, flat outside; 0 without one in date.
    [[nodiscard]] Temperature corrected(Temperature raw) const noexcept;
    [[nodiscard]] TemperatureDifference correctionAt(Temperature raw) const noexcept;

    /// Class tolerance a at this temperature; absent when nothing states one.
    [[nodiscard]] std::optional<TemperatureDifference> toleranceAt(Temperature at) const noexcept;

    [[nodiscard]] StandardUncertainty uncertaintyAt(Temperature limit) const noexcept;

    /// g = z·u at this limit.
    [[nodiscard]] TemperatureDifference guardAt(Temperature limit, const GuardSetting& setting = {}) const noexcept;

    /// Why this instrument proves nothing cured at this limit today; absent when it may.
    [[nodiscard]] std::optional<CalibrationFault> faultAt(Temperature limit) const noexcept;

private:
    Instrument m_instrument;
    Date m_today;
    std::optional<Certificate> m_certificate;         ///< newest in date
    std::optional<Certificate> m_previousCertificate; ///< the one before it, for the drift d
    bool m_checked = false;
};

} // namespace holdfast::analytics
