#include "kiosk/records/floor_queries.hpp"
#include "kiosk/records/lot_state.hpp"
#include "tests/kiosk/records/support/samples.hpp"
#include "tests/kiosk/records/support/shop_book.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::records;
using holdfast::kiosk::records::testing::day;
using holdfast::kiosk::records::testing::sampleOfEveryKind;
using holdfast::kiosk::records::testing::sampleReading;
using holdfast::kiosk::records::testing::Shop;
namespace a = holdfast::analytics;

namespace {

template <class R>
R sampleOf() {
    for (const auto& sample : sampleOfEveryKind()) {
        if (const auto* one = std::get_if<R>(&sample)) {
            return *one;
        }
    }
    FAIL("no sample");
    return {};
}

std::string run() {
    return *sampleReading().run;
}
std::string lot() {
    return *sampleReading().lot;
}

ActionTaken action(FloorAction what, std::optional<std::string> answers = {}) {
    ActionTaken one;
    one.dryer = sampleReading().dryer;
    one.action = what;
    one.answers = std::move(answers);
    return one;
}

constexpr a::AuthoredTemperature f(double value) {
    return {value, a::TemperatureUnit::fahrenheit};
}

} // namespace

TEST_CASE("a struck reading no longer holds its lot but stays listed", "[records][book]") {
    Shop shop;
    shop.plan();
    shop.read(a::Word::cured);
    const auto bad = shop.read(a::Word::underCured);
    REQUIRE(shop.lotState() == LotState::onHold);
    CHECK_FALSE(shop.tell(ReadingStruck{"no such reading", StruckCause::wrongPrint}));
    CHECK(unanswered(shop.db())->size() == 1);
    REQUIRE(shop.tell(ReadingStruck{bad, StruckCause::probeFellOut}));
    CHECK(shop.lotState() == LotState::open);
    CHECK(holds(shop.db())->empty());
    CHECK(unanswered(shop.db())->empty());
    CHECK_FALSE(shop.tell(ReadingStruck{bad, StruckCause::probeFellOut})); // twice
    const auto rows = readingsOfLot(shop.db(), lot());
    REQUIRE(rows->size() == 2);
    CHECK_FALSE(rows->at(0).struck);
    CHECK(rows->at(1).struck == StruckCause::probeFellOut);
    CHECK(runsOnFile(shop.db(), PlanKind::run, false, 9)->at(0).readings == 1);
    auto again = sampleReading();
    again.verdict->word = a::Word::overheated;
    REQUIRE(shop.tell(CorrectionMade{bad, again})); // judged again, it stays out
    CHECK(shop.lotState() == LotState::open);
    CHECK(shop.rebuildsTheSame());
}

TEST_CASE("of two bad readings the one that was not struck still holds", "[records][book]") {
    Shop shop;
    shop.plan();
    const auto first = shop.read(a::Word::underCured);
    shop.read(a::Word::overheated);
    REQUIRE(shop.tell(ReadingStruck{first, StruckCause::garbledTrace}));
    CHECK(shop.lotState() == LotState::onHold);
    CHECK(holds(shop.db())->at(0).word == a::Word::overheated);
}

TEST_CASE("a struck reading proves nothing, and as a retake settles nothing", "[records]") {
    ReadingOfLot reading{"a", a::Word::cured, false, true, false, ""};
    reading.struck = true;
    const auto state = [](std::vector<ReadingOfLot> readings, bool closed) {
        LotOnFile lot;
        lot.readings = std::move(readings);
        lot.closed = closed;
        return lotState(lot);
    };
    CHECK(state({reading}, true) == LotState::unproven);
    CHECK(state({reading}, false) == LotState::settingUp);
    const ReadingOfLot first{"b", a::Word::notProven, false, true, false, ""};
    ReadingOfLot retake{"c", a::Word::cured, false, true, false, "b"};
    CHECK(state({first, retake}, true) == LotState::cleared);
    retake.struck = true;
    CHECK(state({first, retake}, true) == LotState::unproven);
}

TEST_CASE("a finished run takes no plan, no lot and no second finish", "[records][book]") {
    Shop shop;
    shop.plan();
    shop.read(a::Word::cured);
    CHECK_FALSE(shop.tell(RunFinished{"no such run", {}, {}}));
    REQUIRE(shop.tell(LotClosed{lot(), 144, LotEnd::runEnded}));
    CHECK(runsOnFile(shop.db(), PlanKind::run, true, 9)->empty());
    REQUIRE(shop.tell(RunFinished{run(), 140, 4}));
    CHECK_FALSE(shop.tell(RunFinished{run(), 140, 4}));
    CHECK_FALSE(shop.tell(RunReplanned{sampleOf<RunPlanned>()}));
    auto another = sampleOf<LotOpened>();
    another.lot = "another";
    CHECK_FALSE(shop.tell(another));
    const auto finished = runByNumber(shop.db(), PlanKind::run, 20418);
    REQUIRE((*finished)->finished);
    CHECK((*finished)->finished->made == 140);
    const auto rows = runsOnFile(shop.db(), PlanKind::run, true, 9);
    REQUIRE(rows->size() == 1);
    CHECK(rows->at(0).finished);
    CHECK(rows->at(0).reference == "PO 4411");
    CHECK(rows->at(0).worst == LotState::cleared);
    CHECK(runsOnFile(shop.db(), PlanKind::run, false, 9)->empty());
}

TEST_CASE("runs are listed newest first, with the worst of their lots", "[records][book]") {
    Shop shop;
    shop.plan();
    shop.read(a::Word::underCured);
    REQUIRE(shop.tell(LotClosed{lot(), 36, LotEnd::otherBucket}));
    auto second = sampleOf<LotOpened>();
    second.lot = "second";
    second.number = 2;
    REQUIRE(shop.tell(second));
    auto other = sampleOf<RunPlanned>();
    other.run = "other";
    other.number = 20500;
    REQUIRE(shop.tell(other));
    other.run = "card";
    other.kind = PlanKind::windowCard;
    other.number = 3;
    REQUIRE(shop.tell(other));
    const auto rows = runsOnFile(shop.db(), PlanKind::run, false, 9);
    REQUIRE(rows->size() == 2);
    CHECK(rows->at(0).number == 20500);
    CHECK_FALSE(rows->at(0).worst);
    CHECK(rows->at(1).worst == LotState::onHold);
    CHECK(runsOnFile(shop.db(), PlanKind::run, false, 1)->size() == 1);
    CHECK(*nextNumber(shop.db(), Numbered::run) == 20501);
    CHECK(*nextNumber(shop.db(), Numbered::windowCard) == 4);
    CHECK(*nextNumber(shop.db(), Numbered::person) == 1); // the first of all
}

TEST_CASE("an answer names a bad reading, which is then answered", "[records][book]") {
    Shop shop;
    shop.plan();
    shop.read(a::Word::underCured, ReadingReason::setUp); // has no consequence
    const auto first = shop.read(a::Word::underCured);
    const auto second = shop.read(a::Word::overheated);
    REQUIRE(unanswered(shop.db())->size() == 2);
    CHECK(unanswered(shop.db())->at(0).id == first);
    CHECK_FALSE(shop.tell(action(FloorAction::hotter, "no such reading")));
    REQUIRE(shop.tell(action(FloorAction::hotter, first)));
    REQUIRE(unanswered(shop.db())->size() == 1);
    CHECK(unanswered(shop.db())->at(0).id == second);
    REQUIRE(shop.tell(action(FloorAction::problem)));
    const auto done = actionsAt(shop.db(), sampleReading().dryer, 9);
    REQUIRE(done->size() == 2);
    CHECK(done->at(0).action.action == FloorAction::problem); // newest first
    CHECK(done->at(1).action.answers == first);
    CHECK(actionsAt(shop.db(), sampleReading().dryer, 1)->size() == 1);
    CHECK(actionsAt(shop.db(), "another dryer", 9)->empty());
}

TEST_CASE("a dryer stands as described and as last turned", "[records][book]") {
    Shop shop;
    shop.plan();
    auto described = sampleOf<DryerDescribed>();
    REQUIRE(shop.tell(described));
    auto since = shop.now();
    const auto now = [&] {
        const auto all = dryersNow(shop.db());
        REQUIRE(all);
        REQUIRE(all->size() == 1);
        return all->at(0);
    };
    CHECK(now().beltMetresPerMinute == 2.1);
    CHECK(now().since == since);
    CHECK(now().runningRun.empty()); // the lot of plan() names no dryer
    auto slower = action(FloorAction::beltSlower);
    slower.beltMetresPerMinute = 1.8;
    REQUIRE(shop.tell(slower));
    since = shop.now();
    CHECK(now().beltMetresPerMinute == 1.8);
    CHECK(now().since == since);
    for (const auto quiet : {FloorAction::pulled, FloorAction::problem, FloorAction::takenOver}) {
        REQUIRE(shop.tell(action(quiet)));
        CHECK(now().since == since); // changes nothing at the dryer
    }
    described.name = "the longer one";
    REQUIRE(shop.tell(described)); // a new name does not turn the belt
    CHECK(now().beltMetresPerMinute == 1.8);
    CHECK(now().since == since);
    described.setPoint = f(345);
    REQUIRE(shop.tell(described));
    CHECK(now().setPoint->value == 345);
    CHECK(now().beltMetresPerMinute == 1.8);
    CHECK(now().since == shop.now());
    REQUIRE(shop.tell(action(FloorAction::hotter))); // nobody said to what
    CHECK_FALSE(now().setPoint);
    REQUIRE(shop.tell(action(FloorAction::feedStopped)));
    CHECK(now().stopped);
    REQUIRE(shop.tell(action(FloorAction::started)));
    CHECK_FALSE(now().stopped);
    CHECK(now().since == shop.now());
    REQUIRE(shop.tell(LotClosed{lot(), 36, LotEnd::dryerChanged}));
    auto next = sampleOf<LotOpened>();
    next.lot = "second";
    REQUIRE(shop.tell(next));
    CHECK(now().runningRun == run());
    described.withdrawn = true;
    REQUIRE(shop.tell(described));
    CHECK(dryersNow(shop.db())->empty());
    CHECK(shop.rebuildsTheSame());
}

TEST_CASE("people change, leave and have a PIN only if they exist", "[records][book]") {
    Shop shop;
    CHECK_FALSE(shop.tell(PersonChanged{7, "", {Role::owner}, false}));
    CHECK_FALSE(shop.tell(PinSet{7, "$argon2id$x"}));
    REQUIRE(shop.tell(PersonAdded{7, "P7", {Role::operatorAtDryer}}));
    REQUIRE(shop.tell(PersonAdded{9, "", {Role::owner}}));
    REQUIRE(shop.tell(PinSet{7, "$argon2id$x"}));
    REQUIRE(shop.tell(PersonChanged{7, "P8", {Role::qualityAssurance}, true}));
    auto all = peopleOnFile(shop.db());
    REQUIRE(all->size() == 2);
    CHECK(all->at(0).badge == "P8");
    CHECK(all->at(0).roles == std::vector{Role::qualityAssurance});
    CHECK(all->at(0).left);
    CHECK(all->at(0).pinHash == "$argon2id$x");
    CHECK(all->at(1).pinHash.empty());
    CHECK(people(shop.db())->size() == 1); // who left is not asked for any more
    REQUIRE(shop.tell(PinSet{7, ""}));
    CHECK(peopleOnFile(shop.db())->at(0).pinHash.empty());
    CHECK(*nextNumber(shop.db(), Numbered::person) == 10);
    CHECK_FALSE(readRecord("pin.set", 1, R"({"number":7,"hash":"1234"})")); // never the PIN itself
}

TEST_CASE("a single strip belongs to the first reading that used it", "[records][book]") {
    Shop shop;
    shop.plan();
    const auto with = [](std::int64_t number) {
        auto reading = sampleReading();
        StripSeen strip;
        strip.firstLight = f(290);
        strip.number = number;
        reading.evidence = strip;
        return reading;
    };
    const auto first = shop.freshId();
    const auto second = shop.freshId();
    REQUIRE(shop.tell(with(205), first));
    REQUIRE(shop.tell(with(205), second));
    REQUIRE(shop.tell(sampleOf<ReadingRefused>())); // the same number again
    CHECK(**readingOfStrip(shop.db(), 205) == first);
    REQUIRE(shop.tell(CorrectionMade{first, with(206)})); // it was another strip after all
    CHECK(**readingOfStrip(shop.db(), 205) == second);
    CHECK(**readingOfStrip(shop.db(), 206) == first);
    CHECK_FALSE(*readingOfStrip(shop.db(), 207));
    CHECK(shop.rebuildsTheSame());
}

TEST_CASE("a pack of single strips is read back, and its last number counts", "[records]") {
    Shop shop;
    auto described = sampleOf<InstrumentDescribed>();
    described.pack = StripPack{200, 50, "B-2"};
    CHECK_FALSE(readRecord("instrument.described", 2, bodyOf(described))); // a probe comes in no pack
    described.spec = {};
    described.spec.name = "strips";
    described.spec.kind = a::InstrumentKind::strip;
    described.spec.strip = AuthoredStrip{{f(290), f(300)}, {5.0, a::TemperatureUnit::fahrenheit}, {}};
    const auto again = readRecord("instrument.described", 2, bodyOf(described));
    REQUIRE(again);
    CHECK(std::get<InstrumentDescribed>(*again).pack->batch == "B-2");
    REQUIRE(shop.tell(described));
    CHECK(*nextNumber(shop.db(), Numbered::instrument) == 250); // 200 to 249
    described.withdrawn = true;
    REQUIRE(shop.tell(described));
    CHECK(instruments(shop.db())->empty());
    CHECK(instruments(shop.db(), true)->size() == 1);
    CHECK(*nextNumber(shop.db(), Numbered::instrument) == 250); // its labels are still about
}

TEST_CASE("readings without a run wait to be claimed", "[records][book]") {
    Shop shop;
    shop.plan();
    ReadingTaken stray;
    stray.instrument = sampleReading().instrument;
    stray.evidence = sampleReading().evidence;
    const auto struck = shop.freshId();
    const auto newest = shop.freshId();
    REQUIRE(shop.tell(stray));
    REQUIRE(shop.tell(stray, struck));
    REQUIRE(shop.tell(stray, newest));
    REQUIRE(shop.tell(ReadingStruck{struck, StruckCause::leadCaught}));
    shop.read(a::Word::cured);
    const auto rows = unclaimed(shop.db(), 9);
    REQUIRE(rows->size() == 2);
    CHECK(rows->at(0).id == newest);
    CHECK(unclaimed(shop.db(), 1)->size() == 1);
}

TEST_CASE("checks, certificates and flashes are listed in their order", "[records][book]") {
    Shop shop;
    shop.plan();
    auto done = sampleOf<CheckDone>();
    REQUIRE(shop.tell(done));
    done.check.passed = false;
    REQUIRE(shop.tell(done));
    const auto checks = checksOf(shop.db(), done.instrument);
    REQUIRE(checks->size() == 2);
    CHECK_FALSE(checks->at(0).check.passed); // newest first
    CHECK(checks->at(1).stationPressureKilopascal == 100.5);
    REQUIRE(shop.tell(sampleOf<CertificateAdded>()));
    CHECK(certificatesOf(shop.db(), done.instrument)->size() == 1);
    auto flash = sampleOf<FlashNoted>();
    flash.position = 3; // the run has two layers
    CHECK_FALSE(shop.tell(flash));
    flash.position = 2;
    REQUIRE(shop.tell(flash));
    const auto flashes = flashesOf(shop.db(), run());
    REQUIRE(flashes->size() == 1);
    CHECK(flashes->at(0).flash.word == a::FlashWord::overFlashed);
}

TEST_CASE("hostile bodies of the floor are refused", "[records][strict]") {
    CHECK_FALSE(readRecord("action.taken", 1, R"({"dryer":"d","action":"explode"})"));
    CHECK_FALSE(readRecord("action.taken", 1, R"({"dryer":"d","action":"pulled","pieces":-1})"));
    CHECK_FALSE(readRecord("action.taken", 1, R"({"dryer":"d","action":"hotter","set_point":340})"));
    CHECK_FALSE(readRecord("run.finished", 1, R"({"run":"r","made":1.5})"));
    CHECK_FALSE(readRecord("person.changed", 1, R"({"number":0,"roles":[]})"));
    CHECK_FALSE(readRecord("bucket.opened", 1, R"({"bucket":"b","number":1,"family":"f","additive_percent":-1})"));
    CHECK_FALSE(readRecord("bucket.opened", 1, R"({"bucket":"b","number":1,"family":"f","expiry":"2026-02-30"})"));
    CHECK_FALSE(readRecord("flash.noted", 1, R"({"run":"r","position":0,"instrument":"i","word":"gelled"})"));
    CHECK_FALSE(
        readRecord("dryer.described", 2, R"({"dryer":"d","name":"n","slowest_m_per_min":3,"fastest_m_per_min":2})"));
    CHECK(readRecord("dryer.described", 2, R"({"dryer":"d","name":"n","slowest_m_per_min":2,"fastest_m_per_min":2})"));
    CHECK_FALSE(readRecord("dryer.described", 2, R"({"dryer":"d","name":"n","pieces_per_m":0})"));
}
