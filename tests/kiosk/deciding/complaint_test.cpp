#include "kiosk/shop/deciding/complaint.hpp"
#include "kiosk/shop/deciding/striking.hpp"

#include <catch2/catch.hpp>

using namespace holdfast;
using namespace holdfast::kiosk::shop::deciding;
using analytics::LotStanding;
using kiosk::records::ComplaintKind;
using kiosk::records::ComplaintTaken;
using kiosk::records::HoldPlaced;

namespace {

ComplaintDraft washedOut() {
    ComplaintDraft draft;
    draft.customer = "Kestrel";
    draft.what = ComplaintKind::washedOut;
    draft.words = "gone after two washes";
    draft.pieces = "3";
    draft.clue = "C-14";
    draft.run = "run-1";
    draft.lot = "lot-2";
    return draft;
}

ComplaintFacts facts(LotStanding standing, int shipped) {
    ComplaintFacts made;
    made.lot = LotComplained{"lot-2", standing, shipped, 200, {}};
    made.nextNumber = 31;
    made.nextBin = 17;
    return made;
}

const ComplaintIds kIds{"c1", "h1"};

} // namespace

TEST_CASE("a print failure is taken and holds its lot in the same commit", "[deciding][complaint]") {
    const auto list = complaintFrom(washedOut(), facts(LotStanding::cleared, 0), kIds);
    REQUIRE(list);
    REQUIRE(list->size() == 2);
    const auto& taken = std::get<ComplaintTaken>(list->at(0));
    CHECK(taken.complaint == "c1");
    CHECK(taken.number == 31);
    CHECK(taken.pieces == 3);
    const auto& hold = std::get<HoldPlaced>(list->at(1));
    CHECK(hold.lot == "lot-2");
    CHECK(hold.cause == kiosk::records::HoldCause::complaint);
    CHECK(hold.because == "c1");
    CHECK_FALSE(hold.pieces); // the whole lot
    CHECK(hold.count == 200);
    CHECK(hold.bin == 17);
}

TEST_CASE("shipped pieces make it a recall to decide", "[deciding][complaint]") {
    CHECK(effectOf(washedOut(), facts(LotStanding::cleared, 60)) == ComplaintEffect::recallToDecide);
    CHECK(effectOf(washedOut(), facts(LotStanding::cleared, 0)) == ComplaintEffect::holds);
    CHECK(complaintFrom(washedOut(), facts(LotStanding::released, 60), kIds)->size() == 2);
}

TEST_CASE("a feel or something else holds nothing", "[deciding][complaint]") {
    for (const auto kind : {ComplaintKind::feel, ComplaintKind::other}) {
        auto draft = washedOut();
        draft.what = kind;
        CHECK(effectOf(draft, facts(LotStanding::cleared, 60)) == ComplaintEffect::none);
        CHECK(complaintFrom(draft, facts(LotStanding::cleared, 60), kIds)->size() == 1);
    }
    for (const auto kind : {ComplaintKind::cracked, ComplaintKind::peeled, ComplaintKind::bled, ComplaintKind::scorched,
                            ComplaintKind::rubbedOff}) {
        auto draft = washedOut();
        draft.what = kind;
        CHECK(complaintFrom(draft, facts(LotStanding::cleared, 0), kIds)->size() == 2);
    }
}

TEST_CASE("a complaint that is tied to no lot yet holds nothing until it is", "[deciding][complaint]") {
    auto draft = washedOut();
    draft.lot.reset();
    ComplaintFacts none;
    CHECK(effectOf(draft, none) == ComplaintEffect::tiedToNone);
    CHECK(complaintFrom(draft, none, kIds)->size() == 1);
}

TEST_CASE("a complaint holds a lot once, and changes keep its number", "[deciding][complaint]") {
    auto draft = washedOut();
    draft.complaint = "c1";
    draft.number = 31;
    draft.pieces = "5";
    auto known = facts(LotStanding::onHold, 0);
    known.nextNumber = 40;
    known.lot->complaintsThatHold = {"c1"};
    CHECK(effectOf(draft, known) == ComplaintEffect::heldAlready);
    const auto list = complaintFrom(draft, known, {"c2", "h2"});
    REQUIRE(list);
    REQUIRE(list->size() == 1);
    CHECK(std::get<ComplaintTaken>(list->front()).complaint == "c1");
    CHECK(std::get<ComplaintTaken>(list->front()).number == 31);
    known.lot->complaintsThatHold = {"another"}; // a second complaint is a new cause
    CHECK(complaintFrom(draft, known, {"c2", "h2"})->size() == 2);
}

TEST_CASE("a scrapped lot is held no more, and the complaint is kept all the same", "[deciding][complaint]") {
    CHECK(effectOf(washedOut(), facts(LotStanding::scrapped, 0)) == ComplaintEffect::lotScrapped);
    CHECK(complaintFrom(washedOut(), facts(LotStanding::scrapped, 0), kIds)->size() == 1);
}

TEST_CASE("a complaint needs a customer and what is wrong; its count and day must be such", "[deciding][complaint]") {
    ComplaintDraft draft;
    draft.pieces = "0";
    draft.received = "yesterday";
    draft.words = std::string(201, 'a'); // one above kLongestText
    const auto refused = complaintFrom(draft, {}, kIds);
    REQUIRE_FALSE(refused);
    CHECK(has(refused.error(), Cause::customerMissing));
    CHECK(has(refused.error(), Cause::whatMissing));
    CHECK(has(refused.error(), Cause::countOfNone));
    CHECK(has(refused.error(), Cause::notADay));
    CHECK(has(refused.error(), Cause::textTooLong));
    auto many = washedOut();
    many.pictures.resize(kMostPictures + 1);
    CHECK(has(complaintFrom(many, {}, kIds).error(), Cause::tooManyPictures));
    auto closed = facts(LotStanding::cleared, 0);
    closed.closed = true;
    CHECK(has(complaintFrom(washedOut(), closed, kIds).error(), Cause::complaintClosed));
}

TEST_CASE("what was taken comes back into the form as it stood", "[deciding][complaint]") {
    const auto list = complaintFrom(washedOut(), facts(LotStanding::cleared, 0), kIds);
    REQUIRE(list);
    auto draft = draftOf(std::get<ComplaintTaken>(list->front()));
    auto expected = washedOut();
    expected.complaint = "c1";
    expected.number = 31;
    CHECK(draft == expected);
}

TEST_CASE("a finding needs a cause and an entitled signature, and is signed once", "[deciding][complaint]") {
    ComplaintTaken taken;
    taken.complaint = "c1";
    taken.lot = "lot-2";
    const auto finding = findingFrom({" belt 20 % too fast ", "belt marked", true}, taken, false, {7});
    REQUIRE(finding);
    CHECK(finding->cause == "belt 20 % too fast");
    CHECK(finding->lot == "lot-2");
    CHECK(finding->provenLater);
    CHECK(finding->signers == std::vector<std::int64_t>{7});
    CHECK(has(findingFrom({"", "", false}, taken, false, {7}).error(), Cause::causeMissing));
    CHECK(has(findingFrom({"x", "", false}, taken, true, {7}).error(), Cause::complaintClosed));
    CHECK(has(findingFrom({"x", "", false}, taken, false, {}).error(), Cause::needsEntitledSigner));
}

TEST_CASE("a reading is struck only once, for a named cause that was seen", "[deciding][striking]") {
    using kiosk::records::StruckCause;
    const StrikeDraft draft{"r1", StruckCause::probeFellOut, true};
    const auto struck = strikeFrom(draft, {false, false, true});
    REQUIRE(struck);
    CHECK(struck->reading == "r1");
    CHECK(struck->cause == StruckCause::probeFellOut);
    CHECK(strikeFrom(draft, {true, false, true}).error() == Faults{{Cause::alreadyStruck, "", ""}});
    CHECK(strikeFrom(draft, {false, true, true}).error() == Faults{{Cause::refusedReading, "", ""}});
    CHECK(strikeFrom(draft, {false, false, false}).error() == Faults{{Cause::nothingSeen, "", ""}});
    CHECK(strikeFrom({"r1", StruckCause::wrongPrint, false}, {false, false, true}).error() ==
          Faults{{Cause::nothingSeen, "", ""}});
    CHECK(strikeFrom({"r1", std::nullopt, true}, {false, false, true}).error() ==
          Faults{{Cause::causeMissing, "cause", ""}});
}
