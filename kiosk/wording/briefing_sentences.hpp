#pragma once

#include "kiosk/records/queries.hpp"
#include "kiosk/shop/testing/due_week.hpp"
#include "kiosk/shop/trending/briefing.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>
#include <vector>

/// The owner's week in sentences, none stronger than its figures.
namespace holdfast::kiosk::wording {

struct BriefingSaid final {
    std::string days{};                 ///< "2026-11-19 to 2026-11-25"
    std::string lead{};                 ///< lots that failed, against the weeks before
    std::vector<std::string> week{};    ///< margins, readings
    std::vector<std::string> dryers{};  ///< worst first
    std::vector<std::string> shared{};  ///< what failures share, drifts, instruments apart
    std::vector<std::string> open{};    ///< on hold, complaints
    std::vector<std::string> due{};     ///< within seven days
    std::vector<std::string> changed{}; ///< events of the week
};

/// What is due within seven days.
struct BriefingDue final {
    std::vector<records::DueItem> items{}; ///< of instruments and runs
    shop::TestsDue tests{};                ///< of prints
};

[[nodiscard]] BriefingSaid briefingSaid(const records::TrendFacts& facts, const shop::trending::Briefing& briefing,
                                        const BriefingDue& due, const Speech& speech);
/// "P-3: check due 2026-11-27"; no full stop.
[[nodiscard]] std::string briefingDue(const records::DueItem& item, const Speech& speech);
/// How many tests of prints are due, the latest by name, how many more will be; none of it with a full stop. Empty if
/// there are none.
[[nodiscard]] std::vector<std::string> briefingTestsDue(const shop::TestsDue& tests, const Speech& speech);
/// All of it under its headings, one line each.
[[nodiscard]] std::vector<std::string> briefingSentences(const records::TrendFacts& facts,
                                                         const shop::trending::Briefing& briefing,
                                                         const BriefingDue& due, const Speech& speech);

} // namespace holdfast::kiosk::wording
