// What was said about a complaint, what it turned out to be, and how a finding chooses it.
#include "tests/kiosk/deciding/risk_rig.hpp"

#include "kiosk/shop/trending/causes.hpp"

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

namespace {

std::string causeOf(RiskRig& rig, const std::string& complaint) {
    const auto row = records::complaintById(rig.shop.db(), complaint);
    REQUIRE(row);
    REQUIRE(*row);
    REQUIRE((*row)->finding);
    return (*row)->finding->cause;
}

} // namespace

TEST_CASE("how a complaint stood before each change is one press away", "[deciding][complaint]") {
    RiskRig rig;
    rig.print(1, 10, 7, analytics::Word::cured);
    rig.complain(1);
    auto& place = *rig.places.complaint;
    place.act("complaint.change");
    place.enter("complaint.field.pieces", "7");
    place.enter("complaint.field.clue", "");
    place.act("complaint.keep");
    CHECK(shows(place, "changed once"));
    place.act("complaint.said");
    CHECK(shows(place, "How many pieces: 7"));
    CHECK(shows(place, "How many pieces: 2")); // as it was taken
    CHECK(shows(place, "Clue: order, carton, print, batch: taken out"));
    CHECK(shows(place, "Changed by Ana"));
    CHECK(shows(place, "Taken"));
    place.act("complaint.back");
    CHECK(shows(place, "The run, and whether it is ours"));
}

TEST_CASE("a complaint that was never changed says so", "[deciding][complaint]") {
    RiskRig rig;
    rig.print(1, 10, 7, analytics::Word::cured);
    rig.complain(1);
    rig.places.complaint->act("complaint.said");
    CHECK(shows(*rig.places.complaint, "It was not changed since it was taken."));
}

TEST_CASE("a finding chooses its cause from the table, and the table counts it", "[deciding][complaint]") {
    RiskRig rig;
    rig.print(1, 10, 7, analytics::Word::cured);
    const auto complaint = rig.complain(1);
    auto& place = *rig.places.complaint;
    place.act("complaint.causes");
    CHECK(shows(place, "No finding is signed yet."));
    CHECK(shows(place, "Mislabelled ink"));
    CHECK(shows(place, "a square cured hotter survives the wash"));
    place.act("complaint.back");
    place.act("complaint.close");
    place.act("complaint.finding.cause.mislabelled-ink");
    CHECK(shows(place, "a square cured hotter survives the wash")); // what decides it stands beside it
    place.enter("complaint.finding.cause", "pail 7");
    place.act("complaint.finding.sign");
    CHECK(causeOf(rig, complaint) == "mislabelled-ink: pail 7");
    CHECK(shop::trending::causeOf(causeOf(rig, complaint)) == shop::trending::CureCause::mislabelledInk);
    CHECK(shows(place, "mislabelled ink: pail 7"));
    place.act("complaint.causes");
    CHECK(shows(place, "in 1 signed finding"));
    CHECK(shows(place, "1 finding"));
    place.act("complaint.cause.pick.mislabelled-ink");
    CHECK(shows(place, "Complaint 101"));
    place.act("complaint.cause.complaint." + complaint);
    CHECK(shows(place, "The run, and whether it is ours"));
}

TEST_CASE("a cause of one's own is kept as it was typed and stands under the table", "[deciding][complaint]") {
    RiskRig rig;
    rig.print(1, 10, 7, analytics::Word::cured);
    const auto complaint = rig.complain(1);
    auto& place = *rig.places.complaint;
    place.act("complaint.close");
    place.act("complaint.finding.cause.other");
    place.act("complaint.finding.sign");
    CHECK(shows(place, "Say what it was."));
    place.enter("complaint.finding.cause", "softener in the rinse");
    place.act("complaint.finding.sign");
    CHECK(causeOf(rig, complaint) == "softener in the rinse");
    place.act("complaint.causes");
    CHECK(shows(place, "softener in the rinse"));
}

TEST_CASE("a finding that is refused keeps what was chosen and typed", "[deciding][complaint]") {
    RiskRig rig;
    rig.print(1, 10, 7, analytics::Word::cured);
    const auto complaint = rig.complain(1);
    auto& place = *rig.places.complaint;
    place.act("complaint.close");
    place.act("complaint.finding.cause.bad-mix");
    place.enter("complaint.finding.cause", std::string(201, 'a')); // one above shop::kLongestText
    place.enter("complaint.finding.action", "label every pail");
    place.act("complaint.finding.sign");
    CHECK(shows(place, "That is too long"));
    CHECK(shows(place, "label every pail"));
    CHECK(rig.asked.empty());
    CHECK(place.isWriting());
    place.act("complaint.at-risk." + RiskRig::lotId(1)); // nothing is lost by a press beside
    CHECK(shows(place, "label every pail"));
    place.enter("complaint.finding.cause", "");
    rig.diskFull = true;
    place.act("complaint.finding.sign");
    CHECK(shows(place, "label every pail"));
    rig.diskFull = false;
    place.act("complaint.finding.sign");
    CHECK(causeOf(rig, complaint) == "bad-mix");
}
