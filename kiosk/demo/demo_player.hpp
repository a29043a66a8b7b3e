#pragma once

#include "kiosk/demo/demo_bench.hpp"
#include "kiosk/demo/demo_clerk.hpp"
#include "kiosk/demo/demo_floor.hpp"
#include "kiosk/demo/demo_office.hpp"

namespace holdfast::kiosk::demo {

/// Plays the whole history into an empty book, a commit a step.
class DemoPlayer final {
public:
    /// All must outlive the player.
    DemoPlayer(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now, const std::string& probeAddress);

    [[nodiscard]] ledger::Result<void> play();
    /// That were taken of prints, once it has been played.
    [[nodiscard]] const std::vector<ledger::BlobDraft>& pictures() const noexcept { return m_pen.pictures(); }

private:
    void moveTo(const DemoTime& time);
    [[nodiscard]] ledger::Result<void> play(const DemoStep& step);

    DemoCalendar m_calendar;
    DemoClock m_clock;
    DemoPen m_pen;
    DemoClerk m_clerk;
    DemoBench m_bench;
    DemoOffice m_office;
    DemoFloor m_floor;
    int m_day = 0;
};

} // namespace holdfast::kiosk::demo
