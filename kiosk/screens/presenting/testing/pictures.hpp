#pragma once

#include "kiosk/ledger/digest.hpp"
#include "kiosk/shop/testing/picture_fault.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <filesystem>
#include <optional>
#include <string>

namespace holdfast::kiosk::screens {

/// A picture as it would be kept: JPEG, its longer side at most kLongestSide.
struct PictureRead final {
    ledger::Bytes jpeg{};
    std::string sha256{};                ///< of `jpeg`
    std::optional<std::int64_t> print{}; ///< number in the one T-code that lies in the picture; several: none
    std::filesystem::path file{};
};

inline constexpr std::uintmax_t kLargestPictureFile = 40'000'000; ///< bytes of the file
inline constexpr std::int64_t kMostPixels = 100'000'000;
inline constexpr int kLongestSide = 2048;

/// By its content, whatever it is called. Turned upright as the camera noted. Any thread.
[[nodiscard]] tl::expected<PictureRead, shop::PictureFault> readPicture(const std::filesystem::path& file);

} // namespace holdfast::kiosk::screens
