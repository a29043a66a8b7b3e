#pragma once

#include "kiosk/records/test_records.hpp"

#include <vector>

namespace holdfast::kiosk::shop {

/// The methods a book begins with, each with its mark and source. Their names, steps and cautions are a matter of the
/// language: "tests.method.KEY.name", "….step.1", "….caution.1" and so on.
[[nodiscard]] std::vector<records::MethodDescribed> starterMethods();

/// What is to be written into a book with these methods (withdrawn ones too): all starters if it has none, else
/// nothing, because somebody may have withdrawn what is missing.
[[nodiscard]] std::vector<records::MethodDescribed> startersFor(const std::vector<records::MethodDescribed>& inTheBook);

[[nodiscard]] bool isStarter(const std::string& key);

} // namespace holdfast::kiosk::shop
