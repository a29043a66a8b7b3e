#include "tests/kiosk/command/asked.hpp"

#include <cmath>

using namespace holdfast::command_test;

namespace {

double number(const nlohmann::json& json) {
    INFO(json.dump());
    REQUIRE(json.is_number());
    return json.get<double>();
}

} // namespace

TEST_CASE("chart: ten flow rates have the handbook's limits and no signal", "[command][chart]") {
    const auto json = asked({"chart", published("handbook_flow_rate.csv"), "--kind", "individuals", "--value",
                             "flow_rate", "--rules", "1"});
    // NIST/SEMATECH e-Handbook 6.3.2.2: mean 50.81, limits 45.8159 and 55.8041, MR̄ 1.8778 (d2 printed as 1.128)
    CHECK(number(json["limits"]["center"]) == Approx(50.81).margin(5e-5));
    CHECK(number(json["limits"]["lower"]) == Approx(45.8159).margin(2e-3)); // d2 = 2/√π = 1.12838
    CHECK(number(json["limits"]["upper"]) == Approx(55.8041).margin(2e-3));
    CHECK(number(json["besides"]["center"]) == Approx(1.8778).margin(5e-5));
    CHECK(number(json["besides"]["upper"]) == Approx(6.1349).margin(2e-3)); // 3.267 · MR̄
    CHECK(json["signals"].empty());
    // Three sigma alone: 1/(2Φ(−3)) = 370.398, with a shift of one 43.895 (SciPy 1.10.1)
    CHECK(number(json["run_length"]["in_control"]) == Approx(370.398).margin(1e-3));
    CHECK(number(json["run_length"]["shifted"]) == Approx(43.895).margin(1e-3));
    CHECK(json["caveats"] == nlohmann::json::array({"few-points"}));
}

TEST_CASE("chart: run lengths of trends are drawn, and say within what they hold", "[command][chart]") {
    const auto json = asked({"chart", published("handbook_flow_rate.csv"), "--kind", "individuals", "--value",
                             "flow_rate", "--rules", "3"});
    // Six in a row up or down: 421.598 points by the numbers of ordered runs (David and Barton, Combinatorial Chance,
    // 1962, ch. 10), whatever the shift.
    const auto within = number(json["run_length"]["drawn_within"]);
    CHECK(within > 0.0);
    CHECK(within < 0.02);
    CHECK(number(json["run_length"]["in_control"]) == Approx(421.598).epsilon(4.0 * within));
    CHECK(number(json["run_length"]["shifted"]) == Approx(421.598).epsilon(4.0 * within));
    const auto zones = asked({"chart", published("handbook_flow_rate.csv"), "--kind", "individuals", "--value",
                              "flow_rate", "--rules", "1"});
    CHECK(zones["run_length"]["drawn_within"].is_null());
}

TEST_CASE("chart: the handbook's EWMA stays inside its limits", "[command][chart]") {
    const auto json = asked({"chart", published("handbook_ewma.csv"), "--kind", "ewma", "--target", "50", "--sigma",
                             "2.0539", "--lambda", "0.3", "--width", "3", "--points"});
    // NIST/SEMATECH e-Handbook 6.3.2.4, printed to two places
    const std::vector<double> averages{50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85,
                                       50.26, 50.33, 50.11, 49.36, 49.52, 50.05, 49.38};
    const auto& series = json["series"];
    REQUIRE(series.size() == 20);
    for (std::size_t i = 0; i < averages.size(); ++i) {
        INFO(i);
        CHECK(number(series[i]["value"]) == Approx(averages[i]).margin(0.0051));
    }
    CHECK(number(series[19]["upper"]) == Approx(52.5884).margin(5e-3)); // settled; the exact one nears it
    CHECK(json["signals"].empty());
}

TEST_CASE("chart: the handbook's cumulative sum signals at group 14", "[command][chart]") {
    // NIST/SEMATECH e-Handbook 6.3.2.3: target 325, k = 0.3175, h = 4.1959, both for σ = 1.27
    const auto json = asked({"chart", published("handbook_cusum.csv"), "--kind", "cusum", "--target", "325", "--sigma",
                             "1.27", "--k", "0.25", "--h", "3.3038582677165", "--points"});
    REQUIRE(json["signals"].size() == 1);
    CHECK(json["signals"][0]["met_at"] == 14);
    CHECK(json["signals"][0]["to"] == 20);
    CHECK(json["signals"][0]["side"] == "above");
    CHECK(number(json["series"][13]["value"]) == Approx(4.94).margin(0.0051));
    CHECK(number(json["series"][19]["value"]) == Approx(19.04).margin(0.0051));
    CHECK(number(json["limits"]["upper"]) == Approx(4.1959).margin(1e-4));
}

TEST_CASE("chart: of 25 wafers one is out, and one on the limit is not", "[command][chart]") {
    const auto json =
        asked({"chart", published("handbook_wafers.csv"), "--kind", "c", "--value", "defects", "--rules", "1"});
    // NIST/SEMATECH e-Handbook 6.3.3.1: c̄ = 16, limits 4 and 28; wafer 24 (31 faults) out
    CHECK(number(json["limits"]["center"]) == Approx(16.0).margin(1e-12));
    CHECK(number(json["limits"]["lower"]) == Approx(4.0).margin(1e-12));
    CHECK(number(json["limits"]["upper"]) == Approx(28.0).margin(1e-12));
    REQUIRE(json["signals"].size() == 1);
    CHECK(json["signals"][0]["points"] == nlohmann::json::array({24}));
}

TEST_CASE("study survival: the O-rings by maximum likelihood and with Firth's penalty", "[command][study]") {
    const std::vector<std::string> words{"study",    "survival", published("o_rings.csv"), "--value", "temperature_f",
                                         "--failed", "distress"};
    const auto plain = asked(with(words, {"--penalty", "none"}));
    // R 4.2.2 glm(y ~ T, family = binomial); Dalal, Fowlkes and Hoadley, JASA 84:945, 1989, print 15.043 and −0.2322
    CHECK(number(plain["intercept"]["estimate"]) == Approx(15.0429016).margin(1e-6));
    CHECK(number(plain["slope"]["estimate"]) == Approx(-0.2321627).margin(1e-6));
    CHECK(number(plain["slope"]["standard_error"]) == Approx(0.1082364).margin(1e-6));
    CHECK(number(plain["null_deviance"]) == Approx(28.267153).margin(1e-6));
    CHECK(number(plain["deviance"]) == Approx(20.315193).margin(1e-6));
    CHECK(plain["separation"] == "none");
    const auto firth = asked(words);
    // R 4.2.2, brglm2 0.9, type AS_mean; limits by uniroot on the penalised likelihood
    CHECK(number(firth["slope"]["estimate"]) == Approx(-0.186041915524).margin(1e-6));
    CHECK(number(firth["slope"]["lower"]) == Approx(-0.419532812339).margin(1e-5));
    CHECK(number(firth["slope"]["upper"]) == Approx(-0.0405285267268).margin(1e-5));
    CHECK(firth["failures"] == 7);
    CHECK(firth["survivals"] == 16);
    // Decisions 6: no value for 99 % under ten failures.
    const auto refused = asked(with(words, {"--chance", "0.99"}));
    CHECK(refused["value_for"]["value"].is_null());
    CHECK(refused["value_for"]["why_not"] == "too-few-events");
}

TEST_CASE("study change: the Nile changed after 1898", "[command][study]") {
    const auto json = asked({"study", "change", published("nile_flow.csv"), "--value", "flow", "--time", "year"});
    // Cobb, Biometrika 65:243, 1978; R 4.2.2, strucchange 1.5-3 breakpoints(Nile ~ 1)
    CHECK(json["position"] == 28);
    CHECK(json["last_before"] == 1898);
    CHECK(json["first_after"] == 1899);
    CHECK(number(json["before"]) == Approx(1097.75).margin(1e-9));
    CHECK(number(json["after"]) == Approx(849.972222).margin(5e-7));
    // confint(breakpoints(…)), another method: observations 25 to 32
    CHECK(number(json["earliest"]) >= 1895);
    CHECK(number(json["latest"]) <= 1903);
    CHECK(number(json["p"]) == Approx(0.001));
}

TEST_CASE("study drift: the Nile fell, with Kendall's limits", "[command][study]") {
    const auto json =
        asked({"study", "drift", published("nile_flow.csv"), "--value", "flow", "--time", "year", "--limit", "500"});
    // scipy 1.10.1 theilslopes(Nile, range(1871, 1971), 0.95, method = "joint")
    CHECK(number(json["slope"]) == Approx(-2.6).margin(1e-12));
    CHECK(number(json["slope_lower"]) == Approx(-3.627906976744186).margin(1e-9));
    CHECK(number(json["slope_upper"]) == Approx(-1.4285714285714286).margin(1e-9));
    CHECK(number(json["kendall"]["tau_b"]) == Approx(-0.2807413).margin(1e-6)); // R 4.2.2 cor.test
    CHECK(json["shown"] == true);
    CHECK(json["limit"]["standing"] == "crosses");
    CHECK(number(json["limit"]["earliest"]) > 1970);
    CHECK(number(json["limit"]["latest"]) > number(json["limit"]["earliest"]));
}

TEST_CASE("study normality: Michelson, Lew and the Nile", "[command][study]") {
    // scipy.stats.anderson 1.10.1; nortest::ad.test 1.0-4 for the Nile's p
    const auto statistic = [](const std::string& file, const std::string& column) {
        return asked({"study", "normality", published(file), "--value", column})["anderson_darling"];
    };
    CHECK(number(statistic("strd_michelso.csv", "1")["statistic"]) == Approx(0.460764).margin(1e-5));
    CHECK(number(statistic("strd_lew.csv", "1")["statistic"]) == Approx(6.000647).margin(1e-5));
    const auto nile = statistic("nile_flow.csv", "flow");
    CHECK(number(nile["statistic"]) == Approx(1.031974).margin(1e-5));
    CHECK(number(nile["p"]) == Approx(0.009821).margin(1e-6));
}

TEST_CASE("study capability and tolerance: values made to the handbook's mean and spread", "[command][study]") {
    // Three values with mean 16 and standard deviation 2: NIST/SEMATECH e-Handbook 6.1.6 prints Cp 1.0, Cpu 0.6667,
    // Cpl 1.3333, Cpk 0.6667, k 0.3333 for limits 8 and 20.
    const Written file{"x\n14\n16\n18\n"};
    const auto json = asked({"study", "capability", file.path(), "--value", "x", "--lower", "8", "--upper", "20"});
    CHECK(number(json["cp"]["value"]) == Approx(1.0).margin(5e-5));
    CHECK(number(json["cpu"]["value"]) == Approx(0.6667).margin(5e-5));
    CHECK(number(json["cpl"]["value"]) == Approx(1.3333).margin(5e-5));
    CHECK(number(json["cpk"]["value"]) == Approx(0.6667).margin(5e-5));
    CHECK(number(json["k"]) == Approx(0.3333).margin(5e-5));
    CHECK(json["few_values"] == true);
    CHECK(json["anderson_darling"]["why_not"] == "too-few-values");
    // 43 values, content 90 %, confidence 99 %: NIST/SEMATECH e-Handbook 7.2.6.3, k = 1.8740
    std::string values = "x\n";
    for (int i = 0; i < 43; ++i) {
        values += std::to_string(i) + "\n";
    }
    const Written many{values};
    const auto bound =
        asked({"study", "tolerance", many.path(), "--value", "x", "--content", "0.9", "--confidence", "0.99"});
    CHECK(number(bound["factor"]) == Approx(1.8740).margin(5e-4));
    CHECK(number(bound["bound"]) ==
          Approx(number(bound["mean"]) - number(bound["factor"]) * number(bound["sd"])).margin(1e-9));
}

TEST_CASE("study rate: four of twenty, exact", "[command][study]") {
    const auto json = asked({"study", "rate", "--count", "4/20", "--confidence", "0.9"});
    // NIST/SEMATECH e-Handbook 7.2.4.1; beta quantiles, SciPy 1.10.1
    CHECK(number(json["clopper_pearson"]["lower"]) == Approx(0.071354).margin(1e-6));
    CHECK(number(json["clopper_pearson"]["upper"]) == Approx(0.401028).margin(1e-6));
    // "Rule of three": none of n failed, 95 % upper limit 1 − 0.05^(1/n) (closed form)
    const auto none = asked({"study", "rate", "--count", "0/30"});
    CHECK(number(none["at_most"]) == Approx(1.0 - std::pow(0.05, 1.0 / 30.0)).margin(1e-12));
}

TEST_CASE("suspects: a planted bucket comes first and its twin is named", "[command][suspects]") {
    // Constructed: bucket K7 is in eight lots of eight episodes, all failed; roll R3 always went with it; of the 72
    // others two failed.
    std::string table = "lot,episode,failed,bucket,roll,dryer\n";
    for (int i = 0; i < 80; ++i) {
        const bool bad = i % 10 == 3;
        const bool failed = bad || i == 20 || i == 51;
        table += std::to_string(i) + "," + std::to_string(i) + "," + (failed ? "yes" : "no") + "," +
                 (bad ? "K7" : "K" + std::to_string(i % 3)) + "," + (bad ? "R3" : "R" + std::to_string(i % 2)) + "," +
                 (i % 2 == 0 ? "North" : "South") + "\n";
    }
    const Written file{table};
    const auto json = asked({"suspects", file.path(), "--failed", "failed", "--episode", "episode"});
    CHECK(json["lots"] == 80);
    CHECK(json["failed"] == 10);
    CHECK(json["columns_left_out"] == nlohmann::json::array({"lot"}));
    const auto& first = json["ranked"][0];
    CHECK((first["level"] == "K7" || first["level"] == "R3"));
    CHECK(first["strength"] == "strong");
    CHECK(first["failed_with"] == 8);
    CHECK(first["with"] == 8);
    CHECK(first["failed_without"] == 2);
    CHECK(first["without"] == 72);
    REQUIRE(first["cannot_be_told_apart_from"].size() == 1);
    CHECK(first["odds_upper"].is_null()); // none of the lots with it passed: no upper limit
    // Fisher's exact test, one-sided: hypergeometric chance of 8 of 8 among 10 of 80, C(72,2)/C(80,10) (closed form)
    CHECK(number(first["fisher_p"]) == Approx(2556.0 / 1646492110120.0).epsilon(1e-6));
}
