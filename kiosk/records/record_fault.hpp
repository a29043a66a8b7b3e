#pragma once

#include "kiosk/ledger/failure.hpp"

#include <string>
#include <tl/expected.hpp>
#include <vector>

namespace holdfast::kiosk::records {

/// What is wrong with a piece of JSON that should have been a record or a shop file.
enum class FaultCode {
    notJson,      ///< no JSON, or a key twice in one object
    unknownKey,   ///< refused by name: `path` ends in it
    missingKey,   ///< `path` ends in it
    wrongType,    ///< a number where text is asked, and so on
    badValue,     ///< the right type, but no value of this field
    unknownKind,  ///< no row in the table of kinds
    newerVersion, ///< written by a newer program: the book opens read-only
    inconsistent, ///< each field may stand alone, but not together
};

struct RecordFault final {
    FaultCode code{};
    std::string path; ///< "families[2].cure.unit"; empty: the whole
    std::string what; ///< English, for the log only

    bool operator==(const RecordFault&) const = default;
};

/// Every fault at once, in the order of reading; never empty on failure.
template <class T>
using RecordResult = tl::expected<T, std::vector<RecordFault>>;

/// For the rooms that speak the ledger's language: newerBook if any fault is newerVersion or unknownKind, else damaged.
[[nodiscard]] ledger::Failure failureFrom(const std::vector<RecordFault>& faults);

} // namespace holdfast::kiosk::records
