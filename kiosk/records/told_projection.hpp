#pragma once

#include "kiosk/records/kinds.hpp"
#include "kiosk/records/shop_projection.hpp"

#include <memory>
#include <set>
#include <string>
#include <vector>

namespace holdfast::kiosk::records {

using KeptRecords = std::vector<std::unique_ptr<const Record>>; ///< each is large: only pointers move

/// The shop's read tables, made from records that are still at hand: reading thousands of bodies again that were just
/// written takes longer than putting them into the tables. Whatever it was not told of goes the ordinary way, and the
/// tables are the same.
class ToldProjection final : public ledger::Projection {
public:
    [[nodiscard]] int version() const override { return m_shop.version(); }
    [[nodiscard]] std::string_view schema() const override { return m_shop.schema(); }
    void apply(SQLite::Database& database, const ledger::Entry& entry) const override;
    [[nodiscard]] std::vector<std::string> tables() const override { return m_shop.tables(); }

    /// What the next entries were made from, in order. Not while one is applied.
    void expect(KeptRecords records) const;

private:
    ShopProjection m_shop;
    mutable KeptRecords m_expected;
    mutable std::size_t m_next = 0;
    mutable std::set<std::string> m_noted; ///< kinds
};

} // namespace holdfast::kiosk::records
