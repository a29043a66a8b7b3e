#include "kiosk/command/facts.hpp"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

#include <cmath>
#include <sstream>

using namespace holdfast;
using namespace holdfast::kiosk::command;
using analytics::Temperature;

namespace {

Facts factsIn(const std::string& text, FactsJoin join = FactsJoin::rules, std::vector<Temperature> levels = {}) {
    const auto file = parseTraceFile(text);
    REQUIRE(file);
    FactsOptions options;
    options.join = join;
    options.atLeast = std::move(levels);
    return factsOf(*file, options);
}

/// 25 °C to 165 °C at 2 °C/s and back, one row in half a second; rows in (from, to) left out.
std::string tent(double from = 1e9, double to = 0.0) {
    std::ostringstream text;
    text << "time,temp\n";
    for (int i = 0; i <= 280; ++i) {
        const double at = 0.5 * i;
        if (!(at > from && at < to)) {
            text << at << ',' << 165.0 - 2.0 * std::abs(at - 70.0) << '\n';
        }
    }
    return text.str();
}

} // namespace

TEST_CASE("facts of straight lines are the geometry of them", "[kiosk][command][facts]") {
    for (const FactsJoin join : {FactsJoin::rules, FactsJoin::bridge, FactsJoin::split}) {
        const Facts facts = factsIn(tent(), join, {Temperature::fromCelsius(145)});
        CHECK(facts.samples == 281);
        CHECK(facts.valid == 281);
        CHECK(facts.peak->t.celsius() == 165.0);
        CHECK(facts.peak->at.count() == 70.0);
        CHECK(facts.sustainedPeak->celsius() == 163.0); // 1 s either side of the top
        CHECK(facts.spells[0].total.count() == Approx(20.0));
        CHECK(facts.greatestRise->celsiusPerSecond() == Approx(2.0));
        CHECK(facts.breaks.empty());
        CHECK(facts.dropped.empty());
    }
}

TEST_CASE("a gap is bridged, split or named as asked", "[kiosk][command][facts]") {
    const std::string text = tent(65.0, 75.0);
    const std::vector<Temperature> levels{Temperature::fromCelsius(145)};
    const Facts rules = factsIn(text, FactsJoin::rules, levels);
    CHECK(rules.spells[0].total.count() == Approx(10.0));
    CHECK(rules.spells[0].longest.count() == Approx(5.0));
    REQUIRE(rules.breaks.size() == 1);
    CHECK(rules.breaks[0].kind == analytics::Join::gap);
    CHECK(rules.breaks[0].from.count() == 65.0);
    CHECK(rules.breaks[0].to.count() == 75.0);
    CHECK(factsIn(text, FactsJoin::bridge, levels).spells[0].longest.count() == Approx(20.0));
    CHECK(factsIn(text, FactsJoin::split, levels).spells[0].total.count() == Approx(10.0));
}

TEST_CASE("split joins rows exactly three median steps apart and no further", "[kiosk][command][facts]") {
    const std::vector<Temperature> levels{Temperature::fromCelsius(145)};
    CHECK(factsIn(tent(65.0, 66.5), FactsJoin::split, levels).spells[0].longest.count() == Approx(20.0));
    CHECK(factsIn(tent(65.0, 67.0), FactsJoin::split, levels).spells[0].longest.count() == Approx(13.0));
}

TEST_CASE("the greatest rise may begin between two samples", "[kiosk][command][facts]") {
    // Rows every 3 s; a ramp of 6 °C/s for 6 s between flat parts. Any 5 s inside it: 6 °C/s.
    const Facts facts = factsIn("time,temp\n0,20\n3,20\n6,20\n9,38\n12,56\n15,56\n18,56\n21,56\n", FactsJoin::bridge);
    CHECK(facts.greatestRise->celsiusPerSecond() == Approx(6.0));
    CHECK_FALSE(factsIn("time,temp\n0,20\n1,20\n2,20\n4.9,38\n", FactsJoin::bridge).greatestRise);
    CHECK(factsIn("time,temp\n0,20\n1,20\n2,20\n5,38\n", FactsJoin::bridge).greatestRise->celsiusPerSecond() ==
          Approx(3.6));
}

TEST_CASE("facts become the promised JSON", "[kiosk][command][facts]") {
    const auto json = toJson(factsIn(tent(65.0, 75.0), FactsJoin::rules, {Temperature::fromCelsius(145)}));
    std::vector<std::string> keys;
    for (const auto& item : json.items()) {
        keys.push_back(item.key());
    }
    // contracts, Command line
    CHECK(keys == std::vector<std::string>{"samples", "valid", "peak_c", "peak_at_s", "sustained_peak_c", "spells",
                                           "greatest_rise_c_per_s", "breaks", "dropped"});
    CHECK(json["breaks"][0]["kind"] == "gap");
    CHECK(json["breaks"][0]["from_s"] == 65.0);
    CHECK(json["spells"][0]["at_least_c"] == 145.0);
    const auto none = toJson(factsIn("time,temp\n0,nan\n1,2019-01-01\n2,\n3,5\n4,\n5,\n", FactsJoin::rules));
    CHECK(none["peak_c"].is_null());
    CHECK(none["greatest_rise_c_per_s"].is_null());
    CHECK(none["dropped"].size() == 2); // missing, and a lone sample is a short run
}

TEST_CASE("a change of unit is told as a break", "[kiosk][command][facts]") {
    std::ostringstream text;
    text << "time,temp\n";
    for (int i = 0; i < 40; ++i) {
        text << i << ',' << (i < 20 ? 30.0 : 86.0) << '\n';
    }
    const Facts facts = factsIn(text.str());
    REQUIRE(facts.breaks.size() == 1);
    CHECK(facts.breaks[0].kind == analytics::Join::unitSwitch);
    CHECK(facts.breaks[0].from.count() == 19.0);
    CHECK(facts.breaks[0].to.count() == 20.0);
    CHECK(facts.valid == 20);
    CHECK(facts.dropped[0].why == FactDrop::afterUnitSwitch);
}
