#pragma once

#include "analytics/cure/ink_family.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::analytics {

/// A cloth with its two ceilings; each may be absent.
struct Fabric final {
    std::string name;
    int revision = 1;
    std::optional<Temperature> hardCeiling;  ///< scorch, shrink
    std::optional<Temperature> bleedCeiling; ///< disperse dye in polyester
    BleedResistance needOfAtRiskColour = BleedResistance::none;
    std::vector<std::string> coloursNotAtRisk; ///< darker than the cloth; black never is at risk
    Mark mark = Mark::fromMemory;
    std::string source;

    /// The bleed resistance this print colour needs here; a colour nobody named is at risk.
    [[nodiscard]] BleedResistance needOf(const std::string& colour) const;
};

enum class FabricFault { nameEmpty, bleedAboveHard, notFinite };
[[nodiscard]] std::vector<FabricFault> faultsOf(const Fabric& fabric);

/// The four starters of contracts.md.
[[nodiscard]] std::vector<Fabric> starterFabrics();

} // namespace holdfast::analytics
