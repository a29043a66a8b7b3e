#pragma once

#include "kiosk/records/floor_records.hpp"
#include "kiosk/shop/deciding/fields.hpp"

#include <tl/expected.hpp>

/// A reading is struck only for a cause from a short list that the trace or a picture shows (decisions 4).
namespace holdfast::kiosk::shop::deciding {

struct StrikeDraft final {
    std::string reading{}; ///< id
    std::optional<records::StruckCause> cause{};
    bool seen = false; ///< the trace was shown beside the causes
};

struct StrikeFacts final {
    bool struck = false;
    bool refused = false;
    bool hasTrace = false; ///< or a picture; a reading of which nothing can be looked at is never struck
};

[[nodiscard]] tl::expected<records::ReadingStruck, Faults> strikeFrom(const StrikeDraft& draft,
                                                                      const StrikeFacts& facts);

} // namespace holdfast::kiosk::shop::deciding
