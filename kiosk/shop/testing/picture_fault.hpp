#pragma once

#include <string>

namespace holdfast::kiosk::shop {

/// Why a file of the pictures' folder is left where it lies.
enum class PictureFaultCause {
    tooLarge,      ///< over 40 MB
    notAPicture,   ///< neither JPEG nor PNG by its content, whatever its name says
    tooManyPixels, ///< over 100 million
    damaged,       ///< begins as a picture and cannot be read to its end
    unreadable,    ///< the file cannot be opened
};

struct PictureFault final {
    PictureFaultCause cause = PictureFaultCause::unreadable;
    std::string file{}; ///< its name
    bool operator==(const PictureFault&) const = default;
};

} // namespace holdfast::kiosk::shop
