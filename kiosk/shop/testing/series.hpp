#pragma once

#include "kiosk/records/test_queries.hpp"

#include <optional>
#include <string>
#include <vector>

/// Washes by cycle and watches by hour: which of them count, and which comes next.
namespace holdfast::kiosk::shop {

/// Judged, and its witnesses did not bear it out: it holds nothing and clears nothing.
[[nodiscard]] bool isVoid(const records::LoadRow& load) noexcept;
/// False for a test in a load that was void then or was found void since.
[[nodiscard]] inline bool counts(const records::TestRow& test) noexcept {
    return test.counts != records::TestOutcome::inAVoidLoad;
}

/// Which cycle of the programme a load is for a print: its place among the print's loads (oldest first) of that
/// programme, void ones left out. A void load would have been the next. Nothing if the print was not in it.
[[nodiscard]] std::optional<int> cycleOf(const std::string& load, const std::string& programme,
                                         const std::vector<records::LoadRow>& loads);
/// Newest counting cycle or hour of that method; `but` is left out. Absent: none yet.
[[nodiscard]] std::optional<int> furthest(const std::string& method, const std::vector<records::TestRow>& tests,
                                          const std::string& but = {});
/// Its results of all cycles that count, oldest first; `but` is left out.
[[nodiscard]] std::vector<analytics::TestResult>
resultsSoFar(const std::string& method, const std::vector<records::TestRow>& tests, const std::string& but = {});

} // namespace holdfast::kiosk::shop
