#pragma once

#include <chrono>
#include <cstddef>
#include <string>
#include <string_view>

namespace holdfast::drivers {

/// The instrument's end of a real pseudo-terminal, whose other end stands at a path that stays the same over unplugging
/// (a symbolic link that this object makes and takes away). Not thread-safe.
class PseudoTerminal final {
public:
    /// `path` is where the port is to stand; an empty one makes a temporary name. An existing link there is replaced,
    /// anything else is left alone and the terminal stays unplugged.
    explicit PseudoTerminal(std::string path);
    PseudoTerminal(const PseudoTerminal&) = delete;
    PseudoTerminal& operator=(const PseudoTerminal&) = delete;
    ~PseudoTerminal();

    [[nodiscard]] const std::string& path() const noexcept { return m_path; }
    [[nodiscard]] bool isPlugged() const noexcept { return m_master >= 0; }
    /// False if the system gives no terminal.
    bool plug();
    void unplug() noexcept;

    /// What does not fit is lost, as on a line that nobody reads.
    void send(std::string_view bytes) noexcept { offer(bytes); }
    /// How many bytes of the beginning fit; the rest is for the caller to offer again.
    std::size_t offer(std::string_view bytes) noexcept;
    /// What came within `patience`; empty if nothing did.
    [[nodiscard]] std::string receive(std::chrono::milliseconds patience);

private:
    std::string m_path;
    int m_master = -1;
};

} // namespace holdfast::drivers
