#pragma once

#include "kiosk/screens/presenting/places/print_source.hpp"

#include <cstdint>

/// What sticks to pieces and prints, and the list of what is on hold.
namespace holdfast::kiosk::screens {

/// Of the newest hold with that bin.
[[nodiscard]] PrintWanted binLabelFor(const PrintSource& source, std::int64_t bin);
[[nodiscard]] PrintWanted printLabelFor(const PrintSource& source, std::int64_t print);
[[nodiscard]] PrintWanted quarantineFor(const PrintSource& source);

} // namespace holdfast::kiosk::screens
