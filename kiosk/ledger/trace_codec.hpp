#pragma once

#include "kiosk/ledger/digest.hpp"
#include "kiosk/ledger/failure.hpp"

#include <cstddef>
#include <cstdint>
#include <span>
#include <vector>

namespace holdfast::kiosk::ledger {

/// One sample as an instrument gave it.
struct TracePoint {
    std::int64_t microseconds = 0; ///< monotonic
    std::int64_t counts = 0;       ///< of the instrument's own step
    std::uint8_t flags = 0;        ///< the driver's; opaque here

    bool operator==(const TracePoint&) const = default;
};

/// A trace of more points than this is refused when read (two days at 20 a second are 3.5 million).
inline constexpr std::size_t maximumTracePoints = 4'000'000;

/// Lossless for every value of every field, in any order; the format is in README.md. At most maximumTracePoints.
[[nodiscard]] Bytes encodeTrace(std::span<const TracePoint> points);
/// Never trusts a length it reads: damaged for what encodeTrace cannot have made, newerBook for a later format.
[[nodiscard]] Result<std::vector<TracePoint>> decodeTrace(std::span<const std::uint8_t> bytes);

} // namespace holdfast::kiosk::ledger
