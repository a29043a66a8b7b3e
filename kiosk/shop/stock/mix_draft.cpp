#include "kiosk/shop/stock/mix_draft.hpp"

#include "kiosk/records/bucket_tree.hpp"
#include "kiosk/records/floor_projection.hpp"
#include "kiosk/shop/stock/form_reader.hpp"
#include "kiosk/shop/typed/typed.hpp"

#include <algorithm>
#include <set>

namespace holdfast::kiosk::shop {
namespace {

using records::BucketTree;

bool holds(const BucketTree& tree, std::int64_t number) {
    return tree.bucket.number == number ||
           std::any_of(tree.parts.begin(), tree.parts.end(), [&](const auto& part) { return holds(part, number); });
}

std::int64_t sizeOf(const BucketTree& tree) {
    std::int64_t size = 1;
    for (const auto& part : tree.parts) {
        size += sizeOf(part);
    }
    return size;
}

std::optional<analytics::Ink> inkOf(const BucketTree& tree, const std::vector<analytics::InkFamily>& families) {
    return records::inkOfTree(tree, [&](const std::string& name) -> std::optional<analytics::InkFamily> {
        const auto found =
            std::find_if(families.begin(), families.end(), [&](const auto& one) { return one.name == name; });
        return found != families.end() ? std::optional{*found} : std::nullopt;
    });
}

const BucketTree* treeOf(const MixStock& stock, std::int64_t number) {
    const auto found = stock.trees.find(number);
    return found != stock.trees.end() ? &found->second : nullptr;
}

class PartsReader final {
public:
    PartsReader(StockReader& read, const MixDraft& draft, const MixStock& stock)
        : m_read{read}, m_draft{draft}, m_stock{stock} {}

    std::vector<records::BucketPart> parts() {
        if (m_draft.parts.empty()) {
            m_read.fault({StockFaultCause::noPart, "parts"});
        }
        std::vector<records::BucketPart> parts;
        for (const auto& part : m_draft.parts) {
            const auto mass = massOf(part);
            const auto* tree = checked(part);
            if (tree != nullptr) {
                parts.push_back({tree->bucket.id, mass});
                addInk(part, *tree, mass);
            }
        }
        checkTogether();
        return parts;
    }

private:
    void fault(StockFaultCause cause, const DraftPart& part, std::string text = {}) {
        m_read.fault({cause, "part." + std::to_string(part.bucket), std::move(text), part.bucket, {}, {}});
    }

    double massOf(const DraftPart& part) {
        const auto mass = numberFrom(part.mass);
        if (!mass || *mass <= 0.0) {
            fault(StockFaultCause::massNotPositive, part, firstSigns(trimmed(part.mass)));
            return 0.0;
        }
        return *mass;
    }

    /// Nothing if the bucket cannot be a part.
    const BucketTree* checked(const DraftPart& part) {
        const auto* tree = treeOf(m_stock, part.bucket);
        if (!m_seen.insert(part.bucket).second) {
            fault(StockFaultCause::bucketTwice, part);
        } else if (part.bucket == m_draft.number || (tree != nullptr && holds(*tree, m_draft.number))) {
            fault(StockFaultCause::containsItself, part);
        } else if (tree == nullptr) {
            fault(StockFaultCause::bucketUnknown, part);
        } else if (tree->bucket.closed && *tree->bucket.closed != records::BucketEnd::empty) {
            fault(StockFaultCause::bucketClosed, part);
        } else {
            return tree;
        }
        return nullptr;
    }

    void addInk(const DraftPart& part, const BucketTree& tree, double mass) {
        m_size += sizeOf(tree);
        if (auto ink = inkOf(tree, m_stock.families)) {
            m_inks.push_back({std::move(*ink), mass > 0.0 ? mass : 1.0});
        } else {
            fault(StockFaultCause::familyGone, part);
        }
    }

    void checkTogether() {
        const auto mixed = analytics::mixInks({}, m_inks);
        if (!mixed && mixed.error() == analytics::MixFault::chemistriesDiffer) {
            m_read.fault({StockFaultCause::chemistriesDiffer, "parts"});
        }
        if (m_size > records::projecting::kMostBucketsInTree) {
            m_read.fault({StockFaultCause::tooManyBuckets, "parts"});
        }
    }

    StockReader& m_read;
    const MixDraft& m_draft;
    const MixStock& m_stock;
    std::set<std::int64_t> m_seen;
    std::vector<analytics::MixPart> m_inks;
    std::int64_t m_size = 1;
};

PartWarningCause causeOf(analytics::BucketFault fault) {
    return fault == analytics::BucketFault::pastPotLife ? PartWarningCause::pastPotLife
           : fault == analytics::BucketFault::expired   ? PartWarningCause::expired
                                                        : PartWarningCause::additiveOutsideBand;
}

} // namespace

tl::expected<records::MixMade, std::vector<StockFault>> mixFrom(const MixDraft& draft, const MixStock& stock) {
    StockReader read{analytics::TemperatureUnit::celsius};
    records::MixMade mix;
    mix.number = draft.number;
    mix.name = read.name(draft.name, "name");
    mix.colour = read.text(draft.colour, "colour");
    mix.parts = PartsReader{read, draft, stock}.parts();
    mix.additivePercent = read.percent(draft.additive, "additive");
    mix.potLifeStartsAt = draft.catalysedNow ? std::optional{stock.now} : std::nullopt;
    if (!read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    return mix;
}

std::vector<PartWarning> warningsOf(const MixDraft& draft, const MixStock& stock) {
    std::vector<PartWarning> warnings;
    for (const auto& part : draft.parts) {
        const auto* tree = treeOf(stock, part.bucket);
        if (tree == nullptr) {
            continue;
        }
        if (tree->bucket.closed == records::BucketEnd::empty) {
            warnings.push_back({PartWarningCause::emptied, part.bucket});
        }
        const auto ink = inkOf(*tree, stock.families);
        const auto trouble = ink ? records::troubleOf(*tree, *ink, stock.now, stock.today) : std::nullopt;
        if (trouble) {
            warnings.push_back({causeOf(trouble->fault), part.bucket});
        }
    }
    return warnings;
}

} // namespace holdfast::kiosk::shop
