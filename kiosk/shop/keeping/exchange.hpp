#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/kinds.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/shop_file.hpp"

#include <functional>
#include <string>
#include <vector>

/// What goes into a shop file, and what one becomes in the book.
namespace holdfast::kiosk::shop {

struct InstrumentInBook final {
    records::InstrumentDescribed described{};
    std::vector<records::CertificateSpec> certificates{}; ///< oldest first
    std::vector<records::CheckSpec> checks{};
};

/// Newest revisions, and instruments in use.
struct BookStock final {
    std::vector<records::FamilyRecord> families{};
    std::vector<records::FabricRecord> fabrics{};
    std::vector<InstrumentInBook> instruments{};
    std::int64_t nextInstrument = 1; ///< number
};

[[nodiscard]] ledger::Result<BookStock> bookStock(const SQLite::Database& database);

/// Without mixes: in a book a mix is a bucket made of other buckets, not a recipe.
[[nodiscard]] records::ShopFile exportOf(const BookStock& stock);

struct ImportPlan final {
    std::vector<records::Record> list{}; ///< in order, for one commit; empty if the book has it all
    std::vector<std::string> added{};    ///< names
    std::vector<std::string> changed{};  ///< names that get another revision, certificate or check
    int same = 0;
    int mixesLeftOut = 0;
};

/// What the book does not have yet. A family or cloth that differs from the newest of its name becomes its next
/// revision, whatever revision the file says; one that is the same becomes nothing. An instrument of a known name keeps
/// its id, label and port; certificates and checks are added where the book lacks them.
[[nodiscard]] ImportPlan importOf(const records::ShopFile& file, const BookStock& stock,
                                  const std::function<std::string()>& newId);

} // namespace holdfast::kiosk::shop
