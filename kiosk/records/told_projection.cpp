#include "kiosk/records/told_projection.hpp"

#include "kiosk/records/apply_record.hpp"

#include <SQLiteCpp/Database.h>
#include <utility>

namespace holdfast::kiosk::records {

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
    if (rowOf(*record).kind != entry.kind) {
        m_shop.apply(database, entry);
        return;
    }
    if (m_noted.empty()) {
        database.exec("PRAGMA cache_size = -65536"); // KiB: a commit of thousands of entries is written out once
    }
    if (m_noted.insert(entry.kind).second) { // if its commit fails the book is given up
        noteKind(database, entry);
    }
    applyRecord(database, entry, *record);
}

} // namespace holdfast::kiosk::records
