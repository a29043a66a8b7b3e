// Complaints on a real book: taken, tied, held, changed, closed.
#include "tests/kiosk/deciding/deciding_rig.hpp"

#include <fstream>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;
using records::LotState;

namespace {

void take(DecidingRig& rig, const std::string& kind) {
    auto& place = *rig.places.complaint;
    place.act("complaint.new");
    place.act("complaint.kind." + kind);
    place.enter("complaint.field.customer", "Kestrel");
    place.enter("complaint.field.pieces", "3");
    place.scanned({drivers::TicketKind::run, 20418}, true);
}

std::vector<records::ComplaintRow> taken(DecidingRig& rig) {
    const auto rows = records::complaints(rig.shop.db(), true);
    REQUIRE(rows);
    return *rows;
}

} // namespace

TEST_CASE("a print failure that is tied by a scan holds its lot at once", "[deciding][complaint]") {
    DecidingRig rig;
    rig.read(analytics::Word::cured, 20);
    take(rig, "washed-out");
    CHECK(shows(*rig.places.complaint, "Kept, it puts lot 1 on hold."));
    rig.places.complaint->act("complaint.keep");
    CHECK(rig.asked == std::vector{shop::Right::takeComplaints});
    REQUIRE(taken(rig).size() == 1);
    CHECK(taken(rig).front().taken.pieces == 3);
    CHECK(taken(rig).front().taken.lot == rig.lot());
    CHECK(rig.state() == LotState::onHold);
    CHECK(shows(*rig.places.complaint, "Washed out"));
    rig.places.holds->reload();
    CHECK(shows(*rig.places.holds, "a complaint"));
}

TEST_CASE("a complaint about shipped pieces is a recall to decide", "[deciding][complaint]") {
    DecidingRig rig;
    rig.read(analytics::Word::cured, 20);
    rig.shipped(60, "Kestrel", {"C-1"});
    auto& place = *rig.places.complaint;
    place.act("complaint.new");
    place.act("complaint.kind.cracked");
    place.enter("complaint.field.customer", "Kestrel");
    place.enter("complaint.field.clue", "C-1"); // the carton is the clue
    CHECK(shows(place, "a recall to decide"));
    place.act("complaint.keep");
    rig.places.holds->reload();
    CHECK(shows(*rig.places.holds, "Recalls to decide"));
}

TEST_CASE("what is missing is said at its field and nothing is lost", "[deciding][complaint]") {
    DecidingRig rig;
    auto& place = *rig.places.complaint;
    place.act("complaint.new");
    place.enter("complaint.field.pieces", "many");
    place.enter("complaint.field.words", "gone");
    place.act("complaint.keep");
    CHECK(shows(place, "Choose what is wrong with the print."));
    CHECK(shows(place, "Say to whom")); // the customer
    CHECK(shows(place, "no number of pieces"));
    CHECK(shows(place, "gone"));
    CHECK(taken(rig).empty());
    CHECK(rig.asked.empty());
    CHECK(place.isWriting());
}

TEST_CASE("a complaint is changed by a further entry and holds its lot once", "[deciding][complaint]") {
    DecidingRig rig;
    take(rig, "peeled");
    auto& place = *rig.places.complaint;
    place.act("complaint.keep");
    place.act("complaint.change");
    place.enter("complaint.field.pieces", "7");
    CHECK(shows(place, "It holds lot 1 already."));
    place.act("complaint.keep");
    REQUIRE(taken(rig).size() == 1);
    CHECK(taken(rig).front().taken.pieces == 7);
    CHECK(taken(rig).front().versions == 2);
    CHECK(shows(place, "changed once"));
    const auto holds = records::holdsOfLot(rig.shop.db(), rig.lot());
    REQUIRE(holds);
    CHECK(holds->size() == 1);
}

TEST_CASE("a complaint is closed by a signed finding", "[deciding][complaint]") {
    DecidingRig rig;
    take(rig, "feel");
    auto& place = *rig.places.complaint;
    CHECK(shows(place, "it holds nothing"));
    place.act("complaint.keep");
    place.act("complaint.close");
    place.act("complaint.finding.sign");
    CHECK(shows(place, "Say what it was."));
    place.enter("complaint.finding.cause", "softener in the rinse");
    place.enter("complaint.finding.action", "rinse without it");
    place.act("complaint.finding.sign");
    REQUIRE(taken(rig).front().finding);
    CHECK(taken(rig).front().finding->cause == "softener in the rinse");
    CHECK(taken(rig).front().finding->signers == std::vector<std::int64_t>{1});
    CHECK(shows(place, "Signed by Ana"));
    CHECK_FALSE(offers(place, "complaint.change"));
}

TEST_CASE("pictures are taken from the exchange folder, and what is none is left there", "[deciding][complaint]") {
    DecidingRig rig;
    std::filesystem::create_directories(rig.needs.exchange);
    const auto lay = [&](const char* name, const std::string& bytes) {
        std::ofstream{rig.needs.exchange / name, std::ios::binary} << bytes;
    };
    lay("a.jpg", "\xFF\xD8\xFF\xE0 picture"); // ITU-T T.81: SOI, then a marker
    lay("b.png", "no picture at all");
    lay("c.txt", "not asked for");
    take(rig, "bled");
    auto& place = *rig.places.complaint;
    place.act("complaint.pictures");
    CHECK(shows(place, "1 picture taken. 1 file is no picture"));
    place.act("complaint.keep");
    REQUIRE(taken(rig).size() == 1);
    REQUIRE(taken(rig).front().taken.pictures.size() == 1);
    const auto digest = ledger::fromHex(taken(rig).front().taken.pictures.front());
    REQUIRE(digest);
    CHECK(rig.shop.book().blob(*digest));
    CHECK(std::filesystem::exists(rig.needs.exchange / "taken" / "a.jpg"));
    CHECK(std::filesystem::exists(rig.needs.exchange / "b.png"));
}
