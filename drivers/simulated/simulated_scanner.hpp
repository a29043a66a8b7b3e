#pragma once

#include "drivers/simulated/pseudo_terminal.hpp"

#include <string>
#include <string_view>

namespace holdfast::drivers {

/// A code scanner on a pseudo-terminal: what is scanned goes out at once, ended by CR LF. Not thread-safe.
class SimulatedScanner final {
public:
    explicit SimulatedScanner(std::string path = {}) : m_port{std::move(path)} {}
    [[nodiscard]] const std::string& path() const noexcept { return m_port.path(); }
    void scan(std::string_view text) { m_port.send(std::string{text} + "\r\n"); }
    /// Bytes as they are, without an end of line.
    void send(std::string_view bytes) { m_port.send(bytes); }
    /// As much of them as fits now; gives how many bytes that was.
    std::size_t offer(std::string_view bytes) { return m_port.offer(bytes); }
    void setPlugged(bool plugged) {
        if (plugged) {
            m_port.plug();
        } else {
            m_port.unplug();
        }
    }

private:
    PseudoTerminal m_port;
};

} // namespace holdfast::drivers
