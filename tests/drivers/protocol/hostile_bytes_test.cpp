#include "drivers/protocol/line_framer.hpp"
#include "drivers/protocol/line_parser.hpp"
#include "drivers/protocol/scan_text.hpp"
#include "drivers/protocol/scpi_parser.hpp"
#include "drivers/protocol/ticket_code.hpp"

#include <catch2/catch.hpp>

#include <random>
#include <string>

using namespace holdfast::drivers;

namespace {

constexpr int kBuffers = 100'000;

/// Random bytes, or a true line with some bytes changed: the second gets much further into a parser.
std::string hostile(std::mt19937& random, const std::string& line) {
    std::string bytes = (random() % 2 == 0) ? line : std::string(random() % 64, '\0');
    const bool all = bytes != line;
    const std::size_t changes = all ? bytes.size() : random() % 4;
    for (std::size_t i = 0; i < changes && !bytes.empty(); ++i) {
        bytes[all ? i : random() % bytes.size()] = static_cast<char>(random() & 0xFFU);
    }
    return bytes;
}

LineRules rulesOfLines() {
    LineRules rules;
    rules.longestLine = 40;
    rules.fields = {' ', 3, 0, 1, std::nullopt, 2, "SN"};
    rules.scale = {0.1, ReadingUnit::celsius};
    rules.range = {-50.0, 1000.0};
    rules.unitWords = {{"C", ReadingUnit::celsius}, {"F", ReadingUnit::fahrenheit}};
    rules.statusWords = {{"OPEN", SampleFlag::openCircuit}};
    return rules;
}

} // namespace

TEST_CASE("hostile bytes never make a reading out of its bounds", "[drivers][hostile]") {
    std::mt19937 random{20240601};
    const LineRules lineRules = rulesOfLines();
    LineFramer framer{"\r\n", lineRules.longestLine};
    std::size_t read = 0;
    for (int i = 0; i < kBuffers; ++i) {
        for (const FramedLine& line : framer.feed(hostile(random, "+0160.4 C SN004217\r\n"))) {
            const auto reading = line.and_then([&](const std::string& text) { return parseLine(lineRules, text); });
            if (!reading) {
                continue;
            }
            ++read;
            const bool inside = reading->counts >= -500 && reading->counts <= 10'000;
            REQUIRE((inside || has(reading->flags, SampleFlag::outOfRange)));
            REQUIRE_FALSE(reading->serialNumber.empty());
        }
        REQUIRE(framer.pendingBytes() <= lineRules.longestLine + 1);
    }
    CHECK(read > 1000);
}

TEST_CASE("hostile answers never pass for a SCPI reading, identity or error out of form", "[drivers][hostile]") {
    std::mt19937 random{20240602};
    ScpiRules scpi;
    scpi.range = {-200.0, 1260.0};
    scpi.scale.step = 0.01;
    std::size_t read = 0;
    for (int i = 0; i < kBuffers; ++i) {
        if (const auto reading = parseScpiReading(scpi, hostile(random, "+1.60423700E+02"))) {
            ++read;
            const bool inside = reading->counts >= -20'000 && reading->counts <= 126'000;
            REQUIRE((inside || reading->flags != SampleFlag::none));
        }
        if (const auto identity = parseScpiIdentity(hostile(random, "MAKER,MODEL,0042,1.0"))) {
            REQUIRE_FALSE(identity->maker.empty());
            REQUIRE_FALSE(identity->model.empty());
        }
        if (const auto error = parseScpiError(hostile(random, "-113,\"Undefined header\""))) {
            REQUIRE(error->text.size() <= 64);
        }
    }
    CHECK(read > 1000);
}

TEST_CASE("hostile scans come out clean or not at all", "[drivers][hostile]") {
    std::mt19937 random{20240603};
    const std::string code = encode(TicketKind::run, 4711, 5);
    std::size_t clean = 0;
    for (int i = 0; i < kBuffers; ++i) {
        const std::string bytes = hostile(random, code);
        if (const auto text = checkScan(bytes)) {
            ++clean;
            REQUIRE(text->find_first_of(std::string("\0\x01\x1b\x7f\n\r", 6)) == std::string::npos);
        }
        if (const auto ticket = decode(bytes)) {
            // whatever passes is written the same way again, but for letter case and blanks
            const std::string again = encode(ticket->kind, ticket->number, 5);
            REQUIRE(decode(again) == *ticket);
        }
    }
    CHECK(clean > 1000);
}
