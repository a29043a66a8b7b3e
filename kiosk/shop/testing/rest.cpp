#include "kiosk/shop/testing/rest.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::kiosk::shop {

double restHours(const records::PrintRow& print, const records::MethodDescribed& method) noexcept {
    const bool alone = method.kind == records::TestKind::bleedWatch || method.kind == records::TestKind::waterDrop;
    return alone ? method.restHours : std::max(print.restHours, method.restHours);
}

std::int64_t restedAt(const records::PrintRow& print, const records::MethodDescribed& method) noexcept {
    return print.named.printedAt + static_cast<std::int64_t>(std::llround(restHours(print, method) *
                                                                          static_cast<double>(kMillisecondsPerHour)));
}

Validity validityOf(const records::PrintRow& print, const records::MethodDescribed& method) noexcept {
    if (method.chemistries.empty()) {
        return Validity::valid;
    }
    if (print.chemistries.empty()) {
        return Validity::chemistryUnknown;
    }
    const bool all = std::all_of(print.chemistries.begin(), print.chemistries.end(), [&](auto one) {
        return std::find(method.chemistries.begin(), method.chemistries.end(), one) != method.chemistries.end();
    });
    return all ? Validity::valid : Validity::notForChemistry;
}

} // namespace holdfast::kiosk::shop
