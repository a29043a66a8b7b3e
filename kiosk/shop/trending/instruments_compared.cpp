#include "kiosk/shop/trending/instruments_compared.hpp"

#include "analytics/statistics/counts/false_discovery.hpp"
#include "analytics/statistics/models/paired_location.hpp"
#include "analytics/statistics/models/trend.hpp"
#include "kiosk/shop/trending/episodes.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;
using analytics::TemperatureDifference;

struct Sum final {
    double sum = 0.0;
    int count = 0;
};
/// Readings of one dryer and the same families in one episode or week, by instrument.
struct Cell final {
    std::int64_t at = 0;
    std::map<FactIndex, Sum> by{};
};
using Cells = std::map<std::tuple<FactIndex, std::int64_t, std::vector<std::string>>, Cell>;

struct Pairs final {
    std::vector<std::int64_t> times{};
    std::vector<double> differences{}; ///< kelvins, own mean less the fellows'
    int own = 0;
    int fellows = 0;
};

Cells cellsOf(const TrendFacts& facts, const TrendFilter& filter, bool byWeek) {
    const Filtered filtered{facts, filter};
    const auto starts = episodeStarts(facts);
    Cells cells;
    for (const auto& reading : facts.readings) {
        const bool counts = isDrawn(reading.reason) && !reading.isStrip && reading.margin.low &&
                            reading.margin.low->isFinite() && reading.lot != kNoFact && reading.dryer != kNoFact &&
                            reading.instrument != kNoFact;
        if (!counts || !filtered.holds(facts.lots[static_cast<std::size_t>(reading.lot)]) || !filtered.holds(reading)) {
            continue;
        }
        const auto& of = starts[static_cast<std::size_t>(reading.dryer)];
        const auto after = std::upper_bound(of.begin(), of.end(), reading.at);
        const auto period = byWeek                ? weekOf(reading.at, facts.utcOffsetMinutes)
                            : after == of.begin() ? std::int64_t{0}
                                                  : *std::prev(after);
        const auto families = reading.run == kNoFact ? std::vector<std::string>{}
                                                     : facts.runs[static_cast<std::size_t>(reading.run)].families;
        auto& cell = cells[{reading.dryer, period, families}];
        cell.at = cell.by.empty() ? reading.at : std::min(cell.at, reading.at);
        auto& sum = cell.by[reading.instrument];
        sum.sum += reading.margin.low->celsius();
        ++sum.count;
    }
    return cells;
}

std::map<FactIndex, Pairs> pairsOf(const Cells& cells) {
    std::vector<const Cell*> ordered;
    for (const auto& [key, cell] : cells) {
        if (cell.by.size() > 1) {
            ordered.push_back(&cell);
        }
    }
    std::stable_sort(ordered.begin(), ordered.end(), [](const auto* a, const auto* b) { return a->at < b->at; });
    std::map<FactIndex, Pairs> all;
    for (const auto* cell : ordered) {
        Sum whole;
        for (const auto& [instrument, sum] : cell->by) {
            whole.sum += sum.sum;
            whole.count += sum.count;
        }
        for (const auto& [instrument, sum] : cell->by) {
            auto& pairs = all[instrument];
            const int fellows = whole.count - sum.count;
            pairs.times.push_back(cell->at);
            pairs.differences.push_back(sum.sum / sum.count - (whole.sum - sum.sum) / fellows);
            pairs.own += sum.count;
            pairs.fellows += fellows;
        }
    }
    return all;
}

std::optional<TemperatureDifference> driftAWeek(const Pairs& pairs) {
    if (pairs.differences.size() < st::kDriftPoints) {
        return std::nullopt;
    }
    std::vector<double> weeks;
    for (const auto at : pairs.times) {
        weeks.push_back(static_cast<double>(at - pairs.times.front()) / static_cast<double>(kWeekMs));
    }
    const auto line = st::theilSen(weeks, pairs.differences);
    return line && line->isShown() ? std::optional{TemperatureDifference::fromCelsius(line->slope)} : std::nullopt;
}

std::optional<InstrumentOffset> offsetOf(const TrendFacts& facts, FactIndex instrument, const Pairs& pairs, bool byWeek,
                                         std::uint64_t seed) {
    const auto location = st::locatePairs(pairs.differences);
    if (!location) {
        return std::nullopt;
    }
    InstrumentOffset offset;
    offset.instrument = instrument;
    offset.hotter = TemperatureDifference::fromCelsius(location->estimate);
    offset.least = TemperatureDifference::fromCelsius(location->lower);
    offset.most = TemperatureDifference::fromCelsius(location->upper);
    offset.p = location->p;
    offset.pairs = static_cast<int>(pairs.differences.size());
    offset.byWeek = byWeek;
    offset.readings = pairs.own;
    offset.fellows = pairs.fellows;
    offset.aWeek = driftAWeek(pairs);
    TrendFilter about;
    about.instrument = facts.instruments[static_cast<std::size_t>(instrument)].id;
    offset.since = changeIn(facts, about, pairs.times, pairs.differences, seed);
    return offset;
}

/// Smaller than a usual guard tells nothing worth acting on (from memory).
constexpr auto kMatters = TemperatureDifference::fromCelsius(0.5);

void judge(std::vector<InstrumentOffset>& all) {
    std::vector<double> p;
    for (const auto& one : all) {
        p.push_back(one.p);
    }
    const auto q = st::benjaminiHochberg(p);
    for (std::size_t i = 0; q && i < all.size(); ++i) {
        all[i].q = (*q)[i];
        const bool matters = all[i].hotter.magnitude() >= kMatters;
        all[i].strength = matters && all[i].q <= kStrongQ ? Strength::strong
                          : matters && all[i].q <= kWeakQ ? Strength::weak
                                                          : Strength::byChance;
    }
    // A hotter one before a colder one: it is the one that tells of margin that is not there.
    std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) {
        return std::tuple{static_cast<int>(a.strength), -a.hotter.celsius()} <
               std::tuple{static_cast<int>(b.strength), -b.hotter.celsius()};
    });
}

} // namespace

Figure<std::vector<InstrumentOffset>> compareInstruments(const TrendFacts& facts, const TrendFilter& filter,
                                                         std::uint64_t seed) {
    auto whole = filter;
    whole.instrument.reset(); // an instrument is compared with its fellows, whichever was asked for
    const auto episodes = cellsOf(facts, whole, false);
    if (episodes.empty()) {
        return tl::unexpected(Refusal{NoFigure::noReadings, 0, 1});
    }
    const auto byEpisode = pairsOf(episodes);
    const auto byWeek = pairsOf(cellsOf(facts, whole, true));
    if (byWeek.empty()) {
        return tl::unexpected(Refusal{NoFigure::nothingToCompare, 1, 2});
    }
    std::vector<InstrumentOffset> all;
    std::int64_t most = 0;
    for (const auto& [instrument, weeks] : byWeek) {
        const auto own = byEpisode.find(instrument);
        const bool enough = own != byEpisode.end() && own->second.differences.size() >= kLeastPairs;
        const auto& pairs = enough ? own->second : weeks;
        most = std::max(most, static_cast<std::int64_t>(pairs.differences.size()));
        if (pairs.differences.size() < kLeastPairs) {
            continue;
        }
        if (auto offset = offsetOf(facts, instrument, pairs, !enough, seed)) {
            all.push_back(std::move(*offset));
        }
    }
    if (all.empty()) {
        return tl::unexpected(most < kLeastPairs ? Refusal{NoFigure::tooFewPairs, most, kLeastPairs}
                                                 : Refusal{NoFigure::allEqual, most, kLeastPairs});
    }
    judge(all);
    return all;
}

} // namespace holdfast::kiosk::shop::trending
