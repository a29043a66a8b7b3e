// The place as a person uses it: presses and typed texts in, sheets and entries out.
#include "kiosk/screens/presenting/places/instruments_place.hpp"

#include "kiosk/records/queries.hpp"
#include "tests/kiosk/support/place_rig.hpp"

#include <catch2/catch.hpp>

#include <algorithm>

using namespace holdfast;
using namespace holdfast::kiosk;
using namespace holdfast::kiosk::screens;
using namespace holdfast::kiosk::screens::testing;
using analytics::TemperatureUnit;

namespace {

using std::chrono::microseconds;

constexpr std::int64_t kNoon = 1'795'608'000'000; ///< 2026-11-25, 12:00 UTC

class Bench final {
public:
    Bench() {
        m_rig.clock.setWall(drivers::WallTime{kNoon, 0});
        m_rig.speech.figures.unit = TemperatureUnit::celsius;
        m_rig.floor.families = analytics::starterFamilies();
        m_rig.signer = 2;
        records::InstrumentDescribed probe;
        probe.instrument = "p3";
        probe.number = 3;
        probe.spec.name = "P-3";
        probe.spec.type = analytics::ThermocoupleType::k;
        probe.spec.toleranceClass = analytics::ToleranceClass::iecClass1;
        probe.spec.resolution = analytics::AuthoredDifference{0.1, TemperatureUnit::celsius};
        m_rig.write({probe});
        m_before = m_rig.entries();
        m_place.emplace(m_rig.needs);
        m_place->reload();
    }

    /// The probe stands on its line.
    void attach() {
        shop::Probe probe;
        probe.name = "P-3";
        probe.link.state = drivers::LinkState::ready;
        probe.trouble = shop::ProbeTrouble::none;
        probe.scale = {0.1, drivers::ReadingUnit::celsius};
        m_rig.floor.probes = {probe};
    }
    /// Four samples a second, each of this many tenths of a degree.
    void samples(int count, std::int64_t tenths) {
        for (int i = 0; i < count; ++i) {
            m_rig.clock.advance(microseconds{250'000});
            auto& probe = m_rig.floor.probes.front();
            probe.lastMinute.push_back({m_rig.clock.now(), tenths, drivers::SampleFlag::none});
            probe.sampleAt = m_rig.clock.now();
            m_place->tick();
        }
    }
    InstrumentsPlace& place() { return *m_place; }
    [[nodiscard]] const SQLite::Database& db() const { return m_rig.shop.db(); }
    [[nodiscard]] bool says(const std::string& part) const { return testing::says(*m_place, part); }
    /// Entries since the bench stood.
    [[nodiscard]] std::int64_t kept() { return m_rig.entries() - m_before; }
    PlaceRig& rig() { return m_rig; }

private:
    PlaceRig m_rig;
    std::optional<InstrumentsPlace> m_place;
    std::int64_t m_before = 0;
};

bool complete(const SheetPageState& page) {
    const auto text = allText(page);
    return text.find('[') == std::string::npos && text.find('{') == std::string::npos;
}

} // namespace

TEST_CASE("an instrument shows its live value, and a silent one never a value as live", "[instruments]") {
    Bench bench;
    bench.attach();
    bench.samples(4, 1234);
    REQUIRE(bench.place().act("instruments.pick.p3"));
    CHECK(bench.says("123.4"));
    CHECK(complete(bench.place().sheet()));
    CHECK(bench.place().sheet().list.front().strong); // nothing proves it yet
    bench.attach();                                   // no sample since
    CHECK_FALSE(bench.says("123.4"));
}

TEST_CASE("a certificate typed wrongly stays in the form, typed well it stands in the book", "[instruments]") {
    Bench bench;
    auto& place = bench.place();
    place.act("instruments.pick.p3");
    REQUIRE(place.act("instruments.certificate"));
    place.enter("instruments.date", "2026-03-01");
    place.enter("instruments.due", "2027-03-01");
    place.enter("instruments.point.1.at", "160");
    place.enter("instruments.point.1.correction", "-0.6");
    place.enter("instruments.point.1.u", "0.5");
    REQUIRE(place.act("instruments.keep-certificate"));
    CHECK(bench.kept() == 0);
    CHECK(bench.says("k is missing"));
    CHECK(complete(place.sheet()));
    place.enter("instruments.k", "2");
    place.act("instruments.point.add");
    place.act("instruments.point.remove");
    bench.rig().signs = false;
    place.act("instruments.keep-certificate");
    CHECK(bench.kept() == 0);
    CHECK(bench.says("Coverage factor")); // the form stays
    bench.rig().signs = true;
    place.act("instruments.keep-certificate");
    CHECK(bench.kept() == 1);
    CHECK(bench.says("It can prove a film cured today"));
    const auto found = records::certificatesOf(bench.db(), "p3");
    REQUIRE(found);
    CHECK(found->size() == 1);
}

TEST_CASE("an ice check runs on live samples until they are at rest, and is kept", "[instruments]") {
    Bench bench;
    bench.attach();
    auto& place = bench.place();
    place.act("instruments.pick.p3");
    REQUIRE(place.act("instruments.ice"));
    CHECK(bench.says("Crush the ice"));
    CHECK(complete(place.sheet()));
    REQUIRE(place.act("instruments.check.ready"));
    REQUIRE(place.act("instruments.check.inserted"));
    bench.samples(20, 210); // still in the air
    CHECK(bench.says("does not show the bath yet"));
    bench.samples(160, 3); // 0.3 °C, 40 s
    CHECK(bench.says("Passed: off by +0.3"));
    CHECK(complete(place.sheet()));
    REQUIRE(place.act("instruments.keep-check"));
    const auto checks = records::checksOf(bench.db(), "p3");
    REQUIRE(checks);
    REQUIRE(checks->size() == 1);
    CHECK(checks->front().check.passed);
    CHECK(checks->front().indicated->value == Approx(0.3).margin(0.001));
    CHECK(bench.rig().signedBy() == 2);
    CHECK(bench.rig().asked == std::vector{shop::Right::keepInstruments});
    CHECK(bench.says("It can prove a film cured today"));
}

TEST_CASE("a failure is kept too when a repeat passes, and then the failure counts", "[instruments]") {
    Bench bench;
    auto& place = bench.place(); // no line: read by hand
    place.act("instruments.pick.p3");
    place.act("instruments.ice");
    place.act("instruments.check.ready");
    place.enter("instruments.shown", "4.0");
    REQUIRE(place.act("instruments.check.judge"));
    CHECK(bench.says("Failed"));
    REQUIRE(place.act("instruments.check.repeat"));
    place.enter("instruments.shown", "0.2");
    place.act("instruments.check.judge");
    CHECK(bench.says("Passed"));
    CHECK(bench.says("It failed here once before"));
    place.act("instruments.keep-check");
    CHECK(until([&] { return bench.kept() == 2; })); // what it threw into doubt was judged again beside
    CHECK(bench.says("its newest check failed"));
    CHECK(wasTold(bench.rig(), "It has read nothing since its last good check."));
}

TEST_CASE("a boiling check asks for the air, warns of scalding, and refuses what no shop has", "[instruments]") {
    Bench bench;
    auto& place = bench.place();
    place.act("instruments.pick.p3");
    REQUIRE(place.act("instruments.boiling"));
    place.act("instruments.air.barometer");
    place.enter("instruments.pressure", "10");
    place.act("instruments.air-take");
    CHECK(bench.says("No shop has so little air"));
    place.enter("instruments.pressure", "1013.25");
    place.act("instruments.air-take");
    CHECK(bench.says("100.0")); // 99.97 °C at 101.325 kPa (IAPWS R7-97)
    CHECK(bench.says("scalds"));
    CHECK(bench.says("mains leads away from water"));
    CHECK(complete(place.sheet()));
}

TEST_CASE("a new instrument gets a number and can be withdrawn again", "[instruments]") {
    Bench bench;
    auto& place = bench.place();
    REQUIRE(place.act("instruments.new"));
    CHECK(complete(place.sheet()));
    place.act("instruments.kind.strip");
    CHECK(complete(place.sheet()));
    place.enter("instruments.name", "S-280");
    place.enter("instruments.steps", "138 143 149");
    place.enter("instruments.strip-tolerance", "1");
    place.enter("instruments.count", "10");
    place.act("instruments.keep-instrument");
    REQUIRE(bench.kept() == 1);
    CHECK(bench.says("S-280"));
    CHECK(complete(place.sheet()));
    REQUIRE(place.act("instruments.pack-labels"));
    REQUIRE(bench.rig().printed.size() == 1);
    CHECK(bench.rig().printed.front().what == PrintWish::What::stripLabels);
    CHECK(bench.rig().printed.front().number == 4); // after P-3
    place.act("instruments.withdraw");
    CHECK(bench.says("Withdraw S-280?"));
    place.act("instruments.withdraw-now");
    CHECK(bench.kept() == 2);
    CHECK(place.sheet().list.size() == 1);
}

TEST_CASE("what is pressed or typed for another place, or nonsense, changes nothing", "[instruments]") {
    Bench bench;
    auto& place = bench.place();
    for (const auto* id : {"inks.new", "instruments.keep-check", "instruments.point.add", "", "instruments.nonsense"}) {
        CAPTURE(id);
        CHECK_FALSE(place.act(id));
    }
    CHECK_FALSE(place.enter("instruments.k", "2"));
    CHECK(place.act("instruments.pick.nobody"));
    CHECK(bench.says("Pick an instrument"));
    CHECK_FALSE(place.scanned({drivers::TicketKind::instrument, 3}, false));
    CHECK(place.scanned({drivers::TicketKind::instrument, 3}, true));
    CHECK(bench.says("P-3"));
    CHECK_FALSE(place.scanned({drivers::TicketKind::run, 3}, true));
}

TEST_CASE("the floor knows that an instrument is in a check, until it is kept or left", "[instruments]") {
    Bench bench;
    bench.attach();
    auto& place = bench.place();
    place.act("instruments.pick.p3");
    place.act("instruments.ice");
    CHECK(bench.rig().checks == std::vector<std::pair<std::string, bool>>{{"P-3", true}});
    bench.samples(4, 3);
    CHECK(bench.rig().checks.size() == 1); // said once
    place.left();                          // another place came to the screen
    CHECK_FALSE(bench.rig().floor.probes.front().inCheck);
    bench.samples(4, 3); // and went again
    CHECK(bench.rig().floor.probes.front().inCheck);
    place.act("instruments.back");
    CHECK_FALSE(bench.rig().floor.probes.front().inCheck);
}

TEST_CASE("no check begins while a ride is being recorded", "[instruments]") {
    Bench bench;
    bench.attach();
    bench.rig().floor.probes.front().recording.emplace();
    bench.rig().floor.probes.front().recording->isRide = true;
    auto& place = bench.place();
    place.act("instruments.pick.p3");
    place.act("instruments.boiling");
    CHECK(wasTold(bench.rig(), "A ride is being recorded with P-3"));
    CHECK(bench.rig().checks.empty());
}

TEST_CASE("a half-typed certificate is not lost by a press beside it", "[instruments]") {
    Bench bench;
    auto& place = bench.place();
    place.act("instruments.pick.p3");
    place.act("instruments.certificate");
    CHECK_FALSE(place.isWriting());
    place.enter("instruments.k", "2");
    CHECK(place.isWriting());
    place.act("instruments.new");
    CHECK(wasTold(bench.rig(), "half done"));
    CHECK(bench.says("Coverage factor"));
    place.act("instruments.back");
    CHECK_FALSE(place.isWriting());
}

TEST_CASE("certificate points out of order and a missing k are told at their fields, and nothing is lost",
          "[instruments]") {
    Bench bench;
    auto& place = bench.place();
    place.act("instruments.pick.p3");
    place.act("instruments.certificate");
    place.enter("instruments.date", "2026-03-01");
    place.enter("instruments.due", "2027-03-01");
    place.act("instruments.point.add");
    place.enter("instruments.point.1.at", "160");
    place.enter("instruments.point.1.correction", "-0.6");
    place.enter("instruments.point.1.u", "0.5");
    place.enter("instruments.point.2.at", "100");
    place.enter("instruments.point.2.correction", "0.1");
    place.enter("instruments.point.2.u", "0.5");
    place.act("instruments.keep-certificate");
    CHECK(bench.says("k is missing"));
    CHECK(bench.says("Point 2 lies below the one before it"));
    CHECK(bench.says("-0.6"));
    CHECK(bench.kept() == 0);
    CHECK(bench.rig().asked.empty()); // nobody signs for what cannot be
}
