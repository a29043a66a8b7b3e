#include "kiosk/demo/demo_calendar.hpp"

#include <algorithm>

namespace holdfast::kiosk::demo {
namespace {

constexpr std::int64_t kMinuteOfWall = 60'000;

bool isWorked(std::chrono::sys_days day) {
    const std::chrono::weekday weekday{day};
    return weekday != std::chrono::Saturday && weekday != std::chrono::Sunday;
}

} // namespace

DemoCalendar::DemoCalendar(drivers::WallTime now) : m_now{now} {
    auto day = drivers::localDay(now);
    m_days.push_back(day);
    while (m_days.size() <= static_cast<std::size_t>(kToday)) {
        day -= std::chrono::days{1};
        if (isWorked(day)) {
            m_days.push_back(day);
        }
    }
    std::reverse(m_days.begin(), m_days.end());
}

drivers::WallTime DemoCalendar::wallOf(const DemoTime& time) const {
    auto wall = m_now;
    if (time.day < kToday) {
        const auto midnight = std::chrono::milliseconds{dayOf(time.day).time_since_epoch()};
        wall.millisecondsSinceEpoch = midnight.count() - m_now.utcOffsetMinutes * kMinuteOfWall;
    }
    wall.millisecondsSinceEpoch += time.minute * kMinuteOfWall;
    return wall;
}

} // namespace holdfast::kiosk::demo
