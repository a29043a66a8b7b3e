#pragma once

#include "kiosk/ledger/failure.hpp"
#include "kiosk/records/complaint_records.hpp"

#include <SQLiteCpp/Database.h>
#include <cstdint>
#include <string>
#include <vector>

namespace holdfast::kiosk::records {

/// One of the entries about a complaint.
struct ComplaintVersion final {
    std::int64_t at = 0; ///< wall milliseconds
    int utcOffsetMinutes = 0;
    std::int64_t person = 0; ///< 0: nobody's name was asked for
    ComplaintTaken taken{};  ///< the whole of it as it was from then on
};
/// Oldest first; none of an unknown complaint.
[[nodiscard]] ledger::Result<std::vector<ComplaintVersion>> versionsOfComplaint(const SQLite::Database& database,
                                                                                const std::string& complaint);

} // namespace holdfast::kiosk::records
