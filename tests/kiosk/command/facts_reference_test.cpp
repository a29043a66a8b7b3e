#include "kiosk/command/facts.hpp"
#include "kiosk/command/trace_text.hpp"

#include <catch2/catch.hpp>

#include <cmath>
#include <filesystem>
#include <fstream>
#include <iostream>
#include <map>
#include <sstream>

using namespace holdfast;
using namespace holdfast::kiosk::command;

namespace {

using Row = std::map<std::string, std::string>;

const std::filesystem::path kTraces = std::filesystem::path{HOLDFAST_SOURCE_DIR} / "../shared/data/traces";

std::vector<Row> referenceRows() {
    std::ifstream stream{kTraces / "reference.csv"};
    std::vector<Row> rows;
    std::vector<std::string> names;
    for (std::string line; std::getline(stream, line);) {
        const auto fields = tracefile::fieldsOf(line, ',');
        if (names.empty()) {
            names = fields;
            continue;
        }
        Row row;
        for (std::size_t i = 0; i < names.size() && i < fields.size(); ++i) {
            row[names[i]] = fields[i];
        }
        rows.push_back(row);
    }
    return rows;
}

/// The rule's name in the table, as options.
TraceFileOptions optionsFor(const std::string& rule) {
    TraceFileOptions options;
    if (rule != "raw") {
        options.flag = "Thermocouple open";
    }
    if (rule.find("gt400") != std::string::npos) {
        options.range = {-1e6, 400.0};
    }
    if (rule.find("zero") != std::string::npos) {
        options.missing = {"0"};
    }
    return options;
}

/// The table prints six decimals.
Approx printed(const std::string& text) {
    return Approx{std::stod(text)}.margin(0.51e-6).epsilon(0.0);
}

void compare(const Row& row, const std::string& how) {
    const auto file = readTraceFile(kTraces / row.at("file"), optionsFor(row.at("missing_rule")));
    REQUIRE(file);
    REQUIRE(file->columns.names[file->columns.temperature] == "Oven temperature (C)");
    REQUIRE(file->unitStated);
    FactsOptions options;
    options.join = how == "bridge" ? FactsJoin::bridge : FactsJoin::split;
    options.atLeast = {analytics::Temperature::fromCelsius(std::stod(row.at("threshold")))};
    const Facts facts = factsOf(*file, options);
    CHECK(facts.samples == std::stoul(row.at("rows")));
    CHECK(facts.valid == std::stoul(row.at("valid")));
    REQUIRE(facts.peak);
    CHECK(facts.peak->t.celsius() == std::stod(row.at("peak")));
    CHECK(facts.peak->at.count() == printed(row.at("time_of_peak_s")));
    REQUIRE(facts.spells.size() == 1);
    CHECK(facts.spells[0].total.count() == printed(row.at("above_" + how + "_s")));
    CHECK(facts.spells[0].longest.count() == printed(row.at("longest_" + how + "_s")));
    REQUIRE(facts.greatestRise);
    CHECK(facts.greatestRise->celsiusPerSecond() == printed(row.at("max_rise5_" + how + "_per_s")));
}

} // namespace

TEST_CASE("facts of real recordings agree with a second program", "[kiosk][command][facts]") {
    const auto rows = referenceRows();
    if (rows.empty()) {
        std::cout << "SKIPPED: no recordings beside the source tree\n";
        return;
    }
    REQUIRE(rows.size() == 18); // reference.csv, three recordings, three levels, their missing rules
    for (const Row& row : rows) {
        for (const char* how : {"bridge", "split"}) {
            CAPTURE(row.at("file"), row.at("missing_rule"), row.at("threshold"), how);
            compare(row, how);
        }
    }
}

TEST_CASE("the rules alone see through a recording's open circuit and bus errors", "[kiosk][command][facts]") {
    const auto clean = readTraceFile(kTraces / "o2_reflow_clean.log");
    const auto glitches = readTraceFile(kTraces / "o3_reflow_glitches.log");
    if (!clean || !glitches) {
        std::cout << "SKIPPED: no recordings beside the source tree\n";
        return;
    }
    FactsOptions options;
    options.atLeast = {analytics::Temperature::fromCelsius(217)};
    // reference.csv, o2, flag: nothing is wrong with it, so the rules change nothing.
    const Facts o2 = factsOf(*clean, options);
    CHECK(o2.valid == 1441);
    CHECK(o2.breaks.empty());
    CHECK(o2.spells[0].total.count() == Approx(63.916667).margin(0.51e-6).epsilon(0.0));
    // reference.csv, o3, flag+gt400+zero: 21 rows in bursts of one or two are what the spike rule is for.
    const Facts o3 = factsOf(*glitches, options);
    CHECK(o3.valid == 1420);
    CHECK(o3.peak->t.celsius() == 230.25);
    CHECK(o3.spells[0].total.count() == Approx(41.75).margin(0.51e-6).epsilon(0.0));
    REQUIRE(o3.dropped.size() == 1);
    CHECK(o3.dropped[0].why == FactDrop::spike);
    CHECK(o3.dropped[0].count == 21);
}
