// From a complaint to what else is at risk, on a small book.
#include "tests/kiosk/deciding/risk_rig.hpp"

#include "kiosk/shop/trending/causes.hpp"

#include <fstream>
#include <iterator>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;
using analytics::Word;

namespace {

std::string primaryOf(const SheetPlace& place) {
    for (const auto& action : uprightOf(place).actions) {
        if (action.primary) {
            return action.id.toStdString();
        }
    }
    return {};
}

std::string contentOf(const std::filesystem::path& file) {
    std::ifstream in{file, std::ios::binary};
    return {std::istreambuf_iterator<char>{in}, {}};
}

} // namespace

TEST_CASE("a complaint is answered in the owner's order", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    rig.ship(1, 20, 24, "C-14");
    rig.retain(5, 501, "shelf 2");
    rig.complain(1);
    const auto& place = *rig.places.complaint;
    const char* const order[] = {"whether it is ours",
                                 "Run 30001, lot 1",
                                 "Likely ours",
                                 "What else is at risk",
                                 "4 lots, 144 pieces",
                                 "Bad pieces:",
                                 "What to do today",
                                 "shelf 2",
                                 "Why",
                                 "Sharing is not causing",
                                 "Since when",
                                 "Did the fix work"};
    std::size_t before = 0;
    for (const auto* words : order) {
        INFO(words);
        CHECK(shows(place, words));
        const auto at = placeOf(place, words);
        REQUIRE(at != std::string::npos);
        CHECK(at >= before);
        before = at;
    }
    CHECK(shows(place, "2 of its 2 readings were under-cured"));
    CHECK(shows(place, "ucket 7 (low-cure): strong")); // 4 of 4 against 0 of 10, from 4 episodes
    CHECK(shows(place, "4 of 4 lots with it failed"));
    CHECK(shows(place, "24 shipped, 120 here"));
    CHECK_FALSE(shows(place, "cartons C-14"));
    REQUIRE(rig.places.complaint->act("complaint.at-risk." + RiskRig::lotId(1)));
    CHECK(shows(place, "cartons C-14")); // of the lot that is chosen
}

TEST_CASE("the runs that fit stand beside it with what fits", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    rig.complain(1);
    auto& place = *rig.places.complaint;
    CHECK(shows(place, "1  The clue"));
    const auto page = place.sheet();
    REQUIRE(page.list.size() > 3);
    CHECK(page.list[2].title == QStringLiteral("Run 30001")); // the tied one first
    CHECK(page.list[2].chosen);
    CHECK(page.list[2].detail.contains(QStringLiteral("tied to it, fits by order")));
    place.act(page.list[3].id.toStdString());
    CHECK(place.sheet().list[3].chosen);
    CHECK(shows(place, "the complaint is not tied to it"));
    place.act("complaint.tie");
    CHECK(place.isWriting() == false); // nothing typed yet: it may be left
    place.act("complaint.keep");
    const auto row = records::complaintById(rig.shop.db(), "complaint-1");
    REQUIRE(row);
    REQUIRE(*row);
    CHECK((*row)->taken.run != RiskRig::runId(1));
    CHECK((*row)->versions == 2);
}

TEST_CASE("one lot is held by two presses, all of them by one", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    const auto complaint = rig.complain(1);
    auto& place = *rig.places.complaint;
    CHECK(shows(place, "4 of these lots are not held"));
    CHECK(primaryOf(place) == "complaint.hold-all");
    place.act("complaint.at-risk." + RiskRig::lotId(9));
    CHECK(primaryOf(place) == "complaint.hold-one");
    CHECK(shows(place, "Hold run 30009, lot 1"));
    place.act("complaint.hold-one");
    CHECK(rig.asked == std::vector{shop::Right::takeComplaints});
    auto held = rig.heldFor(complaint);
    REQUIRE(held.size() == 1);
    CHECK(held.front().lot == RiskRig::lotId(9));
    CHECK(held.front().cause == records::HoldCause::complaint);
    CHECK(held.front().count == RiskRig::kPieces);
    CHECK(held.front().bin > 0);
    CHECK(rig.signedBy() == 1);
    place.reload();
    CHECK(shows(place, "1 lot is on hold for this complaint"));
    CHECK(shows(place, "3 of these lots are not held"));
    place.act("complaint.hold-all");
    held = rig.heldFor(complaint);
    REQUIRE(held.size() == 4);
    CHECK(held[1].bin != held[2].bin);
    place.reload();
    CHECK(shows(place, "Every one of these lots is held"));
    CHECK_FALSE(offers(place, "complaint.hold-all"));
}

TEST_CASE("nothing is held while nobody signs, and the lot stays chosen", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    const auto complaint = rig.complain(1);
    auto& place = *rig.places.complaint;
    rig.signs = false;
    place.act("complaint.at-risk." + RiskRig::lotId(9));
    place.act("complaint.hold-one");
    CHECK(rig.heldFor(complaint).empty());
    CHECK(primaryOf(place) == "complaint.hold-one");
    rig.signs = true;
    rig.diskFull = true;
    place.act("complaint.hold-one");
    CHECK(rig.heldFor(complaint).empty());
    CHECK(rig.told.size() == 1);
    CHECK(primaryOf(place) == "complaint.hold-one");
}

TEST_CASE("lots that somebody held meanwhile are not held twice", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    const auto complaint = rig.complain(1);
    auto& place = *rig.places.complaint;
    for (const int lot : {1, 5, 9, 13}) {
        records::HoldPlaced hold;
        hold.hold = "elsewhere-" + std::to_string(lot);
        hold.lot = RiskRig::lotId(lot);
        hold.cause = records::HoldCause::complaint;
        hold.because = complaint;
        rig.write({hold});
    }
    place.act("complaint.hold-all");
    CHECK(rig.heldFor(complaint).size() == 4);
    CHECK(shows(place, "is held by this complaint already, or scrapped. Nothing was changed."));
}

TEST_CASE("the recall list names customers and cartons, on paper and in a file", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    rig.ship(1, 20, 24, "C-14");
    rig.ship(5, 10, 36, "C-15");
    rig.ship(2, 10, 36, "C-99"); // of the other bucket
    rig.complain(1);
    auto& place = *rig.places.complaint;
    CHECK(shows(place, "60 pieces are out"));
    place.act("complaint.recall");
    CHECK(shows(place, "Kestrel: 60 pieces"));
    CHECK(shows(place, "C-14"));
    CHECK(shows(place, "C-15"));
    CHECK_FALSE(shows(place, "C-99"));
    place.act("complaint.recall.print");
    REQUIRE(rig.printed.size() == 1);
    CHECK(rig.printed.front().what == PrintWish::What::recallOfLots);
    CHECK(rig.printed.front().number == 101);
    CHECK(rig.printed.front().ids.size() == 4);
    CHECK(rig.printed.front().ids.front() == RiskRig::lotId(1));
    place.act("complaint.recall.csv");
    std::string csv;
    for (const auto& file : std::filesystem::directory_iterator{rig.needs.exchange}) {
        csv += contentOf(file.path());
    }
    CHECK(csv.find("Kestrel,C-14,24,30001,1") != std::string::npos);
    CHECK(csv.find("C-99") == std::string::npos);
    place.act("complaint.back");
    CHECK(shows(place, "What else is at risk"));
}

TEST_CASE("three retained pieces are named to be washed tonight, and lead to their page", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    for (const int lot : {1, 5, 9, 13}) {
        rig.retain(lot, 600 + lot, "shelf " + std::to_string(lot));
    }
    rig.retain(2, 700, "shelf of the good");
    rig.complain(1);
    auto& place = *rig.places.complaint;
    int offered = 0;
    std::string first;
    for (const auto& block : uprightOf(place).blocks) {
        for (const auto& row : block.rows) {
            if (row.id.startsWith(QStringLiteral("complaint.wash."))) {
                ++offered;
                CHECK(row.value.startsWith(QStringLiteral("shelf ")));
                first = first.empty() ? row.id.toStdString() : first;
            }
        }
    }
    CHECK(offered == 3);
    CHECK_FALSE(shows(place, "shelf of the good"));
    place.act(first);
    REQUIRE(rig.scanned.size() == 1);
    CHECK(rig.scanned.front().front() == 'T');
}

TEST_CASE("a lot that shares nothing with failed ones has no suspect, and stands alone", "[deciding][risk]") {
    RiskRig rig;
    for (int i = 0; i < 6; ++i) {
        rig.print(i, 60 - 3 * i, 8, Word::cured);
    }
    rig.complain(1);
    const auto& place = *rig.places.complaint;
    CHECK(shows(place, "Nothing stands out that this lot shares"));
    CHECK(shows(place, "1 lot, 36 pieces"));
    // Its readings are good and nothing of it was washed: they say nothing of what came back.
    CHECK(shows(place, "How many are bad cannot be told: no reading or test counts."));
    CHECK(shows(place, "No retained piece of these lots"));
    CHECK(shows(place, "Nothing of these lots was shipped."));
    CHECK_FALSE(shows(place, "strong"));
}

TEST_CASE("where every lot failed nothing is blamed", "[deciding][risk]") {
    RiskRig rig;
    for (int i = 0; i < 6; ++i) {
        rig.print(i, 60 - 3 * i, 7, Word::underCured);
    }
    rig.complain(1);
    const auto& place = *rig.places.complaint;
    CHECK(shows(place, "Likely ours")); // its own readings say so
    CHECK(shows(place, "Every lot failed: there is no good one to compare with."));
    CHECK_FALSE(shows(place, "strong"));
}

TEST_CASE("a shop with one lot gets what its own readings tell", "[deciding][risk]") {
    RiskRig rig;
    rig.print(1, 10, 7, Word::cured);
    rig.complain(1);
    const auto& place = *rig.places.complaint;
    CHECK(shows(place, "2 of its 2 readings were cured"));
    CHECK(shows(place, "1 lot, 36 pieces"));
    CHECK(shows(place, "Did the fix work"));
    CHECK(shows(place, "it comes with a signed finding"));
}

TEST_CASE("the next suspect stands one press away, and the first one after the last", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    rig.complain(1);
    auto& place = *rig.places.complaint;
    const auto first = rig.studies;
    CHECK(shows(place, "Next suspect"));
    place.act("complaint.next-suspect");
    CHECK(rig.studies == first + 1);
    CHECK(shows(place, "no more than chance"));
    for (int i = 0; i < 10 && !shows(place, "ucket 7 (low-cure): strong"); ++i) {
        place.act("complaint.next-suspect");
    }
    CHECK(shows(place, "ucket 7 (low-cure): strong"));
}

TEST_CASE("what is worked out beside the screen is said, and what is there meanwhile is shown", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    rig.studiesLater = true;
    rig.complain(1);
    auto& place = *rig.places.complaint;
    CHECK(shows(place, "Working it out."));
    CHECK(shows(place, "Run 30001, lot 1"));
    CHECK(shows(place, "The reading that says most"));
    CHECK_FALSE(shows(place, "What else is at risk"));
    REQUIRE(rig.studiesWaiting.size() == 1);
    rig.print(20, 1, 8, Word::cured); // something new stands in the book
    place.reload();
    CHECK(rig.studiesWaiting.size() == 1); // it is asked again once it is told
    const auto shown = rig.shown;
    rig.studiesWaiting.front()();
    CHECK(rig.shown == shown + 1);
    CHECK(shows(place, "4 lots, 144 pieces"));
    CHECK(rig.studiesWaiting.size() == 2);
    CHECK(shows(place, "Working it out anew"));
}

TEST_CASE("an answer that comes after another complaint was opened is dropped", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    rig.studiesLater = true;
    rig.complain(1);
    rig.complain(2);
    REQUIRE(rig.studiesWaiting.size() == 2);
    rig.studiesWaiting[0]();
    CHECK(shows(*rig.places.complaint, "Working it out."));
    rig.studiesWaiting[1]();
    CHECK(shows(*rig.places.complaint, "Run 30002, lot 1"));
    CHECK(shows(*rig.places.complaint, "What else is at risk"));
}

TEST_CASE("a reading whose ink was mislabelled is shown as it was and as it is known today", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    rig.complain(0); // bucket 8, cured
    auto& place = *rig.places.complaint;
    CHECK(shows(place, "nothing it was judged by has changed"));
    records::BucketClosed closed;
    closed.bucket = "pail-8";
    closed.why = records::BucketEnd::mislabelled;
    rig.write({closed});
    place.reload();
    CHECK(shows(place, "Then"));
    CHECK(shows(place, "Cured, +"));
    CHECK(shows(place, "bucket 8 was closed as mislabelled: what its ink needs is not known"));
    CHECK(shows(place, "Likely ours"));
}

TEST_CASE("a complaint that says nothing against the print asks for no risk", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    records::ComplaintTaken taken;
    taken.complaint = "c-feel";
    taken.number = 300;
    taken.customer = "Kestrel";
    taken.what = records::ComplaintKind::feel;
    taken.run = RiskRig::runId(1);
    rig.write({taken});
    rig.places.complaint->showComplaint("c-feel");
    CHECK(rig.studies == 0);
    CHECK(shows(*rig.places.complaint, "so it holds nothing"));
    CHECK_FALSE(offers(*rig.places.complaint, "complaint.hold-all"));
}

TEST_CASE("whether a fix worked is not said too early", "[deciding][risk]") {
    RiskRig rig;
    rig.fourBadOfFourteen();
    for (const int lot : {1, 5}) {
        rig.ship(lot, 40 - lot, 36, "C-" + std::to_string(lot));
    }
    const auto complaint = rig.complain(1, 5);
    auto& place = *rig.places.complaint;
    place.act("complaint.close");
    place.act("complaint.finding.cause.mislabelled-ink");
    place.enter("complaint.finding.action", "the pail was thrown away");
    place.act("complaint.finding.sign");
    place.reload();
    CHECK(shows(place, "the pail was thrown away"));
    CHECK(shows(place, "no day can be named")); // half of one complaint is never told from one
    CHECK_FALSE(shows(place, "It worked"));
}
