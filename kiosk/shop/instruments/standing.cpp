#include "kiosk/shop/instruments/standing.hpp"

#include "analytics/cure/window.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::instruments {
namespace {

using analytics::Date;
using analytics::InstrumentKind;

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
    if (instrument.kind == InstrumentKind::strip) {
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

bool asksTime(const analytics::InkFamily& family) {
    return family.pairs || family.hold > analytics::Duration{0};
}

bool seesNoTime(InstrumentKind kind) {
    return kind == InstrumentKind::spot || kind == InstrumentKind::strip;
}

/// The coolest and the hottest; one if they are the same.
std::vector<analytics::Temperature> limitsOf(std::vector<analytics::Temperature> cures) {
    std::sort(cures.begin(), cures.end());
    if (cures.size() > 2) {
        cures.erase(cures.begin() + 1, cures.end() - 1);
    }
    cures.erase(std::unique(cures.begin(), cures.end()), cures.end());
    return cures;
}

} // namespace

bool Standing::provesSomething() const noexcept {
    return ground != Ground::none && kind != InstrumentKind::gun && timedInks != TimedInks::all &&
           (proofs.empty() || std::any_of(proofs.begin(), proofs.end(), [](const auto& one) { return !one.fault; }));
}

bool Standing::isInOrder() const noexcept {
    return kind == InstrumentKind::gun ? ground != Ground::none : provesSomething();
}

Standing standingOf(const analytics::Instrument& instrument, Date today,
                    const std::vector<analytics::InkFamily>& families, const analytics::GuardSetting& guard) {
    const analytics::Calibration calibration{instrument, today};
    Standing standing;
    standing.kind = instrument.kind;
    setGround(standing, calibration);
    std::vector<analytics::Temperature> cures;
    for (const auto& family : families) {
        if (seesNoTime(instrument.kind) && asksTime(family)) {
            standing.timedInks = TimedInks::some;
        } else {
            cures.push_back(family.cure);
        }
    }
    if (standing.timedInks == TimedInks::some && cures.empty()) {
        standing.timedInks = TimedInks::all;
    }
    const auto shortfall = instrument.kind == InstrumentKind::spot ? analytics::WindowRules{}.spotShortfall
                                                                   : analytics::TemperatureDifference{};
    for (const auto limit : limitsOf(std::move(cures))) {
        standing.proofs.push_back({limit, calibration.guardAt(limit, guard), shortfall, calibration.faultAt(limit)});
    }
    return standing;
}

} // namespace holdfast::kiosk::shop::instruments
