#pragma once

#include "kiosk/records/stock_queries.hpp"

#include <functional>
#include <optional>
#include <string>

/// The inside that the queries about buckets and runs share; what SQLite throws goes through.
namespace holdfast::kiosk::records {

[[nodiscard]] std::optional<BucketTree> treeOf(const SQLite::Database& database, std::int64_t number);

using FamilyOf = std::function<std::optional<analytics::InkFamily>(const std::string& name)>;

/// Nothing if a family is unknown or the parts cannot be mixed.
[[nodiscard]] std::optional<analytics::Ink> inkOfTree(const BucketTree& tree, const FamilyOf& familyOf);

} // namespace holdfast::kiosk::records
