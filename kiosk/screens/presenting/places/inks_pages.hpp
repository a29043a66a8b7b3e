#pragma once

#include "kiosk/records/stock_queries.hpp"
#include "kiosk/screens/presenting/places/blocks.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::screens {

/// A bucket with all that is asked about it at the press.
struct ShownBucket final {
    records::BucketTree tree{};
    std::optional<analytics::Ink> ink{}; ///< absent: nobody knows what it is
    std::vector<analytics::InkFamily> families{};
    std::vector<analytics::Fabric> fabrics{};
    std::int64_t now = 0; ///< wall milliseconds
    analytics::Date today{};
};

/// Oldest revision first, at least one.
[[nodiscard]] QList<SheetBlock> familyBlocks(const std::vector<records::FamilyRecord>& revisions,
                                             const wording::Speech& speech);
[[nodiscard]] QList<SheetBlock> fabricBlocks(const std::vector<records::FabricRecord>& revisions,
                                             const wording::Speech& speech);
/// What is wrong with it or what it cures at first, then with what it may run, then the tree.
[[nodiscard]] QList<SheetBlock> bucketBlocks(const ShownBucket& bucket, const wording::Speech& speech);

} // namespace holdfast::kiosk::screens
