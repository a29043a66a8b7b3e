#pragma once

#include "kiosk/wording/language.hpp"

#include <string>

namespace holdfast::kiosk::command {

/// Unusable input: which sentence of the language table ("command." + key) says so, and what stands in its braces.
struct CommandFault final {
    std::string key;
    wording::Arguments arguments;

    [[nodiscard]] std::string sentence(const wording::Language& language) const {
        return language.text("command." + key, arguments);
    }
};

} // namespace holdfast::kiosk::command
