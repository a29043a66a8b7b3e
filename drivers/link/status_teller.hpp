#pragma once

#include "drivers/link/link_state.hpp"

#include <optional>

namespace holdfast::drivers {

/// Keeps a link's status by the rule of LinkState (lost until ready again, with the cause that tells most) and says
/// whether there is something new to tell.
class StatusTeller final {
public:
    LinkStatus status;

    /// What to tell; nothing if it was told already.
    [[nodiscard]] std::optional<LinkStatus> become(LinkState state, LinkFault cause);
    /// The link was stopped: not lost any more.
    [[nodiscard]] std::optional<LinkStatus> stop();
    [[nodiscard]] bool isReady() const noexcept { return status.state == LinkState::ready; }

private:
    LinkStatus m_told;
    bool m_wasReady = false;
};

} // namespace holdfast::drivers
