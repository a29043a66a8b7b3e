#pragma once

#include <functional>
#include <string>

namespace holdfast::kiosk::screens {

/// Ways from one of these places to another: each shows the thing and brings its place to the screen.
struct DecidingLinks final {
    std::function<void(const std::string& run)> trace{};           ///< empty: asks for a clue
    std::function<void(const std::string& complaint)> complaint{}; ///< empty: the list
    std::function<void(const std::string& lot)> lot{};
};

} // namespace holdfast::kiosk::screens
