#pragma once

#include "analytics/quantity/duration.hpp"

#include <deque>
#include <optional>
#include <variant>

/// When a probe in a bath has come to rest, and at what value.
namespace holdfast::analytics {

/// Starter settings, from memory; the shop may change them. A window below 30 s counts as 30 s.
struct StabilityRules final {
    Duration window{30.0};
    TemperatureDifference spread = TemperatureDifference::fromCelsius(0.6); ///< hottest less coldest of the window
    TemperatureDifference drift = TemperatureDifference::fromCelsius(0.2);  ///< |slope| times the window
    TemperatureDifference reach = TemperatureDifference::fromCelsius(10.0); ///< from the reference: else not in it
    Duration longestGap{5.0};
    std::size_t leastSamples = 10;
    Duration timeout{300.0};
};

/// Every limit finite and above 0.
[[nodiscard]] bool isUsable(const StabilityRules& rules) noexcept;

struct BathSample final {
    MonotonicTime at{0};
    Temperature indicated = Temperature::fromCelsius(0);
};

/// The mean of a window at rest.
struct SteadyReading final {
    Temperature mean = Temperature::fromCelsius(0);
    /// √(s²/n_eff + drift²/12): n_eff = n·(1 − ρ)/(1 + ρ), ρ the lag-1 autocorrelation raised by its own bias
    /// (1 + 4ρ)/n and never below 0 (first-order autoregression; Marriott and Pope, Biometrika 41, 1954; JCGM 100:2008,
    /// 4.2.7). The step of the indication is not in it.
    TemperatureDifference u;
    TemperatureDifference spread;
    HeatingRate slope = HeatingRate::fromCelsiusPerSecond(0);
    std::size_t samples = 0;
    double effectiveSamples = 0.0;
    Duration window{0};
};

struct BathWaiting final {}; ///< no sample near the reference yet
struct BathSettling final {
    Duration seen{0}; ///< of the window
};
struct BathStable final {
    SteadyReading reading;
};
enum class TimeoutReason { noSamples, neverNear, neverSteady };
struct BathTimedOut final {
    TimeoutReason reason = TimeoutReason::noSamples;
    std::optional<SteadyReading> elsewhere; ///< with neverNear: at rest all the same, far from the reference
};
using StabilityState = std::variant<BathWaiting, BathSettling, BathStable, BathTimedOut>;

/// Fed one sample at a time. Waiting → settling → stable or timed out (the end of it). Stable goes on with the window;
/// a disturbance breaks its spread, so that it must be past for a whole window before stable returns, and the timeout
/// counts from the last stable sample. A step of the indication adds one step to the allowed spread and one and a half
/// to the allowed drift, the most that rounding can add. A sample that is not finite or not later than the one before
/// is dropped; three earlier ones in succession are a clock set back; that and a gap empty the window. Samples of one
/// window beyond 10 000 are thinned.
class StabilityDetector final {
public:
    /// `began` on the clock of the samples. Rules that are not usable count as the starter ones.
    StabilityDetector(Temperature reference, TemperatureDifference resolution, MonotonicTime began,
                      StabilityRules rules = {});

    const StabilityState& add(const BathSample& sample);
    /// Time passes without a sample: a gap or a timeout may be due.
    const StabilityState& waitedUntil(MonotonicTime now);
    [[nodiscard]] const StabilityState& state() const noexcept { return m_state; }

private:
    [[nodiscard]] bool isClockSetBack(const BathSample& sample);
    void judge();
    void timeOutIfDue();
    [[nodiscard]] std::optional<SteadyReading> steady() const;

    Temperature m_reference;
    TemperatureDifference m_resolution;
    StabilityRules m_rules;
    MonotonicTime m_began;
    Duration m_elapsed{0};
    std::optional<MonotonicTime> m_last;
    std::optional<MonotonicTime> m_earlier;
    int m_earlierRun = 0;
    std::deque<BathSample> m_window;
    StabilityState m_state = BathWaiting{};
};

} // namespace holdfast::analytics
