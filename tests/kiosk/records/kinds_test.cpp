#include "kiosk/records/words.hpp"
#include "tests/kiosk/records/support/samples.hpp"

#include <catch2/catch.hpp>
#include <filesystem>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

using namespace holdfast::kiosk::records;
using holdfast::kiosk::records::testing::sampleOfEveryKind;
namespace ledger = holdfast::kiosk::ledger;

namespace {

std::string golden(const std::string& kind, int version) {
    const std::filesystem::path folder{HOLDFAST_SOURCE_DIR "/tests/data/records"};
    std::ifstream file{folder / (kind + ".v" + std::to_string(version) + ".json")};
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

std::vector<RecordFault> faultsOf(const std::string& kind, const std::string& body, int version = 1) {
    const auto read = readRecord(kind, version, body);
    REQUIRE_FALSE(read);
    return read.error();
}

} // namespace

TEST_CASE("every kind has a golden file, is written as it says and read back the same", "[records][golden]") {
    const auto samples = sampleOfEveryKind();
    REQUIRE(samples.size() == kinds().size());
    for (std::size_t i = 0; i < samples.size(); ++i) {
        const auto& row = kinds()[i];
        INFO(row.kind);
        REQUIRE(rowOf(samples[i]).kind == row.kind);
        const auto expected = golden(std::string{row.kind}, row.version);
        REQUIRE_FALSE(expected.empty());
        const auto body = bodyOf(samples[i]);
        CHECK(nlohmann::json::parse(body) == nlohmann::json::parse(expected));
        const auto again = readRecord(row.kind, row.version, expected);
        INFO((again ? std::string{} : failureFrom(again.error()).what));
        REQUIRE(again);
        CHECK(bodyOf(*again) == body);
    }
}

TEST_CASE("every older version has its golden file still, and is read as the newest", "[records][golden]") {
    int lifted = 0;
    for (const auto& row : kinds()) {
        for (int version = 1; version < row.version; ++version) {
            INFO(row.kind << " version " << version);
            const auto stored = golden(std::string{row.kind}, version);
            REQUIRE_FALSE(stored.empty());
            const auto read = readRecord(row.kind, version, stored);
            REQUIRE(read);
            // all versions so far only added keys that may be left out
            CHECK(nlohmann::json::parse(bodyOf(*read)) == nlohmann::json::parse(stored));
            ++lifted;
        }
    }
    CHECK(lifted == 13); // a version a step of the kinds that gained keys
}

TEST_CASE("an unknown key is refused by name in every kind, wherever it stands", "[records][strict]") {
    for (const auto& row : kinds()) {
        INFO(row.kind);
        auto json = nlohmann::json::parse(golden(std::string{row.kind}, row.version));
        json["colour_of_the_moon"] = 1;
        const auto faults = faultsOf(std::string{row.kind}, json.dump());
        REQUIRE(faults.size() == 1);
        CHECK(faults[0].code == FaultCode::unknownKey);
        CHECK(faults[0].path == "colour_of_the_moon");
    }
    auto json = nlohmann::json::parse(golden("reading.taken", 1));
    json["window"]["culprits"][0]["x"] = 1;
    CHECK(faultsOf("reading.taken", json.dump()).at(0).path == "window.culprits[0].x");
}

TEST_CASE("a newer version or an unknown kind means: open the book read-only", "[records][strict]") {
    const auto newer = faultsOf("reading.taken", "{}", 3);
    CHECK(newer.at(0).code == FaultCode::newerVersion);
    CHECK(failureFrom(newer).code == ledger::FailureCode::newerBook);
    const auto unknown = faultsOf("moon.seen", "{}");
    CHECK(unknown.at(0).code == FaultCode::unknownKind);
    CHECK(failureFrom(unknown).code == ledger::FailureCode::newerBook);
    CHECK(failureFrom(faultsOf("lot.closed", "{}")).code == ledger::FailureCode::damaged);
}

TEST_CASE("every fault is told at once", "[records][strict]") {
    const auto faults =
        faultsOf("dryer.described", R"({"name": 7, "set_point": {"value": "hot", "unit": "K"}, "x": 1})");
    std::set<std::string> paths;
    for (const auto& fault : faults) {
        paths.insert(fault.path);
    }
    CHECK(paths == std::set<std::string>{"dryer", "name", "set_point.value", "set_point.unit", "x"});
}

TEST_CASE("hostile bodies are refused, never read in part", "[records][strict]") {
    for (const std::string body :
         {"", "null", "[]", "7", "\"text\"", "{\"lot\":", "{\"lot\":\"a\",\"lot\":\"b\",\"why\":\"run-ended\"}",
          "{\"lot\":\"\xff\",\"why\":\"run-ended\"}"}) {
        INFO(body);
        CHECK_FALSE(readRecord("lot.closed", 1, body));
    }
    const std::string deep(100'000, '[');
    CHECK_FALSE(readRecord("lot.closed", 1, deep));
    CHECK_FALSE(readRecord("lot.closed", 1, R"({"lot":"a","why":"run-ended","last_piece":1e300})"));
    CHECK_FALSE(readRecord("lot.closed", 1, R"({"lot":"a","why":"run-ended","last_piece":18446744073709551615})"));
    CHECK_FALSE(readRecord("lot.closed", 0, R"({"lot":"a","why":"run-ended"})"));
    CHECK_FALSE(readRecord("setting.changed", 1, R"({"key":"a","value":null})"));
}

TEST_CASE("authored numbers are kept as typed and computed ones to the last bit", "[records]") {
    DryerDescribed dryer;
    dryer.dryer = "d";
    dryer.setPoint = holdfast::analytics::AuthoredTemperature{285.0, holdfast::analytics::TemperatureUnit::fahrenheit};
    CHECK(bodyOf(dryer).find(R"("set_point":{"value":285.0,"unit":"F"})") != std::string::npos);
    auto reading = holdfast::kiosk::records::testing::sampleReading();
    const double third = 140.0 + 1.0 / 3.0;
    reading.window->lower = holdfast::analytics::Temperature::fromCelsius(third);
    const auto again = readRecord("reading.taken", 1, bodyOf(reading));
    REQUIRE(again);
    CHECK(std::get<ReadingTaken>(*again).window->lower.celsius() == third);
}

TEST_CASE("a reading has exactly one kind of evidence, and a verdict if it has a run", "[records][strict]") {
    auto json = nlohmann::json::parse(golden("reading.taken", 1));
    json["spot"] = {{"held", {{"value", 291}, {"unit", "F"}}}};
    CHECK_FALSE(readRecord("reading.taken", 1, json.dump()));
    json = nlohmann::json::parse(golden("reading.taken", 1));
    json.erase("run");
    CHECK_FALSE(readRecord("reading.taken", 1, json.dump()));
    json = nlohmann::json::parse(golden("reading.taken", 1));
    json["trace"]["sha256"] = "zz";
    CHECK_FALSE(readRecord("reading.taken", 1, json.dump()));
}

TEST_CASE("a stored verdict and window come back with their guards", "[records]") {
    const auto again = readRecord("reading.taken", 1, golden("reading.taken", 1));
    REQUIRE(again);
    const auto& reading = std::get<ReadingTaken>(*again);
    REQUIRE(reading.verdict);
    CHECK(reading.verdict->layers.at(0).limit.guard.celsius() == 2.5);
    CHECK_FALSE(reading.verdict->layers.at(0).margin->high); // open at the top
    CHECK(reading.verdict->raw->t.celsius() == 161.5);
    CHECK(reading.window->upperHard->guard.celsius() == 2.75);
    CHECK(reading.window->waysOut.at(0).changes.at(0).to == "low-cure");
}

TEST_CASE("every word of a closed list leads back to its value", "[records]") {
    namespace a = holdfast::analytics;
    const auto check = [](auto value) {
        std::set<std::string_view> words;
        for (const auto& row : tableOf(value)) {
            CHECK(fromWord<decltype(value)>(row.word) == row.value);
            CHECK(words.insert(row.word).second);
        }
        CHECK(words.size() > 1);
    };
    check(a::ReasonCode{});
    check(a::Remedy{});
    check(a::Word{});
    check(a::WindowState{});
    check(a::Chemistry{});
    check(a::ToleranceClass{});
    check(ReadingReason{});
    check(LotState{});
    check(BucketEnd{});
    check(FloorAction{});
    check(StruckCause{});
    check(a::FlashWord{});
    check(a::Quantity{});
    check(a::Bound{});
    check(a::CrackClass{});
    check(PrintEnd{});
    check(TestKind{});
    check(PictureSide{});
    check(TestOutcome{});
    check(LoadWord{});
    check(CountBasis{});
    check(HoldCause{});
    check(DecisionWord{});
    check(PiecePlace{});
    check(DueReadingKind{});
    check(ComplaintKind{});
    CHECK(toWord(a::Word::notProven) == "not proven"); // contracts.md, JSON
    CHECK(toWord(a::ReasonCode::overCureWithinGuard) == "over-cure-within-guard");
}
