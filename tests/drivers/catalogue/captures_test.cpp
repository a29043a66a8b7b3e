#include "drivers/catalogue/catalogue.hpp"
#include "drivers/protocol/line_framer.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <algorithm>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <sstream>
#include <string>
#include <vector>

using namespace holdfast::drivers;
namespace fs = std::filesystem;

namespace {

const fs::path kCaptures = fs::path{HOLDFAST_SOURCE_DIR} / "tests" / "data" / "drivers";

std::string contentOf(const fs::path& path) {
    std::ifstream file{path, std::ios::binary};
    return {std::istreambuf_iterator<char>{file}, std::istreambuf_iterator<char>{}};
}

const char* nameOf(ProtocolFault fault) {
    switch (fault) {
    case ProtocolFault::lineTooLong:
        return "lineTooLong";
    case ProtocolFault::notText:
        return "notText";
    case ProtocolFault::wrongFields:
        return "wrongFields";
    case ProtocolFault::notANumber:
        return "notANumber";
    case ProtocolFault::numberTooLarge:
        return "numberTooLarge";
    case ProtocolFault::finerThanStep:
        return "finerThanStep";
    case ProtocolFault::unknownUnit:
        return "unknownUnit";
    case ProtocolFault::otherUnit:
        return "otherUnit";
    case ProtocolFault::unknownStatus:
        return "unknownStatus";
    case ProtocolFault::missingSerial:
        return "missingSerial";
    }
    return "";
}

nlohmann::json found(const tl::expected<LineReading, ProtocolFault>& reading) {
    if (!reading) {
        return {{"fault", nameOf(reading.error())}};
    }
    return {
        {"counts", reading->counts}, {"flags", static_cast<int>(reading->flags)}, {"serial", reading->serialNumber}};
}

tl::expected<LineReading, ProtocolFault> parse(const InstrumentDescription& description, const std::string& line) {
    if (const auto* dialogue = std::get_if<ScpiDialogue>(&description.protocol)) {
        return parseScpiReading(dialogue->rules, line);
    }
    return parseLine(std::get<LineRules>(description.protocol), line);
}

nlohmann::json replay(const InstrumentDescription& description, const std::string& capture, std::size_t pieces) {
    LineFramer framer{description.terminator(), description.longestLine()};
    nlohmann::json lines = nlohmann::json::array();
    for (std::size_t at = 0; at < capture.size(); at += pieces) {
        for (const FramedLine& line : framer.feed(std::string_view{capture}.substr(at, pieces))) {
            lines.push_back(found(line.and_then([&](const std::string& text) { return parse(description, text); })));
        }
    }
    return lines;
}

std::string fromHex(const std::string& hex) {
    std::string bytes;
    for (std::size_t at = 0; at + 1 < hex.size(); at += 2) {
        bytes.push_back(static_cast<char>(std::stoi(hex.substr(at, 2), nullptr, 16)));
    }
    return bytes;
}

/// The scale's lines as a thermometer's: its unit word stands in for a temperature unit, its error mark for a fault.
LineRules scaleRules() {
    LineRules rules;
    rules.longestLine = 14;
    rules.fields.count = 3;
    rules.fields.unit = 1;
    rules.fields.status = 2;
    rules.scale = {0.01, ReadingUnit::celsius};
    rules.range = {-6200.0, 6200.0};
    rules.unitWords = {{"G", ReadingUnit::celsius}};
    rules.statusWords = {{"S", SampleFlag::none}, {"U", SampleFlag::none}, {"E", SampleFlag::outOfRange}};
    return rules;
}

} // namespace

TEST_CASE("every capture yields what stands beside it", "[drivers][captures]") {
    std::size_t cases = 0;
    for (const auto& model : fs::directory_iterator{kCaptures}) {
        const auto* description = findInstrument(model.path().filename().string());
        INFO(model.path());
        REQUIRE(description != nullptr);
        for (const auto& entry : fs::directory_iterator{model.path()}) {
            INFO(entry.path());
            REQUIRE(fs::exists(entry.path() / "SOURCE.md"));
            REQUIRE(fs::exists(entry.path() / "expected.json")); // a missing expectation fails
            const std::string capture = contentOf(entry.path() / "capture.bin");
            REQUIRE_FALSE(capture.empty());
            const auto expected = nlohmann::json::parse(contentOf(entry.path() / "expected.json")).at("lines");
            for (const std::size_t pieces : {capture.size(), std::size_t{1}, std::size_t{7}}) {
                CHECK(replay(*description, capture, pieces).dump(1) == expected.dump(1));
            }
            ++cases;
        }
    }
    CHECK(cases >= 6);
}

TEST_CASE("every instrument of the catalogue has a capture", "[drivers][captures]") {
    for (const InstrumentDescription& description : catalogue()) {
        INFO(description.id);
        CHECK(fs::is_directory(kCaptures / description.id));
    }
}

TEST_CASE("a recorded scale's lines read without one left over", "[drivers][captures]") {
    // sigrok-dumps, uart/kern_ew_6200-2nm, public domain: 14-byte lines such as "+0026.90 G U" CR LF, decoded to hex.
    const fs::path table = fs::path{HOLDFAST_SOURCE_DIR} / ".." / "shared" / "data" / "serial" / "decoded_frames.csv";
    std::ifstream file{table};
    if (!file) {
        std::cout << "SKIPPED: no recorded serial lines here\n";
        return;
    }
    LineFramer framer{"\r\n", 14};
    std::vector<LineReading> readings;
    for (std::string row; std::getline(file, row);) {
        if (row.rfind("kern", 0) != 0) {
            continue;
        }
        std::istringstream cells{row};
        std::string hex;
        for (int column = 0; column < 8; ++column) {
            std::getline(cells, hex, ',');
        }
        for (const FramedLine& line : framer.feed(fromHex(hex))) {
            const auto reading = line.and_then([](const std::string& text) { return parseLine(scaleRules(), text); });
            INFO(row);
            REQUIRE(reading);
            readings.push_back(*reading);
        }
    }
    REQUIRE(readings.size() == 70); // one each row of the table but the last, which is cut: "+0000."
    CHECK(framer.pendingBytes() == 6);
    CHECK(readings[0].counts == 2690);  // +0026.90, as the table prints it
    CHECK(readings[2].counts == -4);    // -0000.04
    CHECK(readings[3].counts == 12720); // +0127.20
    CHECK(std::count_if(readings.begin(), readings.end(), [](const LineReading& reading) {
              return has(reading.flags, SampleFlag::outOfRange);
          }) == 15); // rows with " E"
}
