#pragma once

#include <benchmark/benchmark.h>

#include <functional>
#include <string>
#include <vector>

/// What is measured, each beside the least that the same thing could cost.
namespace holdfast::bench {

struct Row final {
    std::string name;
    std::string baseline; ///< name of a benchmark of the same run
    double aim = 0.0;     ///< at most this many times the baseline; 0: only told
};

using Measure = std::function<void(benchmark::State&)>;

class Rows final {
public:
    benchmark::internal::Benchmark* addBaseline(const std::string& name, const Measure& measure);
    benchmark::internal::Benchmark* add(const Row& row, const Measure& measure);
    /// A row of two benchmarks added elsewhere; where the other one is not here the table says so.
    void compare(const Row& row) { m_rows.push_back(row); }
    [[nodiscard]] const std::vector<Row>& all() const noexcept { return m_rows; }

private:
    std::vector<Row> m_rows;
};

/// Judging a recording of 6,000 samples beside summing its temperatures.
void addJudging(Rows& rows);
/// Storing a reading durably beside 4 KiB appended and synced on the same disk.
void addStoring(Rows& rows);
/// The kiosk's first frame on an existing demo book beside that of an empty window, each from the start of its process.
void addStarting(Rows& rows);
/// A frame of the heat scale beside a frame of an empty painted item of the same size. Needs a QGuiApplication.
void addDrawing(Rows& rows);

/// The owner's figures beside the same work in R and in Python's numeric stack, each timed without its start; those
/// that are not here are told as such. HOLDFAST_BENCH_ALONE in the environment leaves them out.
void addStatistics(Rows& rows);

} // namespace holdfast::bench
