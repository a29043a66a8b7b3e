#include "kiosk/demo/demo_history.hpp"

#include "kiosk/demo/demo_clerk.hpp"
#include "kiosk/demo/demo_floor.hpp"
#include "kiosk/demo/demo_shop.hpp"
#include "kiosk/ledger/spool.hpp"

#include <algorithm>
#include <system_error>

namespace holdfast::kiosk::demo {

namespace {

constexpr std::int64_t kMillisecondsAMinute = 60'000;

/// The number of the step that wrote an entry stands in the milliseconds of its minute: steps happen at whole minutes.
/// So an interrupted history knows how far it came.
drivers::WallTime markedWith(std::size_t step, drivers::WallTime wall) {
    wall.millisecondsSinceEpoch += static_cast<std::int64_t>(step);
    return wall;
}

std::size_t stepOf(const ledger::Entry& entry) {
    return static_cast<std::size_t>(entry.wallMilliseconds % kMillisecondsAMinute);
}

drivers::WallTime wholeMinute(drivers::WallTime wall) {
    wall.millisecondsSinceEpoch -= wall.millisecondsSinceEpoch % kMillisecondsAMinute;
    return wall;
}

bool isComplete(const ledger::Book& book) {
    const auto run = records::runByNumber(book.reader(), records::PlanKind::run, kDemoLastRun);
    const auto readings = run && *run ? records::readingsOfRun(book.reader(), (*run)->plan.run)
                                      : ledger::Result<std::vector<records::ReadingRow>>{};
    return readings && !readings->empty();
}

bool isDemo(const ledger::Book& book) {
    const auto shop = records::shop(book.reader());
    return shop && *shop && (*shop)->demo;
}

/// The first step that is not in the book; that behind the last if none is missing.
ledger::Result<std::size_t> firstMissing(const ledger::Book& book) {
    const auto head = book.head();
    if (!head) {
        return tl::unexpected(head.error());
    }
    if (head->sequence == 0) {
        return std::size_t{0};
    }
    if (!isDemo(book) || isComplete(book)) {
        return demoSteps().size();
    }
    const auto last = book.entry(head->sequence);
    return last ? ledger::Result<std::size_t>{stepOf(*last) + 1} : tl::unexpected(last.error());
}

/// Of a simulated ride that was on when the first start was interrupted: it rides again.
void discardSpools(const ledger::Book& book) {
    const auto names = ledger::Spool::findLeftOver(book.folder());
    for (const auto& name : names ? *names : std::vector<std::string>{}) {
        std::error_code ignored;
        std::filesystem::remove(book.folder() / name, ignored);
    }
}

class History final {
public:
    History(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now, const std::string& probeAddress)
        : m_book{book}, m_calendar{wholeMinute(now)}, m_pen{book, m_clock}, m_clerk{book, m_pen, m_clock, probeAddress},
          m_floor{book, writer, m_pen, m_clock} {}

    ledger::Result<void> play(std::size_t from) {
        m_from = from;
        const auto& steps = demoSteps();
        for (std::size_t i = 0; i < steps.size(); ++i) {
            beginStep(i, steps[i]);
            const bool announces = onlyAnnounces(steps[i].act);
            const bool sameDay = from < steps.size() && steps[i].at.day == steps[from].at.day;
            if (i < from && !(announces && sameDay)) {
                continue;
            }
            if (auto done = play(steps[i], i, !announces); !done) {
                return done;
            }
        }
        return {};
    }

private:
    void beginStep(std::size_t index, const DemoStep& step) {
        using std::chrono::milliseconds;
        const auto wall = markedWith(index, m_calendar.wallOf(step.at));
        const milliseconds passed{wall.millisecondsSinceEpoch - m_clock.wall().millisecondsSinceEpoch};
        m_clock.moveTo(wall, index == 0 ? drivers::MonotonicTime{0} : std::max(milliseconds{3'000}, passed));
        m_pen.beginStep(index, m_from);
        if (step.at.day != m_day) {
            m_day = step.at.day;
            m_floor.newDay();
        }
    }

    ledger::Result<void> play(const DemoStep& step, std::size_t index, bool writes) {
        const auto before = m_book.head();
        const auto done = std::visit(
            [&](const auto& act) -> ledger::Result<void> {
                if constexpr (std::is_invocable_v<DemoClerk&, decltype(act)>) {
                    return m_clerk(act);
                } else {
                    return m_floor.play(step.dryer, act);
                }
            },
            step.act);
        const auto after = m_book.head();
        if (done && writes && before && after && before->sequence == after->sequence) {
            return tl::unexpected(
                ledger::Failure{ledger::FailureCode::refused, "step " + std::to_string(index) + " of the demo, day " +
                                                                  std::to_string(step.at.day) + ", minute " +
                                                                  std::to_string(step.at.minute) + ", wrote nothing"});
        }
        return done;
    }

    ledger::Book& m_book;
    DemoCalendar m_calendar;
    DemoClock m_clock;
    DemoPen m_pen;
    DemoClerk m_clerk;
    DemoFloor m_floor;
    std::size_t m_from = 0;
    int m_day = 0;
};

} // namespace

ledger::Result<void> writeDemo(ledger::Book& book, ledger::Writer& writer, drivers::WallTime now,
                               const std::string& probeAddress) {
    const auto from = firstMissing(book);
    if (!from) {
        return tl::unexpected(from.error());
    }
    if (*from >= demoSteps().size()) {
        return {};
    }
    discardSpools(book);
    return History{book, writer, now, probeAddress}.play(*from);
}

} // namespace holdfast::kiosk::demo
