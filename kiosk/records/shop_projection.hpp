#pragma once

#include "kiosk/ledger/projection.hpp"

namespace holdfast::kiosk::records {

/// The shop's read tables, which queries.hpp asks. An entry of a known kind whose body cannot be read, or that
/// contradicts what is there (a revision given twice, a reading of a lot that was never opened, a decision about a hold
/// that is decided), is refused.
class ShopProjection final : public ledger::Projection {
public:
    [[nodiscard]] int version() const override { return 6; }
    [[nodiscard]] std::string_view schema() const override;
    void apply(SQLite::Database& database, const ledger::Entry& entry) const override;
    [[nodiscard]] std::vector<std::string> tables() const override;
};

} // namespace holdfast::kiosk::records
