#pragma once

#include "kiosk/screens/presenting/deciding/film_mark.hpp"
#include "kiosk/screens/presenting/deciding/lot_shown.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"

/// What Holds shows of a lot.
namespace holdfast::kiosk::screens {

inline constexpr std::string_view kHoldsLot = "holds.lot.";         ///< then the lot's id
inline constexpr std::string_view kHoldsHold = "holds.hold.";       ///< then the hold's id
inline constexpr std::string_view kHoldsReading = "holds.reading."; ///< then the reading's id
inline constexpr std::string_view kHoldsBecause = "holds.because."; ///< then the hold's id: to what caused it

/// How a lot is shown: the words, and how far the shop's clock is from UTC.
struct LotSpeech final {
    const wording::Speech& speech;
    int utcOffsetMinutes = 0;
    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return speech.text(key, arguments);
    }
};

/// `hold` is the one looked at; empty: the lot itself, as of an unproven one.
void addLot(QList<SheetBlock>& blocks, const LotShown& lot, const std::string& hold, const LotSpeech& how);

/// The lot's pieces as a bar; nothing while neither a plan nor a count says how many there are.
[[nodiscard]] std::optional<PieceBarState> pieceBarOf(const LotShown& lot, const LotSpeech& how);

/// Where the pieces are, and the difference in words.
void addPieces(QList<SheetBlock>& blocks, const LotShown& lot, const LotSpeech& how);
void addReadings(QList<SheetBlock>& blocks, const std::vector<records::ReadingRow>& readings, std::string_view prefix,
                 const LotSpeech& how);
[[nodiscard]] TrailEntry decisionEntry(const records::DecisionRow& row, const shop::PeopleNow& people,
                                       const LotSpeech& how);

} // namespace holdfast::kiosk::screens
