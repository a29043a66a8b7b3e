// The Inks as sheets, on a real book: what is shown, what is written, and what is not.
#include "kiosk/screens/presenting/places/inks_place.hpp"
#include "tests/kiosk/support/place_rig.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;

namespace {

class Frame final : public PlaceRig {
public:
    Frame() {
        shop.plan();
        clock.setWall({shop.now(), 0});
        place = std::make_unique<InksPlace>(needs);
        place->reload();
    }

    void open(const std::string& family, const std::string& expiry = {}) {
        REQUIRE(place->act("inks.open-bucket"));
        REQUIRE(place->act("inks.set.family." + family));
        REQUIRE(place->enter("inks.field.expiry", expiry));
        REQUIRE(place->act("inks.save"));
    }
    bool says(const std::string& words) const { return testing::says(*place, words); }
    bool scan(std::uint64_t number, bool onScreen) {
        return place->scanned({drivers::TicketKind::bucket, number}, onScreen);
    }

    std::unique_ptr<InksPlace> place;
};

std::int64_t newestBucket(Frame& frame) {
    const auto all = records::buckets(frame.shop.db(), true);
    REQUIRE(all);
    REQUIRE_FALSE(all->empty());
    return all->back().number;
}

} // namespace

TEST_CASE("a bucket scanned anywhere answers what it cures at and with what it may run", "[stock][places]") {
    Frame frame;
    frame.open("low-cure");
    const auto number = newestBucket(frame);
    REQUIRE(frame.place->act("inks.back"));
    CHECK(frame.scan(static_cast<std::uint64_t>(number), false));
    CHECK(frame.says("Cures at 285\xC2\xA0°F")); // contracts, starters: low-cure 285 °F
    CHECK(frame.says("100% polyester"));
    CHECK(frame.says("beside"));
    CHECK(frame.place->act("inks.label"));
    REQUIRE(frame.printed.size() == 1);
    CHECK(frame.printed.front().number == number);
    CHECK_FALSE(frame.place->scanned({drivers::TicketKind::run, 1}, true));
}

TEST_CASE("an unknown bucket is told and leaves no other bucket's answer standing", "[stock][places]") {
    Frame frame;
    frame.open("low-cure");
    CHECK(frame.says("Cures at"));
    CHECK(frame.scan(4711, true));
    CHECK(frame.told.size() == 1);
    CHECK_FALSE(frame.says("Cures at"));
}

TEST_CASE("an expired bucket says so before anything else", "[stock][places]") {
    Frame frame;
    frame.open("low-cure", "2026-02-20"); // the book's clock stands at 2026-02-25
    const auto page = frame.place->sheet();
    REQUIRE_FALSE(page.blocks.isEmpty());
    CHECK(page.blocks.front().kind == SheetKinds::Lead);
    CHECK(page.blocks.front().text.contains(QStringLiteral("Past its date")));
}

TEST_CASE("a mix takes scanned buckets, is drawn as a tree, and cannot contain itself", "[stock][places]") {
    Frame frame;
    frame.open("low-cure");
    const auto first = newestBucket(frame);
    frame.open("standard");
    const auto second = newestBucket(frame);
    REQUIRE(frame.place->act("inks.mix"));
    CHECK(frame.scan(static_cast<std::uint64_t>(first), true));
    CHECK(frame.scan(static_cast<std::uint64_t>(second), true));
    CHECK(frame.scan(static_cast<std::uint64_t>(second + 1), true)); // the label the mix will wear
    REQUIRE(frame.place->enter("inks.field.name", "team red"));
    for (const auto number : {first, second, second + 1}) {
        REQUIRE(frame.place->enter("inks.field.part." + std::to_string(number), number == first ? "3" : "1"));
    }
    const auto before = frame.entries();
    CHECK(frame.place->act("inks.save"));
    CHECK(frame.entries() == before);
    CHECK(frame.says("cannot contain itself"));
    CHECK(frame.place->act("inks.remove-part"));
    CHECK(frame.place->act("inks.save"));
    CHECK(frame.entries() == before + 1);
    CHECK(frame.says("Cures at 320\xC2\xA0°F")); // decisions 1, Mix: the highest cure; standard 320 °F
    CHECK(frame.says("75.0"));                   // 3 of 4 parts by mass
    CHECK(frame.says("25.0"));
    CHECK(frame.place->act("inks.mislabelled"));
    CHECK(frame.says("Close bucket")); // asked once
    CHECK(frame.place->act("inks.back"));
    CHECK(frame.entries() == before + 1);
    CHECK(frame.place->act("inks.mislabelled"));
    CHECK(frame.place->act("inks.close-now"));
    CHECK(frame.entries() == before + 2);
    CHECK(frame.says("mislabelled"));
}

TEST_CASE("a revision is signed, counts one up, and every fault stands at its field", "[stock][places]") {
    Frame frame;
    REQUIRE(frame.place->act("inks.pick.family.low-cure"));
    REQUIRE(frame.place->act("inks.revise"));
    REQUIRE(frame.place->enter("inks.field.cure", "hot"));
    REQUIRE(frame.place->enter("inks.field.ease", "0"));
    const auto before = frame.entries();
    REQUIRE(frame.place->act("inks.save"));
    CHECK(frame.asked.empty());
    CHECK(frame.says("“hot” is no number"));
    CHECK(frame.says("“0” is no rank"));
    REQUIRE(frame.place->enter("inks.field.cure", "290"));
    REQUIRE(frame.place->enter("inks.field.ease", "2"));
    frame.signs = false;
    REQUIRE(frame.place->act("inks.save"));
    CHECK(frame.asked == std::vector<shop::Right>{shop::Right::reviseInks});
    CHECK(frame.entries() == before);
    frame.signs = true;
    frame.diskFull = true;
    REQUIRE(frame.place->act("inks.save"));
    CHECK(frame.told.size() == 1);
    CHECK(frame.says("Revise low-cure")); // the form stays as it was typed
    frame.diskFull = false;
    REQUIRE(frame.place->act("inks.save"));
    CHECK(frame.entries() == before + 1);
    CHECK(frame.signedBy() == 1);
    CHECK(frame.says("Cures at 290\xC2\xA0°F"));
    CHECK(frame.says("Revision 2"));
    CHECK(frame.says("Revision 1"));
}

TEST_CASE("every page and form of the inks has all its sentences", "[stock][places]") {
    Frame frame;
    CHECK(frame.says("Pick an ink"));
    for (const std::string id : {"inks.new-family", "inks.new-cloth", "inks.open-bucket", "inks.mix"}) {
        REQUIRE(frame.place->act(id));
        CHECK(frame.says("Keep it"));
        REQUIRE(frame.place->act("inks.save")); // empty: faults, nothing written
        CHECK(frame.says("Keep it"));
        REQUIRE(frame.place->act("inks.back"));
    }
    for (const std::string id : {"inks.pick.family.silicone", "inks.pick.cloth.100% polyester"}) {
        REQUIRE(frame.place->act(id));
        CHECK(frame.says("From memory")); // contracts, starters: marked from memory
        CHECK(frame.says("Revisions"));
    }
    CHECK_FALSE(frame.place->act("runs.new"));
    CHECK_FALSE(frame.place->enter("runs.title", "x"));
}

TEST_CASE("a scanned bucket never drops a form that is half typed", "[stock][places]") {
    Frame frame;
    frame.open("low-cure");
    const auto number = static_cast<std::uint64_t>(newestBucket(frame));
    REQUIRE(frame.place->act("inks.new-family"));
    REQUIRE_FALSE(frame.place->isWriting()); // nothing typed yet
    REQUIRE(frame.place->enter("inks.field.name", "mystery"));
    CHECK(frame.place->isWriting());
    const bool onScreen = GENERATE(true, false);
    CHECK(frame.scan(number, onScreen));
    CHECK(frame.says("Cures at"));
    CHECK(wasTold(frame, "What you were typing is kept"));
    CHECK_FALSE(frame.place->enter("inks.field.name", "other")); // not shown, not typed into
    REQUIRE(frame.place->act("inks.pick.cloth.100% polyester"));
    REQUIRE(frame.place->act("inks.open-bucket")); // another form does not take its place either
    CHECK(wasTold(frame, "Another form is half typed"));
    CHECK(frame.says("mystery"));
    REQUIRE(frame.place->act("inks.pick.cloth.100% polyester"));
    REQUIRE(frame.place->act("inks.resume"));
    CHECK(frame.says("mystery"));
    REQUIRE(frame.place->act("inks.back"));
    CHECK_FALSE(frame.place->isWriting());
    REQUIRE(frame.place->act("inks.open-bucket"));
    CHECK_FALSE(frame.says("mystery"));
}

TEST_CASE("a second press while the first is on its way to the disk opens no second bucket", "[stock][places]") {
    Frame frame;
    frame.slow = true;
    const auto before = frame.entries();
    frame.open("low-cure");
    REQUIRE(frame.place->act("inks.save"));
    CHECK(frame.entries() == before + 1);
    REQUIRE(frame.answers.size() == 1);
    frame.answers.front()();
    CHECK(frame.says("Cures at"));
}
