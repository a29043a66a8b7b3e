#pragma once

#include "kiosk/command/answer.hpp"

#include <iosfwd>
#include <optional>
#include <string>
#include <vector>

namespace holdfast::kiosk::command {

/// `holdfast study WHAT`, as typed.
struct StudyTyped final {
    std::string what{}; ///< drift, change, capability, tolerance, normality, survival, wash, rate
    std::string input{};
    std::string value{};
    std::string time{};
    std::string total{};
    std::string by{};
    std::string failed{};
    std::string survived{};
    std::string lot{};
    std::string count{}; ///< "3/20", of rate
    std::optional<std::int64_t> missed{};
    bool counts = false; ///< of change: the values are counts of events
    std::optional<double> limit{};
    std::optional<double> lower{};
    std::optional<double> upper{};
    std::string side = "lower";
    double confidence = 0.95;
    double content = 0.95;
    std::optional<double> chance{};
    std::string penalty = "firth";
    DataFileOptions file{};
    bool json = false;
};

/// Each gives figures with their caveats, or the sentence why there is none.
[[nodiscard]] Answered studyDrift(const DataFile& file, const StudyTyped& typed);
[[nodiscard]] Answered studyChange(const DataFile& file, const StudyTyped& typed);
[[nodiscard]] Answered studyCapability(const DataFile& file, const StudyTyped& typed);
[[nodiscard]] Answered studyTolerance(const DataFile& file, const StudyTyped& typed);
[[nodiscard]] Answered studyNormality(const DataFile& file, const StudyTyped& typed);
[[nodiscard]] Answered studySurvival(const DataFile& file, const StudyTyped& typed);
/// Share that holds by number of washes.
[[nodiscard]] Answered studyWash(const DataFile& file, const StudyTyped& typed);
/// Of a file's column, or of a count as typed.
[[nodiscard]] Answered studyRate(const StudyTyped& typed);

/// Whether each row failed, from `failed` or the contrary of `survived`, with another column of numbers beside it.
struct Outcomes final {
    std::vector<char> failed{};
    std::vector<double> beside{};
    std::vector<std::int32_t> lots{}; ///< empty: no column was named
    std::size_t lotCount = 0;
    LeftOut leftOut{};
};
[[nodiscard]] tl::expected<Outcomes, CommandFault> outcomesOf(const DataFile& file, const StudyTyped& typed,
                                                              const std::string& beside);

[[nodiscard]] int runStudy(const StudyTyped& typed, std::ostream& out, std::ostream& err);

} // namespace holdfast::kiosk::command
