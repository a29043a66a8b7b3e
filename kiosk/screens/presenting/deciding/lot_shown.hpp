#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/records/queries.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/screens/presenting/places/people_now.hpp"
#include "kiosk/shop/deciding/lot_facts.hpp"
#include "kiosk/shop/deciding/pieces.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::screens {

/// A lot with everything that stands in the book about it.
struct LotShown final {
    records::RunPlanned plan{};
    records::LotRow row{};
    std::vector<records::HoldRow> holds{}; ///< all, oldest first
    std::vector<records::DecisionRow> decisions{};
    std::vector<records::MoveRow> moves{};
    std::vector<records::CountRow> counts{}; ///< oldest first
    records::PiecesOfLot pieces{};
    std::vector<records::ReadingRow> readings{};
    std::vector<records::TestRow> tests{};
    std::vector<records::MissedRow> missed{};
    shop::PeopleNow people{};
    shop::deciding::LotFacts facts{};

    [[nodiscard]] const records::HoldRow* hold(const std::string& id) const;
    /// Undecided ones, oldest first.
    [[nodiscard]] std::vector<const records::HoldRow*> openHolds() const;
    /// The decision that called the hold's shipped pieces back; null: nobody did.
    [[nodiscard]] const records::DecisionRow* recallOf(const records::HoldRow& hold) const;
    [[nodiscard]] shop::deciding::LotOfPieces ofPieces() const;
};

/// Nothing if there is no such lot.
[[nodiscard]] ledger::Result<std::optional<LotShown>> lotShown(const ledger::Book& book, const std::string& lot);

/// Those who may decide about holds and still work here.
[[nodiscard]] std::vector<shop::deciding::Entitled> entitledIn(const shop::PeopleNow& people);

/// "Ana, Ben": by number, each once.
[[nodiscard]] std::string namesOf(const std::vector<std::int64_t>& persons, const shop::PeopleNow& people,
                                  const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
