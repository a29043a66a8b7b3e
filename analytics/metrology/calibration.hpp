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
    /// u of the mean of n readings of one dryer state: √(c² + r²/n); n below 1 counts as 1.
    [[nodiscard]] TemperatureDifference ofMean(int readings = 1) const noexcept;
};

/// Why an instrument cannot prove a film cured today; absent when it can.
enum class CalibrationFault {
    noCertificateOrCheckInDate,        ///< or the newest check failed and no certificate followed it
    correctionBeyondClassFarFromLimit, ///< certificate shows |correction| > a and has no point within 25 °C of the
                                       ///< limit
    stripExpired,
    noTolerance ///< the uncertainty needs a class or stated tolerance here, and none is known
};

/// Risk at one limit, 5 % unless the shop sets it between 0.1 % and 20 %.
struct GuardSetting final {
    Probability risk = Probability::fromPercent(5.0);
    /// z(1 − α) of the standard normal distribution. Infinite for a risk outside (0, 0.5): then nothing is proven.
    [[nodiscard]] double z() const noexcept;
};

/// An instrument as it stands on one day: which certificate and checks are in date, its correction and uncertainty.
/// Pure value; never reads a clock. A certificate with any fault (see validate()) counts as not there, and so does a
/// strip's.
class Calibration final {
public:
    Calibration(Instrument instrument, Date today);

    [[nodiscard]] const Instrument& instrument() const noexcept { return m_instrument; }
    [[nodiscard]] Date today() const noexcept { return m_today; }
    [[nodiscard]] const std::optional<Certificate>& certificateInDate() const noexcept { return m_certificate; }
    /// A passed check is in date and none failed on its day or later.
    [[nodiscard]] bool checkedInDate() const noexcept { return m_checked; }
    /// The newest check failed, and no certificate of that day or later answers for it. Of several checks of one day a
    /// failed one counts.
    [[nodiscard]] bool lastCheckFailed() const noexcept { return m_failed; }

    /// t = raw + correction: piecewise linear through the certificate's points, flat outside; 0 without one in date.
    [[nodiscard]] Temperature corrected(Temperature raw) const noexcept;
    [[nodiscard]] TemperatureDifference correctionAt(Temperature raw) const noexcept;

    /// Class tolerance a at this temperature; absent when nothing states one.
    [[nodiscard]] std::optional<TemperatureDifference> toleranceAt(Temperature at) const noexcept;

    /// Standard uncertainty of one reading judged at this limit (decisions 2; JCGM 100:2008, 4.3.7 for the rectangular
    /// a/√3, F.2.2.1 for the resolution/√12). Common: with a certificate in date and a point within 25 °C of the limit
    /// √((U/k)² + d²/3 + e²/3), otherwise √(a²/3 + e²); infinite where it needs a tolerance that nothing states.
    /// Random: √(u_p² + resolution²/12). A strip's tolerance belongs to the edges of its steps: common 0, random u_p.
    [[nodiscard]] StandardUncertainty uncertaintyAt(Temperature limit) const noexcept;

    /// g = z·u at this limit.
    [[nodiscard]] TemperatureDifference guardAt(Temperature limit, const GuardSetting& setting = {}) const noexcept;

    /// Why this instrument proves nothing cured at this limit today; absent when it may.
    [[nodiscard]] std::optional<CalibrationFault> faultAt(Temperature limit) const noexcept;

private:
    [[nodiscard]] TemperatureDifference commonAt(Temperature limit) const noexcept;

    Instrument m_instrument;
    Date m_today;
    std::optional<Certificate> m_certificate;         ///< newest in date
    std::optional<Certificate> m_previousCertificate; ///< the one before it, for the drift d; may be past its due day
    bool m_checked = false;
    bool m_failed = false;
};

} // namespace holdfast::analytics
