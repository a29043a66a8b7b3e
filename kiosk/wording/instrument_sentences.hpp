#pragma once

#include "analytics/metrology/fixed_points/check_procedure.hpp"
#include "kiosk/shop/instruments/form_reader.hpp"
#include "kiosk/shop/instruments/standing.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>
#include <vector>

namespace holdfast::kiosk::wording {

/// "2026-03-01".
[[nodiscard]] std::string dateText(analytics::Date date);

/// A full sentence for what is wrong with a certificate, a description or an air pressure as typed.
[[nodiscard]] std::string sentence(const shop::instruments::FormFault& fault, const Speech& speech);

/// The end of an instrument's row: "certificate due 2027-03-01", "check failed".
[[nodiscard]] std::string shortText(const shop::instruments::Standing& standing, const Speech& speech);

/// The answer first (what it can prove today), then what an expired or missing ground does to verdicts, then how sure
/// it is at the shop's cures, then the way out.
[[nodiscard]] std::vector<std::string> standingSentences(const shop::instruments::Standing& standing,
                                                         const std::string& name, const Speech& speech);

[[nodiscard]] std::string sentence(analytics::BathCaution caution, const Speech& speech);
[[nodiscard]] std::string sentence(analytics::BathHint hint, const Speech& speech);
[[nodiscard]] std::string sentence(analytics::PressureFault fault, const Speech& speech);
[[nodiscard]] std::string sentence(analytics::CheckFault fault, const Speech& speech);
/// `bath`: what the instrument should have shown.
[[nodiscard]] std::string sentence(const analytics::BathTimedOut& timedOut, analytics::Temperature bath,
                                   const Speech& speech);
[[nodiscard]] std::string sentence(const analytics::BathSettling& settling, const analytics::StabilityRules& rules,
                                   const Speech& speech);
[[nodiscard]] std::string word(analytics::CheckTerm term, const Speech& speech);
[[nodiscard]] std::string word(analytics::CheckLimitKind kind, const Speech& speech);

/// Figures in which a check's error, uncertainty and limit all show: a tenth at least.
[[nodiscard]] Figures figuresOf(const analytics::CheckResult& result, const Figures& base);
/// "Passed: off by −0.2 °C ± 0.1 °C; 1.5 °C is allowed."
[[nodiscard]] std::string sentence(const analytics::CheckResult& result, const Speech& speech);
/// What keeping it does, and what can be done.
[[nodiscard]] std::vector<std::string> consequences(const analytics::CheckResult& result, const Speech& speech);

} // namespace holdfast::kiosk::wording
