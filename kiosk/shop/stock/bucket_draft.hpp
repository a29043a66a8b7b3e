#pragma once

#include "kiosk/records/bucket_records.hpp"
#include "kiosk/shop/stock/stock_fault.hpp"

#include <tl/expected.hpp>

#include <vector>

namespace holdfast::kiosk::shop {

/// A pail while it is being opened.
struct BucketDraft final {
    std::string family{};
    std::string colour{};
    std::string batch{};
    std::string expiry{};   ///< 2026-03-01
    std::string additive{}; ///< per cent by mass
    bool catalysedNow = false;
};

/// Every fault at once. Without id and number. `families` are the names in the book; `now` wall milliseconds.
[[nodiscard]] tl::expected<records::BucketOpened, std::vector<StockFault>>
bucketFrom(const BucketDraft& draft, const std::vector<std::string>& families, std::int64_t now);

} // namespace holdfast::kiosk::shop
