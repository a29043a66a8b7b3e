#include "kiosk/reports/briefing_facts.hpp"

#include "kiosk/ledger/digest.hpp"
#include "kiosk/shop/testing/due_reading.hpp"
#include "kiosk/shop/trending/lot_outcomes.hpp"

namespace holdfast::kiosk::reports {

namespace {

namespace trending = shop::trending;

constexpr int kWeeks = trending::kWeeksBefore + 1;

} // namespace

std::vector<BriefingWeek> briefingWeeks(const records::TrendFacts& facts, std::int64_t now) {
    std::vector<BriefingWeek> weeks(kWeeks);
    for (int i = 0; i < kWeeks; ++i) {
        weeks[static_cast<std::size_t>(i)].from = now - (kWeeks - i) * trending::kWeekMs;
    }
    trending::TrendFilter filter;
    filter.from = weeks.front().from;
    filter.to = now;
    for (const auto& outcome : trending::lotOutcomes(facts, filter)) {
        const auto opened = facts.lots[static_cast<std::size_t>(outcome.lot)].openedAt;
        if (opened < weeks.front().from || opened >= now) {
            continue;
        }
        auto& week = weeks[static_cast<std::size_t>((opened - weeks.front().from) / trending::kWeekMs)];
        ++week.lots;
        week.failed += outcome.inRates ? 1 : 0;
    }
    return weeks;
}

ledger::Result<BriefingFacts> briefingFacts(const SQLite::Database& database, const ledger::Head& head,
                                            const drivers::WallTime& now) {
    constexpr int kDaysAhead = 7;
    const auto opened = records::shop(database);
    auto facts = records::trendFacts(database);
    auto due = records::due(database, drivers::localDay(now) + std::chrono::days{kDaysAhead});
    const auto tests = shop::dueFacts(database);
    if (!opened || !facts || !due || !tests) {
        return tl::unexpected(!opened ? opened.error() : !facts ? facts.error() : !due ? due.error() : tests.error());
    }
    BriefingFacts out;
    if (*opened) {
        out.shop = (*opened)->shop;
        out.demo = (*opened)->demo;
    }
    out.now = now;
    out.printed = now;
    out.head = ledger::toHex(head.hash);
    out.sequence = head.sequence;
    out.facts = std::move(*facts);
    out.briefing = trending::briefingOf(out.facts, now.millisecondsSinceEpoch);
    out.weeks = briefingWeeks(out.facts, now.millisecondsSinceEpoch);
    out.due = {std::move(*due), shop::testsDue(*tests, now, kDaysAhead)};
    return out;
}

} // namespace holdfast::kiosk::reports
