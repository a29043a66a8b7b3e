#include "drivers/link/status_teller.hpp"

namespace holdfast::drivers {

std::optional<LinkStatus> StatusTeller::become(LinkState state, LinkFault cause) {
    m_wasReady = m_wasReady || state == LinkState::ready;
    const bool isLost = m_wasReady && state != LinkState::ready;
    const bool tellsLess = cause == LinkFault::none || cause == LinkFault::portMissing; // than why it was lost
    if (!(isLost && status.state == LinkState::lost && tellsLess)) {
        status.cause = cause;
    }
    status.state = isLost ? LinkState::lost : state;
    if (status == m_told) {
        return std::nullopt;
    }
    m_told = status;
    return m_told;
}

std::optional<LinkStatus> StatusTeller::stop() {
    m_wasReady = false;
    return become(LinkState::absent, LinkFault::none);
}

} // namespace holdfast::drivers
