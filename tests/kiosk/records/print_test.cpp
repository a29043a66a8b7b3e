#include "tests/kiosk/records/support/lot_book.hpp"

using namespace holdfast::kiosk::records;
using namespace holdfast::kiosk::records::testing;
namespace a = holdfast::analytics;

namespace {

MethodDescribed method(const std::string& key, int revision, TestKind kind = TestKind::wash) {
    MethodDescribed one;
    one.key = key;
    one.revision = revision;
    one.kind = kind;
    if (kind == TestKind::wash) {
        one.programme = WashProgramme{};
    }
    return one;
}

} // namespace

TEST_CASE("a print has a number of its own and stands in a lot of its run", "[records][prints]") {
    LotShop lot;
    CHECK(*nextPrint(lot.shop.db()) == 1);
    lot.print();
    CHECK_FALSE(lot.say(PrintNamed{"p2", 1, kRun, kLot})); // the number
    CHECK_FALSE(lot.say(PrintNamed{kPrint, 2, kRun, kLot}));
    CHECK_FALSE(lot.say(PrintNamed{"p2", 2, kRun, "no such lot"}));
    CHECK_FALSE(lot.say(PrintNamed{"p2", 2, "no such run", kLot}));
    PrintNamed half{"p2", 2, kRun, kLot};
    half.halfOf = "no such print";
    CHECK_FALSE(lot.say(half));
    half.halfOf = kPrint;
    half.retained = RetainedPlace{"shelf 2", day(2027, 3, 1), true};
    REQUIRE(lot.say(half));
    CHECK(*nextPrint(lot.shop.db()) == 3);
    const auto found = printByNumber(lot.shop.db(), 2);
    REQUIRE(*found);
    const auto& row = **found;
    CHECK(row.runTitle == "red jerseys");
    CHECK(row.garmentColour == "red");
    CHECK(row.lotNumber == 1);
    CHECK(row.layers.size() == 2);
    CHECK(row.chemistries == std::vector{a::Chemistry::plastisol});
    CHECK(row.named.retained->until == day(2027, 3, 1));
    CHECK_FALSE(*printByNumber(lot.shop.db(), 9));
    CHECK(printsOfRun(lot.shop.db(), kRun)->size() == 2);
    CHECK(retainedPrints(lot.shop.db())->size() == 1);
    CHECK(openPrints(lot.shop.db(), 9)->at(0).named.print == "p2");
    CHECK_FALSE(lot.say(PrintChanged{"no such print", {}, {}}));
    REQUIRE(lot.say(PrintChanged{"p2", RetainedPlace{"shelf 3", {}, false}, PrintEnd::shipped}));
    CHECK((*printById(lot.shop.db(), "p2"))->named.retained->shelf == "shelf 3");
    CHECK((*printById(lot.shop.db(), "p2"))->ended == PrintEnd::shipped);
    CHECK(retainedPrints(lot.shop.db())->empty());
    CHECK(openPrints(lot.shop.db(), 9)->size() == 1);
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("the rest before a test is the longest that an ink of the print asks", "[records][prints]") {
    LotShop lot;
    auto family = recordOf(a::starterFamilies().at(2), a::TemperatureUnit::fahrenheit);
    REQUIRE(family.name == "low-cure");
    family.revision = 2;
    family.restBeforeTest = a::Duration{36.0 * 3600.0};
    REQUIRE(lot.say(family));
    LotOpened second;
    second.lot = "second";
    second.run = kRun;
    second.number = 2;
    second.revisions = {{{"low-cure", 2}, {"standard", 1}}, {"100% polyester", 1}};
    REQUIRE(lot.say(second));
    REQUIRE(lot.say(PrintNamed{"p2", 2, kRun, "second"}));
    CHECK((*printById(lot.shop.db(), "p2"))->restHours == Approx(36.0));
    lot.print(); // of lot 1, opened with revision 1
    const auto starter = a::starterFamilies().at(2).restBeforeTest.value_or(a::Duration{0.0});
    CHECK((*printById(lot.shop.db(), kPrint))->restHours >= starter.count() / 3600.0);
    CHECK((*printById(lot.shop.db(), kPrint))->restHours < 36.0);
}

TEST_CASE("of a method the newest revision counts, and an older one can still be read", "[records][prints]") {
    LotShop lot;
    REQUIRE(lot.say(method("wash-house", 1)));
    CHECK_FALSE(lot.say(method("wash-house", 1)));
    auto newer = method("wash-house", 2);
    newer.programme->cycles = 3;
    REQUIRE(lot.say(newer));
    REQUIRE(lot.say(method("pull", 1, TestKind::stretch)));
    auto own = method("own-1", 1, TestKind::own);
    own.name = "scratch";
    own.withdrawn = true;
    REQUIRE(lot.say(own));
    const auto inUse = methods(lot.shop.db());
    REQUIRE(inUse->size() == 2);
    CHECK(inUse->at(0).key == "pull"); // by kind
    CHECK(inUse->at(1).programme->cycles == 3);
    CHECK(methods(lot.shop.db(), true)->size() == 3);
    CHECK((*methodAt(lot.shop.db(), "wash-house", 1))->programme->cycles == 5);
    CHECK_FALSE(*methodAt(lot.shop.db(), "wash-house", 3));
    CHECK_FALSE(*isMethodUsed(lot.shop.db(), "wash-house"));
    lot.print();
    REQUIRE(lot.say(lot.test(TestOutcome::noted)));
    CHECK(*isMethodUsed(lot.shop.db(), "wash-house"));
    CHECK_FALSE(*isMethodUsed(lot.shop.db(), "pull"));
}

TEST_CASE("a cycle counts once for a print and a method, and cycles go upwards", "[records][prints]") {
    LotShop lot;
    lot.print();
    REQUIRE(lot.say(lot.test(TestOutcome::passed, 1), kFirst));
    CHECK_FALSE(lot.say(lot.test(TestOutcome::passed, 1)));
    CHECK(lot.why.find("already") != std::string::npos);
    REQUIRE(lot.say(lot.test(TestOutcome::passed, 3)));
    CHECK_FALSE(lot.say(lot.test(TestOutcome::passed, 2)));
    CHECK(lot.why.find("later") != std::string::npos);
    auto other = lot.test(TestOutcome::passed, 2);
    other.method = "another";
    CHECK(lot.say(other));
    auto again = lot.test(TestOutcome::noted, 1);
    again.corrects = kFirst;
    again.note = "grade typed wrong";
    REQUIRE(lot.say(again));
    again.cycle = 3;
    CHECK_FALSE(lot.say(again)); // would be there twice
    again.cycle = 1;
    again.corrects = "no such";
    CHECK_FALSE(lot.say(again));
    const auto versions = versionsOfTest(lot.shop.db(), kFirst);
    REQUIRE(versions->size() == 2);
    CHECK(versions->at(0).done.note.empty());
    CHECK(versions->at(1).done.note == "grade typed wrong");
    const auto rows = testsOfPrint(lot.shop.db(), kPrint);
    REQUIRE(rows->size() == 3);
    CHECK(rows->at(0).id == kFirst);
    CHECK(rows->at(0).versions == 2);
    CHECK(rows->at(0).done.outcome == TestOutcome::noted);
    CHECK(testsSince(lot.shop.db(), 0)->front().done.method == "another");
    CHECK(testsSince(lot.shop.db(), lot.shop.now() + 1)->empty());
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("what has ended or is unknown is neither tested nor washed", "[records][prints]") {
    LotShop lot;
    lot.print();
    REQUIRE(lot.say(lot.test(TestOutcome::passed), kFirst));
    REQUIRE(lot.say(PrintChanged{kPrint, {}, PrintEnd::usedUp}));
    CHECK_FALSE(lot.say(lot.test(TestOutcome::passed)));
    LoadWashed load{"l1", 1, "machine", "wash-house"};
    load.prints = {kPrint};
    CHECK_FALSE(lot.say(load));
    load.prints = {"no such print"};
    CHECK_FALSE(lot.say(load));
    auto stray = lot.test(TestOutcome::passed);
    stray.print = "no such print";
    CHECK_FALSE(lot.say(stray));
    auto right = lot.test(TestOutcome::noted);
    right.corrects = kFirst; // what was written before may be put right
    CHECK(lot.say(right));
}

TEST_CASE("a half's tests belong to the print it was cut from", "[records][prints]") {
    LotShop lot;
    lot.print();
    PrintNamed half{"half", 2, kRun, kLot};
    half.halfOf = kPrint;
    REQUIRE(lot.say(half));
    auto ofHalf = lot.test(TestOutcome::passed);
    ofHalf.print = "half";
    REQUIRE(lot.say(ofHalf));
    REQUIRE(lot.say(lot.test(TestOutcome::noted)));
    CHECK(testsOfPrint(lot.shop.db(), kPrint)->size() == 2);
    CHECK(testsOfPrint(lot.shop.db(), "half")->size() == 1);
    CHECK(testsOfLot(lot.shop.db(), kLot)->size() == 2);
}

TEST_CASE("a failed test holds its lot, days after it was cleared too", "[records][lots]") {
    LotShop lot;
    lot.print();
    lot.shop.read(a::Word::cured);
    lot.close();
    CHECK(lot.state() == LotState::cleared);
    REQUIRE(lot.say(lot.test(TestOutcome::failed, 3), kFirst));
    CHECK(lot.state() == LotState::onHold);
    CHECK_FALSE(holds(lot.shop.db())->at(0).word);
    REQUIRE(lot.say(LotShop::hold("h1", HoldCause::test, kFirst, {}, 1)));
    CHECK(holds(lot.shop.db())->at(0).cause == HoldCause::test);
    SECTION("a decision ends it") {
        REQUIRE(lot.say(LotShop::decision("d1", DecisionWord::released, {"h1"})));
        CHECK(lot.state() == LotState::released);
    }
    SECTION("so does putting the test right") {
        auto right = lot.test(TestOutcome::passed, 3);
        right.corrects = kFirst;
        REQUIRE(lot.say(right));
        CHECK(lot.state() == LotState::cleared);
        CHECK(lot.open().empty());
    }
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("a void load holds nothing, and the cycle is washed again", "[records][lots]") {
    const std::string kTest = "01926e2a-0000-7000-a000-000000000003";
    LotShop lot;
    lot.print();
    lot.shop.read(a::Word::cured);
    lot.load("l1", 1);
    REQUIRE(lot.say(LotShop::judged("l1", LoadWord::valid), kFirst));
    REQUIRE(lot.say(lot.test(TestOutcome::failed, 1, "l1"), kTest));
    const bool withHold = GENERATE(false, true);
    if (withHold) {
        REQUIRE(lot.say(LotShop::hold("h1", HoldCause::test, kTest, {}, 1)));
    }
    CHECK(lot.state() == LotState::onHold);
    CHECK_FALSE(lot.say(LotShop::judged("l1", LoadWord::tooHarsh)));        // judged already
    CHECK_FALSE(lot.say(LotShop::judged("l1", LoadWord::tooHarsh, kNone))); // corrects nothing
    REQUIRE(lot.say(LotShop::judged("l1", LoadWord::tooHarsh, kFirst), kSecond));
    CHECK(lot.state() == LotState::open);
    CHECK(lot.open().empty());
    CHECK(testsOfLot(lot.shop.db(), kLot)->at(0).counts == TestOutcome::inAVoidLoad);
    CHECK(testsOfLot(lot.shop.db(), kLot)->at(0).done.outcome == TestOutcome::failed); // as it was written
    lot.load("l2", 2);
    REQUIRE(lot.say(LotShop::judged("l2", LoadWord::valid)));
    CHECK(lot.say(lot.test(TestOutcome::passed, 1, "l2")));
    CHECK_FALSE(lot.say(LotShop::judged("l1", LoadWord::valid, kFirst))); // corrected already
    REQUIRE(lot.say(LotShop::judged("l1", LoadWord::valid, kSecond)));
    CHECK(lot.state() == LotState::onHold);
    CHECK(lot.open() == (withHold ? Ids{"h1"} : Ids{}));
    CHECK(lot.shop.rebuildsTheSame());
}

TEST_CASE("loads have numbers, and a print is tested only in one that it was in", "[records][prints]") {
    LotShop lot;
    lot.print();
    lot.print("p2", 2);
    CHECK(*nextLoad(lot.shop.db()) == 1);
    lot.load("l1", 1);
    CHECK(*nextLoad(lot.shop.db()) == 2);
    LoadWashed same{"l1", 2, "machine", "wash-house"};
    CHECK_FALSE(lot.say(same));
    same.load = "l2";
    same.number = 1;
    CHECK_FALSE(lot.say(same));
    CHECK_FALSE(lot.say(LotShop::judged("no such load", LoadWord::valid)));
    auto outside = lot.test(TestOutcome::passed, 1, "l1");
    outside.print = "p2";
    CHECK_FALSE(lot.say(outside));
    CHECK(lot.why.find("not in the load") != std::string::npos);
    CHECK(judgedLoads(lot.shop.db(), "the big machine", "wash-house")->empty());
    REQUIRE(lot.say(LotShop::judged("l1", LoadWord::tooGentle)));
    const auto judged = judgedLoads(lot.shop.db(), "the big machine", "wash-house");
    REQUIRE(judged->size() == 1);
    CHECK(judged->at(0).judged->word == LoadWord::tooGentle);
    CHECK(judgedLoads(lot.shop.db(), "another", "wash-house")->empty());
    CHECK(loadsOfPrint(lot.shop.db(), kPrint)->size() == 1);
    CHECK(loadsOfPrint(lot.shop.db(), "p2")->empty());
    CHECK(loads(lot.shop.db(), 5)->at(0).washed.number == 1);
    CHECK((*loadById(lot.shop.db(), "l1"))->washed.prints == Ids{kPrint});
    CHECK_FALSE(*loadById(lot.shop.db(), "l9"));
}
