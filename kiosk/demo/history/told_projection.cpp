#include "kiosk/demo/history/told_projection.hpp"

#include "kiosk/records/apply_record.hpp"

#include <utility>

namespace holdfast::kiosk::demo {

void ToldProjection::expect(KeptRecords records) const {
    m_expected = std::move(records);
    m_next = 0;
}

void ToldProjection::apply(SQLite::Database& database, const ledger::Entry& entry) const {
    if (m_next >= m_expected.size()) {
        m_shop.apply(database, entry);
        return;
    }
    const auto record = std::move(m_expected[m_next++]);
    if (records::rowOf(*record).kind == entry.kind) {
        records::applyRecord(database, entry, *record);
    } else {
        m_shop.apply(database, entry);
    }
}

} // namespace holdfast::kiosk::demo
