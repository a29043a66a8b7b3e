#include "drivers/link/stamper.hpp"

#include <algorithm>

namespace holdfast::drivers {

void Stamper::opened(MonotonicTime now) noexcept {
    m_last = std::max(m_last, now);
}

std::vector<MonotonicTime> Stamper::stamps(std::size_t count, MonotonicTime now) {
    if (count == 0) {
        return {};
    }
    const auto n = static_cast<std::int64_t>(count);
    const MonotonicTime last = std::max(now, m_last + MonotonicTime{n});
    const MonotonicTime apart = std::min(last - m_last, m_widest * n);
    std::vector<MonotonicTime> stamps;
    stamps.reserve(count);
    for (std::int64_t left = n - 1; left >= 0; --left) {
        stamps.push_back(last - apart * left / n);
    }
    m_last = last;
    return stamps;
}

} // namespace holdfast::drivers
