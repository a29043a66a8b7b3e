#pragma once

#include "analytics/cure/trace_facts.hpp"
#include "kiosk/command/trace_file.hpp"

#include <nlohmann/json_fwd.hpp>

#include <optional>
#include <string_view>
#include <vector>

/// `holdfast facts`: what a trace file holds, as a whole and before any verdict.
namespace holdfast::kiosk::command {

/// How two valid samples are joined.
enum class FactsJoin {
    rules,  ///< spikes, short runs, jumps, gaps and the unit as the verdict treats them
    bridge, ///< a straight line across everything missing
    split   ///< only between neighbouring rows at most three median steps apart
};

struct FactsOptions final {
    FactsJoin join = FactsJoin::rules;
    std::vector<analytics::Temperature> atLeast;
    analytics::TraceRules rules;
};

/// Time at or above a level along the joining lines; a touch has no length.
struct Spells final {
    analytics::Temperature atLeast = analytics::Temperature::fromCelsius(0);
    analytics::Duration total{0};
    analytics::Duration longest{0};
};

struct FactBreak final {
    analytics::Join kind = analytics::Join::gap; ///< never line
    analytics::Duration from{0};                 ///< last sample before
    analytics::Duration to{0};                   ///< first sample after
};

/// Why rows do not count, in the order they are told.
enum class FactDrop { missing, flagged, outOfRange, duplicate, spike, shortRun, afterUnitSwitch };

struct DroppedRows final {
    FactDrop why = FactDrop::missing;
    int count = 0;
};

/// Times count from the first row of the file.
struct Facts final {
    std::size_t samples = 0; ///< rows with a time
    std::size_t valid = 0;   ///< of them, those that count
    std::optional<analytics::PeakAt> peak;
    std::optional<analytics::Temperature> sustainedPeak;
    std::vector<Spells> spells; ///< as asked, in order
    /// Largest (T(t + 5 s) − T(t)) / 5 s over every t with both ends in one unbroken stretch, T along the lines and t
    /// anywhere; absent when no stretch is 5 s long.
    std::optional<analytics::HeatingRate> greatestRise;
    std::vector<FactBreak> breaks;
    std::vector<DroppedRows> dropped; ///< only those that happened
};

[[nodiscard]] Facts factsOf(const TraceFile& file, const FactsOptions& options = {});

[[nodiscard]] nlohmann::ordered_json toJson(const Facts& facts);

/// The word in the JSON; that of a break is analytics::nameOf(Join).
[[nodiscard]] std::string_view nameOf(FactDrop why) noexcept;

} // namespace holdfast::kiosk::command
