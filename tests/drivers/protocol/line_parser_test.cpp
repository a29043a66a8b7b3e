#include "drivers/protocol/line_parser.hpp"

#include "drivers/protocol/decimal.hpp"

#include <catch2/catch.hpp>

#include <string>

using namespace holdfast::drivers;

namespace {

LineRules celsiusRules() {
    LineRules rules;
    rules.fields.count = 3;
    rules.fields.unit = 1;
    rules.fields.serial = 2;
    rules.fields.serialPrefix = "SN";
    rules.scale = {0.1, ReadingUnit::celsius};
    rules.range = {-50.0, 1000.0};
    rules.unitWords = {{"C", ReadingUnit::celsius}, {"F", ReadingUnit::fahrenheit}};
    rules.statusWords = {{"OPEN", SampleFlag::openCircuit}, {"OVER", SampleFlag::outOfRange}, {"OK", SampleFlag::none}};
    return rules;
}

ProtocolFault faultOf(const std::string& line, const LineRules& rules = celsiusRules()) {
    const auto reading = parseLine(rules, line);
    REQUIRE_FALSE(reading);
    return reading.error();
}

} // namespace

TEST_CASE("a line of a thermometer becomes counts of its own step", "[drivers][line]") {
    CHECK(parseLine(celsiusRules(), "+0160.4 C SN004217") == LineReading{1604, SampleFlag::none, "004217"});
    CHECK(parseLine(celsiusRules(), "-0012.3 C SN1") == LineReading{-123, SampleFlag::none, "1"});
    CHECK(parseLine(celsiusRules(), " \t21   C\tSN1 ") == LineReading{210, SampleFlag::none, "1"});
}

TEST_CASE("status words stand in for a number and set their flag", "[drivers][line]") {
    CHECK(parseLine(celsiusRules(), "OPEN C SN1") == LineReading{0, SampleFlag::openCircuit, "1"});
    CHECK(parseLine(celsiusRules(), "OVER C SN1") == LineReading{0, SampleFlag::outOfRange, "1"});
    CHECK(faultOf("OK C SN1") == ProtocolFault::notANumber); // all is well, but there is no number
    CHECK(faultOf("HELP C SN1") == ProtocolFault::notANumber);
}

TEST_CASE("the ends of the range are inside, beyond them a reading is flagged and keeps its counts",
          "[drivers][line]") {
    // decisions 3.1: outside its stated range (its ends are inside)
    CHECK(parseLine(celsiusRules(), "1000.0 C SN1") == LineReading{10000, SampleFlag::none, "1"});
    CHECK(parseLine(celsiusRules(), "-50.0 C SN1") == LineReading{-500, SampleFlag::none, "1"});
    CHECK(parseLine(celsiusRules(), "1000.1 C SN1") == LineReading{10001, SampleFlag::outOfRange, "1"});
}

TEST_CASE("a reading in the other unit is refused, never converted", "[drivers][line]") {
    CHECK(faultOf("+0320.7 F SN1") == ProtocolFault::otherUnit);
    CHECK(faultOf("+0320.7 K SN1") == ProtocolFault::unknownUnit);
}

TEST_CASE("each way a line can be wrong has its name", "[drivers][line]") {
    CHECK(faultOf("") == ProtocolFault::wrongFields);
    CHECK(faultOf("+0160.4 C") == ProtocolFault::wrongFields);
    CHECK(faultOf("+0160.4 C SN1 extra") == ProtocolFault::wrongFields);
    CHECK(faultOf("+0160.4 C 004217") == ProtocolFault::missingSerial);
    CHECK(faultOf("+0160.4 C SN") == ProtocolFault::missingSerial);
    CHECK(faultOf("+0160.45 C SN1") == ProtocolFault::finerThanStep);
    CHECK(faultOf("+0160.4\x80 C SN1") == ProtocolFault::notText);
    CHECK(faultOf(std::string("+0160.4 C SN1\0", 14)) == ProtocolFault::notText);
    CHECK(faultOf("9999999999999999 C SN1") == ProtocolFault::numberTooLarge);
    CHECK(faultOf(std::string(200, '1')) == ProtocolFault::lineTooLong);
    for (const std::string number : {"1e3", "0x10", "nan", "inf", "--1", "+-1", "1.2.3", "1,5", ".", "+", "1 2"}) {
        CHECK_FALSE(parseLine(celsiusRules(), number + " C SN1"));
    }
}

TEST_CASE("two numbers run together are not a number", "[drivers][line]") {
    // seen in real logs (../shared data readme, "What other recordings looked like")
    CHECK(faultOf("160.4160.4 C SN1") == ProtocolFault::notANumber);
    CHECK(faultOf("+0160.4+0160.5 C SN1") == ProtocolFault::notANumber);
}

TEST_CASE("a decimal comma and exact separators are a matter of the description", "[drivers][line]") {
    LineRules rules = celsiusRules();
    rules.decimalComma = true;
    rules.fields = {';', 4, 1, 2, 3, 0, ""};
    rules.statusWords = {{"0", SampleFlag::none}, {"1", SampleFlag::openCircuit}};
    CHECK(parseLine(rules, "K7;+160,5;C;0") == LineReading{1605, SampleFlag::none, "K7"});
    CHECK(parseLine(rules, "K7;+000,0;C;1") == LineReading{0, SampleFlag::openCircuit, "K7"});
    CHECK(faultOf("K7;160.5;C;0", rules) == ProtocolFault::notANumber);
    CHECK(faultOf("K7;160,5;C;9", rules) == ProtocolFault::unknownStatus);
    CHECK(faultOf("K7;;160,5;C", rules) == ProtocolFault::unknownUnit); // an empty field shifts the others
    CHECK(faultOf("K7;160,5;C", rules) == ProtocolFault::wrongFields);  // a lost one too
}

TEST_CASE("every tenth of a degree from -50 to 1000 keeps its count", "[drivers][line]") {
    for (int tenths = -500; tenths <= 10000; ++tenths) {
        const std::string text = (tenths < 0 ? "-" : "+") + std::to_string(std::abs(tenths) / 10) + "." +
                                 std::to_string(std::abs(tenths) % 10);
        const auto reading = parseLine(celsiusRules(), text + " C SN1");
        REQUIRE(reading);
        REQUIRE(reading->counts == tenths);
    }
}

TEST_CASE("a quarter-degree step takes quarters only", "[drivers][line]") {
    CHECK(toCounts(-12.75, 0.25, true) == -51);
    CHECK(toCounts(12.7, 0.25, true) == tl::unexpected(ProtocolFault::finerThanStep));
    CHECK(toCounts(12.7, 0.25, false) == 51);
    CHECK(toCounts(1e300, 0.25, false) == tl::unexpected(ProtocolFault::numberTooLarge));
}
