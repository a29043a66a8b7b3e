#include "kiosk/reports/printing/keep_pdf.hpp"

#include "kiosk/ledger/files.hpp"

#include <fcntl.h>
#include <system_error>

namespace holdfast::kiosk::reports {

namespace {

ledger::Result<void> writeWhole(const std::filesystem::path& part, const QByteArray& pdf) {
    const auto file = ledger::openFile(part, O_WRONLY | O_CREAT | O_TRUNC);
    if (!file) {
        return tl::unexpected(file.error());
    }
    const auto* bytes = reinterpret_cast<const std::uint8_t*>(pdf.constData());
    return ledger::writeAll(*file, {bytes, static_cast<std::size_t>(pdf.size())});
}

} // namespace

tl::expected<std::filesystem::path, ReportFault> keepPdf(const std::filesystem::path& folder, std::string_view name,
                                                         const QByteArray& pdf) {
    std::error_code error;
    std::filesystem::create_directories(folder, error);
    if (error) {
        return tl::unexpected(faultFrom(ledger::failureFromErrno(error.value(), "make folder"), folder.string()));
    }
    const auto file = folder / (speakingName(name) + ".pdf");
    const auto part = ledger::withSuffix(file, ".part");
    auto done = writeWhole(part, pdf);
    if (done) {
        done = ledger::putInPlace(part, file);
    }
    if (!done) {
        std::filesystem::remove(part, error);
        return tl::unexpected(faultFrom(done.error(), folder.string()));
    }
    return file;
}

} // namespace holdfast::kiosk::reports
