#pragma once

#include "analytics/cure/ink_family.hpp"

#include <tl/expected.hpp>

#include <string>
#include <vector>

namespace holdfast::analytics {

/// What lies in a bucket: one family, or a mix flattened to the families it is made of.
/// `requirement` is what the whole must meet (decisions 1, Mix); `parts` are the families with positive mass; a pure
/// ink has exactly one part, equal to `requirement`.
struct Ink final {
    std::string name;
    InkFamily requirement;
    std::vector<InkFamily> parts;
    [[nodiscard]] bool isMix() const noexcept { return parts.size() > 1; }
    /// No fraction of additive suits every part: the requirement's band is empty (its low end above its high end), and
    /// any bucket of it lies outside.
    [[nodiscard]] bool additiveBandsExclude() const noexcept;
};

/// The ink of one family, under the family's name.
[[nodiscard]] Ink pureInk(InkFamily family);

struct MixPart final {
    Ink ink;
    double mass = 0.0; ///< any unit of mass, the same for all parts
};

enum class MixFault { noParts, massNegativeOrNotFinite, chemistriesDiffer };

/// A mix of mixes is the mix of all their parts, each family once; zero mass does not count. What remains of one family
/// only is that family's pure ink under the mix's name. The combined requirement (decisions 1, Mix): the highest gel,
/// cure and hold, the lowest ceiling, bleed resistance and pot life, the longest rest, the narrowest band, the weakest
/// mark, the worst ease. Its ceiling may lie below its cure: then no window is open.
[[nodiscard]] tl::expected<Ink, MixFault> mixInks(std::string name, const std::vector<MixPart>& parts);

/// What is wrong with the bucket a layer is printed from; such a layer is not proven at any heat.
enum class BucketFault { pastPotLife, expired, additiveOutsideBand };

struct BucketTrouble final {
    std::string bucket; ///< its code or name as people know it
    BucketFault fault = BucketFault::expired;
};

} // namespace holdfast::analytics
