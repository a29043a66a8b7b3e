#pragma once

#include "analytics/cure/fabric.hpp"
#include "analytics/cure/ink.hpp"

#include <optional>
#include <string>
#include <vector>

namespace holdfast::analytics {

struct Layer final {
    std::string colour; ///< may be empty: then it counts as at risk of bleed
    Ink ink;
    std::optional<BucketTrouble> bucketTrouble;
};

/// Layers as they lie, bottom first, on a fabric. Positions shown to people count from 1 at the bottom.
struct RunPlan final {
    std::vector<Layer> layers;
    Fabric fabric;
};

} // namespace holdfast::analytics
