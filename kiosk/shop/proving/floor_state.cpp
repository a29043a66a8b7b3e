#include "kiosk/shop/proving/floor_state.hpp"

#include <cmath>

namespace holdfast::kiosk::shop {

std::optional<analytics::Duration> dwellOf(const records::DryerNow& dryer) {
    const auto length = dryer.described.heatedLengthMetres;
    const auto speed = dryer.beltMetresPerMinute; // not as described: it may have been turned, and nobody said to what
    if (!length || !speed || !(*speed > 0.0)) {
        return std::nullopt;
    }
    return analytics::Duration{*length / *speed * 60.0};
}

std::optional<int> piecesInTunnel(const records::DryerDescribed& dryer) {
    if (!dryer.heatedLengthMetres || !dryer.piecesPerMetre) {
        return std::nullopt;
    }
    const double pieces = std::ceil(*dryer.heatedLengthMetres * *dryer.piecesPerMetre - 1e-9);
    return pieces >= 0.0 && pieces <= 1e6 ? std::optional{static_cast<int>(pieces)} : std::nullopt;
}

} // namespace holdfast::kiosk::shop
