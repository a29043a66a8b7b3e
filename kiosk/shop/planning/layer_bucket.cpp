#include "kiosk/shop/planning/layer_bucket.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {
namespace {

/// The families in it by mass, each once, in the order in which they come.
void addParts(const records::BucketTree& tree, double share, std::vector<records::InkPart>& parts) {
    if (tree.parts.empty()) {
        const auto known =
            std::find_if(parts.begin(), parts.end(), [&](const auto& one) { return one.family == tree.bucket.name; });
        if (known != parts.end()) {
            known->mass += share;
        } else if (share > 0.0) {
            parts.push_back({tree.bucket.name, share});
        }
        return;
    }
    double whole = 0.0;
    for (const auto& part : tree.bucket.parts) {
        whole += part.mass;
    }
    for (std::size_t i = 0; i < tree.parts.size() && whole > 0.0; ++i) {
        addParts(tree.parts[i], share * tree.bucket.parts[i].mass / whole, parts);
    }
}

} // namespace

tl::expected<StockBucket, PlanFault> layerBucket(std::int64_t number, const std::optional<records::BucketTree>& tree,
                                                 const std::optional<analytics::Ink>& ink,
                                                 std::int64_t wallMilliseconds, analytics::Date today) {
    const auto fault = [&](PlanFaultCause cause) {
        return tl::unexpected(PlanFault{cause, "layers", std::to_string(number), {}});
    };
    if (!tree) {
        return fault(PlanFaultCause::bucketUnknown);
    }
    if (tree->bucket.closed) {
        return fault(PlanFaultCause::bucketClosed);
    }
    if (!ink) {
        return fault(PlanFaultCause::bucketInkUnknown);
    }
    StockBucket bucket{number, tree->bucket.name, tree->bucket.colour, {}, *ink, {}};
    addParts(*tree, 1.0, bucket.parts);
    if (const auto trouble = records::troubleOf(*tree, *ink, wallMilliseconds, today)) {
        bucket.trouble = trouble->fault;
    }
    return bucket;
}

void pourInto(DraftLayer& layer, const StockBucket& bucket) {
    layer.buckets = {bucket.number};
    layer.ink = bucket.name;
    if (layer.colour.empty()) {
        layer.colour = bucket.colour;
    }
}

} // namespace holdfast::kiosk::shop
