#pragma once

#include "kiosk/ledger/book.hpp"
#include "kiosk/shop/deciding/instrument_holds.hpp"

#include <filesystem>

namespace holdfast::kiosk::shop::deciding {

/// A failed check that is about to be kept.
struct CheckFailed final {
    std::string id{}; ///< that its entry will have
    records::CheckDone done{};
    std::int64_t at = 0; ///< wall milliseconds
    int utcOffsetMinutes = 0;
    analytics::GuardSetting guard{};
};

/// Everything that a failed check throws into doubt, as the book has it: readings since the instrument's last good look
/// (of one day the whole day is in doubt, since a check's hour is not written down), each with its trace, its plan in
/// the revisions that were used, and the instrument as it stood on that day. Nothing if the check found no error.
/// Belongs to the thread of the book.
[[nodiscard]] ledger::Result<std::optional<InstrumentDoubt>> instrumentDoubt(const ledger::Book& book,
                                                                             const CheckFailed& failed);

/// The same on a reading connection of its own, for another thread, and judged: what is to be kept beside the check.
[[nodiscard]] ledger::Result<InstrumentHolds> holdsOfFailedCheck(const std::filesystem::path& bookFolder,
                                                                 const CheckFailed& failed);

/// The plan in the revisions that the reading was judged by; nothing if the plan names other inks or cloth by now.
[[nodiscard]] std::optional<analytics::RunPlan> planThen(const SQLite::Database& database,
                                                         const records::ReadingTaken& taken);

/// What was seen, as it is judged; nothing where the trace is gone, and of strips: no check finds them wrong.
[[nodiscard]] std::optional<analytics::SeenEvidence>
evidenceThen(const ledger::Book& book, const records::ReadingTaken& taken, const analytics::Instrument& instrument);

} // namespace holdfast::kiosk::shop::deciding
