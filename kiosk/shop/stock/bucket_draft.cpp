#include "kiosk/shop/stock/bucket_draft.hpp"

#include "kiosk/shop/stock/form_reader.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop {

tl::expected<records::BucketOpened, std::vector<StockFault>>
bucketFrom(const BucketDraft& draft, const std::vector<std::string>& families, std::int64_t now) {
    StockReader read{analytics::TemperatureUnit::celsius};
    records::BucketOpened bucket;
    bucket.family = read.text(draft.family, "family");
    if (bucket.family.empty()) {
        read.fault({StockFaultCause::familyMissing, "family"});
    } else if (std::find(families.begin(), families.end(), bucket.family) == families.end()) {
        read.fault({StockFaultCause::familyUnknown, "family", bucket.family});
    }
    bucket.colour = read.text(draft.colour, "colour");
    bucket.batch = read.text(draft.batch, "batch");
    bucket.expiry = read.date(draft.expiry, "expiry");
    bucket.additivePercent = read.percent(draft.additive, "additive");
    bucket.potLifeStartsAt = draft.catalysedNow ? std::optional{now} : std::nullopt;
    if (!read.faults().empty()) {
        return tl::unexpected(std::move(read.faults()));
    }
    return bucket;
}

} // namespace holdfast::kiosk::shop
