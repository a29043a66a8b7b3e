#pragma once

#include "analytics/lots/lot_standing.hpp"
#include "kiosk/records/kinds.hpp"

#include <tl/expected.hpp>

#include <functional>
#include <optional>
#include <string>
#include <vector>

/// A complaint holds more than its own lot: those that share what is suspected.
namespace holdfast::kiosk::shop::deciding {

struct LotToHold final {
    std::string lot{}; ///< id
    analytics::LotStanding standing = analytics::LotStanding::open;
    std::optional<int> made{};
    std::vector<std::string> complaintsThatHold{}; ///< ids of complaints that placed a hold on it, decided or not
};

enum class RiskHoldFault {
    noPrintFailure, ///< the complaint says nothing against the print
    nothingLeft,    ///< each of them is held by this complaint already, or scrapped
    needsTheRight,  ///< nobody signed who may
};

/// Whether this complaint can put the lot on hold: once, and no scrapped one.
[[nodiscard]] bool canHold(const LotToHold& lot, const std::string& complaint);

/// hold.placed of each whole lot that it can hold, with cause complaint and the complaint as its reason; bins from
/// `nextBin` on. Those it holds already and scrapped ones are passed over.
[[nodiscard]] tl::expected<std::vector<records::Record>, RiskHoldFault>
holdsForRisk(const records::ComplaintTaken& complaint, const std::vector<LotToHold>& lots, std::int64_t person,
             const std::function<std::string()>& newId, std::int64_t nextBin);

} // namespace holdfast::kiosk::shop::deciding
