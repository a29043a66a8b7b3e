#include "kiosk/records/bucket_tree.hpp"

#include <algorithm>

namespace holdfast::kiosk::records {
namespace {

bool counts(const BucketTree& tree, std::size_t part) {
    return tree.bucket.parts[part].mass > 0.0;
}

/// The earliest catalysing in it.
std::optional<std::int64_t> catalysedAt(const BucketTree& tree) {
    auto earliest = tree.bucket.potLifeStartsAt;
    for (std::size_t i = 0; i < tree.parts.size(); ++i) {
        const auto below = counts(tree, i) ? catalysedAt(tree.parts[i]) : std::nullopt;
        if (below && (!earliest || *below < *earliest)) {
            earliest = below;
        }
    }
    return earliest;
}

/// Per cent of the bucket's mass; nothing if nothing was told of it or of any part.
std::optional<double> additiveOf(const BucketTree& tree) {
    if (tree.bucket.additivePercent || tree.parts.empty()) {
        return tree.bucket.additivePercent;
    }
    double most = 0.0;
    for (const auto& part : tree.bucket.parts) {
        most = std::max(most, part.mass);
    }
    double mass = 0.0;
    double additive = 0.0;
    bool told = false;
    for (std::size_t i = 0; i < tree.parts.size(); ++i) {
        if (counts(tree, i)) {
            const double weight = tree.bucket.parts[i].mass / most;
            const auto below = additiveOf(tree.parts[i]);
            mass += weight;
            additive += weight * below.value_or(0.0);
            told = told || below;
        }
    }
    return told ? std::optional{additive / mass} : std::nullopt;
}

bool pastPotLife(const BucketTree& tree, const analytics::Ink& ink, std::int64_t wallMilliseconds) {
    const auto start = ink.requirement.potLife ? catalysedAt(tree) : std::nullopt;
    constexpr double kMillisecondsPerSecond = 1000.0;
    return start && (static_cast<double>(wallMilliseconds) - static_cast<double>(*start)) / kMillisecondsPerSecond >
                        ink.requirement.potLife->count();
}

bool outsideBand(const BucketTree& tree, const analytics::Ink& ink) {
    if (ink.additiveBandsExclude()) {
        return true;
    }
    const auto percent = ink.requirement.additiveBand ? additiveOf(tree) : std::nullopt;
    constexpr double kAsTyped = 1e-9; // 1.1 % lies in a band that ends at 0.011, both ends inclusive
    return percent && (*percent / 100.0 < ink.requirement.additiveBand->low - kAsTyped ||
                       *percent / 100.0 > ink.requirement.additiveBand->high + kAsTyped);
}

} // namespace

std::optional<analytics::Ink> inkOfTree(const BucketTree& tree, const FamilyOf& familyOf) {
    if (!tree.bucket.isMix) {
        auto family = familyOf(tree.bucket.name);
        return family ? std::optional{analytics::pureInk(std::move(*family))} : std::nullopt;
    }
    std::vector<analytics::MixPart> parts;
    for (std::size_t i = 0; i < tree.parts.size(); ++i) {
        if (counts(tree, i)) {
            auto ink = inkOfTree(tree.parts[i], familyOf);
            if (!ink) {
                return std::nullopt;
            }
            parts.push_back({std::move(*ink), tree.bucket.parts[i].mass});
        }
    }
    auto mixed = analytics::mixInks(tree.bucket.name, parts);
    return mixed ? std::optional{std::move(*mixed)} : std::nullopt;
}

std::optional<analytics::BucketTrouble> troubleOf(const BucketTree& tree, const analytics::Ink& ink,
                                                  std::int64_t wallMilliseconds, analytics::Date today) {
    using analytics::BucketFault;
    if (pastPotLife(tree, ink, wallMilliseconds)) {
        return analytics::BucketTrouble{tree.bucket.name, BucketFault::pastPotLife};
    }
    if (tree.bucket.expiry && today > *tree.bucket.expiry) {
        return analytics::BucketTrouble{tree.bucket.name, BucketFault::expired};
    }
    if (outsideBand(tree, ink)) {
        return analytics::BucketTrouble{tree.bucket.name, BucketFault::additiveOutsideBand};
    }
    return std::nullopt;
}

} // namespace holdfast::kiosk::records
