#pragma once

#include "drivers/clock/clock.hpp"

#include <cstddef>
#include <vector>

namespace holdfast::drivers {

/// Gives the readings of one read their stamps: the last one now, the others spread evenly back to the read before, but
/// never further apart than one and a half intervals (else two lines after a silence would hide half of it). Stamps
/// always rise, by 1 µs at least.
class Stamper final {
public:
    explicit Stamper(MonotonicTime interval) noexcept : m_widest{interval * 3 / 2} {}
    /// The port was opened: nothing that comes was sent before.
    void opened(MonotonicTime now) noexcept;
    [[nodiscard]] std::vector<MonotonicTime> stamps(std::size_t count, MonotonicTime now);

private:
    MonotonicTime m_widest;
    MonotonicTime m_last{-1};
};

} // namespace holdfast::drivers
