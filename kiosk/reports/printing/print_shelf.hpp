#pragma once

#include "kiosk/reports/report.hpp"

#include <QObject>
#include <QThreadPool>
#include <chrono>
#include <filesystem>
#include <functional>
#include <optional>
#include <string>

namespace holdfast::kiosk::reports {

/// What became of a report.
struct PrintOutcome final {
    std::optional<std::filesystem::path> kept{}; ///< where the PDF lies
    bool sent = false;                           ///< the print system took it
    std::optional<ReportFault> fault{};          ///< absent only if it was sent
};

struct PrintSettings final {
    std::filesystem::path folder; ///< DATA/print
    std::string printer{};        ///< as the print system names it; empty: PDFs are kept, nothing is sent
    std::chrono::milliseconds patience{20'000};
};

/// Keeps every report as a PDF and hands it to the shop's printer. Nothing waits: drawing and writing run in one thread
/// beside, in the order of the wishes, printing in a process of its own; the answer comes by the event loop of the
/// shelf's thread. Answers that are still due when the shelf dies are never given; their files are written.
class PrintShelf final : public QObject {
    Q_OBJECT

public:
    using Answer = std::function<void(const PrintOutcome&)>;

    explicit PrintShelf(PrintSettings settings, QObject* parent = nullptr);
    ~PrintShelf() override;

    /// For reports asked for from now on.
    void change(PrintSettings settings) { m_settings = std::move(settings); }
    [[nodiscard]] const PrintSettings& settings() const noexcept { return m_settings; }

    void print(Report report, Answer answer);

private:
    using Kept = tl::expected<std::filesystem::path, ReportFault>;
    void send(const Kept& kept, const PrintSettings& settings, const Answer& answer);

    PrintSettings m_settings;
    QThreadPool m_beside;
};

} // namespace holdfast::kiosk::reports
