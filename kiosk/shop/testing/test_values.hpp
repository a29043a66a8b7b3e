#pragma once

#include "kiosk/shop/testing/test_draft.hpp"
#include "kiosk/shop/testing/test_reader.hpp"

/// From what was typed about one test to its values; faults go to the reader.
namespace holdfast::kiosk::shop {

/// `place` of series; the crack classes of pulls have their elongation.
void readAnswers(const TestDraft& draft, const analytics::TestPlace& place, bool firstLook, TestReader& read,
                 records::TestDone& done);
void readPulls(const TestDraft& draft, TestReader& read, records::TestDone& done);
void readShrink(const TestDraft& draft, TestReader& read, records::TestDone& done);
void readColours(const TestDraft& draft, const analytics::TestPlace& place, TestReader& read, records::TestDone& done);
/// All three, or nothing; `field` is "before" or "after".
[[nodiscard]] std::optional<analytics::Lab> labFrom(const LabDraft& draft, const std::string& field, TestReader& read);

} // namespace holdfast::kiosk::shop
