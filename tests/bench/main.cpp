#include "tests/bench/rows.hpp"

#include <QGuiApplication>

#include <algorithm>
#include <cstdio>
#include <map>

using namespace holdfast::bench;

namespace holdfast::bench {

benchmark::internal::Benchmark* Rows::addBaseline(const std::string& name, const Measure& measure) {
    return benchmark::RegisterBenchmark(name.c_str(), measure);
}

benchmark::internal::Benchmark* Rows::add(const Row& row, const Measure& measure) {
    m_rows.push_back(row);
    return addBaseline(row.name, measure);
}

} // namespace holdfast::bench

namespace {

/// Keeps the times of every repetition and prints the ratio of the medians.
class RatioReporter final : public benchmark::BenchmarkReporter {
public:
    explicit RatioReporter(const std::vector<Row>& rows) : m_rows{rows} {}

    bool ReportContext(const Context& context) override {
        PrintBasicContext(&GetErrorStream(), context);
        return true;
    }
    void ReportRuns(const std::vector<Run>& runs) override {
        for (const auto& run : runs) {
            if (run.error_occurred) {
                std::fprintf(stderr, "%s: %s\n", run.run_name.function_name.c_str(), run.error_message.c_str());
                m_failed = true;
            } else if (run.run_type == Run::RT_Iteration) {
                const double perUnit = benchmark::GetTimeUnitMultiplier(run.time_unit);
                const bool waits = !run.run_name.time_type.empty(); // for a disk or a process; else its own work counts
                const double time = waits ? run.GetAdjustedRealTime() : run.GetAdjustedCPUTime();
                m_microseconds[run.run_name.function_name].push_back(time / perUnit * 1e6);
            }
        }
    }
    void Finalize() override {
        std::printf("%-52s %12s %12s %8s %6s  %s\n", "", "median us", "baseline us", "ratio", "aim", "beside");
        for (const auto& row : m_rows) {
            const double time = median(row.name);
            const double least = median(row.baseline);
            if (time > 0.0 && least > 0.0) {
                std::printf("%-52s %12.1f %12.1f %8.3f %6.1f  %s%s\n", row.name.c_str(), time, least, time / least,
                            row.aim, row.baseline.c_str(), row.aim > 0.0 && time / least > row.aim ? "  missed" : "");
            } else if (time > 0.0) {
                std::printf("%-52s %12.1f %12s    %s\n", row.name.c_str(), time, "not here", row.baseline.c_str());
            }
        }
    }
    [[nodiscard]] bool failed() const noexcept { return m_failed; }

private:
    /// 0 for what did not run.
    [[nodiscard]] double median(const std::string& name) {
        auto& times = m_microseconds[name];
        if (times.empty()) {
            return 0.0;
        }
        const auto middle = times.begin() + static_cast<std::ptrdiff_t>(times.size() / 2);
        std::nth_element(times.begin(), middle, times.end());
        return *middle;
    }

    const std::vector<Row>& m_rows;
    std::map<std::string, std::vector<double>> m_microseconds;
    bool m_failed = false;
};

} // namespace

/// Takes Google Benchmark's options. A missed aim is printed; only what could not run fails.
int main(int argc, char* argv[]) {
    qputenv("QT_QPA_PLATFORM", "offscreen");
    qputenv("QT_QUICK_BACKEND", "software");
    std::vector<char*> options{argv, argv + argc};
    std::string interleaved = "--benchmark_enable_random_interleaving=true";
    std::string repetitions = "--benchmark_repetitions=21";
    std::string shortly = "--benchmark_min_time=0.05";
    options.insert(options.begin() + 1, {interleaved.data(), repetitions.data(), shortly.data()});
    int count = static_cast<int>(options.size());
    options.push_back(nullptr);
    benchmark::Initialize(&count, options.data());
    if (benchmark::ReportUnrecognizedArguments(count, options.data())) {
        return 2;
    }
    const QGuiApplication app{argc, argv};
    Rows rows;
    addJudging(rows);
    addStoring(rows);
    addStarting(rows);
    addDrawing(rows);
    addStatistics(rows);
    RatioReporter reporter{rows.all()};
    benchmark::RunSpecifiedBenchmarks(&reporter);
    return reporter.failed() ? 1 : 0;
}
