#pragma once

#include "kiosk/records/kinds.hpp"
#include "kiosk/shop/stock/bucket_draft.hpp"
#include "kiosk/shop/stock/mix_draft.hpp"

#include <chrono>
#include <cstdint>
#include <vector>

namespace holdfast::kiosk::demo {

/// The starters, and the cloths that this shop added.
[[nodiscard]] std::vector<records::Record> demoInks();

/// The sheet of the water-based ink has come: its next revision.
[[nodiscard]] records::Record demoWaterBasedSheet(const records::FamilyRecord& before);

/// A pail as somebody types it on the day it is opened. Null fields are empty.
struct DemoBucket final {
    std::int64_t number = 0;
    const char* family = "";
    const char* colour = "";
    const char* batch = "";
    int keepsDays = 0; ///< until its date; 0: none is on it
    const char* additive = "";
    bool catalysed = false;
};

struct DemoMix final {
    std::int64_t number = 0;
    const char* name = "";
    const char* colour = "";
    std::vector<shop::DraftPart> parts{};
};

[[nodiscard]] const DemoBucket& demoBucket(std::int64_t number);
[[nodiscard]] const DemoMix& demoMix(std::int64_t number);

[[nodiscard]] shop::BucketDraft draftOf(const DemoBucket& bucket, std::chrono::sys_days today);
[[nodiscard]] shop::MixDraft draftOf(const DemoMix& mix);

} // namespace holdfast::kiosk::demo
