#pragma once

#include "kiosk/demo/demo_clerk.hpp"
#include "kiosk/demo/demo_floor.hpp"

namespace holdfast::kiosk::demo {

/// Plays the whole history into an empty book, a commit a step.
class DemoPlayer final {
public:
    /// All must outlive the player.
    DemoPlayer(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now, const std::string& probeAddress);

    [[nodiscard]] ledger::Result<void> play();

private:
    void moveTo(const DemoTime& time);
    [[nodiscard]] ledger::Result<void> play(const DemoStep& step);

    DemoCalendar m_calendar;
    DemoClock m_clock;
    DemoPen m_pen;
    DemoClerk m_clerk;
    DemoFloor m_floor;
    int m_day = 0;
};

} // namespace holdfast::kiosk::demo
