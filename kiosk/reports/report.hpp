#pragma once

#include "drivers/protocol/ticket_code.hpp"
#include "kiosk/reports/codes/code_modules.hpp"
#include "kiosk/reports/page/placed_page.hpp"
#include "kiosk/reports/paper.hpp"
#include "kiosk/reports/report_fault.hpp"
#include "kiosk/wording/sentences.hpp"

#include <cstdint>
#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace holdfast::kiosk::reports {

/// How everything is printed.
struct ReportStyle final {
    Paper paper = paperOf("a4");
    Symbology code = Symbology::code128; ///< bars too long for the paper become the square
    wording::Speech speech{};
    bool demo = false; ///< the demo shop: DEMO stands on every page
};

/// Pages ready to be written: pdfOf(pages, name), or PrintShelf.
struct Report final {
    std::string name; ///< speaking, a file's name without ending: "run-20418-ticket"
    std::vector<PlacedPage> pages;
};

using Reported = tl::expected<Report, ReportFault>;

/// The code's text as the kiosk prints it: four signs between the first and the check sign of a run or a print, three
/// of all else. `number` ≥ 0 (asserted).
[[nodiscard]] std::string codeTextOf(drivers::TicketKind kind, std::int64_t number);

/// Small letters and digits of every alphabet stay, everything else becomes one "-"; at most 60 signs.
[[nodiscard]] std::string speakingName(std::string_view text);

} // namespace holdfast::kiosk::reports
