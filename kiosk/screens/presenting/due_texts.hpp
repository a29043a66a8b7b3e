#pragma once

#include "kiosk/shop/proving/proving_state.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>

/// Readings that are due and pieces that are to be pulled, as people are told.
namespace holdfast::kiosk::screens {

/// "piece 212, left"
[[nodiscard]] std::string dueWhat(const shop::DuePiece& due, const wording::Speech& speech);
/// "now", "14 pieces", "23 min"
[[nodiscard]] std::string dueWhen(const shop::RunWatch& run, const wording::Speech& speech);
/// For a cell of the head: "piece 212, left" when it is due, "in 14 pieces, left" before.
[[nodiscard]] std::string dueShort(const shop::RunWatch& run, const wording::Speech& speech);
/// "Due now: piece 212, left."
[[nodiscard]] std::string dueSentence(const shop::RunWatch& run, const wording::Speech& speech);
/// "Pull pieces 101 to 222: 122, into bin L… The others may go."
[[nodiscard]] std::string pullOrder(const shop::BinBracket& bracket, const wording::Speech& speech);
/// What of a lot on hold may go; empty if its pieces are not known.
[[nodiscard]] std::string pullNote(const shop::BinBracket& bracket, const wording::Speech& speech);
/// "212, by belt speed and time"
[[nodiscard]] std::string countText(const shop::RunWatch& run, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
