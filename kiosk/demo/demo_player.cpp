#include "kiosk/demo/demo_player.hpp"

#include <algorithm>
#include <array>
#include <type_traits>

namespace holdfast::kiosk::demo {

namespace {

/// Kiosks that were off overnight: before a ride that nobody announced, and before a dryer is turned.
struct SwitchedOff final {
    int beforeDay = 0;
    DemoDryer dryer = DemoDryer::north;
};
constexpr std::array<SwitchedOff, 9> kSwitchedOff{{
    {1, DemoDryer::south},
    {4, DemoDryer::south},
    {6, DemoDryer::north},
    {6, DemoDryer::west},
    {7, DemoDryer::north},
    {9, DemoDryer::north},
    {9, DemoDryer::south},
    {kToday, DemoDryer::north},
    {kToday, DemoDryer::south},
}};

} // namespace

DemoPlayer::DemoPlayer(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now,
                       const std::string& probeAddress)
    : m_calendar{now}, m_pen{book, m_clock}, m_clerk{book, m_pen, m_clock, probeAddress}, m_bench{book, m_pen, m_clock},
      m_office{book, m_pen, m_clock}, m_floor{book, writer, m_pen, m_clock} {
    m_pen.written = [this](const std::vector<records::Record>& list) { m_floor.tell(list); };
}

ledger::Result<void> DemoPlayer::play() {
    for (const auto& step : demoSteps()) {
        moveTo(step.at);
        if (auto done = play(step); !done) {
            auto failure = done.error();
            failure.what +=
                " (demo, day " + std::to_string(step.at.day) + ", minute " + std::to_string(step.at.minute) + ")";
            return tl::unexpected(std::move(failure));
        }
    }
    return {};
}

void DemoPlayer::moveTo(const DemoTime& time) {
    using std::chrono::milliseconds;
    constexpr milliseconds kLeast{3'000}; // the same card twice within two seconds counts once
    const auto wall = m_calendar.wallOf(time);
    const milliseconds passed{wall.millisecondsSinceEpoch - m_clock.wall().millisecondsSinceEpoch};
    constexpr milliseconds kNight{600'000}; // the other kiosks sleep, and with them their monotonic clocks
    const bool first = m_clock.wall().millisecondsSinceEpoch == 0;
    m_clock.moveTo(wall, first ? drivers::MonotonicTime{0}
                               : std::max(kLeast, time.day == m_day ? passed : std::min(passed, kNight)));
    if (time.day == m_day) {
        return;
    }
    m_day = time.day;
    for (const auto& off : kSwitchedOff) {
        if (off.beforeDay == m_day) {
            m_floor.switchOff(off.dryer);
        }
    }
    m_floor.newDay();
}

ledger::Result<void> DemoPlayer::play(const DemoStep& step) {
    return std::visit(
        [&](const auto& act) -> ledger::Result<void> {
            if constexpr (std::is_invocable_v<DemoClerk&, decltype(act)>) {
                return m_clerk(act);
            } else if constexpr (std::is_invocable_v<DemoBench&, decltype(act)>) {
                return m_bench(act);
            } else if constexpr (std::is_invocable_v<DemoOffice&, decltype(act)>) {
                return m_office(act);
            } else {
                return m_floor.play(step.dryer, act);
            }
        },
        step.act);
}

} // namespace holdfast::kiosk::demo
