#include "kiosk/records/lot_state.hpp"
#include "kiosk/records/queries.hpp"
#include "tests/kiosk/records/support/samples.hpp"
#include "tests/kiosk/records/support/shop_book.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::records;
using holdfast::kiosk::records::testing::day;
using holdfast::kiosk::records::testing::sampleOfEveryKind;
using holdfast::kiosk::records::testing::sampleReading;
using holdfast::kiosk::records::testing::Shop;
namespace ledger = holdfast::kiosk::ledger;
namespace a = holdfast::analytics;

namespace {

struct Told final {
    Record record{};
    std::string id{}; ///< of the entry; empty: any
};

/// So that they can be told one after the other: what a sample corrects before it, what ends a print last.
std::vector<Told> inOrder(const std::vector<Record>& samples) {
    std::vector<Told> told;
    std::vector<Told> last;
    for (const auto& sample : samples) {
        Told one{sample};
        if (std::holds_alternative<ReadingTaken>(sample)) {
            one.id = "01926e2a-0000-7000-8000-000000000005";
        } else if (const auto* print = std::get_if<PrintNamed>(&sample)) {
            auto whole = *print;
            whole.print = *print->halfOf;
            whole.number = print->number + 1;
            whole.halfOf.reset();
            told.push_back({whole});
        } else if (std::holds_alternative<PrintChanged>(sample)) {
            last.push_back(one);
            continue;
        }
        std::visit(
            [&](auto first) {
                if constexpr (requires { first.corrects.reset(); }) {
                    const auto id = *first.corrects;
                    first.corrects.reset();
                    if constexpr (requires { first.decision; }) {
                        first.decision = id;
                    }
                    told.push_back({first, id});
                }
            },
            sample);
        told.push_back(one);
    }
    told.insert(told.end(), last.begin(), last.end());
    return told;
}

} // namespace

TEST_CASE("every kind can be told, and a rebuilt book equals the live one", "[records][book]") {
    Shop shop;
    for (const auto& sample : inOrder(sampleOfEveryKind())) {
        INFO(rowOf(sample.record).kind);
        const auto told = shop.tell(sample.record, sample.id.empty() ? shop.freshId() : sample.id);
        INFO((told ? std::string{} : told.error().what));
        REQUIRE(told);
    }
    const auto live = shop.book().tablesDigest();
    REQUIRE(live);
    REQUIRE(shop.book().rebuild());
    const auto rebuilt = shop.book().tablesDigest();
    REQUIRE(rebuilt);
    CHECK(*live == *rebuilt);
    const auto report = shop.book().check();
    REQUIRE(report);
    CHECK(report->sound());
    const auto latest = latestReadings(shop.db(), 10);
    REQUIRE(latest);
    REQUIRE(latest->size() == 2); // one corrected, one refused
    CHECK(latest->at(0).refused);
    CHECK(latest->at(1).corrected);
    const auto full = readingInFull(shop.db(), latest->at(1).id);
    REQUIRE(full);
    REQUIRE(*full);
    CHECK(std::holds_alternative<GunSeen>((*full)->evidence)); // of the correction
}

TEST_CASE("what cannot be read or contradicts the book is refused, and nothing of it stays", "[records][book]") {
    Shop shop;
    shop.plan();
    const auto head = shop.book().head()->sequence;
    CHECK_FALSE(shop.tellRaw("lot.opened", 1, "{}"));
    CHECK_FALSE(shop.tell(recordOf(a::starterFamilies().front(), a::TemperatureUnit::fahrenheit))); // revision twice
    CHECK_FALSE(shop.tell(LotClosed{"no such lot", {}, LotEnd::runEnded}));
    CHECK_FALSE(shop.tell(CertificateAdded{"no such instrument", {day(2026, 1, 1), day(2027, 1, 1), 2.0, {}}}));
    auto stray = sampleReading();
    stray.lot = "no such lot";
    CHECK_FALSE(shop.tell(stray));
    CHECK_FALSE(shop.tell(CorrectionMade{"no such entry", sampleReading()}));
    CHECK(shop.book().head()->sequence == head);
}

TEST_CASE("kinds and versions of a later program are told by name", "[records][book]") {
    Shop shop;
    CHECK(unknownKinds(shop.db())->empty());
    REQUIRE(shop.tellRaw("moon.seen", 1, "{}"));
    REQUIRE(shop.tellRaw("lot.opened", 9, "{}"));
    CHECK(*unknownKinds(shop.db()) == std::vector<std::string>{"lot.opened 9", "moon.seen 1"});
}

TEST_CASE("a run is found by its number, with layers in degrees and its lot", "[records][book]") {
    Shop shop;
    CHECK_FALSE(*runByNumber(shop.db(), PlanKind::run, 20418));
    shop.plan();
    const auto found = runByNumber(shop.db(), PlanKind::run, 20418);
    REQUIRE(found);
    REQUIRE(*found);
    const auto& run = **found;
    CHECK(run.usable);
    REQUIRE(run.layers.layers.size() == 2);
    CHECK_FALSE(run.layers.layers[0].ink.isMix());
    CHECK(run.layers.layers[1].ink.isMix());
    // a mix is only as low-cure as its most demanding part (job.md, common practice): 320 °F
    CHECK(run.layers.layers[1].ink.requirement.cure.fahrenheit() == Approx(320.0));
    CHECK(run.layers.fabric.bleedCeiling->fahrenheit() == Approx(300.0));
    REQUIRE(run.lot);
    CHECK(run.lot->state == LotState::settingUp);
    CHECK_FALSE(*runByNumber(shop.db(), PlanKind::windowCard, 20418));
    CHECK(*runById(shop.db(), *sampleReading().run));
}

TEST_CASE("a lot keeps the revisions it was opened with", "[records][book]") {
    Shop shop;
    shop.plan();
    auto hotter = recordOf(a::starterFamilies().at(2), a::TemperatureUnit::fahrenheit);
    REQUIRE(hotter.name == "low-cure");
    hotter.revision = 2;
    hotter.cure.value = 300;
    REQUIRE(shop.tell(hotter));
    const auto cure = [&] {
        const auto run = runByNumber(shop.db(), PlanKind::run, 20418);
        return (*run)->layers.layers.at(0).ink.requirement.cure.fahrenheit();
    };
    CHECK(cure() == Approx(285.0)); // starter, contracts.md
    REQUIRE(shop.tell(LotClosed{*sampleReading().lot, 36, LotEnd::newRevision}));
    CHECK(cure() == Approx(300.0));
    const auto newest = newestFamilies(shop.db());
    REQUIRE(newest);
    CHECK(newest->size() == 6);
    const auto early = newestFamilies(shop.db(), 6);
    for (const auto& family : *early) {
        CHECK(family.revision == 1);
    }
}

TEST_CASE("a run whose ink is not in the book is found but cannot be judged", "[records][book]") {
    Shop shop;
    for (const auto& sample : sampleOfEveryKind()) {
        if (std::holds_alternative<RunPlanned>(sample)) {
            REQUIRE(shop.tell(sample));
        }
    }
    const auto run = runByNumber(shop.db(), PlanKind::run, 20418);
    REQUIRE(*run);
    CHECK_FALSE((*run)->usable);
}

TEST_CASE("a lot's state follows from its readings", "[records][book]") {
    Shop shop;
    shop.plan();
    shop.read(a::Word::underCured, ReadingReason::setUp);
    CHECK(shop.lotState() == LotState::settingUp); // set-up has no consequence
    shop.read(a::Word::cured);
    CHECK(shop.lotState() == LotState::open);
    const auto first = shop.read(a::Word::notProven);
    CHECK(shop.lotState() == LotState::open);
    CHECK(holds(shop.db())->empty());
    SECTION("a retake that is proven settles it") {
        shop.read(a::Word::cured, ReadingReason::retake, first);
        CHECK(shop.lotState() == LotState::open);
        REQUIRE(shop.tell(LotClosed{*sampleReading().lot, 144, LotEnd::runEnded}));
        const auto rows = readingsOfLot(shop.db(), *sampleReading().lot);
        CHECK(rows->size() == 4);
    }
    SECTION("a retake that is not leaves it unproven") {
        shop.read(a::Word::notProven, ReadingReason::retake, first);
        CHECK(shop.lotState() == LotState::unproven);
    }
    SECTION("a bad reading holds it, a correction of that reading lets it go") {
        const auto bad = shop.read(a::Word::overheated);
        CHECK(shop.lotState() == LotState::onHold);
        const auto held = holds(shop.db());
        REQUIRE(held->size() == 1);
        CHECK(held->at(0).runNumber == 20418);
        CHECK(held->at(0).word == a::Word::overheated);
        auto cured = sampleReading();
        cured.verdict->word = a::Word::cured;
        REQUIRE(shop.tell(CorrectionMade{bad, cured}));
        CHECK(shop.lotState() == LotState::open);
    }
}

TEST_CASE("the states of decisions 5, as far as readings decide them", "[records]") {
    const auto one = [](a::Word word) { return ReadingOfLot{"a", word, false, true, false, ""}; };
    const auto state = [](std::vector<ReadingOfLot> readings, bool closed) {
        LotOnFile lot;
        lot.readings = std::move(readings);
        lot.closed = closed;
        return lotState(lot);
    };
    CHECK(state({}, false) == LotState::settingUp);
    CHECK(state({}, true) == LotState::unproven); // no due reading was taken
    CHECK(state({one(a::Word::cured)}, true) == LotState::cleared);
    CHECK(state({one(a::Word::notProven)}, true) == LotState::unproven);
    CHECK(state({one(a::Word::underCured), one(a::Word::cured)}, true) == LotState::onHold);
    auto gun = one(a::Word::notProven);
    gun.couldProve = false; // shown and left out
    CHECK(state({one(a::Word::cured), gun}, true) == LotState::cleared);
    gun.word = a::Word::overheated; // but what a gun shows too hot holds
    CHECK(state({one(a::Word::cured), gun}, false) == LotState::onHold);
    auto study = one(a::Word::cured);
    study.study = true; // of the dryer: no due reading, so it clears nothing
    CHECK(state({study}, true) == LotState::unproven);
    study.word = a::Word::underCured;
    CHECK(state({study, one(a::Word::cured)}, true) == LotState::onHold);
    auto answered = one(a::Word::underCured); // its pieces are decided
    answered.isAnswered = true;
    CHECK(state({answered, one(a::Word::cured)}, true) == LotState::cleared);
    CHECK(state({answered}, true) == LotState::unproven);
}

TEST_CASE("instruments come with certificates and checks, and what is due is told", "[records][book]") {
    Shop shop;
    for (const auto& sample : sampleOfEveryKind()) {
        if (std::holds_alternative<InstrumentDescribed>(sample) || std::holds_alternative<CertificateAdded>(sample) ||
            std::holds_alternative<CheckDone>(sample)) {
            REQUIRE(shop.tell(sample));
        }
    }
    const auto all = instruments(shop.db());
    REQUIRE(all);
    REQUIRE(all->size() == 1);
    CHECK(all->at(0).instrument.certificates.size() == 1);
    CHECK(all->at(0).instrument.checks.size() == 1);
    CHECK(due(shop.db(), day(2026, 3, 7))->empty());
    const auto checks = due(shop.db(), day(2026, 3, 8)); // the sample's check is due that day
    REQUIRE(checks->size() == 1);
    CHECK(checks->at(0).kind == DueKind::checkDue);
    CHECK(due(shop.db(), day(2027, 1, 15))->size() == 2);
}

TEST_CASE("crew, people, settings, dryers and the shop are the newest told", "[records][book]") {
    Shop shop;
    CHECK_FALSE(*crew(shop.db()));
    CHECK_FALSE(*setting(shop.db(), "unit"));
    REQUIRE(shop.tell(CrewChanged{{1}, 0}));
    REQUIRE(shop.tell(CrewChanged{{1, 2}, 1}));
    CHECK((*crew(shop.db()))->persons.size() == 2);
    REQUIRE(shop.tell(SettingChanged{"unit", std::string{"F"}}));
    REQUIRE(shop.tell(SettingChanged{"unit", std::string{"C"}}));
    CHECK(std::get<std::string>(**setting(shop.db(), "unit")) == "C");
    REQUIRE(shop.tell(PersonAdded{1, "", {Role::owner}}));
    CHECK(people(shop.db())->size() == 1);
    DryerDescribed dryer;
    dryer.dryer = "d";
    dryer.name = "long";
    REQUIRE(shop.tell(dryer));
    CHECK(dryers(shop.db())->size() == 1);
    dryer.withdrawn = true;
    REQUIRE(shop.tell(dryer));
    CHECK(dryers(shop.db())->empty());
    REQUIRE(shop.tell(BookOpened{"s", "k", "0.1.0", true}));
    CHECK((**holdfast::kiosk::records::shop(shop.db())).demo);
}
