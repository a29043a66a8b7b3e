#include "drivers/link/conversation.hpp"

#include "drivers/catalogue/catalogue.hpp"

#include <catch2/catch.hpp>

#include <memory>
#include <string>

using namespace holdfast::drivers;
using namespace std::chrono_literals;

namespace {

std::unique_ptr<Conversation> with(const std::string& id, const std::string& serial = {}) {
    return makeConversation(*findInstrument(id), serial);
}

} // namespace

TEST_CASE("a line instrument is right once a whole line reads", "[drivers][conversation]") {
    const auto line = with("line-type-k-celsius");
    CHECK(line->opened(0s).toSend.empty());
    CHECK(line->received("60.4 C SN004217\r\n", 1s).readings.empty()); // the line under way
    CHECK(line->answerer() == Answerer::unknown);
    CHECK(line->received("MODE\r\n", 1s).readings.empty()); // before it is known, damage is no reading
    CHECK(line->received("+0160.4 C SN004217\r\n", 2s).readings.size() == 1);
    CHECK(line->answerer() == Answerer::right);
    CHECK(line->serialNumber() == "004217");
}

TEST_CASE("once known, a damaged line or another serial number is an unreadable reading", "[drivers][conversation]") {
    const auto line = with("line-type-k-celsius");
    (void)line->opened(0s);
    const auto step = line->received("\r\n+0160.4 C SN1\r\n+01#0.4 C SN1\r\n+0160.4 C SN7\r\n+0160.5 C SN1\r\n", 1s);
    REQUIRE(step.readings.size() == 4);
    CHECK(step.readings[0].counts == 1604);
    CHECK(step.readings[1].flags == SampleFlag::unreadable);
    CHECK(step.readings[2].flags == SampleFlag::unreadable);
    CHECK(step.readings[3].counts == 1605);
}

TEST_CASE("an instrument with another serial number is the wrong one", "[drivers][conversation]") {
    const auto line = with("line-type-k-celsius", "004217");
    (void)line->opened(0s);
    CHECK(line->received("\r\n+0160.4 C SN004218\r\n", 1s).readings.empty());
    CHECK(line->answerer() == Answerer::wrong);
    CHECK(line->serialNumber() == "004218");
    CHECK(line->received("+0160.4 C SN004217\r\n", 2s).readings.size() == 1); // exchanged without a hang-up
    CHECK(line->answerer() == Answerer::right);
}

TEST_CASE("a SCPI instrument is asked who it is, set up, its errors read, then queried", "[drivers][conversation]") {
    const auto scpi = with("scpi-thermometer");
    CHECK(scpi->opened(0s).toSend == "*IDN?\n");
    CHECK(scpi->received("MAKER,MODEL,42,1.0\n", 10ms).toSend == "UNIT:TEMP C\nSYST:ERR?\n");
    CHECK(scpi->answerer() == Answerer::unknown);
    const auto error = scpi->received("-113,\"Undefined header\"\n", 20ms);
    REQUIRE(error.errors.size() == 1);
    CHECK(error.errors[0].number == -113);
    CHECK(error.toSend == "SYST:ERR?\n");
    CHECK(scpi->received("0,\"No error\"\n", 30ms).toSend.empty());
    CHECK(scpi->answerer() == Answerer::right);
    CHECK(scpi->serialNumber() == "42");
    CHECK(scpi->identity() == "MAKER MODEL");

    CHECK(scpi->timePassed(50ms).toSend == "MEAS:TEMP?\n");
    CHECK(scpi->timePassed(400ms).toSend.empty()); // one question at a time
    CHECK(scpi->received("+1.604", 410ms).readings.empty());
    const auto reading = scpi->received("23700E+02\n", 420ms);
    REQUIRE(reading.readings.size() == 1);
    CHECK(reading.readings[0] == LineReading{16042, SampleFlag::none, "42"});
    CHECK(scpi->timePassed(430ms).toSend == "MEAS:TEMP?\n"); // due at 230 ms, asked late
    (void)scpi->received("+1.60423700E+02\n", 440ms);
    CHECK(scpi->timePassed(500ms).toSend.empty()); // 200 ms after the last one, no sooner
    CHECK(scpi->timePassed(630ms).toSend == "MEAS:TEMP?\n");
}

TEST_CASE("a late answer is never taken for the answer to a later question", "[drivers][conversation]") {
    const auto scpi = with("scpi-thermometer");
    (void)scpi->opened(0s);
    (void)scpi->received("MAKER,MODEL,42,1.0\n", 10ms);
    (void)scpi->received("0,\"No error\"\n", 20ms);
    REQUIRE(scpi->timePassed(30ms).toSend == "MEAS:TEMP?\n");
    CHECK(scpi->timePassed(1029ms).toSend.empty());
    CHECK(scpi->timePassed(1030ms).toSend == "*IDN?\n"); // overdue after a second: start over
    CHECK(scpi->received("+1.60423700E+02\n", 1040ms).readings.empty());
    CHECK(scpi->received("MAKER,MODEL,42,1.0\n", 1050ms).toSend == "UNIT:TEMP C\nSYST:ERR?\n");
}

TEST_CASE("an unreadable answer is a flagged reading and the error queue is asked", "[drivers][conversation]") {
    const auto scpi = with("scpi-thermometer");
    (void)scpi->opened(0s);
    (void)scpi->received("MAKER,MODEL,42,1.0\n", 10ms);
    (void)scpi->received("0,\"No error\"\n", 20ms);
    (void)scpi->timePassed(30ms);
    const auto step = scpi->received("what?\n", 40ms);
    REQUIRE(step.readings.size() == 1);
    CHECK(step.readings[0].flags == SampleFlag::unreadable);
    CHECK(step.toSend == "SYST:ERR?\n");
}

TEST_CASE("an instrument that always reports an error is read all the same", "[drivers][conversation]") {
    const auto scpi = with("scpi-thermometer");
    (void)scpi->opened(0s);
    (void)scpi->received("MAKER,MODEL,42,1.0\n", 10ms);
    int asked = 1;
    while (!scpi->received("-350,\"Queue overflow\"\n", 20ms).toSend.empty()) {
        REQUIRE(++asked <= 20);
    }
    CHECK(asked == 20);
    CHECK(scpi->timePassed(30ms).toSend == "MEAS:TEMP?\n");
}

TEST_CASE("the wrong model is the wrong device, and asked again in case it is exchanged", "[drivers][conversation]") {
    InstrumentDescription description = *findInstrument("scpi-thermometer");
    description.identity = {"MAKER", "MODEL", ""};
    const auto scpi = makeConversation(description, {});
    (void)scpi->opened(0s);
    CHECK(scpi->received("OTHER,SCALE,42,1.0\n", 10ms).toSend.empty());
    CHECK(scpi->answerer() == Answerer::wrong);
    CHECK(scpi->timePassed(1s).toSend == "*IDN?\n");
    CHECK_FALSE(scpi->received("MAKER,MODEL 7,42,1.0\n", 1s).toSend.empty());
    (void)scpi->received("0,\"No error\"\n", 1s);
    CHECK(scpi->answerer() == Answerer::right);
}
