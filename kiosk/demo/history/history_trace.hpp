#pragma once

#include "analytics/cure/trace.hpp"
#include "analytics/quantity/duration.hpp"
#include "kiosk/ledger/trace_codec.hpp"

#include <cstdint>
#include <vector>

namespace holdfast::kiosk::demo {

/// A short ride of one sample a second in steps of 0.1 °C: from cold to a top whose sustained peak is `top`, or, with a
/// hold, to a level that is kept for it, and down until the film is cold. The same for the same seed.
[[nodiscard]] std::vector<ledger::TracePoint> shortRide(analytics::Temperature top, analytics::Duration hold,
                                                        std::uint64_t seed);
[[nodiscard]] analytics::RawTrace rawTraceOf(const std::vector<ledger::TracePoint>& points);

} // namespace holdfast::kiosk::demo
