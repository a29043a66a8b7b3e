#pragma once

#include "analytics/metrology/instrument.hpp"
#include "analytics/quantity/temperature.hpp"

#include <optional>
#include <string>
#include <string_view>

/// What people type on the command line, read strictly: the whole text must fit.
namespace holdfast::kiosk::command {

/// "291F", "143.5C", "-2 C"; absent if it is anything else or not finite.
[[nodiscard]] std::optional<analytics::Temperature> temperatureFrom(std::string_view text);

/// "2026-11-25"; absent if there is no such day.
[[nodiscard]] std::optional<analytics::Date> dateFrom(std::string_view text);

struct InkSpec final {
    std::string name;
    std::string colour; ///< empty: not named
};

/// FAMILY[:COLOUR], parted at the last colon.
[[nodiscard]] InkSpec inkFrom(std::string_view text);

struct StripSpec final {
    std::optional<analytics::Temperature> lastDark;   ///< absent: none
    std::optional<analytics::Temperature> firstLight; ///< absent: none
};

/// "290F/295F", "none/280F", "300F/none"; absent if it is anything else or both are none.
[[nodiscard]] std::optional<StripSpec> stripFrom(std::string_view text);

} // namespace holdfast::kiosk::command
