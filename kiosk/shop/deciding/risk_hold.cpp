#include "kiosk/shop/deciding/risk_hold.hpp"

#include <algorithm>

namespace holdfast::kiosk::shop::deciding {

bool canHold(const LotToHold& lot, const std::string& complaint) {
    const auto& holders = lot.complaintsThatHold;
    return lot.standing != analytics::LotStanding::scrapped &&
           std::find(holders.begin(), holders.end(), complaint) == holders.end();
}

tl::expected<std::vector<records::Record>, RiskHoldFault>
holdsForRisk(const records::ComplaintTaken& complaint, const std::vector<LotToHold>& lots, std::int64_t person,
             const std::function<std::string()>& newId, std::int64_t nextBin) {
    if (!records::isPrintFailure(complaint.what)) {
        return tl::unexpected(RiskHoldFault::noPrintFailure);
    }
    if (person == 0) {
        return tl::unexpected(RiskHoldFault::needsTheRight);
    }
    std::vector<records::Record> list;
    for (const auto& lot : lots) {
        if (!canHold(lot, complaint.complaint)) {
            continue;
        }
        records::HoldPlaced hold;
        hold.hold = newId();
        hold.lot = lot.lot;
        hold.cause = records::HoldCause::complaint;
        hold.because = complaint.complaint;
        hold.count = lot.made;
        hold.bin = nextBin++;
        list.emplace_back(std::move(hold));
    }
    if (list.empty()) {
        return tl::unexpected(RiskHoldFault::nothingLeft);
    }
    return list;
}

} // namespace holdfast::kiosk::shop::deciding
