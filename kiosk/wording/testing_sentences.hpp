#pragma once

#include "analytics/fastness/lab_text.hpp"
#include "drivers/clock/clock.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/shop/testing/colour_finding.hpp"
#include "kiosk/shop/testing/due_tests.hpp"
#include "kiosk/shop/testing/picture_fault.hpp"
#include "kiosk/shop/testing/test_fault.hpp"
#include "kiosk/wording/sentences.hpp"

namespace holdfast::kiosk::wording {

[[nodiscard]] std::string word(analytics::Quantity quantity, const std::string& ownName, const Speech& speech);
[[nodiscard]] std::string word(analytics::CrackClass seen, const Speech& speech);
[[nodiscard]] std::string word(records::TestOutcome outcome, const Speech& speech);
[[nodiscard]] std::string word(records::TestKind kind, const Speech& speech);
[[nodiscard]] std::string word(records::LoadWord load, const Speech& speech);
[[nodiscard]] std::string word(records::PrintEnd end, const Speech& speech);
[[nodiscard]] std::string word(analytics::Bound bound, const Speech& speech);

/// A starter's in the language, an own one's as it was typed.
[[nodiscard]] std::string methodName(const records::MethodDescribed& method, const Speech& speech);
[[nodiscard]] std::vector<std::string> methodSteps(const records::MethodDescribed& method, const Speech& speech);
[[nodiscard]] std::vector<std::string> methodCautions(const records::MethodDescribed& method, const Speech& speech);

/// "4.5", "hairline", "−3.2 %", "yes".
[[nodiscard]] std::string valueText(const analytics::TestValue& value, const Speech& speech);
/// "change in colour 4.5"; of a pull "hairline at 50 %".
[[nodiscard]] std::string resultText(const analytics::TestResult& result, const Speech& speech);
/// "change in colour at least 3.5, up to wash 5".
[[nodiscard]] std::string criterionText(const analytics::Criterion& criterion, records::TestKind kind,
                                        const Speech& speech);

/// "Wash 5", "24 h look", "Stretch".
[[nodiscard]] std::string testTitle(const records::MethodDescribed& method, const std::optional<int>& cycle,
                                    const Speech& speech);
/// "Tue" within the week before `today`, else "3 Oct".
[[nodiscard]] std::string dayWord(analytics::Date day, analytics::Date today, const Speech& speech);
/// "3 Oct", with its year if it is another than that of `today`.
[[nodiscard]] std::string dayText(analytics::Date day, analytics::Date today, const Speech& speech);
/// "16:00" of today, "3 Oct 16:00".
[[nodiscard]] std::string momentText(std::int64_t wallMilliseconds, const drivers::WallTime& now, const Speech& speech);
/// "late, Tue", "now", "by 16:00", "today".
[[nodiscard]] std::string dueText(const shop::DueTest& due, const drivers::WallTime& now, const Speech& speech);
/// "5 due, 1 of them late".
[[nodiscard]] std::string dueCountText(const std::vector<shop::DueTest>& due, const Speech& speech);

/// Full sentences.
[[nodiscard]] std::string sentence(const shop::TestFault& fault, const drivers::WallTime& now, const Speech& speech);
[[nodiscard]] std::string sentence(const analytics::LabLineFault& fault, const Speech& speech);
[[nodiscard]] std::string sentence(const shop::PictureFault& fault, const Speech& speech);
/// What the instrument found: its grade, and which way the colour went.
[[nodiscard]] std::string sentence(const shop::ColourFinding& found, shop::ColourScale scale, const Speech& speech);
/// "The load is void: …" or "The load is valid: …".
[[nodiscard]] std::string sentence(records::LoadWord load, const Speech& speech);

} // namespace holdfast::kiosk::wording
