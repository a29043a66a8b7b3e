#pragma once

#include "kiosk/ledger/digest.hpp"

#include <string>

namespace holdfast::kiosk::demo {

struct PictureShape final {
    std::string cloth{}; ///< colours as the plan names them
    std::string ink{};
    int number = 0; ///< of the print: where its cracks run
    int wear = 0;   ///< 0 as printed to 10 washed off
};

/// A drawn photograph of a print, JPEG, the same for the same shape.
[[nodiscard]] ledger::Bytes pictureOfPrint(const PictureShape& shape);

} // namespace holdfast::kiosk::demo
