#pragma once

#include "analytics/statistics/fault.hpp"
#include "kiosk/command/command_fault.hpp"
#include "kiosk/command/data_file.hpp"
#include "kiosk/ledger/failure.hpp"

#include <nlohmann/json.hpp>

#include <iosfwd>
#include <memory>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <vector>

/// What a command has to say, as JSON and as sentences.
namespace holdfast::kiosk::command {

using Json = nlohmann::ordered_json;

struct Answer final {
    Json json = Json::object();
    std::vector<std::string> lines{};

    /// Adds the sentence "commands." + key.
    void say(std::string_view key, const wording::Arguments& arguments = {});
};
using Answered = tl::expected<Answer, CommandFault>;

/// Makes ready to draw without a screen, for as long as what it gives back lives.
using DrawingReady = std::function<std::shared_ptr<void>()>;

/// Writes the answer, or the fault's sentence; gives the exit status: 0, or 2 for unusable input.
[[nodiscard]] int tell(const Answered& answer, bool json, std::ostream& out, std::ostream& err);
/// A book that cannot be read.
[[nodiscard]] int tell(const ledger::Failure& failure, std::ostream& err);

/// null for what is no number or has no limit.
[[nodiscard]] Json figure(double value);
[[nodiscard]] Json figure(const std::optional<double>& value);
/// Five significant digits, real minus.
[[nodiscard]] std::string shown(double value);
/// A chance: "0.013", "below 0.0001".
[[nodiscard]] std::string chanceShown(double p);
[[nodiscard]] std::string count(std::size_t number);
[[nodiscard]] std::string count(std::int64_t number);

/// "commands." + key.
[[nodiscard]] std::string said(std::string_view key, const wording::Arguments& arguments = {});

/// Why a figure is not given, as its name in JSON ("no-spread") and as a sentence.
[[nodiscard]] std::string_view nameOf(analytics::statistics::StatisticsFault fault) noexcept;
[[nodiscard]] CommandFault faultOf(analytics::statistics::StatisticsFault fault);
[[nodiscard]] CommandFault faultOf(analytics::statistics::StatisticsFault fault, const DataFile& file);

/// Rows that do not count: into the JSON, and as a sentence if there are any.
void addLeftOut(Answer& answer, const LeftOut& leftOut);

} // namespace holdfast::kiosk::command
