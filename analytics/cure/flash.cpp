#include "analytics/cure/findings.hpp"

namespace holdfast::analytics {

using namespace judging;

FlashNote judgeFlash(const Layer& layer, Temperature peak, const Calibration& calibration, const GuardSetting& guard) {
    const auto& family = layer.ink.requirement;
    if (!family.gel) {
        return {};
    }
    if (!peak.isFinite()) {
        return {FlashWord::notProven, {because(ReasonCode::impossibleTemperature)}};
    }
    const GuardedLimit gel{family.gel->low, calibration.guardAt(family.gel->low, guard)};
    const auto cureLimit = family.pairs ? family.pairs->cooler.temperature : family.cure;
    const GuardedLimit cure{cureLimit, calibration.guardAt(cureLimit, guard)};
    const bool guarded = gel.guard.isFinite() && cure.guard.isFinite();
    if (guarded && atLeast(peak, cure.limit - cure.guard)) {
        return {FlashWord::overFlashed, {because(ReasonCode::overFlashed, peak, cure)}};
    }
    if (guarded && atMost(peak, gel.limit - gel.guard)) {
        return {FlashWord::notGelled, {because(ReasonCode::notGelled, peak, gel)}};
    }
    if (const auto reason = whyNotInDate(calibration, gel.limit)) {
        return {FlashWord::notProven, {*reason}};
    }
    if (guarded && atLeast(peak, gel.limit + gel.guard)) {
        return {FlashWord::gelled, {because(ReasonCode::gelled, peak, gel)}};
    }
    const bool over = atLeast(peak, gel.limit);
    return {FlashWord::notProven,
            {because(over ? ReasonCode::overCureWithinGuard : ReasonCode::underCureWithinGuard, peak, gel)}};
}

} // namespace holdfast::analytics
