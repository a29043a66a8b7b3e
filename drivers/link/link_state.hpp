#pragma once

#include <string>

namespace holdfast::drivers {

/// Where a link stands. A link that was ready once stays `lost`, with a cause that may change, until it is ready again:
/// `ready` after `lost` is "back". Before that it goes absent ↔ opening → identifying → ready.
enum class LinkState {
    absent,      ///< the port is not there
    opening,     ///< the port is there but could not be opened yet, see the cause
    identifying, ///< open, and nothing has yet shown that the right instrument answers
    ready,       ///< readings arrive
    lost,        ///< was ready; nothing usable arrives
};

/// Why a link is not ready; a closed list, so that wording can be exhaustive.
enum class LinkFault {
    none,
    portMissing, ///< no such port or USB device
    portBusy,    ///< another program, or another link of this one, has it open
    permission,  ///< this user may not open it
    unplugged,   ///< it was open and went away
    wrongDevice, ///< something answers that is not the instrument asked for
    silent,      ///< open, and nothing comes
    garbled,     ///< text comes that is not this instrument's
    wrongBaud,   ///< bytes come that are no text at all: the speed or parity is wrong
    wrongUnit,   ///< the instrument was switched to the other temperature unit
};

/// What a link says of itself. Empty strings where nothing is known yet.
struct LinkStatus {
    LinkState state = LinkState::absent;
    std::string instrument;   ///< the catalogue's id
    std::string serialNumber; ///< as the instrument sent it
    LinkFault cause = LinkFault::none;
    std::string identity = {}; ///< what it says it is: maker and model of *IDN?, else empty
    std::string port = {};     ///< the path last opened, for the service screen
    bool operator==(const LinkStatus&) const = default;
};

} // namespace holdfast::drivers
