#pragma once

#include "analytics/fastness/colour.hpp"
#include "analytics/fastness/pass_rule.hpp"
#include "kiosk/records/json_object.hpp"

#include <optional>
#include <string>

/// What a test gives and what is asked of it. The key of a value says its kind: grade, crack, fraction (of a length),
/// number or yes; which one has to stand there follows from the quantity.
namespace holdfast::kiosk::records {

[[nodiscard]] Json toJson(const analytics::TestResult& result);
[[nodiscard]] Json toJson(const analytics::PassRule& rule);
[[nodiscard]] Json toJson(const analytics::Lab& colour);

[[nodiscard]] analytics::TestResult readTestResult(ObjectReader& from);
/// Notes what faultsOf(rule) finds, too.
[[nodiscard]] analytics::PassRule readPassRule(ObjectReader& from);
/// A fault for a colour that no surface has.
[[nodiscard]] std::optional<analytics::Lab> optionalLab(ObjectReader& from, const char* key);
/// 1 to 5 in half steps, or a fault.
[[nodiscard]] analytics::Grade readGrade(ObjectReader& from, const char* key);

} // namespace holdfast::kiosk::records
