#pragma once

#include "kiosk/ledger/spool.hpp"
#include "kiosk/records/reading_records.hpp"
#include "kiosk/records/run_on_file.hpp"

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

namespace holdfast::tests {

/// A reading with all that the book holds of it.
struct WholeReading final {
    kiosk::records::ReadingRow row;
    kiosk::records::ReadingTaken taken;
    std::vector<kiosk::ledger::TracePoint> trace;

    [[nodiscard]] const kiosk::records::TraceSeen& evidence() const;
    [[nodiscard]] bool saysReason(analytics::ReasonCode code) const;
};

/// Looks into the book of a running kiosk, anew each time and never writing. Nothing if there is no book yet.
[[nodiscard]] std::int64_t entriesIn(const std::filesystem::path& data);
/// Kinds of the entries from `from` on, in order.
[[nodiscard]] std::vector<std::string> kindsFrom(const std::filesystem::path& data, std::int64_t from);
[[nodiscard]] std::vector<kiosk::records::ReadingRow> readingsIn(const std::filesystem::path& data);
/// The newest reading; fails the test if it cannot be read whole.
[[nodiscard]] WholeReading newestReading(const std::filesystem::path& data);
/// Readings whose traces say that they were cut off.
[[nodiscard]] int cutOffReadings(const std::filesystem::path& data);

/// Files of rides in progress, or left over.
[[nodiscard]] std::vector<std::filesystem::path> spoolsIn(const std::filesystem::path& data);
/// Greatest count in any of them; INT64_MIN without one.
[[nodiscard]] std::int64_t highestSpooled(const std::filesystem::path& data);

} // namespace holdfast::tests
