#pragma once

#include <cstddef>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <optional>
#include <string>
#include <utility>

/// Files that somebody brings to the kiosk.
namespace holdfast::kiosk::screens {

/// More faults of a file than that are counted, not listed.
inline constexpr std::size_t kMostFaultsShown = 12;

/// The whole file; nothing if it cannot be read or is larger than 64 MiB, which no list of ours is.
[[nodiscard]] inline std::optional<std::string> bytesOf(const std::filesystem::path& file) {
    constexpr std::uintmax_t kLargestFile = 64U << 20U;
    std::error_code fault;
    const auto size = std::filesystem::file_size(file, fault);
    std::ifstream in{file, std::ios::binary};
    if (fault || !in || size > kLargestFile) {
        return std::nullopt;
    }
    std::string bytes{std::istreambuf_iterator<char>{in}, {}};
    return in.bad() ? std::nullopt : std::optional{std::move(bytes)};
}

} // namespace holdfast::kiosk::screens
