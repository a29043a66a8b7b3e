#include "kiosk/shop/deciding/risk_hold.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::shop::deciding;
using analytics::LotStanding;
using kiosk::records::HoldPlaced;

namespace {

kiosk::records::ComplaintTaken complaintTaken() {
    kiosk::records::ComplaintTaken taken;
    taken.complaint = "c1";
    taken.number = 31;
    return taken;
}

std::function<std::string()> counting() {
    return [next = 0]() mutable { return "h" + std::to_string(++next); };
}

} // namespace

TEST_CASE("a complaint holds each lot at risk once, each in a bin of its own", "[deciding][risk]") {
    const auto list = holdsForRisk(complaintTaken(),
                                   {{"a", LotStanding::cleared, 36, {}},
                                    {"b", LotStanding::onHold, 36, {"c1"}},
                                    {"c", LotStanding::scrapped, 36, {}},
                                    {"d", LotStanding::onHold, std::nullopt, {"c2"}}},
                                   7, counting(), 12);
    REQUIRE(list);
    REQUIRE(list->size() == 2);
    const auto& first = std::get<HoldPlaced>(list->at(0));
    const auto& second = std::get<HoldPlaced>(list->at(1));
    CHECK(first.lot == "a");
    CHECK(first.cause == kiosk::records::HoldCause::complaint);
    CHECK(first.because == "c1");
    CHECK(first.count == 36);
    CHECK_FALSE(first.pieces); // the whole lot
    CHECK(first.bin == 12);
    CHECK(second.lot == "d"); // another complaint's hold is another cause
    CHECK(second.bin == 13);
    CHECK(first.hold != second.hold);
}

TEST_CASE("holding what is at risk is refused with a cause", "[deciding][risk]") {
    const std::vector<LotToHold> lots{{"a", LotStanding::cleared, 36, {}}};
    auto feel = complaintTaken();
    feel.what = kiosk::records::ComplaintKind::feel;
    CHECK(holdsForRisk(feel, lots, 7, counting(), 1).error() == RiskHoldFault::noPrintFailure);
    CHECK(holdsForRisk(complaintTaken(), lots, 0, counting(), 1).error() == RiskHoldFault::needsTheRight);
    CHECK(holdsForRisk(complaintTaken(), {}, 7, counting(), 1).error() == RiskHoldFault::nothingLeft);
    CHECK(holdsForRisk(complaintTaken(), {{"a", LotStanding::scrapped, 36, {}}}, 7, counting(), 1).error() ==
          RiskHoldFault::nothingLeft);
}
