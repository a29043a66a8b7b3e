#include "drivers/link/instrument_link.hpp"

#include "drivers/simulated/simulated_probe.hpp"
#include "tests/drivers/link/link_bench.hpp"

#include <catch2/catch.hpp>

#include <QSerialPort>

#include <string>

using namespace holdfast::drivers;
using namespace std::chrono_literals;

namespace {

constexpr double kRate = 10.0; // the quiet limit of 2 s is 200 ms of a busy machine

const InstrumentDescription& celsiusProbe() {
    return *findInstrument("line-type-k-celsius");
}

Scenario still() {
    Scenario scenario;
    scenario.noiseCelsius = 0.0;
    return scenario;
}

Scenario troubled(TroubleKind kind, MonotonicTime from = 0s, MonotonicTime until = 1000h) {
    Scenario scenario = still();
    scenario.troubles.push_back({kind, from, until});
    return scenario;
}

} // namespace

TEST_CASE("a probe on a real terminal becomes ready and its samples are its own", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe probe{celsiusProbe(), still(), clock, "004217"};
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.samples.size() >= 50; }));
    REQUIRE(link.is(LinkState::ready, LinkFault::none));
    CHECK(link.statuses.back().serialNumber == "004217");
    CHECK(link.statuses.back().instrument == "line-type-k-celsius");
    CHECK(link.count(LinkState::ready) == 1);
    for (const Sample& sample : link.samples) {
        REQUIRE(sample.counts == 240); // 24.0 °C in the simulator's still air, steps of 0.1
        REQUIRE(sample.flags == SampleFlag::none);
    }
    CHECK(link.stampsRise());
    const auto seconds = (link.samples.back().at - link.samples.front().at) / 1.0s;
    const auto perSecond = static_cast<double>(link.samples.size() - 1) / seconds;
    CHECK(perSecond == Approx(5.0).epsilon(0.15)); // five a second of clock time, sped up or not
}

TEST_CASE("pulled out it is lost once, put back it is ready again, and the gap is in the stamps", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    SimulatedProbe probe{celsiusProbe(), still(), clock};
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.samples.size() >= 10; }));
    const std::size_t toldBefore = link.statuses.size();

    probe.setPlugged(false);
    REQUIRE(comes([&] { return link.is(LinkState::lost); }));
    CHECK(link.statuses.back().cause == LinkFault::unplugged);
    const std::size_t before = link.samples.size();
    const MonotonicTime pulledAt = clock.now();
    REQUIRE(comes([&] { return clock.now() - pulledAt > 10s; })); // forty tries to open it again
    CHECK(link.statuses.size() == toldBefore + 1);                // one signal: no storm
    CHECK(link.samples.size() == before);

    probe.setPlugged(true);
    REQUIRE(comes([&] { return link.is(LinkState::ready) && link.samples.size() >= before + 10; }));
    CHECK(link.count(LinkState::lost) == 1);
    CHECK(link.count(LinkState::ready) == 2);
    CHECK(link.samples[before].at - link.samples[before - 1].at > 10s);
    CHECK(link.stampsRise());
}

TEST_CASE("a scenario that pulls its own plug comes back at the same path", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe probe{celsiusProbe(), troubled(TroubleKind::unplugged, 4s, 8s), clock};
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.count(LinkState::lost) == 1; }));
    REQUIRE(comes([&] { return link.is(LinkState::ready); }));
    CHECK(link.count(LinkState::ready) == 2);
}

TEST_CASE("a port that is not there is absent, and is found when it comes", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    SimulatedProbe probe{celsiusProbe(), still(), clock};
    probe.setPlugged(false);
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path() + "-not-yet"), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::absent, LinkFault::portMissing); }));
    const SimulatedProbe late{celsiusProbe(), still(), clock, "9", probe.path() + "-not-yet"};
    REQUIRE(comes([&] { return link.is(LinkState::ready); }));
    CHECK(link.count(LinkState::lost) == 0);
}

TEST_CASE("a line at another speed is named, and nothing of it becomes a sample", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe probe{celsiusProbe(), troubled(TroubleKind::noise), clock};
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::identifying, LinkFault::wrongBaud); }));
    CHECK(link.samples.empty());
}

TEST_CASE("a silent port is identifying and says that it is silent", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe probe{celsiusProbe(), troubled(TroubleKind::silence), clock};
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::identifying, LinkFault::silent); }));
    const std::size_t told = link.statuses.size();
    const MonotonicTime since = clock.now();
    REQUIRE(comes([&] { return clock.now() - since > 30s; })); // it is opened again meanwhile, quietly
    CHECK(link.statuses.size() == told);
}

TEST_CASE("a probe that falls silent is lost once its last sample is older than the limit", "[drivers][link]") {
    // contracts.md, "Rides": lost when the age of its last sample passes the gap limit (decisions 3, gap)
    CHECK(InstrumentLink::quietLimit(celsiusProbe()) == 2s);
    CHECK(InstrumentLink::quietLimit(*findInstrument("line-comma-status")) == 2s);
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe probe{celsiusProbe(), troubled(TroubleKind::silence, 6s, 12s), clock};
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::lost); }));
    CHECK(link.statuses.back().cause == LinkFault::silent);
    CHECK(link.quiets == 1);
    REQUIRE(comes([&] { return link.is(LinkState::ready, LinkFault::none); }));
    CHECK(link.count(LinkState::lost) == 1);
}

TEST_CASE("lines of something else and of the other unit are told apart", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe garbled{celsiusProbe(), troubled(TroubleKind::garbledLines), clock};
    const SimulatedProbe switched{celsiusProbe(), troubled(TroubleKind::otherUnit, 5s), clock};
    WatchedLink first{celsiusProbe(), Address::atPath(garbled.path()), clock, opener};
    WatchedLink second{celsiusProbe(), Address::atPath(switched.path()), clock, opener};
    REQUIRE(comes([&] { return first.is(LinkState::identifying, LinkFault::garbled); }));
    REQUIRE(comes([&] { return second.is(LinkState::lost, LinkFault::wrongUnit); }));
    CHECK(second.samples.back().flags == SampleFlag::unreadable);
}

TEST_CASE("another instrument at the address is refused by its serial number", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe probe{celsiusProbe(), still(), clock, "000001"};
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path()), clock, opener, "004217"};
    REQUIRE(comes([&] { return link.is(LinkState::identifying, LinkFault::wrongDevice); }));
    CHECK(link.statuses.back().serialNumber == "000001");
    CHECK(link.samples.empty());
}

TEST_CASE("two probes at once both read, and a port that is open already is busy", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe one{celsiusProbe(), still(), clock, "1"};
    const SimulatedProbe two{*findInstrument("line-type-k-fahrenheit"), still(), clock, "2"};
    WatchedLink first{celsiusProbe(), Address::atPath(one.path()), clock, opener};
    WatchedLink second{*findInstrument("line-type-k-fahrenheit"), Address::atPath(two.path()), clock, opener};
    REQUIRE(comes([&] { return first.samples.size() >= 10 && second.samples.size() >= 10; }));
    CHECK(second.samples.back().counts == 752); // 24 °C = 75.2 °F

    WatchedLink third{celsiusProbe(), Address::atPath(one.path()), clock, opener};
    REQUIRE(comes([&] { return third.is(LinkState::opening, LinkFault::portBusy); }));
    const std::size_t before = first.samples.size();
    REQUIRE(comes([&] { return first.samples.size() >= before + 10; })); // and the first is not disturbed
    CHECK(first.count(LinkState::lost) == 0);
}

TEST_CASE("a SCPI instrument says who it is and is read at its interval", "[drivers][link]") {
    const ScaledClock clock{5.0, {}};
    SystemPortOpener opener;
    const InstrumentDescription& thermometer = *findInstrument("scpi-thermometer");
    const SimulatedProbe probe{thermometer, still(), clock, "4711"};
    WatchedLink link{thermometer, Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.samples.size() >= 20; }));
    CHECK(link.is(LinkState::ready));
    CHECK(link.statuses.back().serialNumber == "4711");
    CHECK(link.statuses.back().identity == "SIMULATED THERMOMETER");
    CHECK(link.samples.back().counts == 2400); // 24 °C in steps of 0.01
    CHECK(link.stampsRise());
}

TEST_CASE("an open thermocouple is a sign of life with its flag set", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe probe{celsiusProbe(), troubled(TroubleKind::openCircuit), clock};
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.samples.size() >= 10; }));
    CHECK(link.is(LinkState::ready));
    CHECK(link.samples.back().flags == SampleFlag::openCircuit);
}

TEST_CASE("stopped it is absent, its port is free, and it can be started again", "[drivers][link]") {
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe probe{celsiusProbe(), still(), clock};
    WatchedLink link{celsiusProbe(), Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::ready); }));
    QMetaObject::invokeMethod(&link.link(), &InstrumentLink::stop, Qt::QueuedConnection);
    REQUIRE(comes([&] { return link.is(LinkState::absent, LinkFault::none); }));
    CHECK(opener.open(Address::atPath(probe.path()), celsiusProbe().serial));
    QMetaObject::invokeMethod(&link.link(), &InstrumentLink::start, Qt::QueuedConnection);
    REQUIRE(comes([&] { return link.is(LinkState::ready); }));
}

TEST_CASE("the instrument's serial settings arrive at the terminal", "[drivers][link]") {
    needApplication();
    const ScaledClock clock{kRate, {}};
    SystemPortOpener opener;
    const SimulatedProbe probe{celsiusProbe(), still(), clock};
    const auto port = opener.open(Address::atPath(probe.path()), {1200, 8, Parity::none, 2, FlowControl::none});
    REQUIRE(port);
    auto* serial = qobject_cast<QSerialPort*>(port->device.get());
    REQUIRE(serial != nullptr);
    CHECK(serial->baudRate() == 1200);
    CHECK(serial->stopBits() == QSerialPort::TwoStop);
}
