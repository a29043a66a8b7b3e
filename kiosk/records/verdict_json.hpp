#pragma once

#include "analytics/cure/verdict.hpp"
#include "analytics/cure/window.hpp"

#include <functional>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>

/// A verdict and a window as JSON, with the keys of contracts.md. Written by `judge --json` and into reading.taken.
/// Temperatures and differences are °C doubles printed to round trip under keys ending in _c; times in s, _s.
namespace holdfast::kiosk::records {

using Json = nlohmann::ordered_json;

/// The sentence of a reason. Only kiosk/wording makes sentences, so the caller hands this in; empty: no `text` keys.
using TextOf = std::function<std::string(const analytics::Reason&)>;

/// The keys of a verdict: verdict, bleed_not_ruled_out, margin_c, upper_margin_c, guard_c, reasons, layers; and
/// window, null without one. A margin is a number, [low, high] with null at an open end, or null.
[[nodiscard]] Json verdictJson(const analytics::Verdict& verdict, const analytics::RunWindow* window,
                               const TextOf& textOf = {});
[[nodiscard]] Json windowJson(const analytics::RunWindow& window);
[[nodiscard]] Json reasonJson(const analytics::Reason& reason, const TextOf& textOf = {});

/// "cured", "under-cured", "overheated", "not proven", "refused".
[[nodiscard]] std::string_view wordOf(analytics::Word word) noexcept;
/// "open", "not provable", "closed".
[[nodiscard]] std::string_view wordOf(analytics::WindowState state) noexcept;
/// Kebab case: reachedCure is "reached-cure".
[[nodiscard]] std::string_view wordOf(analytics::ReasonCode code) noexcept;
[[nodiscard]] std::string_view wordOf(analytics::Remedy remedy) noexcept;
[[nodiscard]] std::optional<analytics::Word> verdictWordFrom(std::string_view text) noexcept;
[[nodiscard]] std::optional<analytics::WindowState> windowStateFrom(std::string_view text) noexcept;
[[nodiscard]] std::optional<analytics::ReasonCode> reasonCodeFrom(std::string_view text) noexcept;
[[nodiscard]] std::optional<analytics::Remedy> remedyFrom(std::string_view text) noexcept;

} // namespace holdfast::kiosk::records
