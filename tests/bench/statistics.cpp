#include "analytics/statistics/charts/individuals.hpp"
#include "analytics/statistics/counts/fisher.hpp"
#include "analytics/statistics/models/change_point.hpp"
#include "analytics/statistics/models/logistic.hpp"
#include "tests/bench/folder.hpp"
#include "tests/bench/rows.hpp"

#include <array>
#include <cmath>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <memory>
#include <random>
#include <sstream>

namespace holdfast::bench {
namespace {

namespace st = holdfast::analytics::statistics;

constexpr int kOthersRepeat = 3;
constexpr double kTenth = 0.1; ///< the aim: ten times as fast

struct Input final {
    std::vector<double> chart{};
    std::vector<st::FourfoldTable> tables{};
    st::LogisticData tests{};
    std::vector<double> change{};
};

/// As decimals, the same for everybody.
double written(double value) {
    constexpr double kPlaces = 1e4;
    return std::round(value * kPlaces) / kPlaces;
}

const Input& input() {
    static const Input made = [] {
        constexpr std::size_t kPoints = 1'000'000;
        constexpr std::size_t kFactors = 1'000;
        constexpr std::size_t kTests = 100'000;
        constexpr std::size_t kSeries = 10'000;
        std::mt19937_64 dice{1};
        std::normal_distribution<double> normal;
        std::uniform_real_distribution<double> even{0.0, 1.0};
        Input in;
        for (std::size_t i = 0; i < kPoints; ++i) {
            in.chart.push_back(written(normal(dice)));
        }
        for (std::size_t i = 0; i < kFactors; ++i) {
            const auto with = 20 + static_cast<std::int64_t>(dice() % 400U);
            const auto failed = static_cast<std::int64_t>(dice() % 20U);
            in.tables.push_back({failed, with - failed, 60, 4000 - with - 60});
        }
        in.tests.covariates.resize(1);
        for (std::size_t i = 0; i < kTests; ++i) {
            const double margin = written(3.0 * normal(dice));
            in.tests.covariates[0].push_back(margin);
            in.tests.events.push_back(even(dice) < 1.0 / (1.0 + std::exp(-2.0 - 0.5 * margin)) ? 1.0 : 0.0);
        }
        for (std::size_t i = 0; i < kSeries; ++i) {
            in.change.push_back(written(normal(dice) + (i < 6'000 ? 0.0 : 0.1)));
        }
        return in;
    }();
    return made;
}

/// The input of the others, written once.
std::string fileOf(const std::string& what) {
    static const Folder folder;
    const auto path = folder.path() / (what + ".csv");
    if (std::filesystem::exists(path)) {
        return path.string();
    }
    std::ofstream file{path};
    file.precision(12);
    const auto& in = input();
    const auto column = [&file](const std::vector<double>& values) {
        for (const double value : values) {
            file << value << '\n';
        }
    };
    if (what == "chart") {
        column(in.chart);
    } else if (what == "change") {
        column(in.change);
    } else if (what == "fisher") {
        for (const auto& table : in.tables) {
            file << table.failedWith << ',' << table.passedWith << ',' << table.failedWithout << ','
                 << table.passedWithout << '\n';
        }
    } else {
        for (std::size_t i = 0; i < in.tests.events.size(); ++i) {
            file << in.tests.covariates[0][i] << ',' << in.tests.events[i] << '\n';
        }
    }
    return path.string();
}

double beyondThreeSigma() {
    const auto chart = st::individualsChart(input().chart);
    double count = 0.0;
    for (const auto& signal : chart->findings.alarms) {
        count +=
            signal.rule == st::NelsonRule::BeyondThreeSigma ? static_cast<double>(signal.last - signal.first + 1) : 0.0;
    }
    return count;
}

double sumOfFisher() {
    double sum = 0.0;
    for (const auto& table : input().tables) {
        sum += st::fisherExact(table)->twoSided;
    }
    return sum;
}

double firthSlope() {
    st::LogisticOptions options;
    // The others give no profile limits either; they stop at a step below 1e-10, ours at a gain below 1e-13, and ours
    // also follows the penalised likelihood and gives standard errors.
    options.profile = false;
    return st::fitLogistic(input().tests, options)->coefficients[1].estimate;
}

/// 999 orders of all values, as the others.
double changePosition() {
    return static_cast<double>(st::changeInMean(input().change)->position);
}

/// What the command says, or nothing if it fails.
std::string heard(const std::string& command) {
    const auto close = [](std::FILE* pipe) { ::pclose(pipe); };
    const std::unique_ptr<std::FILE, decltype(close)> pipe{::popen((command + " 2>/dev/null").c_str(), "r"), close};
    std::string said;
    std::array<char, 256> text{};
    while (pipe && std::fgets(text.data(), static_cast<int>(text.size()), pipe.get()) != nullptr) {
        said += text.data();
    }
    return said;
}

/// How to run the other's script; empty: it is not here, or nobody wants it now.
std::string otherR() {
    static const std::string command =
        heard("Rscript -e 'cat(1)'") == "1" ? "Rscript " HOLDFAST_OTHERS "/others.R" : "";
    return command;
}

std::string otherPython() {
    static const std::string command = [] {
        for (const std::string python : {"python3", "/usr/bin/python3"}) {
            if (heard(python + " -c 'import numpy, scipy; print(1)'") == "1\n") {
                return python + " " HOLDFAST_OTHERS "/others.py";
            }
        }
        return std::string{};
    }();
    return command;
}

struct Work final {
    std::string name;
    std::string what; ///< as the scripts call it
    double (*ours)();
    double tolerance; ///< between our figure and theirs
};

void addOther(Rows& rows, const Work& work, const std::string& who, const std::string& command) {
    const auto baseline = who + ": " + work.name;
    if (!command.empty()) {
        rows.addBaseline(baseline,
                         [work, command](benchmark::State& state) {
                             for (auto _ : state) {
                                 std::istringstream said{heard(command + " " + work.what + " " + fileOf(work.what))};
                                 double seconds = 0.0;
                                 double figure = 0.0;
                                 said >> seconds >> figure;
                                 if (!said || !(std::fabs(figure - work.ours()) <= work.tolerance)) {
                                     state.SkipWithError("it gave another figure than ours");
                                     break;
                                 }
                                 state.SetIterationTime(std::max(seconds, 1e-9));
                             }
                         })
            ->UseManualTime()
            ->Iterations(1)
            ->Repetitions(kOthersRepeat);
    }
    rows.compare({work.name, baseline, kTenth});
}

} // namespace

void addStatistics(Rows& rows) {
    const std::array<Work, 4> works{{{"individuals chart with rules, 1 M points", "chart", beyondThreeSigma, 0.5},
                                     {"Fisher's test, 1,000 factors", "fisher", sumOfFisher, 1e-6},
                                     {"Firth's logistic, 100,000 tests", "firth", firthSlope, 1e-6},
                                     {"change point with p, 10,000 values", "change", changePosition, 0.5}}};
    const bool others = std::getenv("HOLDFAST_BENCH_ALONE") == nullptr;
    for (const auto& work : works) {
        rows.addBaseline(work.name, [work](benchmark::State& state) {
            (void)input();
            for (auto _ : state) {
                benchmark::DoNotOptimize(work.ours());
            }
        });
        addOther(rows, work, "R", others ? otherR() : std::string{});
        addOther(rows, work, "numpy", others ? otherPython() : std::string{});
    }
}

} // namespace holdfast::bench
