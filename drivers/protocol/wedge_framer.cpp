#include "drivers/protocol/wedge_framer.hpp"

#include <utility>

namespace holdfast::drivers {

WedgeStep WedgeFramer::key(std::string_view text, MonotonicTime at) {
    WedgeStep step;
    step.swallow = true;
    if (!continues(at)) {
        step.released = release();
    }
    ++m_keys;
    m_last = at;
    if (m_keys > kLongestScan) { // no person types this fast for this long: drop it, and say so at its Enter
        m_overflowed = true;
        m_held.clear();
        return step;
    }
    m_held += text;
    return step;
}

WedgeStep WedgeFramer::enter(MonotonicTime at) {
    WedgeStep step;
    if (!continues(at) || (m_keys < kShortestScan && !m_overflowed)) {
        step.released = release();
        return step;
    }
    step.swallow = true;
    const bool overflowed = m_overflowed;
    const std::string text = release();
    if (overflowed) {
        step.fault = ScanFault::tooLong;
        return step;
    }
    auto checked = checkScan(text);
    if (checked) {
        step.scan = std::move(*checked);
    } else {
        step.fault = checked.error();
    }
    return step;
}

WedgeStep WedgeFramer::expire(MonotonicTime at) {
    WedgeStep step;
    if (!continues(at)) {
        step.released = release();
    }
    return step;
}

bool WedgeFramer::continues(MonotonicTime at) const noexcept {
    return isHolding() && at - m_last < kScanPace;
}

std::string WedgeFramer::release() noexcept {
    m_keys = 0;
    m_overflowed = false;
    return std::exchange(m_held, {});
}

} // namespace holdfast::drivers
