#include "kiosk/reports/report_fault.hpp"

namespace holdfast::kiosk::reports {

namespace {

std::string_view keyOf(ReportCause cause) noexcept {
    switch (cause) {
    case ReportCause::nothingToPrint:
        return "nothing-to-print";
    case ReportCause::numberUnusable:
        return "number-unusable";
    case ReportCause::paperTooSmall:
        return "paper-too-small";
    case ReportCause::notDrawn:
        return "not-drawn";
    case ReportCause::folderFull:
        return "folder-full";
    case ReportCause::folderReadOnly:
        return "folder-read-only";
    case ReportCause::folderFailed:
        return "folder-failed";
    case ReportCause::noPrinterSet:
        return "no-printer-set";
    case ReportCause::noPrintProgram:
        return "no-print-program";
    case ReportCause::printerUnknown:
        return "printer-unknown";
    case ReportCause::spoolRefused:
        return "spool-refused";
    case ReportCause::noAnswer:
        return "no-answer";
    }
    return "not-drawn";
}

bool kept(ReportCause cause) noexcept {
    return cause == ReportCause::noPrinterSet || cause == ReportCause::noPrintProgram ||
           cause == ReportCause::printerUnknown || cause == ReportCause::spoolRefused || cause == ReportCause::noAnswer;
}

} // namespace

std::string_view nameOf(ReportCause cause) noexcept {
    return keyOf(cause);
}

ReportFault faultFrom(const ledger::Failure& failure, const std::string& folder) {
    auto cause = ReportCause::folderFailed;
    if (failure.code == ledger::FailureCode::diskFull) {
        cause = ReportCause::folderFull;
    } else if (failure.code == ledger::FailureCode::folderReadOnly) {
        cause = ReportCause::folderReadOnly;
    }
    return {cause, {}, folder, failure.what};
}

wording::Notice noticeOf(const ReportFault& fault, const wording::Speech& speech) {
    const auto key = "reports.fault." + std::string{keyOf(fault.cause)};
    const wording::Arguments arguments{{"printer", fault.printer}, {"file", fault.file}};
    return {speech.text(key + ".happened", arguments),
            speech.text(kept(fault.cause) ? "reports.fault.kept-file" : "reports.fault.kept-book", arguments),
            speech.text(key + ".do", arguments)};
}

} // namespace holdfast::kiosk::reports
