#pragma once

#include "kiosk/screens/presenting/trending/trends_charts.hpp"

#include <chrono>
#include <filesystem>
#include <stop_token>

/// What Trends shows, laid into the exchange folder to be taken away.
namespace holdfast::kiosk::screens {

struct TrendsFiles final {
    struct ChartFile final {
        std::string name{}; ///< without its ending
        TrendChartState chart{};
    };
    struct TableFile final {
        std::string name{};
        std::string csv{};
    };
    std::filesystem::path folder{};
    std::vector<ChartFile> charts{}; ///< each as PNG, SVG and CSV
    std::vector<TableFile> tables{};
};

/// "trends-margins-north-2026-03-03": small letters, figures and hyphens only.
[[nodiscard]] std::string trendsFileName(const std::string& what, const std::string& dryer, std::chrono::sys_days day);

/// Every thing that failures were found to share, strongest first, with its figures. RFC 4180.
[[nodiscard]] std::string suspectsTable(const TrendsFound& found, const TrendsHow& how);
[[nodiscard]] std::string lotsTable(const TrendsFound& found, const std::vector<trending::FactIndex>& lots,
                                    const TrendsHow& how);

enum class TrendsFileFault { notWritten, stopped };
/// How many files were written; each whole or not at all. Any thread.
[[nodiscard]] tl::expected<std::size_t, TrendsFileFault> writeTrendsFiles(const TrendsFiles& files,
                                                                          const std::stop_token& stop);

} // namespace holdfast::kiosk::screens
