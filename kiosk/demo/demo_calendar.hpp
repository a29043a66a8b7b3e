#pragma once

#include "drivers/clock/clock.hpp"

#include <chrono>
#include <vector>

namespace holdfast::kiosk::demo {

/// When something of the history happens: on a working day before today at a time of day, or today so many minutes
/// before now.
struct DemoTime final {
    int day = 0;    ///< from 0, the oldest; kToday
    int minute = 0; ///< of the day; today: counted from now, so below 0
};

inline constexpr int kToday = 11;

[[nodiscard]] constexpr DemoTime on(int day, int hour, int minute) noexcept {
    return {day, hour * 60 + minute};
}
[[nodiscard]] constexpr DemoTime minutesAgo(int minutes) noexcept {
    return {kToday, -minutes};
}

/// The last eleven days from Monday to Friday before the day of `now`, and that day.
class DemoCalendar final {
public:
    explicit DemoCalendar(drivers::WallTime now);
    [[nodiscard]] drivers::WallTime wallOf(const DemoTime& time) const;
    [[nodiscard]] std::chrono::sys_days dayOf(int day) const { return m_days[static_cast<std::size_t>(day)]; }

private:
    drivers::WallTime m_now;
    std::vector<std::chrono::sys_days> m_days;
};

} // namespace holdfast::kiosk::demo
