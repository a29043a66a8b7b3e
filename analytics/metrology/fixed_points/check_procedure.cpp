#include "analytics/metrology/fixed_points/check_procedure.hpp"

#include <array>

namespace holdfast::analytics {
namespace {

constexpr std::array kIceCautions{BathCaution::followMakerOfProbe};
constexpr std::array kBoilingCautions{BathCaution::boilingWater, BathCaution::steam, BathCaution::kettleNearWater,
                                      BathCaution::instrumentCaseOutOfSteam, BathCaution::followMakerOfProbe};
constexpr std::array kIceHints{BathHint::cleanWater,          BathHint::crushIceFine, BathHint::fillWithLittleWater,
                               BathHint::packAndDrain,        BathHint::waitForSlush, BathHint::immerseDeep,
                               BathHint::keepOffWallAndBottom};
constexpr std::array kBoilingHints{BathHint::cleanWater, BathHint::openVessel, BathHint::rollingBoil,
                                   BathHint::immerseDeep, BathHint::keepOffWallAndBottom};

} // namespace

std::span<const BathCaution> cautionsOf(CheckKind kind) noexcept {
    switch (kind) {
    case CheckKind::ice:
        return kIceCautions;
    case CheckKind::boiling:
        return kBoilingCautions;
    case CheckKind::comparison:
        break;
    }
    return {};
}

std::span<const BathHint> hintsOf(CheckKind kind) noexcept {
    switch (kind) {
    case CheckKind::ice:
        return kIceHints;
    case CheckKind::boiling:
        return kBoilingHints;
    case CheckKind::comparison:
        break;
    }
    return {};
}

CheckProcedure::CheckProcedure(Calibration calibration, CheckSettings settings)
    : m_calibration{std::move(calibration)}, m_settings{settings} {}

bool CheckProcedure::choose(CheckKind kind) {
    if (!std::holds_alternative<ChooseBath>(m_step) || kind == CheckKind::comparison) {
        return false;
    }
    m_kind = kind;
    if (kind == CheckKind::boiling) {
        m_step = GivePressure{};
        return true;
    }
    const auto reference = iceReference(m_settings.bath);
    if (!reference) {
        m_step = ChooseBath{reference.error()};
        return true;
    }
    m_reference = *reference;
    m_step = PrepareBath{};
    return true;
}

bool CheckProcedure::givePressure(const PressureSource& source) {
    if (!std::holds_alternative<GivePressure>(m_step)) {
        return false;
    }
    const auto air = airPressure(source, m_settings.bath);
    if (!air) {
        m_step = GivePressure{air.error(), std::nullopt};
        return true;
    }
    if (air->looksReduced) {
        m_step = GivePressure{std::nullopt, *air};
        return true;
    }
    return take(*air);
}

bool CheckProcedure::confirmPressure() {
    const auto* give = std::get_if<GivePressure>(&m_step);
    if (give == nullptr || !give->confirm) {
        return false;
    }
    return take(AirPressure{*give->confirm});
}

bool CheckProcedure::take(const AirPressure& air) {
    const auto reference = boilingReference(air, m_settings.bath);
    if (!reference) {
        m_step = GivePressure{reference.error(), std::nullopt};
        return true;
    }
    m_air = air;
    m_reference = *reference;
    m_step = PrepareBath{};
    return true;
}

bool CheckProcedure::bathReady() {
    if (!std::holds_alternative<PrepareBath>(m_step)) {
        return false;
    }
    m_step = InsertProbe{};
    return true;
}

bool CheckProcedure::inserted(MonotonicTime now) {
    if (!std::holds_alternative<InsertProbe>(m_step)) {
        return false;
    }
    m_detector.emplace(m_reference->at, m_calibration.instrument().resolution, now, m_settings.stability);
    m_step = WaitForRest{m_detector->state()};
    return true;
}

bool CheckProcedure::sample(const BathSample& sample) {
    if (!std::holds_alternative<WaitForRest>(m_step)) {
        return false;
    }
    take(m_detector->add(sample));
    return true;
}

bool CheckProcedure::waited(MonotonicTime now) {
    if (!std::holds_alternative<WaitForRest>(m_step)) {
        return false;
    }
    take(m_detector->waitedUntil(now));
    return true;
}

void CheckProcedure::take(const StabilityState& stability) {
    if (const auto* stable = std::get_if<BathStable>(&stability)) {
        judge(stable->reading);
    } else if (const auto* timedOut = std::get_if<BathTimedOut>(&stability)) {
        m_step = CheckNotJudged{std::nullopt, *timedOut};
    } else {
        m_step = WaitForRest{stability};
    }
}

void CheckProcedure::judge(const SteadyReading& reading) {
    const CheckRequest request{*m_kind, *m_reference, reading, m_settings.interval, m_settings.guard};
    const auto result = judgeCheck(m_calibration, request);
    if (!result) {
        m_step = CheckNotJudged{result.error(), std::nullopt};
        return;
    }
    m_results.push_back(*result);
    m_step = CheckShown{*result};
}

bool CheckProcedure::judgeElsewhere() {
    const auto* notJudged = std::get_if<CheckNotJudged>(&m_step);
    if (notJudged == nullptr || !notJudged->timedOut || !notJudged->timedOut->elsewhere) {
        return false;
    }
    judge(SteadyReading{*notJudged->timedOut->elsewhere});
    return true;
}

bool CheckProcedure::repeat() {
    if (!std::holds_alternative<CheckShown>(m_step) && !std::holds_alternative<CheckNotJudged>(m_step)) {
        return false;
    }
    m_detector.reset();
    m_step = InsertProbe{};
    return true;
}

bool CheckProcedure::startOver() {
    m_kind.reset();
    m_air.reset();
    m_reference.reset();
    m_detector.reset();
    m_step = ChooseBath{};
    return true;
}

} // namespace holdfast::analytics
