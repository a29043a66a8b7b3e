#pragma once

#include "analytics/cure/window.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::shop {

/// What an ink may be printed with on one cloth.
struct Company final {
    std::string fabric{};
    analytics::RunPlan alone{};         ///< the ink by itself
    analytics::RunWindow window{};      ///< of `alone`
    std::vector<std::string> with{};    ///< families whose layer beside it leaves the window open
    std::vector<std::string> notWith{}; ///< and those whose does not; empty if it is closed by itself
};

/// One for each cloth, in their order; a cloth or ink that is described wrongly is left out. The other layer's colour
/// is not known and counts as at risk of bleed. Without instrument: whether it can be proven is another question.
[[nodiscard]] std::vector<Company> companyOf(const analytics::Ink& ink, const std::string& colour,
                                             const std::vector<analytics::InkFamily>& families,
                                             const std::vector<analytics::Fabric>& fabrics);

} // namespace holdfast::kiosk::shop
