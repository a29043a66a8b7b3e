#pragma once

#include "analytics/cure/verdict.hpp"

#include <string_view>

/// The stable written name of every typed value of the cure room, as JSON and language tables use it: kebab-case, never
/// shown to people.
namespace holdfast::analytics {

[[nodiscard]] std::string_view nameOf(ReasonCode value) noexcept;
[[nodiscard]] std::string_view nameOf(Remedy value) noexcept;
[[nodiscard]] std::string_view nameOf(Word value) noexcept;
[[nodiscard]] std::string_view nameOf(FlashWord value) noexcept;
[[nodiscard]] std::string_view nameOf(WindowState value) noexcept;
[[nodiscard]] std::string_view nameOf(WindowFault value) noexcept;
[[nodiscard]] std::string_view nameOf(CulpritKind value) noexcept;
[[nodiscard]] std::string_view nameOf(Advice value) noexcept;
[[nodiscard]] std::string_view nameOf(FamilyFault value) noexcept;
[[nodiscard]] std::string_view nameOf(FabricFault value) noexcept;
[[nodiscard]] std::string_view nameOf(MixFault value) noexcept;
[[nodiscard]] std::string_view nameOf(Join value) noexcept;
[[nodiscard]] std::string_view nameOf(DropWhy value) noexcept;

} // namespace holdfast::analytics
