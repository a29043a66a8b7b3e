#include "kiosk/records/shop_file.hpp"

#include <catch2/catch.hpp>
#include <fstream>
#include <nlohmann/json.hpp>
#include <set>
#include <sstream>

using namespace holdfast::kiosk::records;
using Catch::Matchers::WithinAbs;
namespace a = holdfast::analytics;

namespace {

std::string example() {
    std::ifstream file{HOLDFAST_SOURCE_DIR "/tests/data/records/shop.json"};
    std::stringstream text;
    text << file.rdbuf();
    return text.str();
}

nlohmann::json exampleJson() {
    return nlohmann::json::parse(example());
}

std::set<std::string> pathsOf(const nlohmann::json& json) {
    const auto read = readShopFile(json.dump());
    std::set<std::string> paths;
    if (!read) {
        for (const auto& fault : read.error()) {
            paths.insert(fault.path);
        }
    }
    return paths;
}

} // namespace

TEST_CASE("a shop file is read, written back and read the same", "[records][shop-file]") {
    const auto file = readShopFile(example());
    REQUIRE(file);
    CHECK(file->families.size() == 3);
    CHECK(file->instruments.size() == 2);
    const auto text = writeShopFile(*file);
    const auto again = readShopFile(text);
    REQUIRE(again);
    CHECK(writeShopFile(*again) == text);
    CHECK(text.back() == '\n');
}

TEST_CASE("the stock is in degrees of the analytics, and mixes are flattened", "[records][shop-file]") {
    const auto stock = stockOf(*readShopFile(example()));
    const auto ink = stock.inkNamed("low-cure");
    REQUIRE(ink);
    // (285 - 32) * 5 / 9, NIST SP 811 table B.9
    CHECK_THAT(ink->requirement.cure.celsius(), WithinAbs(140.556, 0.0005));
    const auto mix = stock.inkNamed("black of black");
    REQUIRE(mix);
    CHECK(mix->parts.size() == 2);
    // as low-cure only as its most demanding part: 320 °F (job.md, common practice)
    CHECK_THAT(mix->requirement.cure.fahrenheit(), WithinAbs(320.0, 1e-9));
    REQUIRE(stock.fabricNamed("red polyester") != nullptr);
    CHECK(stock.fabricNamed("red polyester")->coloursNotAtRisk == std::vector<std::string>{"navy"});
    REQUIRE(stock.instrumentNamed("P-3") != nullptr);
    CHECK(stock.instrumentNamed("P-3")->certificates.at(0).points.size() == 2);
    REQUIRE(stock.instrumentNamed("strips 280-330") != nullptr);
    CHECK(stock.instrumentNamed("strips 280-330")->strip->steps.size() == 3);
    CHECK_FALSE(stock.inkNamed("moon"));
}

TEST_CASE("the starters are there without a file", "[records][shop-file]") {
    const auto stock = starterStock();
    for (const auto* name : {"standard", "blend", "low-cure", "water-based", "discharge", "silicone"}) {
        CHECK(stock.inkNamed(name));
    }
    CHECK(stock.fabricNamed("100% polyester") != nullptr);
}

TEST_CASE("unknown keys of a shop file are refused by name", "[records][shop-file]") {
    auto json = exampleJson();
    json["moon"] = 1;
    json["families"][0]["tide"] = 2;
    json["instruments"][0]["certificates"][0]["points"][1]["u"] = 3;
    CHECK(pathsOf(json) ==
          std::set<std::string>{"moon", "families[0].tide", "instruments[0].certificates[0].points[1].u"});
}

TEST_CASE("every fault of a shop file is listed with its path", "[records][shop-file]") {
    auto json = exampleJson();
    json["families"][0]["cure"] = 285;
    json["families"][1].erase("chemistry");
    json["fabrics"][0]["bleed_ceiling"]["value"] = 400;
    json["instruments"][0]["certificates"][0]["k"] = 0;
    json["mixes"][0]["parts"][0]["mass"] = -1;
    const auto paths = pathsOf(json);
    CHECK(paths.count("families[0].cure") == 1);
    CHECK(paths.count("families[1].chemistry") == 1);
    CHECK(paths.count("fabrics[0].bleed_ceiling") == 1);
    CHECK(paths.count("instruments[0].certificates[0].k") == 1); // a zero k is refused (decisions 2)
    CHECK(paths.count("mixes[0].parts[0].mass") == 1);
}

TEST_CASE("families that cannot be are refused", "[records][shop-file]") {
    auto json = exampleJson();
    json["families"][0]["gel"] = {{{"value", 300}, {"unit", "F"}}, {{"value", 250}, {"unit", "F"}}};
    CHECK(pathsOf(json).count("families[0].gel") == 1);
    json = exampleJson();
    json["families"][0]["pairs"] = {{{"time_s", 30}, {"temperature", {{"value", 300}, {"unit", "F"}}}}};
    CHECK(pathsOf(json).count("families[0].pairs") == 1);
}

TEST_CASE("mixes of themselves, of strangers, of two chemistries and of nothing are refused", "[records][shop-file]") {
    const auto withMixes = [](nlohmann::json mixes) {
        auto json = exampleJson();
        json["mixes"] = std::move(mixes);
        return pathsOf(json);
    };
    const auto mix = [](const char* name, nlohmann::json parts) {
        return nlohmann::json{{"name", name}, {"parts", std::move(parts)}};
    };
    using J = nlohmann::json;
    const auto ofMix = [](const char* name) { return J{{"mix", name}, {"mass", 1}}; };
    const auto ofFamily = [](const char* name, double mass = 1) { return J{{"family", name}, {"mass", mass}}; };
    CHECK(withMixes(J::array({mix("a", J::array({ofMix("a")}))})) == std::set<std::string>{"mixes[0].parts"});
    CHECK(withMixes(J::array({mix("a", J::array({ofMix("b")})), mix("b", J::array({ofMix("c")})),
                              mix("c", J::array({ofMix("a"), ofFamily("standard")}))})) ==
          std::set<std::string>{"mixes[0].parts", "mixes[1].parts", "mixes[2].parts"});
    CHECK(withMixes(J::array({mix("a", J::array({ofFamily("moon")}))})) == std::set<std::string>{"mixes[0].parts[0]"});
    CHECK(withMixes(J::array({mix("a", J::array({ofFamily("standard"), ofFamily("water-based")}))})) ==
          std::set<std::string>{"mixes[0].parts"});
    CHECK(withMixes(J::array({mix("a", J::array({ofFamily("standard", 0)}))})) ==
          std::set<std::string>{"mixes[0].parts"});
    CHECK(withMixes(J::array({mix("standard", J::array({ofFamily("standard")}))})) ==
          std::set<std::string>{"mixes[0].name"});
    // the fault is told where it is, not at every mix above it
    CHECK(withMixes(J::array({mix("a", J::array({ofMix("b")})), mix("b", J::array({ofFamily("moon")}))})) ==
          std::set<std::string>{"mixes[1].parts[0]"});
}

TEST_CASE("names are used once", "[records][shop-file]") {
    auto json = exampleJson();
    json["families"].push_back(json["families"][0]);
    json["fabrics"].push_back(json["fabrics"][0]);
    const auto paths = pathsOf(json);
    CHECK(paths.count("families[3].name") == 1);
    CHECK(paths.count("fabrics[1].name") == 1);
}

TEST_CASE("other formats and newer versions are told apart", "[records][shop-file]") {
    const auto code = [](const char* text) {
        const auto read = readShopFile(text);
        REQUIRE_FALSE(read);
        return read.error().at(0).code;
    };
    CHECK(code("") == FaultCode::notJson);
    CHECK(code("[]") == FaultCode::wrongType);
    CHECK(code("{}") == FaultCode::missingKey);
    CHECK(code(R"({"format": "other", "version": 1})") == FaultCode::badValue);
    CHECK(code(R"({"format": "holdfast-shop", "version": 2})") == FaultCode::newerVersion);
    CHECK(code(R"({"format": "holdfast-shop", "version": 1, "version": 1})") == FaultCode::notJson);
    CHECK(readShopFile(R"({"format": "holdfast-shop", "version": 1})"));
}

TEST_CASE("the schema beside the reader knows every key that the writer writes, and no other", "[records][shop-file]") {
    std::ifstream file{HOLDFAST_SOURCE_DIR "/kiosk/records/shop_file.schema.json"};
    const auto schema = nlohmann::json::parse(file);
    const auto resolve = [&](const nlohmann::json& part) -> const nlohmann::json& {
        return part.contains("$ref")
                   ? schema.at(nlohmann::json::json_pointer{part["$ref"].get<std::string>().substr(1)})
                   : part;
    };
    const std::function<void(const nlohmann::json&, const nlohmann::json&, const std::string&)> hold =
        [&](const nlohmann::json& value, const nlohmann::json& part, const std::string& path) {
            const auto& rule = resolve(part);
            INFO(path);
            if (value.is_object()) {
                REQUIRE(rule.at("additionalProperties") == false);
                for (const auto& key : rule.value("required", std::vector<std::string>{})) {
                    CHECK(value.contains(key));
                }
                for (const auto& [key, inner] : value.items()) {
                    INFO(key);
                    REQUIRE(rule.at("properties").contains(key));
                    hold(inner, rule.at("properties").at(key), path + "." + key);
                }
            } else if (value.is_array()) {
                for (const auto& inner : value) {
                    hold(inner, rule.at("items"), path + "[]");
                }
            } else if (rule.contains("enum")) {
                CHECK(std::count(rule["enum"].begin(), rule["enum"].end(), value) == 1);
            } else if (rule.contains("type")) {
                CHECK(((rule["type"] == "string" && value.is_string()) ||
                       (rule["type"] == "boolean" && value.is_boolean()) ||
                       (rule["type"] == "integer" && value.is_number_integer()) ||
                       (rule["type"] == "number" && value.is_number())));
            }
        };
    hold(exampleJson(), schema, "");
    hold(nlohmann::json::parse(writeShopFile(*readShopFile(example()))), schema, "");
}
