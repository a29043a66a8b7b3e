#pragma once

#include "kiosk/screens/parts/header_state.hpp"
#include "kiosk/screens/presenting/floor_facts.hpp"
#include "kiosk/shop/proving/proving_state.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::screens {

enum class Place { dryer, run, strip };

/// "144 red jerseys, 100 % polyester"; without pieces "red jerseys, 100 % polyester".
[[nodiscard]] std::string whatIsPrinted(const records::RunPlanned& plan, const wording::Speech& speech);

[[nodiscard]] HeaderState headerOf(Place place, const shop::ProvingState& state, const FloorFacts& facts,
                                   const wording::Speech& speech);

/// A place with a head of its own is named there, and beside it the next test of prints instead of the next reading;
/// with an empty `what` the head stays as it is.
void tellOfPlace(HeaderState& header, const QString& what, const QString& how, const FloorFacts& facts,
                 const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
