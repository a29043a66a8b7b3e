#pragma once

#include "kiosk/records/stock_queries.hpp"
#include "kiosk/shop/stock/stock_fault.hpp"

#include <tl/expected.hpp>

#include <map>
#include <vector>

namespace holdfast::kiosk::shop {

struct DraftPart final {
    std::int64_t bucket = 0; ///< number on its label
    std::string mass{};      ///< as typed; any unit, the same for all parts
};

/// A mix while it is being made.
struct MixDraft final {
    std::int64_t number = 0; ///< the label its bucket will wear; a part of that number is the mix itself
    std::string name{};
    std::string colour{};
    std::vector<DraftPart> parts{};
    std::string additive{}; ///< per cent by mass of the whole; empty: what the parts bring
    bool catalysedNow = false;
};

/// What a mix is checked against.
struct MixStock final {
    std::map<std::int64_t, records::BucketTree> trees{}; ///< the parts' as they stand; a missing one is unknown
    std::vector<analytics::InkFamily> families{};        ///< newest revisions
    std::int64_t now = 0;                                ///< wall milliseconds
    analytics::Date today{};
};

/// Every fault at once: no part, one that is not there, was thrown away or mislabelled, or stands twice, a mass that is
/// no number above 0, other chemistries, and a mix that contains itself at any depth. Without the bucket's id.
[[nodiscard]] tl::expected<records::MixMade, std::vector<StockFault>> mixFrom(const MixDraft& draft,
                                                                              const MixStock& stock);

enum class PartWarningCause { pastPotLife, expired, additiveOutsideBand, emptied };
/// Nothing that forbids the mix; whoever mixes should know.
struct PartWarning final {
    PartWarningCause cause{};
    std::int64_t bucket = 0;
    bool operator==(const PartWarning&) const = default;
};
[[nodiscard]] std::vector<PartWarning> warningsOf(const MixDraft& draft, const MixStock& stock);

} // namespace holdfast::kiosk::shop
