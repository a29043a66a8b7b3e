#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/wording/notices.hpp"
#include "kiosk/wording/sentences.hpp"

#include <string>
#include <string_view>

namespace holdfast::kiosk::reports {

/// Everything that can be expected to go wrong between a wish and its paper.
enum class ReportCause {
    nothingToPrint, ///< no card, no label was asked for
    numberUnusable, ///< a number below zero has no code
    paperTooSmall,  ///< not even what must stand there fits
    notDrawn,       ///< the PDF could not be made
    folderFull,     ///< nothing was kept
    folderReadOnly, ///< nothing was kept
    folderFailed,   ///< any other failure of the disk; nothing was kept
    noPrinterSet,   ///< the PDF is kept; nobody has named a printer
    noPrintProgram, ///< the PDF is kept; `lp` is not on this machine
    printerUnknown, ///< the PDF is kept; the print system knows no such printer
    spoolRefused,   ///< the PDF is kept; the print system did not take it
    noAnswer,       ///< the PDF is kept; the print system did not answer in time
};

struct ReportFault final {
    ReportCause cause = ReportCause::notDrawn;
    std::string printer{}; ///< as the shop's setting names it
    std::string file{};    ///< where the PDF lies, or the folder that took none
    std::string what{};    ///< English, for the log only
};

/// "no-printer-set", for logs and tests.
[[nodiscard]] std::string_view nameOf(ReportCause cause) noexcept;

[[nodiscard]] ReportFault faultFrom(const ledger::Failure& failure, const std::string& folder);

/// What happened, what was kept, what to do.
[[nodiscard]] wording::Notice noticeOf(const ReportFault& fault, const wording::Speech& speech);

} // namespace holdfast::kiosk::reports
