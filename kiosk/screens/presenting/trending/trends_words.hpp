#pragma once

#include "kiosk/screens/presenting/trending/trends_study.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>

/// What Trends says of what was found. Full sentences unless said otherwise, never stronger than the figures.
namespace holdfast::kiosk::screens {

/// A share as percent.
inline constexpr double kHundred = 100.0;

/// How it is said: the words, and how far the shop's clock is from UTC.
struct TrendsHow final {
    const wording::Speech& speech;
    int utcOffsetMinutes = 0;
    std::int64_t now = 0;

    [[nodiscard]] std::string text(const std::string& key, const wording::Arguments& arguments = {}) const {
        return speech.text(key, arguments);
    }
    /// "16 Oct", with its year if that is another than today's.
    [[nodiscard]] std::string day(std::int64_t at) const;
    /// "12 Oct – 16 Oct"; of one day the day.
    [[nodiscard]] std::string days(std::int64_t from, std::int64_t to) const;
    /// Days since 1970-01-01 in the shop's time, for an axis.
    [[nodiscard]] double axisDay(std::int64_t at) const;
};

/// Empty if there is none.
[[nodiscard]] const records::TrendRun& runAt(const trending::TrendFacts& facts, trending::FactIndex run);

/// Why a figure is not given.
[[nodiscard]] std::string whyNot(const trending::Refusal& refusal, const TrendsHow& how);

/// The sentence over the margins, and the one under it.
[[nodiscard]] std::string marginLead(const TrendsFound& found, const TrendsHow& how);
[[nodiscard]] std::string marginDetail(const TrendsFound& found, const TrendsHow& how);
/// What lies below the limit, caveats, missed readings: under the chart.
[[nodiscard]] std::string marginNote(const TrendsFound& found, const TrendsHow& how);
/// A rule in words: "12 in a row below usual".
[[nodiscard]] std::string ruleText(const trending::MarginSignal& signal, const TrendsHow& how);

[[nodiscard]] std::string failureLead(const TrendsFound& found, const TrendsHow& how);
[[nodiscard]] std::string failureDetail(const TrendsFound& found, const TrendsHow& how);
[[nodiscard]] std::string failureNote(const TrendsFound& found, const TrendsHow& how);

/// "Mixed bucket K118, red"; no sentence.
[[nodiscard]] std::string levelName(const trending::FactorLevel& level, const TrendsHow& how);
/// For a button: "bucket 118", "North".
[[nodiscard]] std::string shortName(const trending::FactorLevel& level, const TrendsHow& how);
/// "strong"; no sentence.
[[nodiscard]] std::string strengthWord(trending::Strength strength, const TrendsHow& how);
/// "9 of 11 failed · 14 of 304 good"; no sentence.
[[nodiscard]] std::string countsText(const trending::Suspect& suspect, const TrendsHow& how);
/// "11 failed lots, 304 good ones, of all dryers"; no sentence.
[[nodiscard]] std::string suspectsDetail(const TrendsFound& found, const TrendsHow& how);
/// That sharing is not causing, and the trial that would show it.
[[nodiscard]] std::string trialText(const trending::Suspect& suspect, const TrendsHow& how);
/// From what it cannot be told apart; empty: from nothing.
[[nodiscard]] std::string twinsText(const trending::Suspect& suspect, const TrendsHow& how);
/// How much more often lots with it fail, with limits.
[[nodiscard]] std::string oddsText(const trending::Suspect& suspect, const TrendsHow& how);
/// Since when, with what is known to have changed then; or why nothing is said.
[[nodiscard]] std::string sinceText(const trending::Figure<trending::SinceWhen>& since, const TrendsFound& found,
                                    const TrendsHow& how);
/// What may have moved a margin: all but opened buckets, of which there are many. At most so many.
[[nodiscard]] std::vector<trending::FactIndex> turningEvents(const trending::SinceWhen& since, const TrendsFound& found,
                                                             std::size_t most);
/// "belt 2.4 m/min"; no sentence.
[[nodiscard]] std::string eventText(const records::TrendEvent& event, const TrendsFound& found, const TrendsHow& how);

[[nodiscard]] std::string washLead(const TrendsFound& found, const TrendsHow& how);
[[nodiscard]] std::string washDetail(const TrendsFound& found, const TrendsHow& how);

/// "P-5 reads 2 °F hotter than its fellows, 1 to 3 °F".
[[nodiscard]] std::string offsetRow(const trending::InstrumentOffset& offset, const TrendsHow& how);
[[nodiscard]] std::string offsetText(const trending::InstrumentOffset& offset, const TrendsFound& found,
                                     const TrendsHow& how);

} // namespace holdfast::kiosk::screens
