#include "drivers/protocol/scpi_parser.hpp"

#include <catch2/catch.hpp>

#include <string>
#include <utility>
#include <vector>

using namespace holdfast::drivers;

namespace {

ScpiRules scpiRules() {
    ScpiRules rules;
    rules.scale = {0.01, ReadingUnit::celsius};
    rules.range = {-200.0, 1260.0};
    rules.overload = SampleFlag::openCircuit;
    return rules;
}

} // namespace

TEST_CASE("numeric answers are told apart as NR1, NR2 and NR3", "[drivers][scpi]") {
    // IEEE 488.2-1992, 8.7.2 to 8.7.4 (from memory): NR1 digits, NR2 with a point, NR3 with point and E, sign, digits.
    const std::vector<std::pair<std::string, NumericForm>> answers = {
        {"255", NumericForm::nr1},    {"-12", NumericForm::nr1},     {"1.50", NumericForm::nr2},
        {"-0.037", NumericForm::nr2}, {"1.2E+03", NumericForm::nr3}, {"-4.56E-02", NumericForm::nr3},
    };
    const std::vector<double> values = {255, -12, 1.5, -0.037, 1200, -0.0456};
    for (std::size_t i = 0; i < answers.size(); ++i) {
        const auto number = parseScpiNumber(answers[i].first);
        REQUIRE(number);
        CHECK(number->form == answers[i].second);
        CHECK(number->value == values[i]);
        CHECK(number->special == ScpiSpecial::none);
    }
}

TEST_CASE("loose number forms are not valid answers", "[drivers][scpi]") {
    // IEEE 488.2-1992, 8.7 (from memory): the forms for answers are strict; 1E3 and .5 are for the listener's side
    // only.
    for (const std::string text : {"1E3", ".5", "5.", "1.2E3", "1.2e+03", "", "+", "-", "1.2E+", "0x10", "NAN", "INF",
                                   "1 2", " 1", "1 ", "+-1", "1.2E+03V", "1,2"}) {
        CHECK(parseScpiNumber(text) == tl::unexpected(ProtocolFault::notANumber));
    }
    CHECK(parseScpiNumber("1.0E+999") == tl::unexpected(ProtocolFault::numberTooLarge));
    CHECK(parseScpiNumber(std::string(5000, '1')) == tl::unexpected(ProtocolFault::numberTooLarge));
}

TEST_CASE("9.9E37 is overload and 9.91E37 is no number", "[drivers][scpi]") {
    // SCPI-99 volume 1, 7.2.1 (from memory): infinity 9.9E37, negative infinity -9.9E37, not a number 9.91E37.
    CHECK(parseScpiNumber("+9.90000000E+37")->special == ScpiSpecial::overHigh);
    CHECK(parseScpiNumber("-9.9E+37")->special == ScpiSpecial::overLow);
    CHECK(parseScpiNumber("9.91E+37")->special == ScpiSpecial::notANumber);
    CHECK(parseScpiReading(scpiRules(), "9.9E+37") == LineReading{0, SampleFlag::openCircuit, ""});
    CHECK(parseScpiReading(scpiRules(), "9.91E+37") == LineReading{0, SampleFlag::instrumentFault, ""});
}

TEST_CASE("a reading is rounded to the step and checked against the range", "[drivers][scpi]") {
    CHECK(parseScpiReading(scpiRules(), "+1.60423700E+02") == LineReading{16042, SampleFlag::none, ""});
    CHECK(parseScpiReading(scpiRules(), "-2.00010000E+02") == LineReading{-20001, SampleFlag::outOfRange, ""});
    CHECK(parseScpiReading(scpiRules(), "1.0E+30") == tl::unexpected(ProtocolFault::numberTooLarge));
}

TEST_CASE("*IDN? has four fields", "[drivers][scpi]") {
    // IEEE 488.2-1992, 10.14 (from memory): maker, model, serial number or 0, firmware or 0.
    CHECK(parseScpiIdentity("MAKER,MODEL 7,0042,1.3-b") == ScpiIdentity{"MAKER", "MODEL 7", "0042", "1.3-b"});
    CHECK(parseScpiIdentity("MAKER, MODEL 7 ,0,0") == ScpiIdentity{"MAKER", "MODEL 7", "", "0"});
    CHECK(parseScpiIdentity("MAKER,MODEL,0042") == tl::unexpected(ProtocolFault::wrongFields));
    CHECK(parseScpiIdentity("MAKER,MODEL,0042,1,2") == tl::unexpected(ProtocolFault::wrongFields));
    CHECK(parseScpiIdentity(",MODEL,0042,1") == tl::unexpected(ProtocolFault::wrongFields));
    CHECK(parseScpiIdentity("MA\x01KER,MODEL,0042,1") == tl::unexpected(ProtocolFault::notText));
}

TEST_CASE("SYST:ERR? answers are a number and a quoted text", "[drivers][scpi]") {
    // SCPI-99 volume 2, chapter 21: 0,"No error"; -113,"Undefined header"; -350,"Queue overflow".
    CHECK(parseScpiError("0,\"No error\"") == ScpiError{0, "No error"});
    CHECK(parseScpiError("+0,\"No error\"") == ScpiError{0, "No error"});
    CHECK(parseScpiError("-113,\"Undefined header\"") == ScpiError{-113, "Undefined header"});
    CHECK(parseScpiError("-350, \"Queue overflow\"") == ScpiError{-350, "Queue overflow"});
    CHECK(parseScpiError("-113") == tl::unexpected(ProtocolFault::wrongFields));
    CHECK(parseScpiError("-113,\"") == tl::unexpected(ProtocolFault::wrongFields));
    CHECK(parseScpiError("No error") == tl::unexpected(ProtocolFault::notANumber));
    CHECK(parseScpiError("99999999999,\"x\"") == tl::unexpected(ProtocolFault::notANumber));
}
