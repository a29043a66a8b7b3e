#include "tests/kiosk/command/asked.hpp"

#include <chrono>
#include <random>
#include <set>

using namespace holdfast::command_test;
using Json = nlohmann::json;

namespace {

/// What a script may rely on, whatever is read: either figures or a sentence on standard error; never both.
void checkAnswer(const Answer& answer) {
    INFO(answer.out << answer.err);
    CHECK((answer.status == 0 || answer.status == 2));
    CHECK(answer.out.find("nan") == std::string::npos);
    CHECK(answer.out.find("inf,") == std::string::npos);
    CHECK(answer.out.find("[commands.") == std::string::npos); // a sentence that is missing
    CHECK(answer.err.find("[command") == std::string::npos);
    if (answer.status == 0) {
        CHECK_FALSE(answer.json.is_discarded());
        CHECK(answer.err.empty());
        CHECK(answer.json.at("sentences").is_array());
    } else {
        CHECK(answer.out.empty());
        CHECK(answer.err.size() > 10);
    }
}

std::string numbered(const std::vector<std::string>& values) {
    std::string table = "t,x,n,failed,g\n";
    for (std::size_t i = 0; i < values.size(); ++i) {
        table += std::to_string(i) + "," + values[i] + ",10," + (i % 2 == 0 ? "1" : "0") + "," + std::to_string(i / 2) +
                 "\n";
    }
    return table;
}

std::vector<std::string> hostileTables() {
    return {
        "x\n",                                                        // a header alone
        numbered({"1"}),                                              // one point
        numbered({"1", "2"}),                                         // two
        numbered({"5", "5", "5", "5", "5", "5", "5", "5"}),           // equal ones
        numbered({"nan", "inf", "-inf", "", "n/a", "---"}),           // no number at all
        numbered({"1", "nan", "2", "inf", "x", "3", "1e999"}),        // some
        numbered({"1e308", "-1e308", "1e308", "-1e308"}),             // sums beyond a double
        numbered({"0", "0", "0", "0"}),                               // nothing failed
        numbered({"10", "10", "10", "10"}),                           // everything failed
        numbered({"11", "-1", "0.5", "3"}),                           // no counts
        "x;t;n;failed;g\n1,5;3;10;1;a\n2,5;2;10;0;a\n3,5;1;10;1;b\n", // decimal commas, a clock that ran backwards
        "t,x,n,failed,g\n2026-01-05,1,10,1,a\n2026-01-03,2,10,0,a\n2026-01-04,3,10,1,b\n",
        "t,x,n,failed,g\n2026-01-05,1,10,1,a\n7,2,10,0,a\n",                                  // days and numbers
        "\"t\",\"x\",\"n\",\"failed\",\"g\"\n\"1\",\"2\",\"10\",\"1\",\"a, \"\"b\"\"\nc\"\n", // RFC 4180
        "t,x,n,failed,g\n1,2\n,,,,\n3\n4,5,6,7,8,9,10,11\n", // short, empty and long rows
        std::string{"t,x,n,failed,g\n1,\0,3,1,a\n", 24},
        "\xff\xfe"
        "a\0b\0",
        "",
        "\n\n\n",
        "x,x,x\n1,2,3\n",
    };
}

} // namespace

TEST_CASE("no table makes a command crash or say nan", "[command][hostile]") {
    const std::vector<std::vector<std::string>> commands{
        {"chart", "--kind", "individuals", "--value", "x", "--rules", "all", "--points"},
        {"chart", "--kind", "individuals", "--value", "x", "--by", "g"},
        {"chart", "--kind", "mean-range", "--value", "x", "--by", "g"},
        {"chart", "--kind", "mean-s", "--value", "x", "--size", "2"},
        {"chart", "--kind", "ewma", "--value", "x"},
        {"chart", "--kind", "cusum", "--value", "x", "--points"},
        {"chart", "--kind", "p", "--value", "x", "--total", "n", "--points"},
        {"chart", "--kind", "np", "--value", "x", "--size", "10"},
        {"chart", "--kind", "c", "--value", "x", "--points"},
        {"chart", "--kind", "u", "--value", "x", "--total", "n"},
        {"chart", "--kind", "p-over", "--value", "x", "--total", "n", "--points"},
        {"chart", "--kind", "u-over", "--value", "x", "--total", "n", "--by", "g"},
        {"study", "drift", "--value", "x", "--time", "t", "--limit", "0"},
        {"study", "change", "--value", "x", "--time", "t"},
        {"study", "change", "--value", "x", "--counts"},
        {"study", "change", "--value", "x", "--total", "n"},
        {"study", "capability", "--value", "x", "--lower", "0"},
        {"study", "tolerance", "--value", "x"},
        {"study", "tolerance", "--value", "x", "--by", "g", "--side", "upper"},
        {"study", "normality", "--value", "x"},
        {"study", "survival", "--value", "x", "--failed", "failed", "--chance", "0.99"},
        {"study", "survival", "--value", "x", "--failed", "failed", "--penalty", "none"},
        {"study", "wash", "--value", "x", "--failed", "failed"},
        {"study", "rate", "--failed", "failed"},
        {"study", "rate", "--value", "x", "--total", "n"},
        {"suspects", "--failed", "failed", "--episode", "g"},
        {"suspects", "--failed", "failed", "--factor", "g"},
    };
    for (const auto& table : hostileTables()) {
        const Written file{table};
        for (auto words : commands) {
            std::string typed;
            for (const auto& word : words) {
                typed += word + " ";
            }
            INFO(typed << "\n" << table);
            words.insert(words.begin() + (words.front() == "study" ? 2 : 1), file.path());
            words.emplace_back("--json");
            checkAnswer(ask(words));
        }
    }
}

TEST_CASE("what cannot be used is said in a sentence, with exit status 2", "[command][hostile]") {
    const Written file{numbered({"1", "2", "3", "4", "5"})};
    const auto path = file.path();
    for (const auto& words : std::vector<std::vector<std::string>>{
             {"chart", "no such file", "--kind", "individuals"},
             {"chart", "/tmp", "--kind", "individuals"},
             {"chart", path, "--kind", "individuals", "--value", "nothing"},
             {"chart", path, "--kind", "individuals"}, // which column?
             {"chart", path, "--kind", "individuals", "--value", "x", "--rules", "9"},
             {"chart", path, "--kind", "individuals", "--value", "x", "--baseline", "3..99"},
             {"chart", path, "--kind", "individuals", "--value", "x", "--baseline", "x"},
             {"chart", path, "--kind", "individuals", "--value", "x", "--picture", "chart.gif"},
             {"chart", path, "--kind", "mean-range", "--value", "x"},
             {"chart", path, "--kind", "mean-range", "--value", "x", "--by", "g"}, // groups differ
             {"chart", path, "--kind", "p", "--value", "x"},
             {"chart", path, "--kind", "margin"},
             {"chart", "--kind", "individuals"},
             {"chart", path, "--kind", "pie"},
             {"study", "luck", path, "--value", "x"},
             {"study", "drift"},
             {"study", "capability", path, "--value", "x"},
             {"study", "rate", "--count", "5/3"},
             {"study", "rate", "--count", "many"},
             {"study", "rate", path, "--failed", "x"}, // neither yes nor no
             {"study", "normality", path, "--value", "x", "--confidence", "2"},
             {"suspects", path},
             {"suspects", path, "--failed", "failed", "--factor", "nothing"},
             {"suspects", "--data", "/no/such/folder"},
             {"report", "--data", "/no/such/folder"},
             {"chart", "--kind", "margin", "--data", "/no/such/folder"},
         }) {
        std::string typed;
        for (const auto& word : words) {
            typed += word + " ";
        }
        const auto answer = ask(words);
        INFO(typed << "\n" << answer.out << answer.err);
        CHECK(answer.status == 2);
        CHECK(answer.out.empty());
        CHECK(answer.err.size() > 20);
        CHECK(answer.err.find("[command") == std::string::npos);
    }
}

TEST_CASE("each command's help is written", "[command]") {
    for (const auto* command : {"chart", "study", "suspects", "report"}) {
        const auto answer = ask({command, "--help"});
        INFO(answer.out);
        CHECK(answer.status == 0);
        CHECK(answer.out.find("--json") != std::string::npos);
        CHECK(answer.out.find("[help.") == std::string::npos);
    }
}

TEST_CASE("rows that do not count are counted", "[command][hostile]") {
    const Written file{"day,x\n1,5\n2,\n3,n/a\n4,abc\n5,6\n6,4\n7,-999\n"};
    const auto json = asked({"chart", file.path(), "--kind", "individuals", "--value", "x", "--missing", "-999"});
    CHECK(json["points"] == 3);
    CHECK(json["rows_left_out"]["missing"] == 3);
    CHECK(json["rows_left_out"]["unreadable"] == 1);
}

TEST_CASE("a clock that ran backwards is put right and told", "[command][hostile]") {
    const Written file{"day,x\n2026-01-01,1\n2026-01-08,2\n2026-01-05,3\n2026-01-15,4\n2026-01-22,5\n2026-01-29,6\n"};
    const auto json = asked({"study", "drift", file.path(), "--value", "x", "--time", "day"});
    CHECK(json["rows_out_of_order"] == 1);
    CHECK(json["per"] == "week");
    CHECK(json["slope"].get<double>() > 0.0);
}

TEST_CASE("an episode of many readings is one point", "[command][chart]") {
    std::string table = "episode,x\n";
    for (int episode = 0; episode < 6; ++episode) {
        for (int i = 0; i <= episode; ++i) {
            table += std::to_string(episode) + "," + std::to_string(10 * episode + (i % 2 == 0 ? 1 : -1)) + "\n";
        }
    }
    const Written file{table};
    const auto json =
        asked({"chart", file.path(), "--kind", "individuals", "--value", "x", "--by", "episode", "--points"});
    REQUIRE(json["points"] == 6);
    CHECK(json["series"][3]["value"].get<double>() == Approx(30.0).margin(1e-9)); // +1 −1 +1 −1 about 30
}

TEST_CASE("complete separation has no slope without the penalty and a finite one with it", "[command][study]") {
    const Written file{"x,failed\n0,0\n0,0\n0,0\n0,0\n1,1\n1,1\n1,1\n1,1\n"};
    const std::vector<std::string> words{"study", "survival", file.path(), "--value", "x", "--failed", "failed"};
    const auto firth = asked(words);
    // Firth adds a half to each cell of a saturated table: ln(0.5/4.5) and twice its size (closed form)
    CHECK(firth["intercept"]["estimate"].get<double>() == Approx(-2.197224577).margin(1e-8));
    CHECK(firth["slope"]["estimate"].get<double>() == Approx(4.394449155).margin(1e-8));
    const auto likelihood = asked(with(words, {"--penalty", "none"}));
    CHECK(likelihood["separation"] == "complete");
    CHECK(likelihood["slope"]["estimate"].is_null());
    CHECK(likelihood["slope"]["upper"].is_null());
}

TEST_CASE("no value for a chance is given where the slope may be none", "[command][study]") {
    std::string table = "x,failed,lot\n";
    for (int i = 0; i < 200; ++i) { // failing has nothing to do with x: every x fails once in five
        table += std::to_string(i % 10) + "," + (i / 10 % 5 == 0 ? "1" : "0") + "," + std::to_string(i / 10) + "\n";
    }
    const Written file{table};
    const auto json = asked(
        {"study", "survival", file.path(), "--value", "x", "--failed", "failed", "--lot", "lot", "--chance", "0.99"});
    CHECK(json["failures"] == 40);
    CHECK(json["value_for"]["value"].is_null());
    CHECK(json["value_for"]["why_not"].is_string());
}

TEST_CASE("a column of measured figures is no factor", "[command][suspects]") {
    std::string table = "failed,x,bucket\n";
    for (int i = 0; i < 100; ++i) {
        table += std::string{i % 7 == 0 ? "yes" : "no"} + "," + std::to_string(i % 30) + ".5," + std::to_string(i % 4) +
                 "\n";
    }
    const Written file{table};
    const auto json = asked({"suspects", file.path(), "--failed", "failed"});
    CHECK(json["columns_left_out"] == Json::array({"x"}));
    CHECK(json["looked_at"] == 4);
    const auto named = asked({"suspects", file.path(), "--failed", "failed", "--factor", "x"}); // as it was asked for
    CHECK(named["looked_at"] == 30);
}

TEST_CASE("a million rows are read and charted in seconds", "[command][chart]") {
    std::mt19937_64 dice{1};
    std::normal_distribution<double> normal{0.0, 1.0};
    std::string table = "x\n";
    table.reserve(std::size_t{12} << 20U);
    char text[32];
    for (int i = 0; i < 1'000'000; ++i) {
        std::snprintf(text, sizeof text, "%.5f\n", normal(dice));
        table += text;
    }
    const Written file{table};
    const auto from = std::chrono::steady_clock::now();
    const auto json = asked({"chart", file.path(), "--kind", "individuals", "--value", "x"});
    const std::chrono::duration<double> took = std::chrono::steady_clock::now() - from;
    CHECK(json["points"] == 1'000'000);
    CHECK(json["baseline"]["sigma"].get<double>() == Approx(1.0).margin(0.005)); // made so
    CHECK(took.count() < 30.0); // far below a second of work: a machine with much else to do takes its time
    CHECK(json["signals"].size() > 1000);
}

TEST_CASE("the JSON of each command has the same keys, whatever it finds", "[command]") {
    const Written plain{numbered({"1", "2", "3", "2", "1", "3", "2", "5", "1", "2"})};
    const Written equal{numbered({"2", "2", "2", "2", "2", "2", "2", "2", "2", "2"})};
    const auto keys = [](const Json& json) {
        std::set<std::string> names;
        for (const auto& [key, value] : json.items()) {
            names.insert(key);
        }
        return names;
    };
    const auto chart = [](const std::string& path) {
        return asked({"chart", path, "--kind", "individuals", "--value", "x"});
    };
    const std::set<std::string> expected{"kind",     "points",  "limits",     "besides", "besides_outside",
                                         "baseline", "signals", "run_length", "caveats", "rows_left_out",
                                         "sentences"};
    CHECK(keys(chart(plain.path())) == expected);
    CHECK(keys(chart(equal.path())) == expected);
    const std::set<std::string> suspects{"lots",   "failed",           "episodes",      "looked_at", "caveat",
                                         "ranked", "columns_left_out", "rows_left_out", "sentences"};
    CHECK(keys(asked({"suspects", plain.path(), "--failed", "failed", "--episode", "g"})) == suspects);
}
