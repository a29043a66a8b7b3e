#include "drivers/simulated/pseudo_terminal.hpp"

#include <array>
#include <atomic>
#include <cstdlib>
#include <filesystem>
#include <thread>
#include <utility>

#include <fcntl.h>
#include <poll.h>
#include <termios.h>
#include <unistd.h>

namespace holdfast::drivers {

namespace {

std::string temporaryPath() {
    static std::atomic<int> count{0};
    const auto name = "holdfast-port-" + std::to_string(::getpid()) + "-" + std::to_string(++count);
    return (std::filesystem::temp_directory_path() / name).string();
}

/// No echo and no line editing before anybody has set the port: what the instrument sends would come back to it.
void makeRaw(const char* terminal) noexcept {
    const int slave = ::open(terminal, O_RDWR | O_NOCTTY | O_CLOEXEC);
    if (slave < 0) {
        return;
    }
    termios settings{};
    if (::tcgetattr(slave, &settings) == 0) {
        ::cfmakeraw(&settings);
        ::tcsetattr(slave, TCSANOW, &settings);
    }
    ::close(slave);
}

bool linkTo(const std::string& terminal, const std::string& path) noexcept {
    std::error_code error;
    if (std::filesystem::is_symlink(path, error)) {
        std::filesystem::remove(path, error);
    }
    std::filesystem::create_symlink(terminal, path, error);
    return !error;
}

} // namespace

PseudoTerminal::PseudoTerminal(std::string path) : m_path{path.empty() ? temporaryPath() : std::move(path)} {
    plug();
}

PseudoTerminal::~PseudoTerminal() {
    unplug();
}

bool PseudoTerminal::plug() {
    if (isPlugged()) {
        return true;
    }
    const int master = ::posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC | O_NONBLOCK);
    std::array<char, 64> terminal{};
    const bool usable = master >= 0 && ::grantpt(master) == 0 && ::unlockpt(master) == 0 &&
                        ::ptsname_r(master, terminal.data(), terminal.size()) == 0;
    if (usable) {
        makeRaw(terminal.data());
    }
    if (!usable || !linkTo(terminal.data(), m_path)) {
        if (master >= 0) {
            ::close(master);
        }
        return false;
    }
    m_master = master;
    return true;
}

void PseudoTerminal::unplug() noexcept {
    if (!isPlugged()) {
        return;
    }
    std::error_code error;
    std::filesystem::remove(m_path, error);
    ::close(std::exchange(m_master, -1));
}

std::size_t PseudoTerminal::offer(std::string_view bytes) noexcept {
    std::size_t taken = 0;
    while (isPlugged() && taken < bytes.size()) {
        const auto written = ::write(m_master, bytes.data() + taken, bytes.size() - taken);
        if (written <= 0) {
            break;
        }
        taken += static_cast<std::size_t>(written);
    }
    return taken;
}

std::string PseudoTerminal::receive(std::chrono::milliseconds patience) {
    pollfd waiting{m_master, POLLIN, 0};
    const bool polled = isPlugged() && ::poll(&waiting, 1, static_cast<int>(patience.count())) > 0;
    if (polled && (waiting.revents & POLLIN) != 0) {
        std::array<char, 512> buffer{};
        const auto count = ::read(m_master, buffer.data(), buffer.size());
        if (count > 0) {
            return {buffer.data(), static_cast<std::size_t>(count)};
        }
    }
    if (!isPlugged() || polled) { // hung up: nobody has the port open, and poll would return at once for ever
        std::this_thread::sleep_for(patience);
    }
    return {};
}

} // namespace holdfast::drivers
