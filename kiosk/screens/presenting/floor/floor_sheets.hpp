#pragma once

#include "kiosk/screens/presenting/floor/floor_typed.hpp"
#include "kiosk/screens/presenting/floor_facts.hpp"
#include "kiosk/screens/sheet/sheet_state.hpp"
#include "kiosk/shop/proving/proving_state.hpp"

/// The right sides of the floor's sheets: title, blocks, actions. Every id begins with "reading." but those of action
/// cards ("floor.…").
namespace holdfast::kiosk::screens {

/// How the next ride is taken: placement, position, reason.
void showRideSheet(SheetPageState& page, const shop::ProvingState& state, const wording::Speech& speech);
/// A spot thermometer or a surface gun. Only while `state.hand` is there.
void showHandSheet(SheetPageState& page, const shop::ProvingState& state, const FloorTyped& typed,
                   const wording::Speech& speech);
/// The note of a flash. Only while `state.flash` is there.
void showFlashSheet(SheetPageState& page, const shop::ProvingState& state, const FloorTyped& typed,
                    const wording::Speech& speech);
/// The dryer: belt, set-point, dwell, what rides on it, what can be done.
void showDryerSheet(SheetPageState& page, const shop::ProvingState& state, const FloorFacts& facts,
                    const FloorTyped& typed, const wording::Speech& speech);
/// What the next crew must know, in thirty seconds.
void showHandOverSheet(SheetPageState& page, const shop::ProvingState& state, const FloorFacts& facts,
                       const wording::Speech& speech);

// shared by them

[[nodiscard]] SheetBlock placementChoices(std::optional<analytics::Placement> chosen, const wording::Speech& speech);
[[nodiscard]] SheetBlock positionChoices(records::BeltPosition chosen, const wording::Speech& speech);
/// The placement of this entry: as chosen, else as the instrument is described.
[[nodiscard]] std::optional<analytics::Placement> placementOf(const shop::KnownInstrument& instrument,
                                                              const std::optional<analytics::Placement>& chosen);
/// A field for a figure: what is no figure stays there with its fault, else the figure as authored.
[[nodiscard]] SheetField figureField(const std::string& id, const std::string& label, const std::string& value,
                                     const FloorTyped& typed, const wording::Speech& speech);
/// "4.2 m/min".
[[nodiscard]] std::string beltText(double metresPerMinute, const wording::Speech& speech);
/// "dwell 48 s"; empty while belt or heated length is not known.
[[nodiscard]] std::string dwellText(const shop::ProvingState& state, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
