#pragma once

#include "analytics/lots/lot_standing.hpp"
#include "drivers/clock/clock.hpp"
#include "kiosk/records/floor_records.hpp"
#include "kiosk/shop/deciding/complaint.hpp"
#include "kiosk/shop/deciding/fields.hpp"
#include "kiosk/shop/deciding/pieces.hpp"
#include "kiosk/shop/deciding/shelf.hpp"
#include "kiosk/shop/tracing/trace_page.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::wording {

/// In the middle of a sentence: "a failed test".
[[nodiscard]] std::string word(records::HoldCause cause, const Speech& speech);
/// A full sentence: "A valid test of a print failed."
[[nodiscard]] std::string sentence(records::HoldCause cause, const Speech& speech);
/// What was decided: "Released".
[[nodiscard]] std::string word(records::DecisionWord word, const Speech& speech);
/// What a press does: "Release".
[[nodiscard]] std::string chosenText(records::DecisionWord word, const Speech& speech);
[[nodiscard]] std::string word(analytics::LotStanding standing, const Speech& speech);
[[nodiscard]] std::string word(records::ComplaintKind kind, const Speech& speech);
[[nodiscard]] std::string word(records::StruckCause cause, const Speech& speech);
[[nodiscard]] std::string word(records::BeltPosition position, const Speech& speech);
/// "shipped", as ids and keys spell it.
[[nodiscard]] std::string nameOf(records::PiecePlace place);
[[nodiscard]] std::string nameOf(records::DecisionWord word);
[[nodiscard]] std::string nameOf(records::ComplaintKind kind);
[[nodiscard]] std::string nameOf(records::StruckCause cause);
/// What a print was tested for: "wash".
[[nodiscard]] std::string kindText(records::TestKind kind, const Speech& speech);
[[nodiscard]] std::string deedText(shop::tracing::Deed deed, const Speech& speech);

[[nodiscard]] std::string sentence(const shop::deciding::Fault& fault, const Speech& speech);
/// `method` is what people call the one that is owed, `print` the signs on the print.
[[nodiscard]] std::string sentence(const shop::tracing::NotTested& gap, const std::string& method,
                                   const std::string& print, const Speech& speech);
/// What keeping a complaint does; empty while nothing was chosen.
[[nodiscard]] std::string sentence(shop::deciding::ComplaintEffect effect, int lot, const Speech& speech);

/// "pieces 113 to 140, 28 pieces", "the whole lot".
[[nodiscard]] std::string piecesText(const records::HoldPlaced& hold, const std::optional<int>& made,
                                     const Speech& speech);
/// The balance in one sentence.
[[nodiscard]] std::string balanceText(const std::optional<shop::deciding::PiecesSum>& sum, const Speech& speech);
/// "28 shipped to Kestrel"; of an entry of no pieces "taken back".
[[nodiscard]] std::string moveText(const records::PiecesMoved& move, const Speech& speech);
[[nodiscard]] std::string countText(const records::PiecesCounted& count, const Speech& speech);
/// What of a recall went out: "Shipped: 60 pieces, 2 cartons, 1 customer, 1 lot."
[[nodiscard]] std::string recallSumText(int pieces, int cartons, int customers, int lots, const Speech& speech);
/// What the shelf lacks and has otherwise; empty if it agrees.
[[nodiscard]] std::string shelfText(const shop::deciding::ShelfSum& sum, const Speech& speech);

/// "2026-03-01 14:02".
[[nodiscard]] std::string whenText(std::int64_t wallMilliseconds, int utcOffsetMinutes);
/// "2026-03-01".
[[nodiscard]] std::string dayOf(std::int64_t wallMilliseconds, int utcOffsetMinutes);

} // namespace holdfast::kiosk::wording
