#include "kiosk/shop/trending/episodes.hpp"

#include "analytics/statistics/models/interval_mean.hpp"

#include <algorithm>
#include <cmath>
#include <map>
#include <tuple>

namespace holdfast::kiosk::shop::trending {
namespace {

namespace st = analytics::statistics;
using analytics::TemperatureDifference;
using analytics::Word;
using records::FloorAction;
using records::TrendReading;

/// A dryer that shows nothing for so long has stood, whether or not somebody wrote it down (from memory).
constexpr std::int64_t kStoodMs = 4 * 3'600'000;

struct Starts final {
    std::vector<std::int64_t> at{};
    std::optional<std::int64_t> stopped{};
    std::int64_t dwell = 0;

    void take(const records::TrendTurn& turn) {
        if (turn.action == FloorAction::feedStopped) {
            stopped = stopped.value_or(turn.at);
            return;
        }
        const bool isStart = turn.action == FloorAction::started;
        if (!isStart || !stopped || turn.at - *stopped > dwell) {
            at.push_back(turn.at);
        }
        if (isStart) {
            stopped.reset();
        }
    }
    /// A stop nobody ended: what comes after it is another episode.
    void finish() {
        if (stopped) {
            at.push_back(*stopped + dwell + 1);
        }
        std::sort(at.begin(), at.end());
        at.erase(std::unique(at.begin(), at.end()), at.end());
    }
};

/// Where nothing was seen of a dryer for hours, and no start stands in between.
void addUnwritten(std::vector<std::int64_t>& starts, std::vector<std::int64_t>& seen) {
    std::sort(seen.begin(), seen.end());
    std::vector<std::int64_t> more;
    for (std::size_t i = 0; i < seen.size(); ++i) {
        const auto after = std::upper_bound(starts.begin(), starts.end(), seen[i]);
        const bool known = after != starts.begin() && (i == 0 || *std::prev(after) > seen[i - 1]);
        if (!known && (i == 0 || seen[i] - seen[i - 1] > kStoodMs)) {
            more.push_back(seen[i]);
        }
    }
    starts.insert(starts.end(), more.begin(), more.end());
    std::sort(starts.begin(), starts.end());
}

std::size_t numberOf(const std::vector<std::int64_t>& starts, std::int64_t at) {
    const auto after = std::upper_bound(starts.begin(), starts.end(), at);
    return static_cast<std::size_t>(after - starts.begin());
}

bool isExact(const TrendReading& reading) {
    return !reading.isStrip && reading.margin.low && reading.margin.high && reading.margin.low->isFinite();
}

bool hasMargin(const TrendReading& reading) {
    const auto finite = [](const auto& end) { return !end || end->isFinite(); };
    return (reading.margin.low || reading.margin.high) && finite(reading.margin.low) && finite(reading.margin.high);
}

st::CensoredValue censored(const TrendReading& reading) {
    const auto& margin = reading.margin;
    return !margin.low    ? st::CensoredValue::below(margin.high->celsius())
           : !margin.high ? st::CensoredValue::above(margin.low->celsius())
                          : st::CensoredValue::between(margin.low->celsius(), margin.high->celsius());
}

analytics::MarginRange rangeOf(const st::CommonRange& common) {
    analytics::MarginRange range;
    if (std::isfinite(common.lower)) {
        range.low = TemperatureDifference::fromCelsius(common.lower);
    }
    if (std::isfinite(common.upper)) {
        range.high = TemperatureDifference::fromCelsius(common.upper);
    }
    return range;
}

void takeIntervalMean(const std::vector<st::CensoredValue>& values, std::size_t strips, Episode& episode) {
    if (const auto common = st::commonRange(values)) {
        episode.between = rangeOf(*common);
    }
    if (const auto mean = st::intervalMean(values)) {
        episode.mean = TemperatureDifference::fromCelsius(mean->mean);
    } else if (strips == values.size() && values.size() < 2) {
        episode.whyNoMean = {NoFigure::onlyStrips, static_cast<std::int64_t>(values.size()), 2};
    } else {
        episode.whyNoMean = refusalOf(mean.error(), static_cast<std::int64_t>(values.size()));
    }
}

void takeMean(const TrendFacts& facts, Episode& episode) {
    double sum = 0.0;
    std::size_t exact = 0;
    std::vector<st::CensoredValue> values;
    for (const auto index : episode.readings) {
        const auto& reading = facts.readings[static_cast<std::size_t>(index)];
        values.push_back(censored(reading));
        if (isExact(reading)) {
            sum += reading.margin.low->celsius();
            ++exact;
        }
    }
    const auto strips = values.size() - exact;
    episode.strips = static_cast<int>(strips);
    if (values.empty()) {
        episode.whyNoMean = {NoFigure::noReadings, 0, 1};
    } else if (strips == 0) {
        episode.mean = TemperatureDifference::fromCelsius(sum / static_cast<double>(exact));
    } else {
        takeIntervalMean(values, strips, episode);
        const bool oneValue = !episode.mean && exact > 0 && st::commonRange(values).has_value();
        if (oneValue) { // the strips allow what the exact ones say
            episode.mean = TemperatureDifference::fromCelsius(sum / static_cast<double>(exact));
        }
    }
}

int badnessOf(Word word) {
    switch (word) {
    case Word::underCured:
        return 4;
    case Word::overheated:
        return 3;
    case Word::notProven:
        return 2;
    case Word::cured:
        return 1;
    case Word::refused:
        break;
    }
    return 0;
}

double lowestOf(const TrendReading& reading) {
    const auto& end = reading.margin.low ? reading.margin.low : reading.margin.high;
    return end ? end->celsius() : 0.0;
}

using Key = std::tuple<FactIndex, std::size_t, std::vector<std::string>, int>;

class Collecting final {
public:
    Collecting(const TrendFacts& facts, const TrendFilter& filter, const EpisodeSplit& split)
        : m_facts{facts}, m_filtered{facts, filter}, m_split{split}, m_starts{episodeStarts(facts)} {
        m_holds.reserve(facts.lots.size());
        for (const auto& lot : facts.lots) {
            m_holds.push_back(m_filtered.holds(lot) ? 1 : 0);
        }
    }

    std::vector<Episode> make() {
        for (std::size_t i = 0; i < m_facts.readings.size(); ++i) {
            take(static_cast<FactIndex>(i));
        }
        if (!m_split.byPosition) { // nobody knows where a missed one would have been taken
            for (const auto& missed : m_facts.missed) {
                take(missed);
            }
        }
        std::vector<Episode> all;
        for (auto& [key, episode] : m_episodes) {
            takeMean(m_facts, episode);
            std::sort(episode.lots.begin(), episode.lots.end());
            episode.lots.erase(std::unique(episode.lots.begin(), episode.lots.end()), episode.lots.end());
            all.push_back(std::move(episode));
        }
        std::stable_sort(all.begin(), all.end(), [](const auto& a, const auto& b) { return a.from < b.from; });
        return all;
    }

private:
    Episode& episodeAt(FactIndex dryer, FactIndex run, std::int64_t at, std::optional<records::BeltPosition> position) {
        std::vector<std::string> families;
        if (m_split.byFamilies && run != kNoFact) {
            families = m_facts.runs[static_cast<std::size_t>(run)].families;
        }
        std::size_t number = 0;
        std::int64_t from = at;
        if (dryer != kNoFact) {
            const auto& starts = m_starts[static_cast<std::size_t>(dryer)];
            number = numberOf(starts, at);
            from = number > 0 ? starts[number - 1] : at;
        }
        const Key key{dryer, number, families, position ? static_cast<int>(*position) : -1};
        const auto [where, isNew] = m_episodes.try_emplace(key);
        auto& episode = where->second;
        if (isNew) {
            episode.dryer = dryer;
            episode.from = from;
            episode.to = at;
            episode.families = std::move(families);
            episode.position = position;
        }
        episode.to = std::max(episode.to, at);
        return episode;
    }

    void take(FactIndex index) {
        const auto& reading = m_facts.readings[static_cast<std::size_t>(index)];
        if (!isDrawn(reading.reason) || reading.lot == kNoFact || !m_holds[static_cast<std::size_t>(reading.lot)] ||
            !m_filtered.holds(reading)) {
            return;
        }
        const auto position = m_split.byPosition ? std::optional{reading.position} : std::nullopt;
        auto& episode = episodeAt(reading.dryer, reading.run, reading.at, position);
        episode.lots.push_back(reading.lot);
        if (!episode.worst || badnessOf(reading.word) > badnessOf(*episode.worst)) {
            episode.worst = reading.word;
        }
        if (!hasMargin(reading)) {
            return;
        }
        if (episode.readings.empty() ||
            lowestOf(reading) < lowestOf(m_facts.readings[static_cast<std::size_t>(m_lowest[&episode])])) {
            m_lowest[&episode] = index;
            episode.leadsTo = reading.run;
        }
        episode.readings.push_back(index);
    }

    void take(const records::TrendMissed& missed) {
        if (!m_holds[static_cast<std::size_t>(missed.lot)] || !m_filtered.holdsTime(missed.at)) {
            return;
        }
        const auto& lot = m_facts.lots[static_cast<std::size_t>(missed.lot)];
        auto& episode = episodeAt(lot.dryer, lot.run, missed.at, std::nullopt);
        episode.lots.push_back(missed.lot);
        episode.leadsTo = episode.leadsTo == kNoFact ? lot.run : episode.leadsTo;
        ++episode.missed;
    }

    const TrendFacts& m_facts;
    Filtered m_filtered;
    EpisodeSplit m_split;
    std::vector<std::vector<std::int64_t>> m_starts;
    std::vector<char> m_holds;
    std::map<Key, Episode> m_episodes;
    std::map<const Episode*, FactIndex> m_lowest;
};

} // namespace

std::vector<Episode> episodesOf(const TrendFacts& facts, const TrendFilter& filter, const EpisodeSplit& split) {
    return Collecting{facts, filter, split}.make();
}

std::vector<std::vector<std::int64_t>> episodeStarts(const TrendFacts& facts) {
    std::vector<Starts> starts(facts.dryers.size());
    std::vector<std::vector<std::int64_t>> seen(facts.dryers.size());
    for (std::size_t i = 0; i < starts.size(); ++i) {
        const auto& dwell = facts.dryers[i].dwell;
        starts[i].dwell = dwell && dwell->count() > 0.0 ? std::llround(std::min(dwell->count(), 86'400.0) * 1000.0) : 0;
    }
    auto turns = facts.turns;
    std::stable_sort(turns.begin(), turns.end(), [](const auto& a, const auto& b) { return a.at < b.at; });
    for (const auto& turn : turns) {
        if (turn.dryer != kNoFact) {
            starts[static_cast<std::size_t>(turn.dryer)].take(turn);
        }
    }
    for (const auto& reading : facts.readings) {
        if (reading.dryer != kNoFact) {
            seen[static_cast<std::size_t>(reading.dryer)].push_back(reading.at);
        }
    }
    for (const auto& lot : facts.lots) {
        if (lot.dryer != kNoFact) {
            seen[static_cast<std::size_t>(lot.dryer)].push_back(lot.openedAt);
        }
    }
    std::vector<std::vector<std::int64_t>> all;
    for (std::size_t i = 0; i < starts.size(); ++i) {
        starts[i].finish();
        addUnwritten(starts[i].at, seen[i]);
        all.push_back(std::move(starts[i].at));
    }
    return all;
}

std::vector<std::int32_t> episodeOfLots(const TrendFacts& facts) {
    const auto starts = episodeStarts(facts);
    std::vector<std::int64_t> begin;
    for (const auto& lot : facts.lots) {
        begin.push_back(lot.openedAt);
    }
    std::vector<char> read(facts.lots.size(), 0);
    for (const auto& reading : facts.readings) { // a lot may be opened before the dryer is turned for it
        if (reading.lot != kNoFact && isDrawn(reading.reason) && !read[static_cast<std::size_t>(reading.lot)]) {
            read[static_cast<std::size_t>(reading.lot)] = 1;
            begin[static_cast<std::size_t>(reading.lot)] = reading.at;
        }
    }
    std::vector<std::size_t> before{0};
    for (const auto& one : starts) {
        before.push_back(before.back() + one.size() + 1);
    }
    std::vector<std::int32_t> all;
    for (std::size_t i = 0; i < facts.lots.size(); ++i) {
        const auto dryer = facts.lots[i].dryer;
        const auto number = dryer == kNoFact ? before.back() + i
                                             : before[static_cast<std::size_t>(dryer)] +
                                                   numberOf(starts[static_cast<std::size_t>(dryer)], begin[i]);
        all.push_back(static_cast<std::int32_t>(number));
    }
    return all;
}

} // namespace holdfast::kiosk::shop::trending
