#pragma once

#include "analytics/statistics/charts/baseline.hpp"
#include "analytics/statistics/charts/rules.hpp"
#include "kiosk/command/answer.hpp"
#include "kiosk/screens/charts/trend_state.hpp"

#include <filesystem>
#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::command {

/// `holdfast chart`, as typed.
struct ChartTyped final {
    std::string input{}; ///< empty: the book
    std::string kind{};
    std::string value{};
    std::string by{};
    int size = 0; ///< of subgroups; 0: none
    std::string total{};
    std::string rules = "1,2,3,5";
    std::string baseline{};
    std::optional<double> target{};
    std::optional<double> sigma{};
    double lambda = 0.2;
    double width = 2.8593; ///< of EWMA limits
    double k = 0.5;
    double h = 5.0;
    double shift = 1.0; ///< in standard deviations of a plotted point
    bool points = false;
    std::string picture{};
    DataFileOptions file{};
    // Of the book:
    std::string data{};
    std::string dryer{};
    std::string family{};
    std::string from{};
    std::string to{};
    bool fahrenheit = true;
    bool json = false;
};

/// One statement of a chart about some of its points.
struct ChartSignal final {
    int rule = 0; ///< Nelson's; 0: beyond the chart's own limits
    analytics::statistics::SignalSide side = analytics::statistics::SignalSide::Above;
    std::vector<std::size_t> points{}; ///< from 0
    std::size_t metAt = 0;
    std::optional<std::size_t> since{}; ///< of CUSUM: first point of the run of sums
};

/// A chart of any kind, worked out.
struct Charted final {
    std::string kind{};
    std::vector<double> values{};                           ///< as plotted; of CUSUM the sum above
    std::vector<double> beside{};                           ///< ranges, standard deviations, or the sum below
    std::vector<std::string> labels{};                      ///< of the points; empty: their numbers
    std::vector<analytics::statistics::Limits> limits{};    ///< one for all points, or one each
    std::vector<char> plotted{};                            ///< empty: all of them
    std::optional<analytics::statistics::Limits> besides{}; ///< limits of `beside`
    std::vector<std::size_t> besidesOutside{};
    std::vector<ChartSignal> alarms{};
    std::optional<analytics::statistics::Baseline> baseline{};
    std::optional<double> inControl{}; ///< average run length, in points
    std::optional<double> shifted{};
    /// Of rules 3 and 4, whose run lengths are drawn and not computed: the larger of their standard errors, as a share.
    std::optional<double> drawnWithin{};
};

/// The rules as typed: "1,2,3,5", "all", "none", "western-electric"; absent: anything else.
[[nodiscard]] std::optional<analytics::statistics::RuleSet> rulesFrom(const std::string& text);

[[nodiscard]] tl::expected<Charted, CommandFault> chartOf(const DataFile& file, const ChartTyped& typed,
                                                          LeftOut& leftOut);
/// Limits, signals and run length, as JSON and sentences.
[[nodiscard]] Answer answerOf(const Charted& chart, const ChartTyped& typed);
/// Parts of it: "signals", "caveats", and the points themselves.
void addSignals(Answer& answer, const Charted& chart);
void addCaveats(Answer& answer, const Charted& chart);
[[nodiscard]] Json seriesJson(const Charted& chart);
/// "9 in a row above the centre line".
[[nodiscard]] std::string ruleSaid(int rule, analytics::statistics::SignalSide side, std::size_t points);
[[nodiscard]] std::string_view nameOf(analytics::statistics::SignalSide side) noexcept;
[[nodiscard]] std::string_view nameOf(analytics::statistics::ChartCaveat caveat) noexcept;

/// Its label, else its number from 1.
[[nodiscard]] std::string pointName(const Charted& chart, std::size_t point);
/// "Points 4 to 12: 9 in a row above usual."
[[nodiscard]] std::string signalSaid(const Charted& chart, const ChartSignal& signal);

/// Under what its latest signal says, or that there is none; `detail` is the second sentence.
[[nodiscard]] screens::TrendChartState pictureOf(const Charted& chart, const std::string& detail,
                                                 const std::string& valueName);
/// By the ending of its name: .svg or .png.
[[nodiscard]] tl::expected<void, CommandFault> savePicture(const screens::TrendChartState& picture,
                                                           const std::string& path, const DrawingReady& ready);

/// `--kind margin` or `failures`, of the book.
[[nodiscard]] int runBookChart(const ChartTyped& typed, const std::filesystem::path& data, const DrawingReady& ready,
                               std::ostream& out, std::ostream& err);
[[nodiscard]] int runChart(const ChartTyped& typed, const std::filesystem::path& data, const DrawingReady& ready,
                           std::ostream& out, std::ostream& err);

} // namespace holdfast::kiosk::command
