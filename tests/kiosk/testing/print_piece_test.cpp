// What becomes of a print's piece in the sum of its lot (decisions 5: made = shipped + here + retained + tested +
// scrapped; a difference is shown).
#include "kiosk/records/lot_queries.hpp"
#include "kiosk/shop/testing/print_piece.hpp"
#include "tests/kiosk/testing/support/tests_rig.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;
using records::PiecePlace;
using records::PrintEnd;

namespace {

records::PiecesOfLot sumOf(TestsRig& rig, const std::string& print) {
    const auto pieces = records::piecesOfLot(rig.shop.db(), rig.print(print).named.lot);
    REQUIRE(pieces);
    return *pieces;
}

void end(TestsRig& rig, const std::string& print, const char* how) {
    REQUIRE(rig.place->act("tests.pick.print." + print));
    REQUIRE(rig.place->act("tests.gone"));
    REQUIRE(rig.place->act(std::string{"tests.end."} + how));
}

} // namespace

TEST_CASE("a piece is counted where it went, and a lost one nowhere", "[testing][print]") {
    CHECK(shop::placeAfter(PrintEnd::shipped, PiecePlace::retained) == PiecePlace::shipped);
    CHECK(shop::placeAfter(PrintEnd::shipped, PiecePlace::tested) == PiecePlace::shipped);
    CHECK(shop::placeAfter(PrintEnd::usedUp, PiecePlace::retained) == PiecePlace::tested);
    CHECK(shop::placeAfter(PrintEnd::thrownAway, PiecePlace::retained) == PiecePlace::scrapped);
    CHECK(shop::placeAfter(PrintEnd::lost, PiecePlace::retained) == std::nullopt);
    for (const auto end : {PrintEnd::usedUp, PrintEnd::thrownAway, PrintEnd::lost}) {
        CHECK(shop::placeAfter(end, PiecePlace::tested) == PiecePlace::tested);
    }
    CHECK_FALSE(shop::movedOn("entry", "lot", PiecePlace::tested, PiecePlace::tested));
    const auto back = shop::movedOn("entry", "lot", PiecePlace::retained, std::nullopt);
    REQUIRE(back);
    CHECK(back->count == 0);
    CHECK(back->corrects == "entry");
}

TEST_CASE("a retained piece that ends leaves the shelf in the lot's sum too", "[testing][places]") {
    const auto ended = [](const char* how) {
        TestsRig rig;
        const auto id = rig.name("B2");
        CHECK(sumOf(rig, id).retained == 1);
        end(rig, id, how);
        CHECK(rig.print(id).ended);
        return sumOf(rig, id);
    };
    const auto shipped = ended("shipped");
    CHECK(shipped.shipped == 1);
    CHECK(shipped.retained == 0);
    CHECK(ended("thrown-away").scrapped == 1);
    CHECK(ended("used-up").tested == 1);
    const auto lost = ended("lost");
    CHECK(lost.retained + lost.shipped + lost.tested + lost.scrapped == 0); // the sum lacks it
}

TEST_CASE("a tested piece laid on a shelf is retained, then shipped, and counted once", "[testing][places]") {
    TestsRig rig;
    const auto id = rig.name();
    CHECK(sumOf(rig, id).tested == 1);
    REQUIRE(rig.place->act("tests.pick.print." + id));
    REQUIRE(rig.place->act("tests.shelf"));
    REQUIRE(rig.place->enter("tests.field.shelf", "B2"));
    REQUIRE(rig.place->act("tests.save"));
    CHECK(sumOf(rig, id).tested == 0);
    CHECK(sumOf(rig, id).retained == 1);
    end(rig, id, "shipped");
    const auto sum = sumOf(rig, id);
    CHECK(sum.shipped == 1);
    CHECK(sum.retained + sum.tested + sum.scrapped == 0);
}

TEST_CASE("the end of a half moves nothing: its whole was moved", "[testing][places]") {
    TestsRig rig;
    const auto id = rig.name("B2");
    REQUIRE(rig.place->act("tests.cut"));
    const auto prints = records::openPrints(rig.shop.db(), 10);
    REQUIRE(prints);
    for (const auto& print : *prints) {
        if (print.named.halfOf) {
            end(rig, print.named.print, "thrown-away");
        }
    }
    CHECK(sumOf(rig, id).retained == 1);
    CHECK(sumOf(rig, id).scrapped == 0);
}
