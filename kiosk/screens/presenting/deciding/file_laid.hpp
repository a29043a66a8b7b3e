#pragma once

#include <filesystem>
#include <string>

namespace holdfast::kiosk::screens {

/// Writes into the exchange folder, whole or not at all: what stood there before stays until the new one is written.
[[nodiscard]] bool layFile(const std::filesystem::path& file, const std::string& bytes);

} // namespace holdfast::kiosk::screens
