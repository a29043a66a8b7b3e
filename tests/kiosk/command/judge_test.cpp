#include "kiosk/command/judge.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <optional>
#include <sstream>

using namespace holdfast::kiosk::command;
using holdfast::analytics::Date;

namespace {

struct Answer final {
    int status = 0;
    std::string out;
    std::string err;
    nlohmann::json json;
};

Answer judge(JudgeOptions options, bool json = true) {
    options.json = json;
    options.today = options.today.value_or("2026-11-25");
    std::ostringstream out, err;
    Answer answer;
    answer.status = runJudge(options, out, err);
    answer.out = out.str();
    answer.err = err.str();
    answer.json = nlohmann::json::parse(answer.out, nullptr, false);
    return answer;
}

JudgeOptions run(std::vector<std::string> inks, std::string fabric) {
    JudgeOptions options;
    options.inks = std::move(inks);
    options.fabric = std::move(fabric);
    return options;
}

double celsius(double fahrenheit) {
    return (fahrenheit - 32.0) * 5.0 / 9.0;
}

/// A smooth ride from 25 °C to `peak` °F and back to 50 °C, five samples a second, as a logger would write it.
std::string rideFile(const std::string& name, double peakFahrenheit) {
    const std::string path = (std::filesystem::temp_directory_path() / (name + ".csv")).string();
    std::ofstream file{path};
    file << "Time (s),Temperature (C)\n";
    const double peak = celsius(peakFahrenheit);
    for (int i = 0; i <= 600; ++i) {
        const double t = i * 0.2;
        // A rounded top of four seconds, so that the sustained peak is the peak to within 0.05 °C.
        const double x = std::max(0.0, std::fabs(t - 50.0) - 2.0);
        file << t << ',' << std::round((25.0 + (peak - 25.0) * std::exp(-x * x / 450.0)) * 100.0) / 100.0 << '\n';
    }
    return path;
}

} // namespace

TEST_CASE("the classic trap is closed, names black and the cloth, and changes black alone", "[command][judge]") {
    // Common practice: low-cure white, standard black and low-cure yellow on red 100 % polyester.
    const auto answer = judge(run({"low-cure:white", "standard:black", "low-cure:yellow"}, "100% polyester"));
    CHECK(answer.status == 3);
    const auto& window = answer.json["window"];
    CHECK(window["state"] == "closed");
    CHECK(window["lower_c"].get<double>() == Approx(celsius(320)).margin(1e-9)); // contracts, Starters
    CHECK(window["upper_c"].get<double>() == Approx(celsius(300)).margin(1e-9));
    CHECK(window["aim_c"].is_null());
    REQUIRE(window["culprits"].size() == 2);
    CHECK(window["culprits"][0]["position"] == 2);
    CHECK(window["culprits"][1]["kind"] == "fabric");
    REQUIRE(window["ways_out"].size() == 2);
    CHECK(window["ways_out"][0]["changes"][0]["to"] == "blend");
    CHECK(window["ways_out"][1]["changes"][0]["to"] == "low-cure");
    CHECK(window["ways_out"][0]["changes"].size() == 1);
}

TEST_CASE("the trap reads as sentences", "[command][judge]") {
    const auto answer = judge(run({"low-cure:white", "standard:black", "low-cure:yellow"}, "100% polyester"), false);
    CHECK(answer.out.find("Black needs 320") != std::string::npos);
    CHECK(answer.out.find("100% polyester bears 300") != std::string::npos);
    CHECK(answer.out.find("Black in blend") != std::string::npos);
}

TEST_CASE("all low-cure is open between cure and the bleed ceiling, standard on cotton at 320 °F", "[command][judge]") {
    const auto low = judge(run({"low-cure:white", "low-cure:black"}, "100% polyester"));
    CHECK(low.status == 0);
    CHECK(low.json["window"]["state"] == "open");
    CHECK(low.json["window"]["lower_c"].get<double>() == Approx(celsius(285)).margin(1e-9));
    CHECK(low.json["window"]["upper_bleed_c"].get<double>() == Approx(celsius(300)).margin(1e-9));
    const auto cotton = judge(run({"standard"}, "100% cotton"));
    CHECK(cotton.status == 0);
    CHECK(cotton.json["window"]["lower_c"].get<double>() == Approx(celsius(320)).margin(1e-9));
}

TEST_CASE("a ride at the aim is cured, one far below is under-cured, one far above overheated", "[command][judge]") {
    auto options = run({"standard:black"}, "100% cotton");
    options.trace = rideFile("judge-cured", 335);
    const auto cured = judge(options);
    CHECK(cured.status == 0);
    CHECK(cured.json["verdict"] == "cured");
    CHECK(cured.json["margin_c"].get<double>() > 0.0);
    CHECK(cured.json["assumed"].is_string()); // contracts: each says so
    options.trace = rideFile("judge-under", 300);
    const auto under = judge(options);
    CHECK(under.status == 3);
    CHECK(under.json["verdict"] == "under-cured");
    options.trace = rideFile("judge-over", 365); // hard ceiling of cotton 350 °F (contracts, Starters)
    CHECK(judge(options).json["verdict"] == "overheated");
}

TEST_CASE("the strip of the design's picture is not proven", "[command][judge]") {
    // screens.md: 290/295 with 2 °F is 283.6–301.4 °F and not proven.
    auto options = run({"low-cure:white", "low-cure:black", "low-cure:yellow"}, "100% polyester");
    options.strip = "290F/295F";
    const auto answer = judge(options);
    CHECK(answer.status == 3);
    CHECK(answer.json["verdict"] == "not proven");
    CHECK(judge(options, false).out.find("283.6") == std::string::npos); // whole degrees on the screen
}

TEST_CASE("a strip that was not named is judged and drawn by the two steps that were typed", "[command][judge]") {
    // Decisions 4, Strip: 330 °F − 2 °F − 1.645 · 1.5 °C is 161.98 °C, and 335 °F + … 171.91 °C: within 320 to 350 °F.
    auto options = run({"standard:black"}, "100% cotton");
    options.strip = "330F/335F";
    const auto answer = judge(options);
    CHECK(answer.status == 0);
    CHECK(answer.json["verdict"] == "cured");
    CHECK(answer.json["margin_c"][0].get<double>() == Approx(1.98).margin(0.005));
    CHECK(answer.json["window"]["state"] == "open"); // cured and not provable exclude each other (decisions 1, State)
    CHECK(answer.json["reasons"][0]["guard_c"] == 0.0); // taken off the step already
    CHECK(judge(options, false).out.find("more than the 326") == std::string::npos);
}

TEST_CASE("a window alone has every key of a verdict, with null for what only a reading tells", "[command][judge]") {
    // Contracts, Command line, JSON.
    const auto answer = judge(run({"standard:black", "water-based:white"}, "100% cotton"));
    for (const char* key : {"verdict", "margin_c", "upper_margin_c"}) {
        REQUIRE(answer.json.contains(key));
        CHECK(answer.json[key].is_null());
    }
    CHECK(answer.json["bleed_not_ruled_out"] == false);
    CHECK(answer.json["guard_c"] == 0.0); // contracts: without an instrument g = 0
    CHECK(answer.json["reasons"].is_array());
    REQUIRE(answer.json["layers"].size() == 2);
    CHECK(answer.json["layers"][1]["family"] == "water-based");
    CHECK(answer.json["layers"][1]["verdict"].is_null());
    CHECK(answer.json["layers"][1]["limit_c"].get<double>() == Approx(celsius(320)).margin(1e-9));
}

namespace {

/// A probe whose ten rides were taken in wet ink.
std::string shopWithOwnPlacement() {
    const std::string path = (std::filesystem::temp_directory_path() / "judge-own-placement.json").string();
    std::ofstream{path} << R"({"format": "holdfast-shop", "version": 1,
      "families": [{"name": "ink", "chemistry": "plastisol", "cure": {"value": 160, "unit": "C"}}],
      "fabrics": [{"name": "cloth"}],
      "instruments": [{"name": "P", "kind": "probe", "type": "K", "class": "IEC 60584-1 class 1", "placement": "wet",
        "own_placement": {"value": 0.5, "unit": "C"},
        "checks": [{"kind": "ice", "passed": true, "date": "2026-11-25", "due": "2026-11-25"}]}]})";
    return path;
}

} // namespace

TEST_CASE("ten rides in wet ink say nothing of a probe put under the cloth", "[command][judge]") {
    // Decisions 2: u_p = 4 °C in or under cloth (MEM), the placement is chosen with the reading.
    auto options = run({"ink:black"}, "cloth");
    options.shopFile = shopWithOwnPlacement();
    options.instrument = "P";
    const auto guard = [&](std::optional<std::string> placement) {
        options.placement = std::move(placement);
        return judge(options).json["guard_c"].get<double>();
    };
    const double a = 1.5; // IEC 60584-1, class 1, up to 375 °C
    const auto expected = [&](double placed) { return 1.6448536 * std::sqrt(a * a / 3.0 + placed * placed); };
    CHECK(guard(std::nullopt) == Approx(expected(0.5)).margin(1e-4));
    CHECK(guard("wet") == Approx(expected(0.5)).margin(1e-4));
    CHECK(guard("cloth") == Approx(expected(4.0)).margin(1e-4));
}

TEST_CASE("what was typed empty, or is no placement, never asks for the window instead", "[command][judge]") {
    // Contracts: exit status 2 for unusable input; 0 for a window would pass for cured.
    for (auto field : {&JudgeOptions::trace, &JudgeOptions::strip, &JudgeOptions::spot, &JudgeOptions::surface,
                       &JudgeOptions::instrument, &JudgeOptions::placement, &JudgeOptions::today}) {
        auto options = run({"standard:black"}, "100% cotton");
        options.*field = "";
        const auto answer = judge(options);
        CHECK(answer.status == 2);
        CHECK(answer.err.size() > 20);
    }
    auto options = run({"standard:black"}, "100% cotton");
    options.placement = "somewhere";
    CHECK(judge(options).status == 2);
}

TEST_CASE("what cannot be used ends with 2 and a sentence", "[command][judge]") {
    const std::vector<JudgeOptions> unusable = [] {
        std::vector<JudgeOptions> list;
        list.push_back(run({"standard"}, "no such cloth"));
        list.push_back(run({"no such ink"}, "100% cotton"));
        list.push_back(run({}, "100% cotton"));
        auto both = run({"standard"}, "100% cotton");
        both.strip = "290F/295F";
        both.spot = "291F";
        list.push_back(both);
        auto strip = run({"standard"}, "100% cotton");
        strip.strip = "290/295";
        list.push_back(strip);
        auto missing = run({"standard"}, "100% cotton");
        missing.trace = "there-is-no-such-file.csv";
        list.push_back(missing);
        auto day = run({"standard"}, "100% cotton");
        day.today = "2026-02-30";
        list.push_back(day);
        auto shop = run({"standard"}, "100% cotton");
        shop.shopFile = "there-is-no-such-shop.json";
        list.push_back(shop);
        return list;
    }();
    for (const auto& options : unusable) {
        const auto answer = judge(options);
        INFO(answer.err);
        CHECK(answer.status == 2);
        CHECK(answer.out.empty());
        CHECK(answer.err.size() > 20);
        CHECK(answer.err.find('[') == std::string::npos);
    }
}

TEST_CASE("a surface gun never proves cured, and shows too hot", "[command][judge]") {
    auto options = run({"low-cure:black"}, "100% cotton");
    options.surface = "300F";
    CHECK(judge(options).json["verdict"] == "not proven");
    options.surface = "375F:tunnel"; // near scorch, job.md
    CHECK(judge(options).json["verdict"] == "overheated");
}

TEST_CASE("an instrument that is described wrongly is refused by name", "[command][judge]") {
    const auto path = (std::filesystem::temp_directory_path() / "judge-faulty-instrument.json").string();
    // decisions 2: a missing or zero k is refused
    std::ofstream{path} << R"({"format": "holdfast-shop", "version": 1,
      "families": [{"name": "ink", "chemistry": "plastisol", "cure": {"value": 160, "unit": "C"}}],
      "fabrics": [{"name": "cloth"}],
      "instruments": [{"name": "P-9", "kind": "probe", "type": "K", "class": "IEC 60584-1 class 1", "placement": "wet",
        "certificates": [{"date": "2026-01-01", "due": "2027-01-01", "k": 0,
          "points": [{"at": {"value": 160, "unit": "C"}, "correction": {"value": 0, "unit": "C"},
                      "U": {"value": 0.5, "unit": "C"}}]}]}]})";
    auto options = run({"ink"}, "cloth");
    options.shopFile = path;
    options.instrument = "P-9";
    const auto answer = judge(options);
    INFO(answer.err);
    CHECK(answer.status == 2);
    CHECK(answer.err.find("certificates[0].k") != std::string::npos);
    std::filesystem::remove(path);
}
