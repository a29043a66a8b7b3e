#pragma once

#include "drivers/clock/clock.hpp"
#include "kiosk/ledger/book.hpp"
#include "kiosk/reports/report.hpp"

#include <optional>
#include <string>
#include <string_view>

namespace holdfast::kiosk::screens {

/// Nothing: the thing is not in the book, or the book could not be read.
using PrintWanted = std::optional<reports::Reported>;

/// What bins and prints carry.
inline constexpr const char* kLabelPaper = "label-62x100";

/// What every report is made from.
struct PrintSource final {
    const ledger::Book& book;
    drivers::WallTime now{};
    reports::ReportStyle style{};
    std::string shop{};

    [[nodiscard]] reports::ReportStyle on(std::string_view paper) const {
        auto out = style;
        out.paper = reports::paperOf(paper);
        return out;
    }
};

} // namespace holdfast::kiosk::screens
