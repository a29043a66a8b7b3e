#pragma once

#include "drivers/clock/clock.hpp"
#include "drivers/protocol/reading.hpp"

#include <cstdint>

namespace holdfast::drivers {

/// One reading as the instrument sent it: counts × step in the instrument's own unit. Counts mean nothing where a flag
/// other than outOfRange is set.
struct Sample {
    MonotonicTime at{0};
    std::int64_t counts = 0;
    SampleFlag flags = SampleFlag::none;
    bool operator==(const Sample&) const = default;
};

} // namespace holdfast::drivers
