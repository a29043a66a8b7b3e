#pragma once

#include "kiosk/records/kinds.hpp"

#include <vector>

namespace holdfast::kiosk::records::testing {

/// One record a kind, in the order of kinds(), with every optional field set somewhere; names are invented.
[[nodiscard]] std::vector<Record> sampleOfEveryKind();
[[nodiscard]] analytics::Date day(int year, unsigned month, unsigned dayOfMonth);
[[nodiscard]] ReadingTaken sampleReading();
/// Those of prints, tests, loads, lots and complaints, in the order of kinds().
[[nodiscard]] std::vector<Record> samplesOfTesting();
[[nodiscard]] PrintNamed samplePrint();
[[nodiscard]] MethodDescribed sampleMethod();
[[nodiscard]] LoadWashed sampleLoad();
[[nodiscard]] TestDone sampleTest();
[[nodiscard]] HoldPlaced sampleHold();
[[nodiscard]] DecisionSigned sampleDecision();
[[nodiscard]] ComplaintTaken sampleComplaint();

} // namespace holdfast::kiosk::records::testing
