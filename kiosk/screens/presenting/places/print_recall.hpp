#pragma once

#include "kiosk/reports/recall_list.hpp"
#include "kiosk/screens/presenting/places/print_source.hpp"

#include <cstdint>
#include <optional>
#include <string>

/// Whom to call, from the book: for the printer, and for a file (reports::csvOf).
namespace holdfast::kiosk::screens {

[[nodiscard]] std::optional<reports::RecallList> recallOfLot(const PrintSource& source, const std::string& lot);
[[nodiscard]] std::optional<reports::RecallList> recallOfRun(const PrintSource& source, std::int64_t run);
/// Everything that a maker's batch went into; nothing if it went into nothing.
[[nodiscard]] std::optional<reports::RecallList> recallOfBatch(const PrintSource& source, const std::string& batch);

/// The same of a bucket, itself and through mixes.
[[nodiscard]] std::optional<reports::RecallList> recallOfBucket(const PrintSource& source, std::int64_t bucket);
[[nodiscard]] PrintWanted recallOfBucketFor(const PrintSource& source, std::int64_t bucket);

/// Of lots that share what a complaint is about, by their ids.
[[nodiscard]] std::optional<reports::RecallList> recallOfLots(const PrintSource& source, std::int64_t complaint,
                                                              const std::vector<std::string>& lots);
[[nodiscard]] PrintWanted recallOfLotsFor(const PrintSource& source, std::int64_t complaint,
                                          const std::vector<std::string>& lots);

/// Of the lot `id`; of the maker's batch `id` if no lot has that id; of the run `number` if `id` is empty.
[[nodiscard]] PrintWanted recallFor(const PrintSource& source, const std::string& id, std::int64_t number);

} // namespace holdfast::kiosk::screens
