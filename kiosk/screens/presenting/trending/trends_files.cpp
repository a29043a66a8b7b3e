#include "kiosk/screens/presenting/trending/trends_files.hpp"

#include "drivers/clock/clock.hpp"
#include "kiosk/reports/chart_table.hpp"
#include "kiosk/reports/csv.hpp"
#include "kiosk/screens/charts/chart_files.hpp"
#include "kiosk/screens/presenting/deciding/file_laid.hpp"
#include "kiosk/screens/presenting/shown.hpp"
#include "kiosk/wording/deciding_sentences.hpp"

#include <array>
#include <charconv>

namespace holdfast::kiosk::screens {
namespace {

reports::CsvCell said(const std::string& text) {
    return {text, true};
}

reports::CsvCell figure(std::int64_t number) {
    return {std::to_string(number), false};
}

/// Reads back to the same double.
reports::CsvCell figure(double number) {
    std::array<char, 40> text{};
    const auto end = std::to_chars(text.data(), text.data() + text.size(), number);
    return {std::isfinite(number) ? std::string{text.data(), end.ptr} : std::string{}, false};
}

bool saveChart(const TrendsFiles::ChartFile& file, const std::filesystem::path& folder) {
    ChartPicture picture;
    picture.size = QSize{1280, 0};
    const auto at = toQString((folder / file.name).string());
    return savePng(file.chart, picture, at + QStringLiteral(".png")) &&
           saveSvg(file.chart, picture, at + QStringLiteral(".svg")) &&
           layFile(folder / (file.name + ".csv"), reports::csvOf(file.chart));
}

} // namespace

std::string trendsFileName(const std::string& what, const std::string& dryer, std::chrono::sys_days day) {
    std::string name = "trends-" + what + "-";
    for (const char sign : dryer) {
        const bool letter = (sign >= 'a' && sign <= 'z') || (sign >= '0' && sign <= '9');
        const bool large = sign >= 'A' && sign <= 'Z';
        if (letter || large) {
            name += large ? static_cast<char>(sign - 'A' + 'a') : sign;
        } else if (name.back() != '-') {
            name += '-';
        }
    }
    const std::chrono::year_month_day date{day};
    std::array<char, 24> text{};
    std::snprintf(text.data(), text.size(), "%04d-%02u-%02u", static_cast<int>(date.year()),
                  static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
    return name + (name.back() == '-' ? "" : "-") + text.data();
}

std::string suspectsTable(const TrendsFound& found, const TrendsHow& how) {
    std::string table =
        reports::csvRow({said("rank"), said("shared"), said("strength"), said("failed_with"), said("with"),
                         said("failed_without"), said("without"), said("episodes"), said("p"), said("q"), said("odds"),
                         said("odds_low"), said("odds_high"), said("cannot_be_told_apart_from")});
    std::int64_t rank = 0;
    for (const auto& suspect : found.suspects ? found.suspects->ranked : std::vector<trending::Suspect>{}) {
        std::string twins;
        for (const auto& twin : suspect.sameAs) {
            twins += (twins.empty() ? "" : "; ") + levelName(twin, how);
        }
        const auto odds = suspect.odds ? figure(*suspect.odds) : reports::CsvCell{};
        table += reports::csvRow({figure(++rank), said(levelName(suspect.level, how)),
                                  said(strengthWord(suspect.strength, how)), figure(suspect.failedWith),
                                  figure(suspect.with), figure(suspect.failedWithout), figure(suspect.without),
                                  figure(std::int64_t{suspect.episodes}), figure(suspect.p), figure(suspect.q), odds,
                                  suspect.odds ? figure(suspect.oddsLow) : odds,
                                  suspect.odds ? figure(suspect.oddsHigh) : odds, said(twins)});
    }
    return table;
}

std::string lotsTable(const TrendsFound& found, const std::vector<trending::FactIndex>& lots, const TrendsHow& how) {
    std::string table = reports::csvRow({said("run"), said("lot"), said("title"), said("day"), said("dryer"),
                                         said("failed"), said("made"), said("shipped")});
    const auto& facts = *found.facts;
    for (const auto index : lots) {
        const auto& lot = facts.lots[static_cast<std::size_t>(index)];
        const auto& run = runAt(facts, lot.run);
        table += reports::csvRow(
            {figure(run.number), figure(std::int64_t{lot.number}), said(run.title),
             said(wording::dayOf(lot.openedAt, how.utcOffsetMinutes)),
             said(lot.dryer == trending::kNoFact ? "" : facts.dryers[static_cast<std::size_t>(lot.dryer)].name),
             figure(std::int64_t{found.failed[static_cast<std::size_t>(index)]}),
             lot.made ? figure(std::int64_t{*lot.made}) : reports::CsvCell{}, figure(std::int64_t{lot.shipped})});
    }
    return table;
}

tl::expected<std::size_t, TrendsFileFault> writeTrendsFiles(const TrendsFiles& files, const std::stop_token& stop) {
    constexpr std::size_t kOfChart = 3;
    std::error_code fault;
    std::filesystem::create_directories(files.folder, fault);
    std::size_t written = 0;
    for (const auto& file : files.charts) {
        if (stop.stop_requested()) {
            return tl::unexpected(TrendsFileFault::stopped);
        }
        if (!saveChart(file, files.folder)) {
            return tl::unexpected(TrendsFileFault::notWritten);
        }
        written += kOfChart;
    }
    for (const auto& file : files.tables) {
        if (!layFile(files.folder / (file.name + ".csv"), file.csv)) {
            return tl::unexpected(TrendsFileFault::notWritten);
        }
        ++written;
    }
    return written;
}

} // namespace holdfast::kiosk::screens
