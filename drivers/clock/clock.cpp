#include "drivers/clock/clock.hpp"

#include <algorithm>
#include <cassert>
#include <cmath>
#include <ctime>

namespace holdfast::drivers {

std::chrono::sys_days localDay(const WallTime& wall) noexcept {
    const std::chrono::sys_time<std::chrono::milliseconds> local{
        std::chrono::milliseconds{wall.millisecondsSinceEpoch} + std::chrono::minutes{wall.utcOffsetMinutes}};
    return std::chrono::floor<std::chrono::days>(local);
}

std::chrono::milliseconds realDelay(const Clock& clock, MonotonicTime span) noexcept {
    const double milliseconds = std::ceil(static_cast<double>(span.count()) / clock.rate() / 1000.0);
    return std::chrono::milliseconds{static_cast<std::int64_t>(std::clamp(milliseconds, 1.0, 1e9))};
}

MonotonicTime SystemClock::now() const noexcept {
    return std::chrono::duration_cast<MonotonicTime>(std::chrono::steady_clock::now().time_since_epoch());
}

WallTime SystemClock::wall() const {
    const auto sinceEpoch = std::chrono::system_clock::now().time_since_epoch();
    const auto milliseconds = std::chrono::duration_cast<std::chrono::milliseconds>(sinceEpoch).count();
    return {milliseconds, localUtcOffsetMinutes(milliseconds)};
}

int localUtcOffsetMinutes(std::int64_t millisecondsSinceEpoch) noexcept {
    const auto seconds = static_cast<std::time_t>(millisecondsSinceEpoch / 1000);
    std::tm local{};
    if (localtime_r(&seconds, &local) == nullptr) {
        return 0;
    }
    return static_cast<int>(local.tm_gmtoff / 60);
}

ScaledClock::ScaledClock(double rate, WallTime wallOrigin)
    : m_rate{rate}, m_wallOrigin{wallOrigin}, m_origin{std::chrono::steady_clock::now()} {
    assert(std::isfinite(rate) && rate > 0.0);
}

MonotonicTime ScaledClock::now() const noexcept {
    const std::chrono::duration<double, std::micro> passed = std::chrono::steady_clock::now() - m_origin;
    return MonotonicTime{static_cast<std::int64_t>(passed.count() * m_rate)};
}

WallTime ScaledClock::wall() const {
    const auto passed = std::chrono::duration_cast<std::chrono::milliseconds>(now()).count();
    return {m_wallOrigin.millisecondsSinceEpoch + passed, m_wallOrigin.utcOffsetMinutes};
}

ManualClock::ManualClock(WallTime wallOrigin, MonotonicTime start)
    : m_now{start.count()}, m_wallAtZero{wallOrigin.millisecondsSinceEpoch - start.count() / 1000},
      m_utcOffsetMinutes{wallOrigin.utcOffsetMinutes} {}

MonotonicTime ManualClock::now() const noexcept {
    return MonotonicTime{m_now.load()};
}

WallTime ManualClock::wall() const {
    return {m_wallAtZero.load() + m_now.load() / 1000, m_utcOffsetMinutes.load()};
}

void ManualClock::advance(MonotonicTime span) noexcept {
    assert(span.count() >= 0);
    m_now.fetch_add(span.count());
}

void ManualClock::setWall(WallTime wall) noexcept {
    m_wallAtZero.store(wall.millisecondsSinceEpoch - m_now.load() / 1000);
    m_utcOffsetMinutes.store(wall.utcOffsetMinutes);
}

} // namespace holdfast::drivers
