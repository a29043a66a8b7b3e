#pragma once

#include "analytics/metrology/fixed_points/check_result.hpp"

#include <span>

/// The check in a bath, step by step, for whoever shows it.
namespace holdfast::analytics {

/// What can hurt; shown while the bath is prepared and while the probe is in it.
enum class BathCaution { boilingWater, steam, kettleNearWater, instrumentCaseOutOfSteam, followMakerOfProbe };

/// What makes the bath what the budget believes (common practice).
enum class BathHint {
    crushIceFine,
    fillWithLittleWater,
    packAndDrain,
    waitForSlush,
    rollingBoil,
    openVessel,
    cleanWater,
    immerseDeep,
    keepOffWallAndBottom
};

/// Empty for a comparison, which has no bath.
[[nodiscard]] std::span<const BathCaution> cautionsOf(CheckKind kind) noexcept;
[[nodiscard]] std::span<const BathHint> hintsOf(CheckKind kind) noexcept;

struct ChooseBath final {
    std::optional<PressureFault> refused{}; ///< why the ice bath was not taken: settings
};
struct GivePressure final {
    std::optional<PressureFault> refused{}; ///< what was wrong with the pressure just given
    std::optional<AirPressure> confirm{};   ///< reads like a reduced figure: confirm it or give it as a report
};
struct PrepareBath final {};
struct InsertProbe final {};
struct WaitForRest final {
    StabilityState stability;
};
struct CheckShown final {
    CheckResult result;
};
struct CheckNotJudged final {
    std::optional<CheckFault> fault{};
    std::optional<BathTimedOut> timedOut{}; ///< with `elsewhere`: judgeElsewhere() may be asked
};
using CheckStep =
    std::variant<ChooseBath, GivePressure, PrepareBath, InsertProbe, WaitForRest, CheckShown, CheckNotJudged>;

struct CheckSettings final {
    BathSettings bath{};
    StabilityRules stability{};
    GuardSetting guard{};
    std::chrono::days interval{30};
};

/// One instrument's check of one day. Every event returns whether the step took it; one that did not fit changes
/// nothing. All results stay: a failure is not undone by trying again (a failed check of a day counts).
class CheckProcedure final {
public:
    explicit CheckProcedure(Calibration calibration, CheckSettings settings = {});

    [[nodiscard]] const CheckStep& step() const noexcept { return m_step; }
    /// Absent until chosen.
    [[nodiscard]] std::optional<CheckKind> kind() const noexcept { return m_kind; }
    /// Known from PrepareBath on.
    [[nodiscard]] const std::optional<BathReference>& reference() const noexcept { return m_reference; }
    /// Of a boiling bath, known from PrepareBath on.
    [[nodiscard]] const std::optional<AirPressure>& air() const noexcept { return m_air; }
    [[nodiscard]] const std::vector<CheckResult>& results() const noexcept { return m_results; }

    bool choose(CheckKind kind);
    bool givePressure(const PressureSource& source);
    bool confirmPressure(); ///< it is the station's, for all that
    bool bathReady();
    bool inserted(MonotonicTime now);
    bool sample(const BathSample& sample);
    bool waited(MonotonicTime now);
    bool judgeElsewhere(); ///< the probe is in the bath, however far off it reads
    bool repeat();         ///< the same bath again, the probe taken out and put in
    bool startOver();      ///< another bath

private:
    bool take(const AirPressure& air);
    void take(const StabilityState& stability);
    void judge(const SteadyReading& reading);

    Calibration m_calibration;
    CheckSettings m_settings;
    std::optional<CheckKind> m_kind;
    std::optional<AirPressure> m_air;
    std::optional<BathReference> m_reference;
    std::optional<StabilityDetector> m_detector;
    std::vector<CheckResult> m_results;
    CheckStep m_step = ChooseBath{};
};

} // namespace holdfast::analytics
