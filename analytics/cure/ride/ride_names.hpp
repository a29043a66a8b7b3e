#pragma once

#include "analytics/cure/ride/turn.hpp"

#include <string_view>

/// The stable written name of every typed value of this folder, as JSON and language tables use it: kebab-case, never
/// shown to people.
namespace holdfast::analytics {

[[nodiscard]] std::string_view nameOf(RiseFault value) noexcept;
[[nodiscard]] std::string_view nameOf(RideSignKind value) noexcept;
[[nodiscard]] std::string_view nameOf(TurnKnob value) noexcept;
[[nodiscard]] std::string_view nameOf(TurnCaution value) noexcept;
[[nodiscard]] std::string_view nameOf(TurnAssumption value) noexcept;
[[nodiscard]] std::string_view nameOf(NoTurn value) noexcept;

} // namespace holdfast::analytics
