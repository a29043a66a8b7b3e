#pragma once

#include "kiosk/demo/history/chance.hpp"
#include "kiosk/demo/history/history_facts.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/records/told_projection.hpp"

#include <cstdint>
#include <functional>
#include <memory>
#include <string>
#include <vector>

namespace holdfast::kiosk::demo {

using records::KeptRecords;
/// Is given the records that the entries of the request were made from as well, in the same order.
using KeepRequest = std::function<ledger::Result<void>(ledger::CommitRequest, KeptRecords)>;

/// Puts what happens into the order of time, day by day, and hands it on in large requests. Ids are the same every
/// time.
class HistoryPen final {
public:
    HistoryPen(const HistoryFacts& facts, int utcOffsetMinutes, KeepRequest keep);

    /// Wall milliseconds.
    [[nodiscard]] std::int64_t wallOf(HistoryMinute at) const noexcept;
    [[nodiscard]] std::chrono::sys_days dateOf(HistoryMinute at) const noexcept;
    [[nodiscard]] int utcOffsetMinutes() const noexcept { return m_utcOffsetMinutes; }
    [[nodiscard]] std::string newId(HistoryMinute at);

    /// On a day that is not finished yet; what was put first stands first within a minute. Without an id it gets one.
    void put(HistoryMinute at, records::Record record, std::int64_t person = 0, std::string id = {});
    void putTrace(ledger::Bytes bytes) { m_request.blobs.push_back({"trace", std::move(bytes)}); }
    void putNames(const std::vector<ledger::PersonName>& names) { m_request.persons = names; }

    /// Nothing more happens on it or before.
    [[nodiscard]] ledger::Result<void> finishDay(int day);
    /// Hands on what is left.
    [[nodiscard]] ledger::Result<void> finish();

private:
    struct Item final {
        HistoryMinute at = 0;
        std::unique_ptr<const records::Record> record{};
        std::int64_t person = 0;
        std::string id{};
    };
    void write(Item& item);

    std::int64_t m_midnight; ///< wall milliseconds before the first day
    std::chrono::sys_days m_firstDay;
    int m_utcOffsetMinutes;
    KeepRequest m_keep;
    Chance m_chance{0x20374};
    std::vector<std::vector<Item>> m_days;
    ledger::CommitRequest m_request;
    KeptRecords m_records; ///< of the request's entries
};

} // namespace holdfast::kiosk::demo
