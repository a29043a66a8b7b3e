#pragma once

#include "kiosk/ledger/digest.hpp"

#include <QImage>

namespace holdfast::kiosk::reports {

/// A picture of the book at most `side` pixels in either direction, upright as its camera says. Null if it is no
/// picture, or one that would take more than 64 MB to unpack.
[[nodiscard]] QImage thumbnailOf(const ledger::Bytes& bytes, int side);

} // namespace holdfast::kiosk::reports
