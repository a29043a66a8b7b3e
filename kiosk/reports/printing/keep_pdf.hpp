#pragma once

#include "kiosk/reports/report.hpp"

#include <QByteArray>
#include <filesystem>
#include <string_view>

namespace holdfast::kiosk::reports {

/// Writes `folder`/`name`.pdf so that the name is either the whole new file or what it was before; the folder is made
/// if it is missing. A file of that name is replaced: it is the same thing, printed again. Blocks until it is on disk.
[[nodiscard]] tl::expected<std::filesystem::path, ReportFault> keepPdf(const std::filesystem::path& folder,
                                                                       std::string_view name, const QByteArray& pdf);

} // namespace holdfast::kiosk::reports
