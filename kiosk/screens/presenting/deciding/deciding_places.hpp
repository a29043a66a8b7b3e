#pragma once

#include "kiosk/screens/presenting/deciding/complaint_place.hpp"
#include "kiosk/screens/presenting/deciding/holds_place.hpp"
#include "kiosk/screens/presenting/deciding/trace_place.hpp"

#include <memory>

namespace holdfast::kiosk::screens {

/// The three places, with the ways between them. They are shown as "holds", "trace" and "complaint".
struct DecidingPlaces final {
    std::unique_ptr<HoldsPlace> holds{};
    std::unique_ptr<TracePlace> trace{};
    std::unique_ptr<ComplaintPlace> complaint{};
};
/// All three must live until none of them is asked any more.
[[nodiscard]] DecidingPlaces decidingPlaces(const PlaceNeeds& needs);

} // namespace holdfast::kiosk::screens
