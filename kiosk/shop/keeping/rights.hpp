#pragma once

#include "kiosk/records/shop_records.hpp"

#include <array>
#include <span>
#include <vector>

/// Who may do what, as one table that the Shop screen shows as it stands. Readings, plans, tickets, buckets and what is
/// turned at a dryer need nobody's name: the crew in the head answers for them.
namespace holdfast::kiosk::shop {

enum class Right {
    logTests,         ///< tests of prints
    decideHolds,      ///< release, re-run, scrap, call back
    takeComplaints,   ///< write down what a customer says, tie it to a run
    describeMethods,  ///< test methods of the shop's own
    reviseInks,       ///< families and cloths
    keepInstruments,  ///< describe them, certificates, checks
    describeDryers,   ///< heated length, what belt and heat can do
    changeSettings,   ///< risk, language, printer, panel
    exchangeShopFile, ///< import and export
    changePeople,     ///< people, badges, roles, PINs
};

struct RightRow final {
    Right right;
    bool operatorAtDryer = false;
    bool qualityAssurance = false;
    bool owner = true;
};

inline constexpr std::array<RightRow, 10> kRights{{
    {Right::logTests, true, true, true},
    {Right::decideHolds, false, true, true},
    {Right::takeComplaints, true, true, true},
    {Right::describeMethods, false, true, true},
    {Right::reviseInks, false, true, true},
    {Right::keepInstruments, false, true, true},
    {Right::describeDryers, false, true, true},
    {Right::changeSettings, false, true, true},
    {Right::exchangeShopFile, false, false, true},
    {Right::changePeople, false, false, true},
}};

[[nodiscard]] constexpr bool mayDo(Right right, records::Role role) noexcept {
    for (const auto& row : kRights) {
        if (row.right == right) {
            return role == records::Role::owner              ? row.owner
                   : role == records::Role::qualityAssurance ? row.qualityAssurance
                                                             : row.operatorAtDryer;
        }
    }
    return false;
}

[[nodiscard]] inline bool mayDo(Right right, const std::vector<records::Role>& roles) noexcept {
    for (const auto role : roles) {
        if (mayDo(right, role)) {
            return true;
        }
    }
    return false;
}

} // namespace holdfast::kiosk::shop
