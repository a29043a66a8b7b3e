#include "kiosk/shop/instruments/standing.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::instruments {
namespace {

using analytics::Date;

/// The last day that any certificate, or any passed check, ever named.
std::optional<Date> lastDay(const analytics::Instrument& instrument) {
    std::optional<Date> last;
    for (const auto& certificate : instrument.certificates) {
        last = std::max(last.value_or(certificate.due), certificate.due);
    }
    for (const auto& check : instrument.checks) {
        if (check.passed) {
            last = std::max(last.value_or(check.due), check.due);
        }
    }
    return last;
}

std::optional<Date> lastCheckedDay(const analytics::Instrument& instrument, Date today) {
    std::optional<Date> last;
    for (const auto& check : instrument.checks) {
        if (check.passed && check.date <= today && check.due >= today) {
            last = std::max(last.value_or(check.due), check.due);
        }
    }
    return last;
}

void setGround(Standing& standing, const analytics::Calibration& calibration) {
    const auto& instrument = calibration.instrument();
    if (instrument.kind == analytics::InstrumentKind::strip) {
        standing.until = instrument.strip ? instrument.strip->expiry : std::nullopt;
        const bool over = standing.until && *standing.until < calibration.today();
        standing.ground = over ? Ground::none : Ground::stripInDate;
        standing.lack = over ? Lack::stripExpired : Lack::none;
    } else if (calibration.lastCheckFailed()) {
        standing.lack = Lack::checkFailed;
    } else if (calibration.certificateInDate()) {
        standing.ground = Ground::certificate;
        standing.until = calibration.certificateInDate()->due;
    } else if (calibration.checkedInDate()) {
        standing.ground = Ground::check;
        standing.until = lastCheckedDay(instrument, calibration.today());
    } else {
        standing.until = lastDay(instrument);
        standing.lack = standing.until ? Lack::expired : Lack::nothingYet;
    }
}

} // namespace

bool Standing::provesSomething() const noexcept {
    return ground != Ground::none &&
           (proofs.empty() || std::any_of(proofs.begin(), proofs.end(), [](const auto& one) { return !one.fault; }));
}

Standing standingOf(const analytics::Instrument& instrument, Date today,
                    const std::vector<analytics::InkFamily>& families, const analytics::GuardSetting& guard) {
    const analytics::Calibration calibration{instrument, today};
    Standing standing;
    setGround(standing, calibration);
    std::vector<analytics::Temperature> limits;
    for (const auto& family : families) {
        limits.push_back(family.cure);
    }
    std::sort(limits.begin(), limits.end());
    if (limits.size() > 2) {
        limits.erase(limits.begin() + 1, limits.end() - 1);
    }
    limits.erase(std::unique(limits.begin(), limits.end()), limits.end());
    for (const auto limit : limits) {
        standing.proofs.push_back({limit, calibration.guardAt(limit, guard), calibration.faultAt(limit)});
    }
    return standing;
}

} // namespace holdfast::kiosk::shop::instruments
