#include "kiosk/records/verdict_json.hpp"
#include "tests/kiosk/records/support/samples.hpp"

#include <catch2/catch.hpp>

using namespace holdfast::kiosk::records;
namespace a = holdfast::analytics;

namespace {

std::vector<std::string> keysOf(const Json& json) {
    std::vector<std::string> keys;
    for (const auto& [key, value] : json.items()) {
        keys.push_back(key);
    }
    return keys;
}

} // namespace

TEST_CASE("a verdict has the keys of the contract, in its order", "[records][verdict-json]") {
    const auto reading = holdfast::kiosk::records::testing::sampleReading();
    const auto json = verdictJson(*reading.verdict, &*reading.window, [](const a::Reason&) { return "A sentence."; });
    // contracts.md, Command line, JSON
    CHECK(keysOf(json) == std::vector<std::string>{"verdict", "bleed_not_ruled_out", "margin_c", "upper_margin_c",
                                                   "guard_c", "reasons", "layers", "window"});
    CHECK(keysOf(json["layers"][0]) ==
          std::vector<std::string>{"position", "colour", "family", "verdict", "margin_c", "limit_c"});
    CHECK(keysOf(json["window"]) == std::vector<std::string>{"state", "narrow", "bleed_not_provable", "lower_c",
                                                             "hold_s", "upper_hard_c", "upper_bleed_c", "upper_c",
                                                             "aim_c", "bleeds", "culprits", "ways_out",
                                                             "ways_out_left_out"});
    CHECK(keysOf(json["window"]["culprits"][0]) == std::vector<std::string>{"kind", "position", "name", "limit_c"});
    CHECK(keysOf(json["window"]["ways_out"][0]) ==
          std::vector<std::string>{"changes", "instrument", "lower_c", "upper_c"});
    CHECK(keysOf(json["window"]["ways_out"][0]["changes"][0]) == std::vector<std::string>{"position", "from", "to"});
    CHECK(json["verdict"] == "not proven");
    CHECK(json["window"]["state"] == "not provable");
    CHECK(json["reasons"][0]["code"] == "over-cure-within-guard");
    CHECK(json["reasons"][0]["text"] == "A sentence.");
    CHECK(json["window"]["aim_c"].is_null());
}

TEST_CASE("a margin is a number, an interval or null", "[records][verdict-json]") {
    a::Verdict verdict;
    const auto d = [](double k) { return a::TemperatureDifference::fromCelsius(k); };
    CHECK(verdictJson(verdict, nullptr)["margin_c"].is_null());
    verdict.margin = a::MarginRange{d(2), d(2)};
    CHECK(verdictJson(verdict, nullptr)["margin_c"] == 2.0);
    verdict.margin = a::MarginRange{d(-1), d(16)};
    CHECK(verdictJson(verdict, nullptr)["margin_c"] == Json::array({-1.0, 16.0}));
    verdict.margin = a::MarginRange{d(-1), std::nullopt};
    CHECK(verdictJson(verdict, nullptr)["margin_c"] == Json::array({-1.0, nullptr}));
    CHECK(verdictJson(verdict, nullptr)["window"].is_null());
}

TEST_CASE("without a maker of sentences there is no text", "[records][verdict-json]") {
    a::Reason reason;
    reason.code = a::ReasonCode::clockFault;
    CHECK(keysOf(reasonJson(reason)) == std::vector<std::string>{"code"});
}
