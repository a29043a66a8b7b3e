#include "kiosk/demo/history/history_pen.hpp"

#include "kiosk/demo/demo_pen.hpp"

#include <algorithm>
#include <cassert>
#include <utility>

namespace holdfast::kiosk::demo {
namespace {

constexpr std::size_t kEntriesAtOnce = 2'000;
constexpr std::int64_t kMillisecondsAMinute = 60'000;

} // namespace

HistoryPen::HistoryPen(const HistoryFacts& facts, int utcOffsetMinutes, KeepRequest keep)
    : m_midnight{std::chrono::milliseconds{facts.firstDay.time_since_epoch()}.count() -
                 utcOffsetMinutes * kMillisecondsAMinute},
      m_firstDay{facts.firstDay}, m_utcOffsetMinutes{utcOffsetMinutes}, m_keep{std::move(keep)},
      m_days(static_cast<std::size_t>(facts.days)) {}

std::int64_t HistoryPen::wallOf(HistoryMinute at) const noexcept {
    return m_midnight + at * kMillisecondsAMinute;
}

std::chrono::sys_days HistoryPen::dateOf(HistoryMinute at) const noexcept {
    return m_firstDay + std::chrono::days{dayOf(at)};
}

std::string HistoryPen::newId(HistoryMinute at) {
    ledger::UuidRandom random{};
    const auto low = m_chance.bits();
    const auto high = m_chance.bits();
    for (std::size_t i = 0; i < random.size(); ++i) {
        random[i] = static_cast<std::uint8_t>((i < 8 ? low >> (8U * i) : high >> (8U * (i - 8))) & 0xFFU);
    }
    return ledger::uuid7(static_cast<std::uint64_t>(wallOf(at)), random);
}

void HistoryPen::put(HistoryMinute at, records::Record record, std::int64_t person, std::string id) {
    const auto day = static_cast<std::size_t>(dayOf(at));
    assert(day < m_days.size());
    m_days[day].push_back({at, std::make_unique<const records::Record>(std::move(record)), person, std::move(id)});
}

ledger::Result<void> HistoryPen::finishDay(int day) {
    auto& items = m_days[static_cast<std::size_t>(day)];
    std::stable_sort(items.begin(), items.end(), [](const Item& a, const Item& b) { return a.at < b.at; });
    for (auto& item : items) {
        write(item);
    }
    std::vector<Item>{}.swap(items);
    return m_request.entries.size() < kEntriesAtOnce ? ledger::Result<void>{} : finish();
}

void HistoryPen::write(Item& item) {
    const auto& row = records::rowOf(*item.record);
    ledger::EntryDraft draft;
    draft.id = item.id.empty() ? newId(item.at) : std::move(item.id);
    draft.kiosk = kDemoKiosk;
    draft.wallMilliseconds = wallOf(item.at);
    draft.utcOffsetMinutes = m_utcOffsetMinutes;
    draft.person = item.person;
    draft.kind = std::string{row.kind};
    draft.version = row.version;
    draft.body = records::bodyOf(*item.record);
    m_request.entries.push_back(std::move(draft));
    m_records.push_back(std::move(item.record));
}

ledger::Result<void> HistoryPen::finish() {
    if (m_request.entries.empty()) {
        return {};
    }
    return m_keep(std::exchange(m_request, {}), std::exchange(m_records, {}));
}

} // namespace holdfast::kiosk::demo
