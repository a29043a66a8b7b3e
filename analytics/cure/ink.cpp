#include "analytics/cure/ink.hpp"

#include <algorithm>
#include <cmath>

namespace holdfast::analytics {
namespace {

template <class T>
std::optional<T> smallerOf(const std::optional<T>& a, const std::optional<T>& b) {
    return a && b ? std::min(*a, *b) : (a ? a : b);
}

/// An absent optional is less than any value.
template <class T>
std::optional<T> largerOf(const std::optional<T>& a, const std::optional<T>& b) {
    return std::max(a, b);
}

std::optional<GelRange> joinedGel(const std::optional<GelRange>& a, const std::optional<GelRange>& b) {
    if (!a || !b) {
        return a ? a : b;
    }
    return GelRange{std::max(a->low, b->low), std::max(a->high, b->high)};
}

std::optional<AdditiveBand> joinedBand(const std::optional<AdditiveBand>& a, const std::optional<AdditiveBand>& b) {
    if (!a || !b) {
        return a ? a : b;
    }
    return AdditiveBand{std::max(a->low, b->low), std::min(a->high, b->high)};
}

/// A part with pairs that the others do not share counts with the hotter pair as its C and h.
InkFamily withHotterPairAsCure(InkFamily part) {
    if (part.pairs) {
        part.cure = part.pairs->hotter.temperature;
        part.hold = part.pairs->hotter.time;
        part.pairs.reset();
    }
    return part;
}

InkFamily joined(InkFamily whole, const InkFamily& part) {
    whole.gel = joinedGel(whole.gel, part.gel);
    whole.cure = std::max(whole.cure, part.cure);
    whole.hold = std::max(whole.hold, part.hold);
    whole.unbroken = whole.unbroken || part.unbroken;
    whole.ceiling = smallerOf(whole.ceiling, part.ceiling);
    whole.bleedResistance = std::min(whole.bleedResistance, part.bleedResistance);
    whole.ease = std::max(whole.ease, part.ease);
    whole.potLife = smallerOf(whole.potLife, part.potLife);
    whole.additiveBand = joinedBand(whole.additiveBand, part.additiveBand);
    whole.restBeforeTest = largerOf(whole.restBeforeTest, part.restBeforeTest);
    whole.mark = std::max(whole.mark, part.mark);
    if (whole.source.find(part.source) == std::string::npos) {
        whole.source += (whole.source.empty() ? "" : "; ") + part.source;
    }
    return whole;
}

InkFamily requirementOf(const std::vector<InkFamily>& parts) {
    const bool samePairs = std::all_of(parts.begin(), parts.end(),
                                       [&](const InkFamily& part) { return part.pairs == parts.front().pairs; });
    const auto counted = [samePairs](const InkFamily& part) { return samePairs ? part : withHotterPairAsCure(part); };
    auto whole = counted(parts.front());
    for (const auto& part : parts) {
        whole = joined(std::move(whole), counted(part));
    }
    return whole;
}

std::vector<InkFamily> flattened(const std::vector<MixPart>& mix) {
    std::vector<InkFamily> families;
    for (const auto& part : mix) {
        if (part.mass == 0.0) {
            continue;
        }
        for (const auto& family : part.ink.parts) {
            if (std::find(families.begin(), families.end(), family) == families.end()) {
                families.push_back(family);
            }
        }
    }
    return families;
}

} // namespace

bool Ink::additiveBandsExclude() const noexcept {
    return requirement.additiveBand && requirement.additiveBand->low > requirement.additiveBand->high;
}

Ink pureInk(InkFamily family) {
    auto name = family.name;
    auto part = family;
    return Ink{std::move(name), std::move(family), {std::move(part)}};
}

tl::expected<Ink, MixFault> mixInks(std::string name, const std::vector<MixPart>& parts) {
    if (std::any_of(parts.begin(), parts.end(),
                    [](const MixPart& p) { return !std::isfinite(p.mass) || p.mass < 0; })) {
        return tl::unexpected(MixFault::massNegativeOrNotFinite);
    }
    auto families = flattened(parts);
    if (families.empty()) {
        return tl::unexpected(MixFault::noParts);
    }
    const bool oneChemistry = std::all_of(families.begin(), families.end(), [&](const InkFamily& family) {
        return family.chemistry == families.front().chemistry;
    });
    if (!oneChemistry) {
        return tl::unexpected(MixFault::chemistriesDiffer);
    }
    if (families.size() == 1) {
        auto ink = pureInk(std::move(families.front()));
        ink.name = std::move(name);
        return ink;
    }
    auto requirement = requirementOf(families);
    requirement.name = name;
    requirement.revision = 1;
    return Ink{std::move(name), std::move(requirement), std::move(families)};
}

} // namespace holdfast::analytics
