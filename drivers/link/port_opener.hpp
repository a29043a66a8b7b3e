#pragma once

#include "drivers/catalogue/description.hpp"
#include "drivers/link/address.hpp"
#include "drivers/link/link_state.hpp"

#include <QIODevice>

#include <tl/expected.hpp>

#include <memory>
#include <string>

namespace holdfast::drivers {

/// A port that could not be opened: portMissing, portBusy, permission; `what` is for the log.
struct PortFailure {
    LinkFault fault = LinkFault::portMissing;
    std::string what;
};

/// An open port, peers behind one seam: serial port, pseudo-terminal, recording, a fake that makes faults. The device
/// closes itself (QIODevice::aboutToClose) in the first error handler and then stays closed: a serial port that hangs
/// up would otherwise report its error some 200,000 times a second.
struct OpenPort {
    std::unique_ptr<QIODevice> device;
    std::string path;
};

/// Injected in main. Called in the thread of the link that uses the port.
class PortOpener {
public:
    PortOpener() = default;
    PortOpener(const PortOpener&) = delete;
    PortOpener& operator=(const PortOpener&) = delete;
    virtual ~PortOpener() = default;
    [[nodiscard]] virtual tl::expected<OpenPort, PortFailure> open(const Address& address,
                                                                   const SerialSettings& settings) = 0;
};

/// Opens real serial ports and pseudo-terminals, exclusively, with stale input thrown away.
class SystemPortOpener final : public PortOpener {
public:
    [[nodiscard]] tl::expected<OpenPort, PortFailure> open(const Address& address,
                                                           const SerialSettings& settings) override;
};

/// A serial device that is plugged in now, for the page where a shop chooses one.
struct FoundPort {
    Address address; ///< USB identity if it has a serial number, else topology, else path
    std::string path;
    std::string description; ///< as the device calls itself
};
[[nodiscard]] std::vector<FoundPort> listPorts();

} // namespace holdfast::drivers
