#include "analytics/metrology/fixed_points/stability.hpp"

#include <algorithm>

namespace holdfast::analytics {
namespace {

constexpr Duration kLeastWindow{30.0};
constexpr double kMostSamples = 10000.0;
constexpr int kClockSetBack = 3;
constexpr MonotonicTime kFarthest{100'000'000'000'000'000}; // beyond it no clock of ours counts; differences stay exact

bool isStamp(MonotonicTime at) noexcept {
    return at >= -kFarthest && at <= kFarthest;
}

/// Sums over a window, about its mean.
struct Sums final {
    double meanTime = 0.0;
    double mean = 0.0;
    double squares = 0.0;
    double lagged = 0.0;
    double slope = 0.0;
    double spread = 0.0;
};

double secondsOf(const BathSample& sample, const BathSample& origin) noexcept {
    return Duration{sample.at - origin.at}.count();
}

Sums sumsOf(const std::deque<BathSample>& window) {
    Sums sums;
    const auto n = static_cast<double>(window.size());
    for (const auto& sample : window) {
        sums.meanTime += secondsOf(sample, window.front()) / n;
        sums.mean += sample.indicated.celsius() / n;
    }
    double timeSquares = 0.0;
    double products = 0.0;
    std::optional<double> before;
    for (const auto& sample : window) {
        const double t = secondsOf(sample, window.front()) - sums.meanTime;
        const double d = sample.indicated.celsius() - sums.mean;
        timeSquares += t * t;
        products += t * d;
        sums.squares += d * d;
        sums.lagged += before ? *before * d : 0.0;
        before = d;
    }
    const auto [coldest, hottest] = std::minmax_element(
        window.begin(), window.end(), [](const auto& a, const auto& b) { return a.indicated < b.indicated; });
    sums.spread = (hottest->indicated - coldest->indicated).celsius();
    sums.slope = timeSquares > 0.0 ? products / timeSquares : 0.0;
    return sums;
}

/// At least 1: a window that moves as one is one observation.
double effectiveSamples(const Sums& sums, double n) noexcept {
    if (sums.squares <= 0.0) {
        return n;
    }
    const double raw = sums.lagged / sums.squares;
    const double rho = std::max(0.0, raw + (1.0 + 4.0 * raw) / n);
    return rho >= 1.0 ? 1.0 : std::clamp(n * (1.0 - rho) / (1.0 + rho), 1.0, n);
}

} // namespace

bool isUsable(const StabilityRules& rules) noexcept {
    const auto isPositive = [](double x) { return std::isfinite(x) && x > 0.0; };
    return isPositive(rules.window.count()) && isPositive(rules.longestGap.count()) &&
           isPositive(rules.timeout.count()) && isPositive(rules.spread.celsius()) &&
           isPositive(rules.drift.celsius()) && isPositive(rules.reach.celsius());
}

StabilityDetector::StabilityDetector(Temperature reference, TemperatureDifference resolution, MonotonicTime began,
                                     StabilityRules rules)
    : m_reference{reference}, m_resolution{resolution.isFinite() ? resolution.magnitude() : TemperatureDifference{}},
      m_rules{isUsable(rules) ? rules : StabilityRules{}}, m_began{isStamp(began) ? began : MonotonicTime{0}} {
    m_rules.window = std::max(kLeastWindow, m_rules.window);
    m_rules.leastSamples = std::max<std::size_t>(m_rules.leastSamples, 3);
}

const StabilityState& StabilityDetector::add(const BathSample& sample) {
    if (std::holds_alternative<BathTimedOut>(m_state) || !sample.indicated.isFinite() || !isStamp(sample.at)) {
        return m_state;
    }
    if (m_last && sample.at <= *m_last) {
        if (!isClockSetBack(sample)) {
            return m_state;
        }
        m_began = sample.at - std::chrono::duration_cast<MonotonicTime>(m_elapsed);
        m_window.clear();
        m_last.reset();
    }
    m_earlierRun = 0;
    const Duration step = m_last ? Duration{sample.at - *m_last} : Duration{0};
    m_last = sample.at;
    m_elapsed += std::min(step, m_rules.longestGap);
    if (step > m_rules.longestGap) {
        m_window.clear();
    }
    if (m_window.empty() || Duration{sample.at - m_window.back().at} >= m_rules.window / kMostSamples) {
        m_window.push_back(sample);
    }
    // The sample that reaches back over the whole window stays.
    while (m_window.size() > 1 && Duration{sample.at - m_window[1].at} >= m_rules.window) {
        m_window.pop_front();
    }
    judge();
    return m_state;
}

const StabilityState& StabilityDetector::waitedUntil(MonotonicTime now) {
    if (std::holds_alternative<BathTimedOut>(m_state) || !isStamp(now)) {
        return m_state;
    }
    if (m_last && Duration{now - *m_last} > m_rules.longestGap) {
        m_window.clear();
        if (std::holds_alternative<BathStable>(m_state)) {
            m_elapsed = Duration{0};
            m_began = now;
        }
        m_state = BathWaiting{};
    }
    m_elapsed = std::max(m_elapsed, Duration{now - m_began});
    timeOutIfDue();
    return m_state;
}

bool StabilityDetector::isClockSetBack(const BathSample& sample) {
    m_earlierRun = m_earlier && sample.at > *m_earlier && m_earlierRun > 0 ? m_earlierRun + 1 : 1;
    m_earlier = sample.at;
    return m_earlierRun >= kClockSetBack;
}

void StabilityDetector::judge() {
    const auto& newest = m_window.back();
    const bool isNear = (newest.indicated - m_reference).magnitude() <= m_rules.reach;
    if (!isNear) {
        m_state = BathWaiting{};
    } else if (const auto reading = steady(); reading && (reading->mean - m_reference).magnitude() <= m_rules.reach) {
        m_state = BathStable{*reading};
        m_elapsed = Duration{0};
        m_began = newest.at;
    } else {
        m_state = BathSettling{std::min(m_rules.window, Duration{newest.at - m_window.front().at})};
    }
    timeOutIfDue();
}

void StabilityDetector::timeOutIfDue() {
    if (std::holds_alternative<BathStable>(m_state) || m_elapsed < m_rules.timeout) {
        return;
    }
    if (!m_last) {
        m_state = BathTimedOut{TimeoutReason::noSamples, std::nullopt};
    } else if (std::holds_alternative<BathSettling>(m_state)) {
        m_state = BathTimedOut{TimeoutReason::neverSteady, std::nullopt};
    } else if (m_window.empty()) {
        m_state = BathTimedOut{TimeoutReason::noSamples, std::nullopt};
    } else {
        m_state = BathTimedOut{TimeoutReason::neverNear, steady()};
    }
}

std::optional<SteadyReading> StabilityDetector::steady() const {
    if (m_window.size() < m_rules.leastSamples) {
        return std::nullopt;
    }
    const Duration length = m_window.back().at - m_window.front().at;
    if (!atLeast(length, m_rules.window)) {
        return std::nullopt;
    }
    const Sums sums = sumsOf(m_window);
    const auto n = static_cast<double>(m_window.size());
    const auto spread = TemperatureDifference::fromCelsius(sums.spread);
    const auto drift = TemperatureDifference::fromCelsius(sums.slope * length.count()).magnitude();
    if (!atMost(spread, m_rules.spread + m_resolution) || !atMost(drift, m_rules.drift + m_resolution * 1.5)) {
        return std::nullopt;
    }
    const double effective = effectiveSamples(sums, n);
    const double variance = sums.squares / (n - 1.0) / effective + drift.celsius() * drift.celsius() / 12.0;
    return SteadyReading{Temperature::fromCelsius(sums.mean),
                         TemperatureDifference::fromCelsius(std::sqrt(variance)),
                         spread,
                         HeatingRate::fromCelsiusPerSecond(sums.slope),
                         m_window.size(),
                         effective,
                         length};
}

} // namespace holdfast::analytics
