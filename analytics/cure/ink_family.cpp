#include "analytics/cure/ink_family.hpp"

#include "analytics/cure/plain_text.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

constexpr Temperature kGelLowWithoutRange = Temperature::fromCelsius(60.0);

bool isFinite(Duration d) noexcept {
    return std::isfinite(d.count());
}

bool isFinite(const CurePoint& point) noexcept {
    return isFinite(point.time) && point.temperature.isFinite();
}

bool isFinite(const std::optional<Duration>& d) noexcept {
    return !d || isFinite(*d);
}

bool everyNumberFinite(const InkFamily& f) noexcept {
    return f.cure.isFinite() && isFinite(f.hold) && (!f.gel || (f.gel->low.isFinite() && f.gel->high.isFinite())) &&
           (!f.ceiling || f.ceiling->isFinite()) &&
           (!f.pairs || (isFinite(f.pairs->hotter) && isFinite(f.pairs->cooler))) && isFinite(f.potLife) &&
           (!f.additiveBand || (std::isfinite(f.additiveBand->low) && std::isfinite(f.additiveBand->high))) &&
           isFinite(f.restBeforeTest);
}

bool isNegative(const std::optional<Duration>& d) noexcept {
    return d && *d < Duration{0};
}

bool isHotterAndShorter(const EqualCurePairs& pairs) noexcept {
    return pairs.hotter.temperature > pairs.cooler.temperature && pairs.hotter.time < pairs.cooler.time &&
           pairs.hotter.time > Duration{0};
}

} // namespace

Temperature InkFamily::gelLow() const noexcept {
    return gel ? gel->low : kGelLowWithoutRange;
}

std::vector<FamilyFault> faultsOf(const InkFamily& f) {
    std::vector<FamilyFault> faults;
    const auto note = [&faults](bool faulty, FamilyFault fault) {
        if (faulty) {
            faults.push_back(fault);
        }
    };
    const auto hottestAsked = f.pairs ? std::max(f.cure, f.pairs->hotter.temperature) : f.cure;
    const auto gelHigh = f.gel ? f.gel->high : kGelLowWithoutRange;
    note(isBlank(f.name), FamilyFault::nameEmpty);
    note(f.gel && f.gel->low > f.gel->high, FamilyFault::gelReversed);
    note(f.gel && f.cure < f.gel->high, FamilyFault::cureBelowGel);
    note(f.ceiling && hottestAsked > *f.ceiling, FamilyFault::cureAboveCeiling);
    note(isNegative(f.hold) || isNegative(f.potLife) || isNegative(f.restBeforeTest), FamilyFault::holdNegative);
    note(f.pairs && !isHotterAndShorter(*f.pairs), FamilyFault::pairsNotHotterShorter);
    note(f.pairs && std::min(f.pairs->hotter.temperature, f.pairs->cooler.temperature) <= gelHigh,
         FamilyFault::pairsNotAboveGel);
    note(f.additiveBand && (f.additiveBand->low > f.additiveBand->high || f.additiveBand->low < 0.0),
         FamilyFault::bandReversed);
    note(!everyNumberFinite(f), FamilyFault::notFinite);
    return faults;
}

} // namespace holdfast::analytics
