#include "kiosk/reports/printing/print_shelf.hpp"

#include "kiosk/reports/page/paint.hpp"
#include "kiosk/reports/printing/keep_pdf.hpp"
#include "kiosk/reports/printing/print_command.hpp"

#include <QMetaObject>
#include <utility>

namespace holdfast::kiosk::reports {

namespace {

tl::expected<std::filesystem::path, ReportFault> drawAndKeep(const Report& report,
                                                             const std::filesystem::path& folder) {
    const auto pdf = pdfOf(report.pages, report.name);
    if (!pdf) {
        return tl::unexpected(pdf.error());
    }
    return keepPdf(folder, report.name, *pdf);
}

} // namespace

PrintShelf::PrintShelf(PrintSettings settings, QObject* parent) : QObject(parent), m_settings(std::move(settings)) {
    m_beside.setMaxThreadCount(1);
}

PrintShelf::~PrintShelf() {
    m_beside.waitForDone();
}

void PrintShelf::print(Report report, Answer answer) {
    m_beside.start([this, settings = m_settings, report = std::move(report), answer = std::move(answer)] {
        const auto kept = drawAndKeep(report, settings.folder);
        QMetaObject::invokeMethod(
            this, [this, kept, settings, answer] { send(kept, settings, answer); }, Qt::QueuedConnection);
    });
}

void PrintShelf::send(const Kept& kept, const PrintSettings& settings, const Answer& answer) {
    if (!kept) {
        answer({std::nullopt, false, kept.error()});
        return;
    }
    if (settings.printer.empty()) {
        answer({*kept, false, ReportFault{ReportCause::noPrinterSet, {}, kept->string(), {}}});
        return;
    }
    PrintCommand::start(this, QString::fromStdString(settings.printer), QString::fromStdString(kept->string()),
                        settings.patience, [answer, file = *kept](std::optional<ReportFault> fault) {
                            if (fault) {
                                fault->file = file.string();
                            }
                            const bool sent = !fault;
                            answer({file, sent, std::move(fault)});
                        });
}

} // namespace holdfast::kiosk::reports
