#include "drivers/simulated/simulated_probe.hpp"

#include "drivers/simulated/instrument_voice.hpp"
#include "tests/drivers/link/link_bench.hpp"

#include <catch2/catch.hpp>

#include <algorithm>
#include <string>
#include <utility>

using namespace holdfast::drivers;
using namespace std::chrono_literals;

TEST_CASE("what the simulator says, its instrument's parser reads", "[drivers][simulated]") {
    for (const InstrumentDescription& description : catalogue()) {
        INFO(description.id);
        const InstrumentVoice voice{description, "004217"};
        const std::string end = description.terminator();
        const auto read = [&](std::string said) {
            said.resize(said.size() - end.size());
            if (const auto* dialogue = std::get_if<ScpiDialogue>(&description.protocol)) {
                return parseScpiReading(dialogue->rules, said);
            }
            return parseLine(std::get<LineRules>(description.protocol), said);
        };
        const auto reading = read(voice.reading(100.0));
        REQUIRE(reading);
        // water at one atmosphere, defined: 100 °C is 212 °F
        const double expected = description.scale().unit == ReadingUnit::celsius ? 100.0 : 212.0;
        CHECK(static_cast<double>(reading->counts) * description.scale().step == Approx(expected));
        CHECK(read(voice.status(SampleFlag::openCircuit))->flags == SampleFlag::openCircuit);
    }
}

TEST_CASE("the generic probe's line is as its description shows it", "[drivers][simulated]") {
    const InstrumentVoice voice{*findInstrument("line-type-k-celsius"), "004217"};
    CHECK(voice.reading(160.4) == "+0160.4 C SN004217\r\n");
    CHECK(voice.reading(-5.0) == "-0005.0 C SN004217\r\n");
    CHECK(voice.status(SampleFlag::openCircuit) == "OPEN C SN004217\r\n");
    CHECK(voice.reading(1200.0) == "OVER C SN004217\r\n");
    CHECK(voice.otherUnit(100.0) == "+0212.0 F SN004217\r\n");
}

TEST_CASE("the SCPI twin answers by the book", "[drivers][simulated]") {
    InstrumentVoice voice{*findInstrument("scpi-thermometer"), "4711"};
    CHECK(voice.answer("*IDN?", "") == "SIMULATED,THERMOMETER,4711,1.0\n");
    CHECK(voice.answer("SYST:ERR?", "") == "0,\"No error\"\n");
    CHECK(voice.answer("MAKE:TEA", "").empty());
    CHECK(voice.answer("SYST:ERR?", "") == "-113,\"Undefined header\"\n"); // SCPI-99 volume 2, 21.8.9
    CHECK(voice.answer("SYST:ERR?", "") == "0,\"No error\"\n");
    CHECK(voice.answer("MEAS:TEMP?", voice.reading(24.0)) == "+2.40000000E+01\n");
}

TEST_CASE("a ride twenty times as fast is the same ride in clock time", "[drivers][simulated]") {
    const ScaledClock clock{20.0, {}};
    SystemPortOpener opener;
    Scenario scenario;
    scenario.rides = {{3s, 160.0, 40.0}};
    const InstrumentDescription& description = *findInstrument("line-type-k-celsius");
    const SimulatedProbe probe{description, scenario, clock};
    WatchedLink link{description, Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return !link.samples.empty() && link.samples.back().at > 70s; }));
    const auto peak = std::max_element(link.samples.begin(), link.samples.end(),
                                       [](const Sample& a, const Sample& b) { return a.counts < b.counts; });
    CHECK(std::abs(static_cast<double>(peak->counts) * 0.1 - 160.0) < 1.0); // noise of 0.1 °C standard deviation
    CHECK(std::abs((peak->at - 43s) / 1.0s) < 3.0);                         // 3 s and 40 s inside
    CHECK(link.samples.back().counts < 1000);                               // cooling down
    CHECK(link.count(LinkState::lost) == 0);
    MonotonicTime longest{0};
    for (std::size_t i = 1; i < link.samples.size(); ++i) {
        longest = std::max(longest, link.samples[i].at - link.samples[i - 1].at);
    }
    CHECK(longest < 2s); // no gap by decisions 3
}

TEST_CASE("a clock moved by hand makes the samples that fell due", "[drivers][simulated]") {
    ManualClock clock;
    SystemPortOpener opener;
    Scenario scenario;
    scenario.noiseCelsius = 0.0;
    const InstrumentDescription& description = *findInstrument("line-type-k-celsius");
    const SimulatedProbe probe{description, scenario, clock};
    WatchedLink link{description, Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.is(LinkState::identifying); }));
    for (int i = 0; i < 10; ++i) {
        const std::size_t before = link.samples.size();
        clock.advance(200ms);
        // the first line may fall victim to the rule of the line under way
        REQUIRE((i < 2 || comes([&] { return link.samples.size() > before; })));
    }
    CHECK(link.samples.size() >= 8);
    CHECK(link.samples.size() <= 10);
}

TEST_CASE("a ride that is asked for begins at once", "[drivers][simulated]") {
    const ScaledClock clock{20.0, {}};
    SystemPortOpener opener;
    const InstrumentDescription& description = *findInstrument("line-type-k-celsius");
    SimulatedProbe probe{description, {}, clock};
    WatchedLink link{description, Address::atPath(probe.path()), clock, opener};
    REQUIRE(comes([&] { return link.samples.size() >= 10; }));
    CHECK(link.samples.back().counts < 300);
    probe.ride(150.0, 20.0);
    CHECK(comes([&] { return link.samples.back().counts > 1450; }));
}
