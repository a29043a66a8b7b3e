#include "kiosk/demo/demo_pen.hpp"

namespace holdfast::kiosk::demo {

ledger::UuidRandom DemoPen::chance() {
    ledger::UuidRandom out{};
    for (auto& byte : out) {
        byte = static_cast<std::uint8_t>(m_engine() & 0xFFU);
    }
    return out;
}

std::string DemoPen::newId() {
    return m_ids.next(static_cast<std::uint64_t>(m_clock.wall().millisecondsSinceEpoch), chance());
}

ledger::Result<void> DemoPen::write(const std::vector<records::Record>& list,
                                    const std::vector<ledger::PersonName>& names) {
    const auto wall = m_clock.wall();
    ledger::CommitRequest request;
    for (const auto& record : list) {
        const auto& row = records::rowOf(record);
        request.entries.push_back({newId(), kDemoKiosk, wall.millisecondsSinceEpoch, wall.utcOffsetMinutes, 0,
                                   std::string{row.kind}, row.version, records::bodyOf(record)});
    }
    request.persons = names;
    const auto done = m_book.commit(request);
    return done ? ledger::Result<void>{} : tl::unexpected(done.error());
}

} // namespace holdfast::kiosk::demo
