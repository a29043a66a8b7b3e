#pragma once

#include "kiosk/ledger/digest.hpp"
#include "kiosk/records/record_fault.hpp"
#include "kiosk/shop/proving/proving_state.hpp"

namespace holdfast::kiosk::shop {

/// What a spool's first bytes say of the ride: JSON, version 1.
struct SpoolHeader final {
    std::string probe;
    drivers::CountScale scale;
    std::optional<std::string> run;      ///< id
    std::optional<std::string> corrects; ///< id of an entry
    records::BeltPosition position = records::BeltPosition::centre;
    std::vector<OtherOnBelt> others{};
};

[[nodiscard]] ledger::Bytes headerOf(const OpenSpool& open);
[[nodiscard]] records::RecordResult<SpoolHeader> readHeader(const ledger::Bytes& bytes);

} // namespace holdfast::kiosk::shop
