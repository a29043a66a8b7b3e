#include "kiosk/command/facts.hpp"

#include "analytics/cure/names.hpp"

#include "kiosk/command/greatest_rise.hpp"

#include <nlohmann/json.hpp>

#include <algorithm>
#include <array>

namespace holdfast::kiosk::command {

namespace {

using analytics::Duration;
using analytics::Join;
using analytics::Pass;
using analytics::RawTrace;

constexpr Duration kRiseSpan{5.0};
constexpr std::size_t kDropKinds = 7;
using DropCounts = std::array<int, kDropKinds>;

void count(DropCounts& counts, FactDrop why, int many = 1) {
    counts[static_cast<std::size_t>(why)] += many;
}

struct Joined final {
    Pass whole;
    DropCounts dropped{};
    std::optional<Duration> unitSwitchSeenAt;
};

Joined byRules(const RawTrace& trace, const analytics::TraceRules& rules) {
    analytics::UncutRecording clean = analytics::cleanWithoutCutting(trace, nullptr, rules);
    Joined joined{std::move(clean.whole), {}, clean.unitSwitchSeenAt};
    const auto dropped = [&clean](analytics::DropWhy why) { return clean.dropped[static_cast<std::size_t>(why)]; };
    count(joined.dropped, FactDrop::missing, dropped(analytics::DropWhy::notFinite));
    count(joined.dropped, FactDrop::flagged, dropped(analytics::DropWhy::flagged));
    count(joined.dropped, FactDrop::outOfRange, dropped(analytics::DropWhy::outOfRange));
    count(joined.dropped, FactDrop::duplicate, dropped(analytics::DropWhy::duplicate));
    count(joined.dropped, FactDrop::spike, dropped(analytics::DropWhy::spike));
    count(joined.dropped, FactDrop::shortRun, dropped(analytics::DropWhy::shortRun));
    count(joined.dropped, FactDrop::afterUnitSwitch, dropped(analytics::DropWhy::afterUnitSwitch));
    return joined;
}

std::optional<FactDrop> unusable(const analytics::TraceSample& sample, const RawTrace& trace) {
    if (sample.flagged) {
        return FactDrop::flagged;
    }
    if (!sample.indicated.isFinite()) {
        return FactDrop::missing;
    }
    if (trace.range && !(atLeast(sample.indicated, trace.range->low) && atMost(sample.indicated, trace.range->high))) {
        return FactDrop::outOfRange;
    }
    return std::nullopt;
}

/// Bridge and split ask no rule but what the options name.
Joined byOptions(const RawTrace& trace, bool split) {
    Joined joined;
    const Duration reach = 3.0 * analytics::medianInterval(trace) + Duration{analytics::kDecisionTolerance};
    bool neighbour = false;
    for (const analytics::TraceSample& sample : trace.samples) {
        if (const auto why = unusable(sample, trace)) {
            count(joined.dropped, *why);
            neighbour = false;
            continue;
        }
        const Duration at{sample.at - trace.samples.front().at};
        auto& samples = joined.whole.samples;
        if (!samples.empty()) {
            const Duration step = at - samples.back().at;
            const bool apart = split && (!neighbour || step > reach);
            joined.whole.joins.push_back(step < Duration{0} ? Join::clockFault : apart ? Join::gap : Join::line);
        }
        samples.push_back({at, sample.indicated, sample.indicated});
        neighbour = true;
    }
    return joined;
}

std::vector<FactBreak> breaksOf(const Joined& joined) {
    std::vector<FactBreak> breaks;
    const Pass& pass = joined.whole;
    for (std::size_t i = 0; i < pass.joins.size(); ++i) {
        if (pass.joins[i] != Join::line) {
            breaks.push_back({pass.joins[i], pass.samples[i].at, pass.samples[i + 1].at});
        }
    }
    if (pass.unitSwitchedAt) {
        breaks.push_back({Join::unitSwitch, *pass.unitSwitchedAt, joined.unitSwitchSeenAt.value_or(Duration{0})});
    }
    return breaks;
}

} // namespace

Facts factsOf(const TraceFile& file, const FactsOptions& options) {
    const RawTrace trace = rawTraceOf(file);
    const Joined joined = options.join == FactsJoin::rules ? byRules(trace, options.rules)
                                                           : byOptions(trace, options.join == FactsJoin::split);
    Facts facts;
    facts.samples = file.rows.size();
    facts.valid = joined.whole.samples.size();
    facts.peak = analytics::rawPeak(joined.whole);
    if (const auto sustained = analytics::sustainedPeak(joined.whole)) {
        facts.sustainedPeak = sustained->t;
    }
    for (const analytics::Temperature level : options.atLeast) {
        const auto above = analytics::timeAtOrAbove(joined.whole, level);
        facts.spells.push_back({level, above.total, above.longest});
    }
    facts.greatestRise = greatestRise(joined.whole, kRiseSpan);
    facts.breaks = breaksOf(joined);
    for (std::size_t i = 0; i < kDropKinds; ++i) {
        if (joined.dropped[i] > 0) {
            facts.dropped.push_back({static_cast<FactDrop>(i), joined.dropped[i]});
        }
    }
    return facts;
}

nlohmann::ordered_json toJson(const Facts& facts) {
    using nlohmann::ordered_json;
    ordered_json json;
    json["samples"] = facts.samples;
    json["valid"] = facts.valid;
    json["peak_c"] = facts.peak ? ordered_json(facts.peak->t.celsius()) : ordered_json();
    json["peak_at_s"] = facts.peak ? ordered_json(facts.peak->at.count()) : ordered_json();
    json["sustained_peak_c"] = facts.sustainedPeak ? ordered_json(facts.sustainedPeak->celsius()) : ordered_json();
    json["spells"] = ordered_json::array();
    for (const Spells& spells : facts.spells) {
        json["spells"].push_back({{"at_least_c", spells.atLeast.celsius()},
                                  {"total_s", spells.total.count()},
                                  {"longest_s", spells.longest.count()}});
    }
    json["greatest_rise_c_per_s"] =
        facts.greatestRise ? ordered_json(facts.greatestRise->celsiusPerSecond()) : ordered_json();
    json["breaks"] = ordered_json::array();
    for (const FactBreak& item : facts.breaks) {
        json["breaks"].push_back(
            {{"kind", analytics::nameOf(item.kind)}, {"from_s", item.from.count()}, {"to_s", item.to.count()}});
    }
    json["dropped"] = ordered_json::array();
    for (const DroppedRows& item : facts.dropped) {
        json["dropped"].push_back({{"why", nameOf(item.why)}, {"count", item.count}});
    }
    return json;
}

std::string_view nameOf(FactDrop why) noexcept {
    switch (why) {
    case FactDrop::missing:
        return "missing";
    case FactDrop::flagged:
        return "flagged";
    case FactDrop::outOfRange:
        return "out-of-range";
    case FactDrop::duplicate:
        return "duplicate";
    case FactDrop::spike:
        return "spike";
    case FactDrop::shortRun:
        return "short-run";
    case FactDrop::afterUnitSwitch:
        return "after-unit-switch";
    }
    return "";
}

} // namespace holdfast::kiosk::command
