#pragma once

#include "kiosk/records/lot_records.hpp"
#include "kiosk/records/test_queries.hpp"
#include "kiosk/shop/testing/test_fault.hpp"

#include <tl/expected.hpp>

#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::shop {

/// Where a piece is kept. Fields "shelf", "until".
struct RetainedDraft final {
    bool retained = false;
    std::string shelf{};
    std::string until{}; ///< 2027-03-01
    bool reprintAllowed = false;
};

/// A print while it is being named. Fields "run", "piece", "printed" and those of RetainedDraft.
struct PrintDraft final {
    std::string run{};                ///< number as typed
    std::optional<std::string> lot{}; ///< id; absent: the newest of the run
    std::string piece{};
    std::optional<records::BeltPosition> position{};
    std::string printed{}; ///< "14:05" or "2026-03-01 14:05"; empty: now
    RetainedDraft retained{};
};

/// What the book says to it.
struct PrintContext final {
    std::optional<std::string> run{};    ///< id behind the number; absent: no such run
    std::vector<records::LotRow> lots{}; ///< of that run, oldest first
    std::int64_t nextNumber = 0;
    std::string printId{};
    std::int64_t now = 0;
    int utcOffsetMinutes = 0;
};

/// A print and the piece that leaves its lot with it: for the shelf, or to be tested.
struct PrintToKeep final {
    records::PrintNamed named{};
    std::optional<records::PiecesMoved> moved{}; ///< absent for a half: its whole was moved
};

[[nodiscard]] tl::expected<PrintToKeep, TestFaults> printFrom(const PrintDraft& draft, const PrintContext& context);

/// A half of a print that is cut in two: the same piece of the same lot under a number of its own.
[[nodiscard]] tl::expected<PrintToKeep, TestFaults> halfOf(const records::PrintRow& whole, const PrintContext& context);

/// Its shelf as it is from now on; refused once the print has ended.
[[nodiscard]] tl::expected<records::PrintChanged, TestFaults> shelfFrom(const RetainedDraft& draft,
                                                                        const records::PrintRow& print);
[[nodiscard]] tl::expected<records::PrintChanged, TestFaults> ended(const records::PrintRow& print,
                                                                    records::PrintEnd end);
[[nodiscard]] RetainedDraft draftOf(const std::optional<records::RetainedPlace>& place);

/// Kept longer than its shelf asked for; false without a day.
[[nodiscard]] bool isPastItsTime(const records::PrintRow& print, analytics::Date today);

} // namespace holdfast::kiosk::shop
