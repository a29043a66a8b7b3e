#pragma once

#include <string_view>
#include <vector>

namespace holdfast::drivers {

/// The texts of drivers/catalogue/instruments, put into the program at build time.
[[nodiscard]] std::vector<std::string_view> builtInDescriptions();

} // namespace holdfast::drivers
