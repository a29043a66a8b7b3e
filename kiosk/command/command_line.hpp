#pragma once

#include "drivers/clock/clock.hpp"

#include <filesystem>
#include <functional>
#include <iosfwd>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::command {

/// Opening the kiosk itself: what is left when no command was given.
struct KioskOptions final {
    std::filesystem::path data;
    bool demo = false;                   ///< the invented shop with its simulated dryer
    std::vector<std::string> probePorts; ///< paths; empty: those of the instruments in the book
    std::string scannerPort;
    std::string counterPort; ///< of a counter of pieces at the feed
    double speed = 1.0;      ///< clock seconds a second, for demo and tests
    bool fullScreen = false;
    std::optional<double> panelInch; ///< else the shop's setting
};

/// What the command line cannot do itself: the things that need a screen.
struct Seams final {
    std::function<int(const KioskOptions&)> openKiosk;
    std::function<int(const std::filesystem::path&)> writePictures; ///< into a folder
    std::filesystem::path defaultData;                              ///< without --data
    std::filesystem::path defaultDemoData;
    std::string today; ///< YYYY-MM-DD by the clock
    drivers::WallTime now{};
    std::function<std::shared_ptr<void>()> readyToDraw{}; ///< for pictures and pages without a screen, while it lives
};

/// Runs one command. Exit status as the commands say; 2 for wrong options.
[[nodiscard]] int runCommandLine(int argc, const char* const* argv, const Seams& seams, std::ostream& out,
                                 std::ostream& err);

} // namespace holdfast::kiosk::command
