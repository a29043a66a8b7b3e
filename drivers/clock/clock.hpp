#pragma once

#include <atomic>
#include <chrono>
#include <cstdint>

namespace holdfast::drivers {

/// A stamp on a monotonic clock: µs since an origin that only this clock knows. Never goes back.
using MonotonicTime = std::chrono::microseconds;

/// What a wall clock says: UTC since 1970-01-01 in milliseconds, and how far local time is ahead of UTC.
struct WallTime {
    std::int64_t millisecondsSinceEpoch = 0;
    int utcOffsetMinutes = 0;
    auto operator<=>(const WallTime&) const = default;
};

/// The shop's own calendar day of that moment.
[[nodiscard]] std::chrono::sys_days localDay(const WallTime& wall) noexcept;

/// The only way to read time in this program. All members may be called from any thread.
class Clock {
public:
    Clock() = default;
    Clock(const Clock&) = delete;
    Clock& operator=(const Clock&) = delete;
    virtual ~Clock() = default;

    [[nodiscard]] virtual MonotonicTime now() const noexcept = 0;
    [[nodiscard]] virtual WallTime wall() const = 0;
    /// Clock seconds for each real second, above 0. Timers wait (span / rate) of real time.
    [[nodiscard]] virtual double rate() const noexcept { return 1.0; }
};

/// How long a real timer must wait for `span` of clock time; rounded up to whole milliseconds, at least one.
[[nodiscard]] std::chrono::milliseconds realDelay(const Clock& clock, MonotonicTime span) noexcept;

/// The machine's own clocks: std::chrono::steady_clock, and the system's wall time in the local zone.
class SystemClock final : public Clock {
public:
    [[nodiscard]] MonotonicTime now() const noexcept override;
    [[nodiscard]] WallTime wall() const override;
};

/// Minutes by which the machine's local time is ahead of UTC at that moment (daylight saving included).
[[nodiscard]] int localUtcOffsetMinutes(std::int64_t millisecondsSinceEpoch) noexcept;

/// Runs `rate` times as fast as the machine, from 0 µs and `wallOrigin` at construction. Rides are sped up by sharing
/// one of these among simulator, driver and timers, never by changing sample rates. Thread-safe: it has no state that
/// changes.
class ScaledClock final : public Clock {
public:
    /// `rate` must be finite and above 0 (asserted).
    ScaledClock(double rate, WallTime wallOrigin);
    [[nodiscard]] MonotonicTime now() const noexcept override;
    [[nodiscard]] WallTime wall() const override;
    [[nodiscard]] double rate() const noexcept override { return m_rate; }

private:
    double m_rate;
    WallTime m_wallOrigin;
    std::chrono::steady_clock::time_point m_origin;
};

/// Stands still until it is told to move; wall time moves with it. Safe to read while another thread moves it.
class ManualClock final : public Clock {
public:
    explicit ManualClock(WallTime wallOrigin = {}, MonotonicTime start = MonotonicTime{0});
    [[nodiscard]] MonotonicTime now() const noexcept override;
    [[nodiscard]] WallTime wall() const override;

    /// `span` must not be negative (asserted): monotonic time never goes back.
    void advance(MonotonicTime span) noexcept;
    /// Sets the wall clock to a new time, as an operator or a time server would; monotonic time is untouched.
    void setWall(WallTime wall) noexcept;

private:
    std::atomic<std::int64_t> m_now;
    std::atomic<std::int64_t> m_wallAtZero; ///< ms since the epoch when monotonic time was 0
    std::atomic<int> m_utcOffsetMinutes;
};

} // namespace holdfast::drivers
