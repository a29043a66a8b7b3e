#pragma once

#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/screens/presenting/places/sheet_place.hpp"
#include "kiosk/shop/testing/test_draft.hpp"

#include <optional>
#include <vector>

namespace holdfast::kiosk::screens {

/// Everything that the book knows about one print.
struct PrintFacts final {
    records::PrintRow print{};
    std::vector<records::PrintRow> kin{};            ///< its halves, or the whole and the other half
    std::vector<records::TestRow> tests{};           ///< of it, oldest first
    std::vector<records::TestRow> testsOfHalves{};   ///< of its halves
    std::vector<records::LoadRow> loads{};           ///< that it was in, oldest first
    std::vector<records::HoldRow> holds{};           ///< of its lot
    std::vector<records::ReadingRow> readings{};     ///< of its lot, oldest first
    std::vector<records::MethodDescribed> methods{}; ///< withdrawn ones too
    bool lotScrapped = false;
    bool shipped = false; ///< pieces of its lot went out
    std::optional<int> pieces{};
};

/// Nothing if the book has no such print.
[[nodiscard]] ledger::Result<std::optional<PrintFacts>> printFacts(const SQLite::Database& book,
                                                                   const std::string& print);

[[nodiscard]] const records::MethodDescribed* methodNamed(const std::vector<records::MethodDescribed>& methods,
                                                          const std::string& key);

/// As of now, with fresh ids and the next bin.
[[nodiscard]] ledger::Result<shop::TestContext> contextOf(const PrintFacts& facts, const PlaceNeeds& needs);

} // namespace holdfast::kiosk::screens
