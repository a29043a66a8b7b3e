#pragma once

#include "analytics/metrology/instrument.hpp"

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

/// Ink as it stands in the shop. Every bucket, bought or mixed, wears a label K… of its number.
namespace holdfast::kiosk::records {

/// bucket.opened: a pail of one family.
struct BucketOpened final {
    std::string bucket{}; ///< id
    std::int64_t number = 0;
    std::string family{}; ///< name; the revision that counts for a lot is the lot's
    std::string colour{}; ///< may be empty
    std::string batch{};  ///< the maker's; may be empty
    std::optional<analytics::Date> expiry{};
    std::optional<double> additivePercent{};       ///< what was stirred in, by mass
    std::optional<std::int64_t> potLifeStartsAt{}; ///< wall milliseconds; absent: it has not been catalysed
};

struct BucketPart final {
    std::string bucket{}; ///< id of a bucket that stands in the book before this one
    double mass = 0.0;    ///< any unit, the same for all parts; zero counts as nothing
    bool operator==(const BucketPart&) const = default;
};

/// mix.made: a bucket made of others. A mix of mixes is drawn as a tree and judged as the mix of all their parts.
struct MixMade final {
    std::string bucket{}; ///< id of the mixed bucket
    std::int64_t number = 0;
    std::string name{}; ///< as people call it
    std::string colour{};
    std::vector<BucketPart> parts{}; ///< at least one of positive mass
    std::optional<double> additivePercent{};
    std::optional<std::int64_t> potLifeStartsAt{};
};

enum class BucketEnd { empty, thrownAway, mislabelled };

/// bucket.closed: no longer used; it stays in the book and in the ancestry of its mixes.
struct BucketClosed final {
    std::string bucket{};
    BucketEnd why = BucketEnd::empty;
};

} // namespace holdfast::kiosk::records
