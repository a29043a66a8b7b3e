#pragma once

#include "kiosk/ledger/digest.hpp"

#include <filesystem>
#include <vector>

namespace holdfast::kiosk::screens {

inline constexpr std::uintmax_t kLargestPicture = 20U << 20U; ///< bytes

struct LaidPicture final {
    std::filesystem::path file{};
    ledger::Bytes bytes{};
};
struct LaidPictures final {
    std::vector<LaidPicture> pictures{}; ///< by file name
    int leftAlone = 0;                   ///< too large, or of a picture's name and no picture
};

/// JPEG and PNG pictures that lie in the folder, told by their first bytes (ITU-T T.81 B.1.1.3 start of image; ISO/IEC
/// 15948 5.2 signature); at most `most`. Larger files are not read.
[[nodiscard]] LaidPictures picturesLaid(const std::filesystem::path& folder, std::size_t most);

/// Moves them into the folder's "taken", since they stand in the book now; what cannot be moved stays.
void putAside(const std::vector<std::filesystem::path>& files);

} // namespace holdfast::kiosk::screens
