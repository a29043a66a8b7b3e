#include "analytics/cure/fabric.hpp"

#include "analytics/cure/plain_text.hpp"

#include <algorithm>

namespace holdfast::analytics {

BleedResistance Fabric::needOf(const std::string& colour) const {
    const bool listed = std::any_of(coloursNotAtRisk.begin(), coloursNotAtRisk.end(), [&](const std::string& other) {
        return !isBlank(other) && sameName(other, colour);
    });
    return listed || sameName(colour, "black") ? BleedResistance::none : needOfAtRiskColour;
}

std::vector<FabricFault> faultsOf(const Fabric& fabric) {
    std::vector<FabricFault> faults;
    if (isBlank(fabric.name)) {
        faults.push_back(FabricFault::nameEmpty);
    }
    if (fabric.bleedCeiling && fabric.hardCeiling && *fabric.bleedCeiling > *fabric.hardCeiling) {
        faults.push_back(FabricFault::bleedAboveHard);
    }
    if ((fabric.hardCeiling && !fabric.hardCeiling->isFinite()) ||
        (fabric.bleedCeiling && !fabric.bleedCeiling->isFinite())) {
        faults.push_back(FabricFault::notFinite);
    }
    return faults;
}

} // namespace holdfast::analytics
